/**
 * A drawing for the room it stands in, so that its words have one size on every screen: as wide as
 * the room allows, within what stays readable.
 */
import { Box } from '@mui/material'
import { useMemo, useRef } from 'react'
import { fontSize } from '../../shared/engine/charts/drawing/shapes.ts'
import { Drawing } from './Drawing.tsx'
import { screenInk } from './figureInk.ts'
import { useRoom } from './useRoom.ts'

/** The ink that `screenInk` gives the colours of the look. */
const colour = '#17524f'
/** The first drawing, before the room is known, points. */
const firstWidthPt = 350

interface FittedDrawingProps<Drawn> {
	of: Drawn
	/** A function of its module: a new one each time would have it drawn each time. */
	draw: (of: Drawn, size: { colour: string; widthPt: number }) => string
	leastWidthPt: number
	mostWidthPt: number
	alternative: string
}
export function FittedDrawing<Drawn>(props: FittedDrawingProps<Drawn>) {
	const { of, draw, leastWidthPt, mostWidthPt, alternative } = props
	const box = useRef<HTMLDivElement>(null)
	const room = useRoom(box)
	const widthPt = room
		? Math.round(
				Math.min(mostWidthPt, Math.max(leastWidthPt, (room.width * fontSize) / room.letter)),
			)
		: firstWidthPt
	const svg = useMemo(() => draw(of, { colour, widthPt }), [of, draw, widthPt])
	return (
		<Box sx={{ ...screenInk, p: 1, borderRadius: 1 }}>
			<Box ref={box} sx={{ fontSize: '0.875rem' }}>
				<Drawing
					svg={svg}
					alternative={alternative}
					sx={{ '& svg': { display: 'block', width: '100%', height: 'auto' } }}
				/>
			</Box>
		</Box>
	)
}
