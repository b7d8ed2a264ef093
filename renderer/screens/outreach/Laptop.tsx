/** The laptop's side: what it carries, the file for the way back, and taking the records off. */
import { Alert, Box, Button, Link } from '@mui/material'
import { useState } from 'react'
import type { OutputOf } from '../../../shared/contract.ts'
import { call } from '../../host.ts'
import { dayInWords } from '../../parts/dates.ts'
import { Field, Trouble } from '../../parts/form.tsx'
import { counted, Needs } from '../../parts/Needs.tsx'
import { Panel, Rows, timeWords, useAction } from '../../parts/panels.tsx'
import { form } from './form.ts'
import { kindWords } from './words.ts'

const line = { display: 'flex', flexWrap: 'wrap', alignItems: 'center', gap: 2 }

export function Laptop({
	carries,
	leads,
	again,
}: {
	carries: NonNullable<OutputOf<'outreach.list'>['carries']>
	leads: boolean
	again: () => void
}) {
	const [folder, setFolder] = useState('')
	const [passphrase, setPassphrase] = useState('')
	const [receipt, setReceipt] = useState('')
	const back = useAction()
	const remove = useAction()
	if (carries.removedAt)
		return (
			<Alert severity="info" role="status">
				The records of this pack were taken off this laptop on {timeWords(carries.removedAt)}. A
				register line for each player stays,{' '}
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
	const makeBack = () =>
		back.run(async () => {
			const { file, records, drafts } = await call('outreach.makeReturn', {
				folder: folder.trim(),
				passphrase,
			})
			setPassphrase('')
			again()
			return (
				`${file} was written: ${counted(records, 'record')}, ${counted(drafts, 'draft')}. ` +
				'Bring it in at home under Outreach.'
			)
		})
	const takeOff = () =>
		remove.run(async () => {
			const { records, lines } = await call('outreach.remove', { receipt })
			again()
			return (
				`${counted(records, 'record was', 'records were')} removed; ` +
				`${counted(lines, 'register line stays', 'register lines stay')}.`
			)
		})
	return (
		<>
			<Alert severity={carries.ranOut ? 'warning' : 'info'} role="status">
				{carries.ranOut
					? `This pack ran out on ${dayInWords(carries.expires)}. Nothing is lost: make the ` +
						'file for the way back and bring it home.'
					: `This laptop carries a pack made by ${carries.by} on ${timeWords(carries.madeAt)}. ` +
						`It opens until ${dayInWords(carries.expires)}.`}
			</Alert>
			<Panel
				title="What this laptop carries"
				hint={`${counted(carries.players.length, 'player')}; ${Object.entries(carries.counts)
					.map(([kind, count]) => kindWords(kind, count))
					.join(
						', ',
					)}. Shelf: ${carries.shelf ? 'yes' : 'no'}. Protocol ${carries.protocol.id}, version ${carries.protocol.version}. Entered here: ${counted(carries.newHere.records, 'record')}, ${counted(carries.newHere.drafts, 'open draft')}.`}
			>
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
			<Panel
				title="The way back"
				hint="Writes everything that stands here into one sealed file. It may be made as often as needed."
			>
				<Box {...form(makeBack)}>
					<Field
						label="Folder or stick"
						value={folder}
						set={setFolder}
						hint="A whole path, such as /media/stick"
					/>
					<Field
						label="Passphrase of the pack"
						type="password"
						value={passphrase}
						set={setPassphrase}
						hint="The one this laptop is unlocked with."
					/>
					<Trouble says={back.says} />
					{back.done && (
						<Alert severity="success" role="status">
							{back.done}
						</Alert>
					)}
					<Box sx={line}>
						<Button
							type="submit"
							variant="contained"
							disabled={back.busy || !folder.trim() || !passphrase}
						>
							Make the file for the way back
						</Button>
						{!back.done && (
							<Needs
								fields={[
									[folder.trim(), 'folder or stick'],
									[passphrase, 'passphrase of the pack'],
								]}
							/>
						)}
					</Box>
				</Box>
			</Panel>
			{leads && (
				<Panel
					title="Take the records off this laptop"
					hint="Once home has read the file it shows a receipt. With it the copy here is removed for good; a register line for each player stays."
				>
					<Box {...form(takeOff)}>
						<Field
							label="Receipt from home"
							value={receipt}
							set={setReceipt}
							hint="Three groups of four, such as 1a2b-3c4d-5e6f"
						/>
						<Trouble says={remove.says} />
						<Box sx={line}>
							<Button
								type="submit"
								variant="outlined"
								color="error"
								disabled={remove.busy || !receipt.trim()}
							>
								Remove the copy here
							</Button>
							<Needs fields={[[receipt.trim(), 'receipt from home']]} />
						</Box>
					</Box>
				</Panel>
			)}
		</>
	)
}
