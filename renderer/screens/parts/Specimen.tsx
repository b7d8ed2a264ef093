/** One part in one of its states, under the name of the state. */
import { Box, Paper, Typography } from '@mui/material'
import type { ReactNode } from 'react'

export interface State {
	/** 'refused, with a value from before' */
	name: string
	part: ReactNode
}
export function Specimen({ part, states }: { part: string; states: readonly State[] }) {
	return (
		<Paper component="section" aria-label={part} variant="outlined" sx={{ p: 2 }}>
			<Typography variant="h2" sx={{ mb: 1 }}>
				{part}
			</Typography>
			<Box
				sx={{
					display: 'grid',
					gridTemplateColumns: 'repeat(auto-fit, minmax(min(26rem, 100%), 1fr))',
					gap: 3,
				}}
			>
				{states.map((state) => (
					<Box key={state.name} sx={{ minWidth: 0 }}>
						<Typography variant="body2" color="text.secondary" sx={{ mb: 1 }}>
							{state.name}
						</Typography>
						{state.part}
					</Box>
				))}
			</Box>
		</Paper>
	)
}
