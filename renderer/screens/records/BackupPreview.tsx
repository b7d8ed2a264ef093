/** What stands in a backup and what a restore would hide; and the restore. */
import { Alert, Box, Button, Checkbox, FormControlLabel, Typography } from '@mui/material'
import { useState } from 'react'
import type { OutputOf } from '../../../shared/contract.ts'
import { timeWords } from '../../parts/panels.tsx'
import { change, type HostAction } from '../../query.ts'

type Preview = OutputOf<'backups.preview'>
export interface Looked {
	file: string
	preview: Preview
}
/** The most damaged records that are named on the screen. */
const mostNamed = 20

function countWords(number: number | undefined, one: string): string {
	if (number === undefined) return `Unknown number of ${one}s`
	if (number === 0) return `No ${one}s`
	return number === 1 ? `One ${one}` : `${number} ${one}s`
}
function Contents({ preview }: { preview: Preview }) {
	const { players, visits, lastAt, onlyNow, onlyThen } = preview
	return (
		<>
			<Typography>
				{`${countWords(players, 'player')}, ${countWords(visits, 'visit').toLowerCase()}; last record `}
				{lastAt ? timeWords(lastAt) : 'unknown'}.
			</Typography>
			{onlyNow.length > 0 && (
				<Typography>
					Not in this backup, and gone from view after a restore: {onlyNow.join(', ')}.
				</Typography>
			)}
			{onlyThen.length > 0 && <Typography>Only in this backup: {onlyThen.join(', ')}.</Typography>}
		</>
	)
}
function Damaged({
	says,
	read,
	setRead,
}: {
	says: readonly string[]
	read: boolean
	setRead: (read: boolean) => void
}) {
	if (says.length === 0) return null
	return (
		<Box sx={{ mt: 1 }}>
			<Typography sx={{ fontWeight: 600 }}>
				Damaged in this backup. An older one may have it whole:
			</Typography>
			{says.slice(0, mostNamed).map((one) => (
				<Typography key={one}>{one}</Typography>
			))}
			{says.length > mostNamed && <Typography>{`And ${says.length - mostNamed} more.`}</Typography>}
			<FormControlLabel
				control={<Checkbox checked={read} onChange={(event) => setRead(event.target.checked)} />}
				label="I read what is damaged and want this backup all the same"
			/>
		</Box>
	)
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
	const [read, setRead] = useState(false)
	const isDamaged = preview.damaged.length > 0
	const restore = async () => {
		const { before } = await change('backups.restore', {
			file,
			...(isDamaged && { damageRead: read }),
		})
		close()
		return (
			`Restored. What stood before is kept as ${before}. Unlock with your present passphrase; ` +
			'what came back is listed then.'
		)
	}
	return (
		<Alert
			severity={isDamaged ? 'warning' : 'info'}
			role="status"
			action={
				<Button color="inherit" onClick={close}>
					Close
				</Button>
			}
		>
			<Typography sx={{ fontWeight: 600 }}>{file}</Typography>
			<Contents preview={preview} />
			<Damaged says={preview.damaged} read={read} setRead={setRead} />
			<Typography sx={{ mt: 1 }}>
				What stands now is backed up first. People, passphrases, withdrawn consents and what was
				destroyed or sent stay as they are now; nothing that waited to be sent leaves by itself.
			</Typography>
			<Button
				sx={{ mt: 1 }}
				variant="contained"
				disabled={busy || (isDamaged && !read)}
				onClick={() => run(restore)}
			>
				Restore this backup
			</Button>
		</Alert>
	)
}
