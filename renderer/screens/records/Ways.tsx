import { Box, Typography } from '@mui/material'
import type { OutputOf } from '../../../shared/contract.ts'
import { Way } from '../../parts/panels.tsx'

type Person = OutputOf<'session.status'>['person']
/** Under the lists and the player: the way to the records room, and who works here. */
export function RecordsWays({
	person,
	playerId,
}: {
	person: Person
	playerId: string | undefined
}) {
	return (
		<Box
			component="nav"
			aria-label="Records room"
			sx={{
				mt: 4,
				display: 'flex',
				flexWrap: 'wrap',
				alignItems: 'center',
				gap: 1,
				displayPrint: 'none',
			}}
		>
			{person && (
				<Typography variant="body2" color="textSecondary">
					{person.name} works here ({person.role}).
				</Typography>
			)}
			{playerId && <Way to={`#/consents/${playerId}`}>Consents of this player</Way>}
			<Way to="#/records/access">Hand over</Way>
			<Way to="#/records/backups">Backups and records</Way>
		</Box>
	)
}
