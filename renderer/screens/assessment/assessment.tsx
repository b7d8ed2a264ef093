/** The guided assessment: steps of measures, findings beside them, the draft saved as it grows. */
import { Alert, Typography } from '@mui/material'
import { loadProtocol } from '../../parts/clinicProtocol.ts'
import { useHost, useReading } from '../../query.ts'
import { useDraft } from './useDraft.ts'
import { Walk } from './Walk.tsx'

interface AssessmentProps {
	playerId: string
	/** Begins as a re-check where no draft is open. */
	recheck?: boolean
}
/**
 * Opens the player's draft, the protocol in force and the shelf. The findings count the shelf too:
 * it is asked before the first of them is shown, so that none moves down later.
 */
export function AssessmentScreen({ playerId, recheck = false }: AssessmentProps) {
	const { open, trouble } = useDraft(playerId, recheck)
	const protocol = useReading('protocol in force', {}, ['protocol.get'], loadProtocol)
	const shelf = useHost('shelf.get', {})
	const shelfAsked = shelf.value !== undefined || shelf.says !== ''
	if (open && protocol.value && shelfAsked)
		return (
			<Walk
				playerId={playerId}
				open={open}
				protocol={protocol.value}
				shelf={shelf.value?.shelf}
				shelfTrouble={shelf.says}
			/>
		)
	if (trouble) return <Alert severity="error">{trouble}</Alert>
	if (protocol.says)
		return <Alert severity="error">The clinic's protocol did not open: {protocol.says}</Alert>
	return <Typography role="status">Opening the visit.</Typography>
}
