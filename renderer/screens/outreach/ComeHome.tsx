/** Coming home: look into the file for the way back, then bring it in. */
import { Alert, Box, Button, Typography } from '@mui/material'
import { useState } from 'react'
import { call } from '../../host.ts'
import { orCancelled } from '../../parts/cancelled.ts'
import { PlaceField } from '../../parts/choose/PlaceField.tsx'
import { Field, Form, Outcome } from '../../parts/form.tsx'
import { counted, Needs } from '../../parts/Needs.tsx'
import { PackProgress } from '../../parts/PackProgress.tsx'
import { Panel, timeWords } from '../../parts/panels.tsx'
import { change, useHostAction } from '../../query.ts'
import { Changes, Counts, Found, type Merged, twice } from './Merged.tsx'

function broughtWords({ again, receipt, counts, questions }: Merged): string {
	if (again)
		return (
			'This file was brought in before. Nothing was added twice. Receipt for the laptop: ' +
			`${receipt}.`
		)
	const open =
		questions > 0
			? ` ${counted(questions, 'question stands', 'questions stand')} under To answer.`
			: ''
	return (
		`Brought in: ${counted(counts.added, 'record')} added, before ${counts.before}, after ` +
		`${counts.after}. Receipt for the laptop: ${receipt}.${open}`
	)
}
/** The merge as it would be, before anything is changed. */
function Looked({ looked, busy, bring }: { looked: Merged; busy: boolean; bring: () => void }) {
	const { madeBy, madeAt, players, drafts, again, questions, draftsBoth } = looked
	return (
		<Box role="status" sx={{ display: 'grid', gap: 1 }}>
			<Typography sx={{ fontWeight: 600 }}>
				Made by {madeBy} on {timeWords(madeAt)}; {counted(players.length, 'player')},{' '}
				{counted(drafts, 'open draft')}.{again ? ' It was brought in before.' : ''}
			</Typography>
			<Changes changes={looked.changes} more={looked.morePlayers} />
			<Counts counts={looked.counts} trailRows={looked.trailRows} />
			<Typography>
				{questions === 0
					? 'No questions.'
					: `${counted(questions, 'question')} to answer afterwards.`}{' '}
				{draftsBoth.length === 0
					? ''
					: 'Drafts changed in both places, both kept: ' +
						`${draftsBoth.map(({ name }) => name).join(', ')}.`}
			</Typography>
			<Found found={looked} />
			{looked.duplicates.map((duplicate) => (
				<Alert key={`${duplicate.playerId} ${duplicate.like}`} severity="warning">
					{twice(duplicate)} Nothing is joined by itself: you are asked after bringing it in.
				</Alert>
			))}
			<Box>
				<Button variant="contained" disabled={busy} onClick={bring}>
					Bring it in
				</Button>
			</Box>
		</Box>
	)
}
function useComingHome() {
	const [file, setFile] = useState('')
	const [passphrase, setPassphrase] = useState('')
	const [looked, setLooked] = useState<Merged>()
	const action = useHostAction()
	const asked = { file, passphrase }
	return {
		...asked,
		looked,
		action,
		/** what was looked into is not what is typed now */
		setFile: (next: string) => {
			setFile(next)
			setLooked(undefined)
		},
		setPassphrase: (next: string) => {
			setPassphrase(next)
			setLooked(undefined)
		},
		look: () =>
			action.run(() =>
				orCancelled(async () => {
					setLooked(await call('outreach.previewMerge', asked))
					return ''
				}),
			),
		bring: () =>
			action.run(() =>
				orCancelled(async () => {
					const merged = await change('outreach.merge', asked)
					setLooked(undefined)
					setPassphrase('')
					return broughtWords(merged)
				}),
			),
	}
}
export function ComeHome() {
	const home = useComingHome()
	const { action, file, passphrase, looked } = home
	return (
		<Panel
			title="Come home"
			hint={
				'Brings a file for the way back into these records. Nothing here is overwritten. Look ' +
				'first: nothing is changed until you bring it in.'
			}
		>
			<Form sx={{ display: 'grid', gap: 2 }} submit={home.look}>
				<PlaceField
					label="File for the way back"
					purpose="come-home"
					value={file}
					set={home.setFile}
					hint="Its name begins with return and ends in .lwpack."
				/>
				<Field
					label="Passphrase of the pack"
					type="password"
					value={passphrase}
					set={home.setPassphrase}
				/>
				<PackProgress busy={action.busy} of={['look', 'merge']} />
				<Outcome of={action} />
				<Box sx={{ display: 'flex', flexWrap: 'wrap', alignItems: 'center', gap: 2 }}>
					<Button type="submit" variant="outlined" disabled={action.busy || !file || !passphrase}>
						Look into the file
					</Button>
					{!action.done && (
						<Needs
							fields={[
								[file, 'file for the way back'],
								[passphrase, 'passphrase of the pack'],
							]}
						/>
					)}
				</Box>
				{looked && <Looked looked={looked} busy={action.busy} bring={home.bring} />}
			</Form>
		</Panel>
	)
}
