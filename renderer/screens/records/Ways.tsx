import { Box } from '@mui/material'
import { Way } from '../../parts/panels.tsx'

/** Under the lists and the player: the way to the records room. */
export function RecordsWays({ playerId }: { playerId: string | undefined }) {
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
			{playerId && <Way to={`#/consents/${playerId}`}>Consents of this player</Way>}
			<Way to="#/records/access">My access</Way>
			<Way to="#/records/backups">Backups and records</Way>
		</Box>
	)
}
