/** After the signature: the sheet, the report saved or printed, and where to go next. */
import { Alert, Box, Button, Stack } from '@mui/material'
import { type ReactNode, useEffect, useRef } from 'react'
import { call } from '../../../host.ts'
import { SavePage } from '../../../parts/SavePage.tsx'
import { SignedSheet } from '../../../parts/sheet/SignedSheet.tsx'
import { ToLearn } from '../../../parts/ToLearn.tsx'
import { twoColumns } from './columns.ts'
import type { SigningState } from './useSigning.ts'

interface SignedProps {
	signing: SigningState
	playerId: string
	/** What did not work, in words. */
	failed: ReactNode
	/** The state of what runs, and the report once it is there. */
	children: ReactNode
	print: () => void
}
export function Signed({ signing, playerId, failed, children, print }: SignedProps) {
	const { clinician, visitId } = signing
	// the button that had the focus is gone: the next Tab goes to saving and printing
	const done = useRef<HTMLDivElement>(null)
	useEffect(() => done.current?.focus(), [])
	return (
		<Stack spacing={2}>
			<Alert
				severity="success"
				ref={done}
				tabIndex={-1}
				sx={{ scrollMarginTop: 'calc(var(--walk-head) + 1rem)' }}
			>
				Signed{clinician ? ` as ${clinician.name}, ${clinician.registration}` : ''}. The record can
				no longer be changed; a correction becomes a new version: open the visit on the player's
				page, then Amend.
			</Alert>
			{failed}
			<Stack direction="row" spacing={1} useFlexGap sx={{ flexWrap: 'wrap' }}>
				<OfReport signing={signing} print={print} />
				<Button variant="outlined" href={`#/outbox/player/${playerId}`}>
					Send or hand over
				</Button>
				<Button variant="outlined" href={`#/players/${playerId}`}>
					Back to player
				</Button>
				<Button variant="outlined" href="#/players">
					Next player
				</Button>
			</Stack>
			<ToLearn visitId={visitId} />
			<Box sx={twoColumns}>
				<SignedSheet visitId={visitId} />
				<Stack spacing={2}>{children}</Stack>
			</Box>
		</Stack>
	)
}
function OfReport({ signing, print }: Pick<SignedProps, 'signing' | 'print'>) {
	const { page, busy, visitId, openReport } = signing
	return (
		<>
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
			<SavePage ask={() => call('reports.page', { visitId })} />
		</>
	)
}
