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
