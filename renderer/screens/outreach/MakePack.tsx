/** Making a pack: one sealed file for the laptop. */
import { Box, Button, FormControlLabel, Radio, RadioGroup, Typography } from '@mui/material'
import { leastPassphrase } from '../../../shared/desk/workplace/passphrase.ts'
import { orCancelled } from '../../parts/cancelled.ts'
import { PlaceField } from '../../parts/choose/PlaceField.tsx'
import { Field, Form, Outcome } from '../../parts/form.tsx'
import { Needs } from '../../parts/Needs.tsx'
import { PackProgress } from '../../parts/PackProgress.tsx'
import { Panel } from '../../parts/panels.tsx'
import { type HostAction, useHostAction } from '../../query.ts'
import { PackPlayers } from './PackPlayers.tsx'
import { type Pack, type PutPack, usePack } from './usePack.ts'

const histories: readonly { value: Pack['history']; says: string }[] = [
	{ value: 'last', says: 'Last visit' },
	{ value: 'all', says: 'All visits' },
	{ value: 'none', says: 'No visits' },
]
function History({ now, set }: { now: Pack['history']; set: (history: Pack['history']) => void }) {
	return (
		<Box role="group" aria-label="History">
			<Typography sx={{ fontWeight: 600 }}>History</Typography>
			<RadioGroup
				row
				aria-label="History"
				value={now}
				onChange={(_, next) => {
					const chosen = histories.find(({ value }) => value === next)
					if (chosen) set(chosen.value)
				}}
			>
				{histories.map(({ value, says }) => (
					<FormControlLabel key={value} value={value} control={<Radio />} label={says} />
				))}
			</RadioGroup>
		</Box>
	)
}
function WhereAndHow({ pack, put }: { pack: Pack; put: PutPack }) {
	return (
		<>
			<PlaceField
				label="Folder or stick"
				purpose="pack"
				value={pack.folder}
				set={(folder) => put({ folder })}
				hint="One that goes along, or from which the pack is copied to the laptop."
			/>
			<Field
				label="Opens until"
				type="date"
				value={pack.expires}
				set={(expires) => put({ expires })}
				hint="After this day the laptop only makes the file for the way back."
			/>
			<Field
				label="Passphrase of the pack"
				type="password"
				value={pack.passphrase}
				set={(passphrase) => put({ passphrase })}
				autoComplete="new-password"
				hint={`${leastPassphrase} characters or more, a new one that opens nothing here. Keep it apart from the stick.`}
			/>
			<Field
				label="Passphrase of the pack again"
				type="password"
				value={pack.again}
				set={(again) => put({ again })}
				autoComplete="new-password"
			/>
		</>
	)
}
function MakeIt({
	pack: { folder, passphrase, again },
	action,
}: {
	pack: Pack
	action: HostAction
}) {
	return (
		<Box sx={{ display: 'flex', flexWrap: 'wrap', alignItems: 'center', gap: 2 }}>
			<Button
				type="submit"
				variant="contained"
				disabled={action.busy || !folder || !passphrase || !again}
			>
				Make the pack
			</Button>
			{!action.done && (
				<Needs
					fields={[
						[folder, 'folder or stick'],
						[passphrase, 'passphrase of the pack'],
						[again, 'the passphrase again'],
					]}
				/>
			)}
		</Box>
	)
}
export function MakePack() {
	const { pack, put, make } = usePack()
	const action = useHostAction()
	return (
		<Panel
			title="Make a pack"
			hint={
				'One sealed file for the laptop: the chosen players with their history, shelf, ' +
				'letterhead and settings. It has a passphrase of its own.'
			}
		>
			<Form sx={{ display: 'grid', gap: 2 }} submit={() => action.run(() => orCancelled(make))}>
				<PackPlayers chosen={pack.playerIds} setChosen={(playerIds) => put({ playerIds })} />
				<History now={pack.history} set={(history) => put({ history })} />
				<WhereAndHow pack={pack} put={put} />
				<PackProgress busy={action.busy} of={['pack']} />
				<Outcome of={action} />
				<MakeIt pack={pack} action={action} />
			</Form>
		</Panel>
	)
}
