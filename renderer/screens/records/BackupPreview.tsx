/** What stands in a backup and what a restore would hide; and the restore. */
import { Alert, Button, Typography } from '@mui/material'
import type { OutputOf } from '../../../shared/contract.ts'
import { timeWords } from '../../parts/panels.tsx'
import { change, type HostAction } from '../../query.ts'

export interface Looked {
	file: string
	preview: OutputOf<'backups.preview'>
}
export function BackupPreview({
	looked: { file, preview },
	action: { busy, run },
	close,
}: {
	looked: Looked
	action: HostAction
	close: () => void
}) {
	const restore = async () => {
		const { before } = await change('backups.restore', { file })
		close()
		return (
			`Restored. What stood before is kept as ${before}. Unlock with the passphrase of ` +
			'that time.'
		)
	}
	return (
		<Alert
			severity="info"
			role="status"
			action={
				<Button color="inherit" onClick={close}>
					Close
				</Button>
			}
		>
			<Typography sx={{ fontWeight: 600 }}>{file}</Typography>
			<Typography>
				{preview.players ?? 'Unknown number of'} players, {preview.visits} visits; last record{' '}
				{preview.lastAt ? timeWords(preview.lastAt) : 'unknown'}.
			</Typography>
			{preview.onlyNow.length > 0 && (
				<Typography>
					Not in this backup, and gone from view after a restore: {preview.onlyNow.join(', ')}.
				</Typography>
			)}
			{preview.onlyThen.length > 0 && (
				<Typography>Only in this backup: {preview.onlyThen.join(', ')}.</Typography>
			)}
			<Typography>What stands now is backed up first. Nothing is lost.</Typography>
			<Button sx={{ mt: 1 }} variant="contained" disabled={busy} onClick={() => run(restore)}>
				Restore this backup
			</Button>
		</Alert>
	)
}
