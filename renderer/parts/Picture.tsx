/**
 * A drawing of the engine on screen, in the colours of the look, with its words below for everyone.
 */
import { Box, Typography } from '@mui/material'
import { Drawing } from './Drawing.tsx'
import { screenInk } from './figureInk.ts'

interface PictureProps {
	figure: { svg: string; alternative: string }
	caption: string
	/** shown height in px where letters have their usual size; it grows with them */
	height?: number
	/** its words in place of the caption */
	tell?: boolean
}
/** px of the usual letter: the heights are given in it. */
const usualPx = 16
/** px of the words in a drawing */
const wordsPx = 13
/** Units of the drawing in its height, as its own view says it. */
const unitsHigh = (svg: string): number | undefined => {
	const view = /viewBox="0 0 [\d.]+ ([\d.]+)"/.exec(svg)?.[1]
	return view === undefined ? undefined : Number(view)
}
export function Picture({ figure, caption, height = 300, tell = false }: PictureProps) {
	const units = unitsHigh(figure.svg)
	const letters = units === undefined ? {} : { fontSize: `${(wordsPx * units) / height}px` }
	return (
		<Box
			component="figure"
			sx={{ m: 0, display: 'grid', gap: 0.5, justifyItems: 'start', maxWidth: '20rem' }}
		>
			<Drawing
				svg={figure.svg}
				alternative={figure.alternative}
				sx={{
					p: 1,
					borderRadius: 1,
					maxWidth: '100%',
					...screenInk,
					'& svg': { height: `${height / usualPx}rem`, width: 'auto', maxWidth: '100%' },
					'& svg text': { ...screenInk['& text'], ...letters },
				}}
			/>
			<Typography component="figcaption" variant="body2" color="text.secondary">
				{tell ? figure.alternative : caption}
			</Typography>
		</Box>
	)
}
