/** One part in one of its states, under the name of the state. */
import { Box, Typography } from '@mui/material'
import type { ReactNode } from 'react'
import { Panel } from '../../parts/panels.tsx'

export interface State {
	/** 'refused, with a value from before' */
	name: string
	part: ReactNode
}
export function Specimen({ part, states }: { part: string; states: readonly State[] }) {
	return (
		<Panel named title={part}>
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
		</Panel>
	)
}
