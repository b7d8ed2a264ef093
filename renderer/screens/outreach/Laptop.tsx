/** The laptop's side: what it carries, the file for the way back, and taking the records off. */
import { Alert, Box, Button, Link } from '@mui/material'
import { useState } from 'react'
import type { OutputOf } from '../../../shared/contract.ts'
import { orCancelled } from '../../parts/cancelled.ts'
import { PlaceField } from '../../parts/choose/PlaceField.tsx'
import { dayInWords } from '../../parts/dates.ts'
import { Field, Form, Outcome, Trouble } from '../../parts/form.tsx'
import { counted, Needs } from '../../parts/Needs.tsx'
import { PackProgress } from '../../parts/PackProgress.tsx'
import { Panel, Rows, timeWords } from '../../parts/panels.tsx'
import { change, useHostAction } from '../../query.ts'
import { kindWords, leftWords } from './words.ts'

type Carries = NonNullable<OutputOf<'outreach.list'>['carries']>
const line = { display: 'flex', flexWrap: 'wrap', alignItems: 'center', gap: 2 }
const fields = { display: 'grid', gap: 2 }

function TakenOff({ removedAt, leads }: { removedAt: string; leads: boolean }) {
	return (
		<Alert severity="info" role="status">
			The records of this pack were taken off this laptop on {timeWords(removedAt)}. A register line
			for each player stays,{' '}
			{leads ? (
				<Link href="#/records/retention" color="inherit" sx={{ fontWeight: 600 }}>
					under Retention
				</Link>
			) : (
				'under Retention'
			)}
			. For the next trip open the new pack in another data folder.
		</Alert>
	)
}
/** Kinds that are counted in the sentence already, or say nothing to a person. */
const saidElsewhere: readonly string[] = ['installation', 'player', 'shelf']

function carriedWords({ players, counts, shelf, protocol, newHere }: Carries): string {
	const kinds = Object.entries(counts)
		.filter(([kind]) => !saidElsewhere.includes(kind))
		.map(([kind, count]) => kindWords(kind, count))
	return (
		`${[counted(players.length, 'player'), ...kinds].join(', ')}. Shelf: ${shelf ? 'yes' : 'no'}. ` +
		`Protocol ${protocol.id}, version ${protocol.version}. ` +
		`Entered here: ${counted(newHere.records, 'record')}. Open drafts: ${newHere.drafts}.`
	)
}
function Carried({ carries }: { carries: Carries }) {
	return (
		<Panel title="What this laptop carries" hint={carriedWords(carries)}>
			<Rows
				label="Players on this laptop"
				heads={['Player', 'Born', 'Visits carried']}
				empty="No players: only clinic and shelf. Add players on the spot under Players."
				rows={carries.players.map((player) => ({
					key: player.playerId,
					cells: [player.name, dayInWords(player.birthDate), player.visits],
				}))}
			/>
		</Panel>
	)
}
function WayBack() {
	const [folder, setFolder] = useState('')
	const [passphrase, setPassphrase] = useState('')
	const action = useHostAction()
	const make = async () => {
		const { file, records, drafts, left } = await change('outreach.makeReturn', {
			folder,
			passphrase,
		})
		setPassphrase('')
		return (
			`${file} was written: ${counted(records, 'record')}, ${counted(drafts, 'draft')}. ` +
			`Bring it in at home under Outreach.${leftWords(left)}`
		)
	}
	return (
		<Panel
			title="The way back"
			hint={
				'Writes what stands here of players into one sealed file. It may be made as often as ' +
				'needed.'
			}
		>
			<Form sx={fields} submit={() => action.run(() => orCancelled(make))}>
				<PlaceField label="Folder or stick" purpose="way-back" value={folder} set={setFolder} />
				<Field
					label="Passphrase of the pack"
					type="password"
					value={passphrase}
					set={setPassphrase}
					hint="The one this laptop is unlocked with."
				/>
				<PackProgress busy={action.busy} of={['way-back']} />
				<Outcome of={action} />
				<Box sx={line}>
					<Button
						type="submit"
						variant="contained"
						disabled={action.busy || !folder || !passphrase}
					>
						Make the file for the way back
					</Button>
					{!action.done && (
						<Needs
							fields={[
								[folder, 'folder or stick'],
								[passphrase, 'passphrase of the pack'],
							]}
						/>
					)}
				</Box>
			</Form>
		</Panel>
	)
}
function TakeOff() {
	const [receipt, setReceipt] = useState('')
	const { busy, says, run } = useHostAction()
	const remove = async () => {
		const { records, lines } = await change('outreach.remove', { receipt })
		return (
			`${counted(records, 'record was', 'records were')} removed; ` +
			`${counted(lines, 'register line stays', 'register lines stay')}.`
		)
	}
	return (
		<Panel
			title="Take the records off this laptop"
			hint={
				'Once home has read the file it shows a receipt. With it the copy here is removed for ' +
				'good; a register line for each player stays.'
			}
		>
			<Form sx={fields} submit={() => run(remove)}>
				<Field
					label="Receipt from home"
					value={receipt}
					set={setReceipt}
					hint="Three groups of four, such as 1a2b-3c4d-5e6f"
				/>
				<Trouble says={says} />
				<Box sx={line}>
					<Button type="submit" variant="outlined" color="error" disabled={busy || !receipt.trim()}>
						Remove the copy here
					</Button>
					<Needs fields={[[receipt.trim(), 'receipt from home']]} />
				</Box>
			</Form>
		</Panel>
	)
}
export function Laptop({ carries, leads }: { carries: Carries; leads: boolean }) {
	if (carries.removedAt) return <TakenOff removedAt={carries.removedAt} leads={leads} />
	return (
		<>
			<Alert severity={carries.ranOut ? 'warning' : 'info'} role="status">
				{carries.ranOut
					? `This pack ran out on ${dayInWords(carries.expires)}. Nothing is lost: make the ` +
						'file for the way back and bring it home.'
					: `This laptop carries a pack made by ${carries.by} on ${timeWords(carries.madeAt)}. ` +
						`It opens until ${dayInWords(carries.expires)}.`}
			</Alert>
			<Carried carries={carries} />
			<WayBack />
			{leads && <TakeOff />}
		</>
	)
}
