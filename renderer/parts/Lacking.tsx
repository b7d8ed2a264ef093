/** Visits that a comparison lacks, each with the reason; nothing where it lacks none. */
import { Alert, Box } from '@mui/material'

export function Lacking({ says }: { says: readonly string[] }) {
	if (says.length === 0) return null
	return (
		<Alert severity="warning" role="region" aria-label="Visits that cannot be read">
			<strong>What is compared here lacks a visit.</strong>
			<Box component="ul" sx={{ m: 0, pl: 2.5 }}>
				{says.map((line) => (
					<li key={line}>{line}</li>
				))}
			</Box>
		</Alert>
	)
}
