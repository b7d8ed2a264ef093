/** After the signature: the report saved, printed, or opened where it did not come by itself. */
import { Alert, Button, Stack } from '@mui/material'
import { type ReactNode, useEffect, useRef } from 'react'
import type { SigningState } from './useSigning.ts'

interface SignedProps {
	signing: SigningState
	playerId: string
	/** What did not work, in words. */
	failed: ReactNode
	print: () => void
}
export function Signed({ signing, playerId, failed, print }: SignedProps) {
	const { clinician, page, busy, visitId, openReport } = signing
	// the button that had the focus is gone: the next Tab goes to saving and printing
	const done = useRef<HTMLDivElement>(null)
	useEffect(() => done.current?.focus(), [])
	return (
		<>
			<Alert severity="success" ref={done} tabIndex={-1}>
				Signed{clinician ? ` as ${clinician.name}, ${clinician.registration}` : ''}. The record can
				no longer be changed; a correction becomes a new version: open the visit on the player's
				page, then Amend.
			</Alert>
			{failed}
			<Stack direction="row" spacing={1} useFlexGap sx={{ flexWrap: 'wrap' }}>
				{page ? (
					<Button variant="contained" href={page.url} download={page.fileName}>
						Save PDF
					</Button>
				) : (
					<Button variant="contained" disabled={busy !== ''} onClick={() => openReport(visitId)}>
						Open the report
					</Button>
				)}
				<Button variant="outlined" disabled={!page} onClick={print}>
					Print
				</Button>
				<Button
					variant="outlined"
					onClick={() => {
						location.hash = `#/player/${playerId}`
					}}
				>
					Back to player
				</Button>
			</Stack>
		</>
	)
}
