/** Backups: age, folder, list, preview and restore. */
import { Alert, Box, Button, Typography } from '@mui/material'
import { useState } from 'react'
import type { OutputOf } from '../../../shared/contract.ts'
import { call } from '../../host.ts'
import { Answered } from '../../parts/Answered.tsx'
import { PlaceField } from '../../parts/choose/PlaceField.tsx'
import { Form, Outcome } from '../../parts/form.tsx'
import { counted } from '../../parts/Needs.tsx'
import { acts, Panel, Rows, timeWords } from '../../parts/panels.tsx'
import { change, type HostAction, useHost, useHostAction } from '../../query.ts'
import { BackupPreview, type Looked } from './BackupPreview.tsx'

type Listed = OutputOf<'backups.list'>
const megabyte = 1_048_576
const reasons: Record<string, string> = {
	daily: 'daily',
	asked: 'made by hand',
	'before-upgrade': 'before an upgrade',
	'before-restore': 'before a restore',
	'after-destruction': 'after a destruction',
}
const makers: Record<Listed['backups'][number]['madeBy'], string> = {
	'this-pc': '',
	other: 'Made by another PC of this clinic.',
	unknown: 'Made by an earlier version, on an unknown PC.',
}
/** What a person should know of a backup before choosing it. */
const noteOf = ({ madeBy, damaged }: Listed['backups'][number]): string =>
	[damaged ? 'Holds a damaged record.' : '', makers[madeBy]].filter(Boolean).join(' ')

const pathOf = (backup: { folder: string; file: string }) =>
	`${backup.folder.replace(/[\\/]$/, '')}/${backup.file}`

/** @param tell gets what was found damaged, a sentence each */
function MakeBackup({
	action: { busy, run },
	tell,
}: {
	action: HostAction
	tell: (says: string[]) => void
}) {
	return (
		<Box>
			<Button
				variant="contained"
				disabled={busy}
				onClick={() =>
					run(async () => {
						const { file, says } = await change('backups.make', {})
						tell(says)
						return says.length > 0
							? `${file} was written. It holds damage: read below.`
							: `${file} was written and checked.`
					})
				}
			>
				Make a backup now
			</Button>
		</Box>
	)
}
/** What is damaged, a sentence each. */
function Damage({ says }: { says: readonly string[] }) {
	if (says.length === 0) return null
	return (
		<Alert severity="error" role="alert">
			{says.map((one) => (
				<Typography key={one}>{one}</Typography>
			))}
		</Alert>
	)
}
function OtherFolder({ action: { busy, run } }: { action: HostAction }) {
	const [folder, setFolder] = useState('')
	return (
		<Form
			sx={{ display: 'grid', gap: 1 }}
			submit={() =>
				run(async () => {
					await change('backups.setFolder', { folder })
					return 'Backups go to this folder from now on; the first one stands there.'
				})
			}
		>
			<PlaceField
				label="Other folder or stick"
				purpose="backups"
				value={folder}
				set={setFolder}
				hint="A stick kept elsewhere also survives fire and theft."
			/>
			<Box>
				<Button type="submit" variant="outlined" disabled={busy || !folder}>
					Send backups there
				</Button>
			</Box>
		</Form>
	)
}
/** @param look undefined where only the owner may look into a backup */
function BackupRows({
	backups,
	busy,
	look,
}: {
	backups: Listed['backups']
	busy: boolean
	look: ((file: string) => void) | undefined
}) {
	return (
		<Rows
			label="Backups"
			heads={['Made', 'Why', 'Size', 'File', 'To know', acts]}
			empty="No backup yet. Make one now with the button above."
			rows={backups.map((backup) => ({
				key: pathOf(backup),
				cells: [
					timeWords(backup.at),
					reasons[backup.reason] ?? backup.reason,
					`${(backup.bytes / megabyte).toFixed(1)} MB`,
					backup.file,
					noteOf(backup),
					look ? (
						<Button
							key="look"
							size="small"
							variant="outlined"
							sx={{ whiteSpace: 'nowrap' }}
							disabled={busy}
							aria-label={`Look into ${backup.file}`}
							onClick={() => look(pathOf(backup))}
						>
							Look into it
						</Button>
					) : (
						''
					),
				],
			}))}
		/>
	)
}
export function Backups({ owner }: { owner: boolean }) {
	const list = useHost('backups.list', {})
	const [looked, setLooked] = useState<Looked>()
	const [damage, setDamage] = useState<string[]>([])
	const action = useHostAction()
	const look = (file: string) =>
		action.run(async () => {
			setLooked({ file, preview: await call('backups.preview', { file }) })
			return ''
		})
	return (
		<Answered of={list} what="the backups">
			{({ nag, folder, ageDays, backups }) => (
				<>
					<Outcome of={action} />
					{nag && (
						<Alert severity="warning" role="status">
							{nag}
						</Alert>
					)}
					<Panel
						title="Backups"
						hint={
							'Sealed copies, made daily after unlocking and opened to check them. Folder: ' +
							`${folder}. ` +
							`${ageDays === undefined ? '' : `Age of the newest: ${counted(ageDays, 'day')}.`}`
						}
					>
						<MakeBackup action={action} tell={setDamage} />
						<Damage says={damage} />
						{owner && <OtherFolder action={action} />}
						<BackupRows backups={backups} busy={action.busy} look={owner ? look : undefined} />
						{looked && (
							<BackupPreview looked={looked} action={action} close={() => setLooked(undefined)} />
						)}
					</Panel>
				</>
			)}
		</Answered>
	)
}
