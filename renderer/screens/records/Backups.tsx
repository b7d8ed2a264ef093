/** Backups: age, folder, list, preview and restore. */
import { Alert, Box, Button } from '@mui/material'
import { useState } from 'react'
import type { OutputOf } from '../../../shared/contract.ts'
import { call } from '../../host.ts'
import { Answered } from '../../parts/Answered.tsx'
import { Field, Form, Outcome } from '../../parts/form.tsx'
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
const pathOf = (backup: { folder: string; file: string }) =>
	`${backup.folder.replace(/[\\/]$/, '')}/${backup.file}`

function MakeBackup({ action: { busy, run } }: { action: HostAction }) {
	return (
		<Box>
			<Button
				variant="contained"
				disabled={busy}
				onClick={() =>
					run(async () => `${(await change('backups.make', {})).file} was written and checked.`)
				}
			>
				Make a backup now
			</Button>
		</Box>
	)
}
function OtherFolder({ action: { busy, run } }: { action: HostAction }) {
	const [folder, setFolder] = useState('')
	return (
		<Form
			sx={{ display: 'flex', flexWrap: 'wrap', gap: 2, alignItems: 'end' }}
			submit={() =>
				run(async () => {
					await change('backups.setFolder', { folder })
					return 'Backups go to this folder from now on; the first one stands there.'
				})
			}
		>
			<Box sx={{ flexGrow: 1, maxWidth: 520 }}>
				<Field
					label="Other folder or stick"
					value={folder}
					set={setFolder}
					optional
					hint="A whole path. A stick kept elsewhere also survives fire and theft."
				/>
			</Box>
			<Button type="submit" variant="outlined" disabled={busy || !folder.trim()}>
				Use this folder
			</Button>
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
			heads={['Made', 'Why', 'Size', 'File', acts]}
			empty="No backup yet. Make one now with the button above."
			rows={backups.map((backup) => ({
				key: pathOf(backup),
				cells: [
					timeWords(backup.at),
					reasons[backup.reason] ?? backup.reason,
					`${(backup.bytes / megabyte).toFixed(1)} MB`,
					backup.file,
					look ? (
						<Button
							key="look"
							size="small"
							variant="outlined"
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
							`${ageDays === undefined ? '' : `Age of the newest: ${ageDays} days.`}`
						}
					>
						<MakeBackup action={action} />
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
