/** Backups: age, folder, list, preview and restore. */
import { Alert, Box, Button, Typography } from '@mui/material'
import { useState } from 'react'
import type { OutputOf } from '../../../shared/contract.ts'
import { call } from '../../host.ts'
import { Field, Trouble } from '../../parts/form.tsx'
import { acts, Panel, Rows, timeWords, useAction, useAnswer } from '../../parts/panels.tsx'

const megabyte = 1_048_576
const reasons: Record<string, string> = {
	daily: 'daily',
	asked: 'made by hand',
	'before-upgrade': 'before an upgrade',
	'before-restore': 'before a restore',
	'after-destruction': 'after a destruction',
}

export function Backups({ owner, restored }: { owner: boolean; restored: () => void }) {
	const { value, says, again } = useAnswer('backups.list', {})
	const [folder, setFolder] = useState('')
	const [looked, setLooked] = useState<{ file: string; preview: OutputOf<'backups.preview'> }>()
	const action = useAction()
	const pathOf = (one: { folder: string; file: string }) =>
		`${one.folder.replace(/[\\/]$/, '')}/${one.file}`
	const look = (file: string) =>
		action.run(async () => {
			setLooked({ file, preview: await call('backups.preview', { file }) })
			return ''
		})
	const restore = async () => {
		if (!looked) return ''
		const { before } = await call('backups.restore', { file: looked.file })
		setLooked(undefined)
		restored()
		return (
			`Restored. What stood before is kept as ${before}. Unlock with the passphrase of ` +
			'that time.'
		)
	}
	return (
		<>
			<Trouble says={says || action.says} />
			{action.done && (
				<Alert severity="success" role="status">
					{action.done}
				</Alert>
			)}
			{value?.nag && (
				<Alert severity="warning" role="status">
					{value.nag}
				</Alert>
			)}
			<Panel
				title="Backups"
				hint={
					value &&
					'Sealed copies, made daily after unlocking and opened to check them. Folder: ' +
						`${value.folder}. ` +
						`${value.ageDays === undefined ? '' : `Age of the newest: ${value.ageDays} days.`}`
				}
			>
				<Box>
					<Button
						variant="contained"
						disabled={action.busy}
						onClick={() =>
							action.run(async () => {
								const { file } = await call('backups.make', {})
								again()
								return `${file} was written and checked.`
							})
						}
					>
						Make a backup now
					</Button>
				</Box>
				{owner && (
					<Box
						component="form"
						noValidate
						sx={{ display: 'flex', flexWrap: 'wrap', gap: 2, alignItems: 'end' }}
						onSubmit={(event: React.FormEvent) => {
							event.preventDefault()
							action.run(async () => {
								await call('backups.setFolder', { folder })
								again()
								return 'Backups go to this folder from now on; the first one stands there.'
							})
						}}
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
						<Button type="submit" variant="outlined" disabled={action.busy || !folder.trim()}>
							Use this folder
						</Button>
					</Box>
				)}
				<Rows
					label="Backups"
					heads={['Made', 'Why', 'Size', 'File', acts]}
					empty="No backup yet. Make one now with the button above."
					rows={(value?.backups ?? []).map((backup) => ({
						key: pathOf(backup),
						cells: [
							timeWords(backup.at),
							reasons[backup.reason] ?? backup.reason,
							`${(backup.bytes / megabyte).toFixed(1)} MB`,
							backup.file,
							owner ? (
								<Button
									key="look"
									size="small"
									variant="outlined"
									disabled={action.busy}
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
				{looked && (
					<Alert
						severity="info"
						role="status"
						action={
							<Button color="inherit" onClick={() => setLooked(undefined)}>
								Close
							</Button>
						}
					>
						<Typography sx={{ fontWeight: 600 }}>{looked.file}</Typography>
						<Typography>
							{looked.preview.players ?? 'Unknown number of'} players, {looked.preview.visits}{' '}
							visits; last record{' '}
							{looked.preview.lastAt ? timeWords(looked.preview.lastAt) : 'unknown'}.
						</Typography>
						{looked.preview.onlyNow.length > 0 && (
							<Typography>
								Not in this backup, and gone from view after a restore:{' '}
								{looked.preview.onlyNow.join(', ')}.
							</Typography>
						)}
						{looked.preview.onlyThen.length > 0 && (
							<Typography>Only in this backup: {looked.preview.onlyThen.join(', ')}.</Typography>
						)}
						<Typography>What stands now is backed up first. Nothing is lost.</Typography>
						<Button
							sx={{ mt: 1 }}
							variant="contained"
							disabled={action.busy}
							onClick={() => action.run(restore)}
						>
							Restore this backup
						</Button>
					</Alert>
				)}
			</Panel>
		</>
	)
}
/**
 * On a PC without records: bring them from a backup or a pack. @param opened told once a pack
 * stands here: nothing is left to set up
 */
export function MoveHere({ done, opened }: { done: () => void; opened?: () => void }) {
	const [file, setFile] = useState('')
	const [passphrase, setPassphrase] = useState('')
	const [key, setKey] = useState('')
	const action = useAction()
	if (key)
		return (
			<Box sx={{ maxWidth: 860, mx: 'auto', mt: 4, display: 'grid', gap: 2 }}>
				<Typography variant="h1">The pack was opened</Typography>
				<Alert severity="success" role="status">
					The records of the pack are on this PC. The passphrase of the pack unlocks them.
				</Alert>
				<Panel
					title="Recovery key"
					hint="It opens these records should the passphrase be forgotten. It is shown only now: write it down, and keep it apart from this PC."
				>
					<Typography
						sx={{ fontFamily: 'monospace', fontSize: '1.25rem', overflowWrap: 'anywhere' }}
					>
						{key}
					</Typography>
					<Box>
						<Button variant="contained" onClick={done}>
							Go on to unlock
						</Button>
					</Box>
				</Panel>
			</Box>
		)
	return (
		<Box
			component="form"
			noValidate
			sx={{ maxWidth: 860, mx: 'auto', mt: 4 }}
			onSubmit={(event: React.FormEvent) => {
				event.preventDefault()
				action.run(async () => {
					const { records, recoveryKey } = await call('session.moveHere', {
						file: file.trim(),
						...(passphrase ? { passphrase } : {}),
					})
					if (recoveryKey) {
						setKey(recoveryKey)
						opened?.()
					} else done()
					return `${records} records were brought here.`
				})
			}}
		>
			<Panel
				title="Or bring records from a backup or a pack"
				hint="For a new PC, or where the records file was damaged: unlock afterwards with the passphrase or the recovery key of that backup. For an outreach day: open a pack here."
			>
				<Field
					label="Backup or pack file"
					value={file}
					set={setFile}
					optional
					hint="A whole path, such as /media/stick/pack-2027-01-20-ab12cd.lwpack, or the name of a backup in the data folder."
				/>
				<Field
					label="Pack passphrase"
					type="password"
					value={passphrase}
					set={setPassphrase}
					optional
					hint="Only for a pack (a file that ends in .lwpack); leave empty for a backup."
				/>
				<Trouble says={action.says} />
				<Box>
					<Button type="submit" variant="outlined" disabled={action.busy || !file.trim()}>
						Bring these records here
					</Button>
				</Box>
			</Panel>
		</Box>
	)
}
