/** What the other stations still lack, for the clinician at the end of the walk. */
import { Alert, Box, Typography } from '@mui/material'
import { missingAt, stations } from '../../../shared/desk/squad/stations.ts'
import type { Visit } from '../../../shared/engine/visit/visit.ts'
import { Way } from '../../parts/panels.tsx'
import { labelOf } from './labels.ts'

interface GapsProps {
	visit: Visit
	squadId: string
	playerId: string
	/** Whether consent is noted. */
	consent: boolean
}
export function Gaps({ visit, squadId, playerId, consent }: GapsProps) {
	const gaps = stations
		.map(({ id, name }) => ({ id, name, missing: missingAt(visit, id) }))
		.filter(({ missing }) => missing.length > 0)
	return (
		<Box sx={{ display: 'grid', gap: 1 }}>
			{!consent && (
				<Alert severity="warning">
					Consent is not noted. <Way to={`#/squad/${squadId}/check-in/${playerId}`}>Check-in</Way>
				</Alert>
			)}
			{gaps.length === 0 ? (
				<Typography role="status">Every station has what it needs.</Typography>
			) : (
				gaps.map(({ id, name, missing }) => (
					<Typography key={id}>
						<Way to={`#/squad/${squadId}/${id}/${playerId}`}>{name}</Way> lacks{' '}
						{missing.map(labelOf).join('; ')}.
					</Typography>
				))
			)}
		</Box>
	)
}
