/** A part of Decide under its heading. */
import { Box, Typography } from '@mui/material'
import { type ReactNode, useId } from 'react'

export function Section({ title, children }: { title: string; children: ReactNode }) {
	const id = useId()
	return (
		<Box component="section" aria-labelledby={id}>
			<Typography variant="h2" id={id} sx={{ mb: 1 }}>
				{title}
			</Typography>
			{children}
		</Box>
	)
}
