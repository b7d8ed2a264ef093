/**
 * A drawing of the engine on screen: always on paper white, since its ink is dark, with its words
 * below for everyone.
 */
import { Box, Typography } from '@mui/material'

const address = (svg: string): string => `data:image/svg+xml,${encodeURIComponent(svg)}`
interface PictureProps {
	figure: { svg: string; alternative: string }
	caption: string
	/** shown height in px */
	height?: number
	/** its words in place of the caption */
	tell?: boolean
}
export function Picture({ figure, caption, height = 300, tell = false }: PictureProps) {
	return (
		<Box
			component="figure"
			sx={{ m: 0, display: 'grid', gap: 0.5, justifyItems: 'start', maxWidth: 320 }}
		>
			<Box
				component="img"
				src={address(figure.svg)}
				alt={figure.alternative}
				sx={{
					height,
					maxWidth: '100%',
					bgcolor: '#fff',
					border: 1,
					borderColor: 'divider',
					borderRadius: 1,
					p: 1,
				}}
			/>
			<Typography component="figcaption" variant="body2" color="text.secondary">
				{tell ? figure.alternative : caption}
			</Typography>
		</Box>
	)
}
