/** All shortcuts, by where they work. */
import { Box, Typography } from '@mui/material'
import { keySheet } from './help/keys.ts'

export function KeySheet() {
	return (
		<>
			{keySheet.map((part) => (
				<Box component="section" key={part.where} sx={{ mb: 2 }}>
					<Typography variant="h2" component="h3">
						{part.where}
					</Typography>
					<Box
						component="dl"
						sx={{
							m: 0,
							display: 'grid',
							gridTemplateColumns: 'minmax(140px, max-content) 1fr',
							columnGap: 3,
							rowGap: 0.5,
						}}
					>
						{part.keys.map(([keys, does]) => [
							<Box component="dt" key={keys} sx={{ fontWeight: 600 }}>
								{keys}
							</Box>,
							<Box component="dd" key={`${keys} does`} sx={{ m: 0 }}>
								{does}
							</Box>,
						])}
					</Box>
				</Box>
			))}
		</>
	)
}
