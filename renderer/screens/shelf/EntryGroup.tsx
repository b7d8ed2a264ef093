/** A part of the form under its heading. */
import { Box, Paper, Typography } from '@mui/material'
import type { ReactNode } from 'react'

interface EntryGroupProps {
	title: string
	hint?: string | undefined
	children: ReactNode
}
export function EntryGroup({ title, hint, children }: EntryGroupProps) {
	return (
		<Paper component="section" variant="outlined" sx={{ p: 2, display: 'grid', gap: 1.5 }}>
			<Box>
				<Typography variant="h2">{title}</Typography>
				{hint && (
					<Typography variant="body2" color="text.secondary">
						{hint}
					</Typography>
				)}
			</Box>
			{children}
		</Paper>
	)
}
