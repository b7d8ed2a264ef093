/** What a new plan would make different, before it is taken. */
import { Box, Button, Paper, Typography } from '@mui/material'
import { useEffect, useRef } from 'react'
import { counted } from '../../parts/Needs.tsx'
import { Proven } from './Proven.tsx'
import type { Tried } from './usePlanning.ts'

interface ReplanProps {
	tried: Tried
	take: () => void
	leave: () => void
}
export function Replan({ tried: { plan, changes }, take, leave }: ReplanProps) {
	const head = useRef<HTMLHeadingElement>(null)
	useEffect(() => head.current?.focus(), [])
	return (
		<Paper
			component="section"
			variant="outlined"
			aria-labelledby="replan"
			sx={{ p: 2, borderColor: 'primary.main', borderWidth: 2 }}
		>
			<Typography variant="h2" id="replan" ref={head} tabIndex={-1}>
				What becomes different ({counted(changes.length, 'change')})
			</Typography>
			<Proven plan={plan} />
			<Box
				component="ul"
				aria-labelledby="replan"
				sx={{ m: 0, mt: 1, pl: 2.5, maxHeight: '16rem', overflow: 'auto', columns: '32rem' }}
			>
				{changes.map(({ says }) => (
					<li key={says}>{says}</li>
				))}
			</Box>
			<Box sx={{ display: 'flex', gap: 1, mt: 1.5 }}>
				<Button variant="contained" onClick={take}>
					Take this plan
				</Button>
				<Button variant="outlined" onClick={leave}>
					Leave it
				</Button>
			</Box>
		</Paper>
	)
}
