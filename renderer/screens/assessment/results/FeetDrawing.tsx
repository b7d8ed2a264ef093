/**
 * Both feet from above, drawn to scale from their measures: left on the left, the measure in hand
 * lit. It fits the room it is given.
 */
import { Box, Typography } from '@mui/material'
import { useRef } from 'react'
import { bothSides, meanOf, perSide } from '../../../../shared/engine/visit/sides.ts'
import type { Side, Visit } from '../../../../shared/engine/visit/visit.ts'
import { capital, shown } from '../../../../shared/engine/words/words.ts'
import { helpOf } from '../../../parts/help/topic.ts'
import { sideOf } from '../../../parts/measure/fieldState.ts'
import { useRoom } from '../../../parts/useRoom.ts'
import { type Dimension, type DrawnFoot, drawFeet, type FootSeen } from './feetDrawing.ts'

interface FeetDrawingProps {
	visit: Visit
	/** Path of the field in focus; empty where none is. */
	focused: string
	/** How left and right differ, in words; empty where they cannot be compared. */
	difference: string
	/** What cannot be drawn, in words: a foot that was not measured. */
	lacks: (side: Side) => string
}
function seenOf({ feet }: Visit, side: Side): FootSeen {
	const read = feet?.[side]
	return {
		lengthMm: meanOf(read?.heelToToeMm),
		ballLengthMm: meanOf(read?.heelToBallMm),
		widthMm: meanOf(read?.ballWidthMm),
		heelWidthMm: meanOf(read?.heelWidthMm),
		girthMm: meanOf(read?.ballGirthMm),
		toeDepthMm: meanOf(read?.toeDepthMm),
		instepHeightMm: meanOf(read?.instepHeightMm),
	}
}
/** What the drawing says to those who do not see it. */
function spoken(seen: Readonly<Record<Side, FootSeen>>): string {
	const feet = bothSides.map((side) => {
		const { lengthMm, ballLengthMm, widthMm } = seen[side]
		if (lengthMm === undefined) return `${side} not measured`
		return [
			`${side} ${shown(lengthMm)} mm long`,
			...(ballLengthMm === undefined ? [] : [`heel to ball ${shown(ballLengthMm)} mm`]),
			...(widthMm === undefined ? [] : [`${shown(widthMm)} mm wide`]),
		].join(', ')
	})
	return `Both feet from above, to scale: ${feet.join('; ')}.`
}
const ink = {
	position: 'absolute',
	inset: 0,
	display: 'block',
	width: '100%',
	height: '100%',
	overflow: 'visible',
	stroke: 'currentColor',
	strokeLinejoin: 'round',
	strokeLinecap: 'round',
	'& .foot': { fill: 'var(--mui-palette-background-paper)', strokeWidth: 1.75 },
	'& .line': { fill: 'none', strokeWidth: 1 },
	'& .todo': { strokeDasharray: '4 4' },
	'& text': {
		// the line stops where its figure stands
		fill: 'currentColor',
		stroke: 'var(--mui-palette-background-default)',
		strokeWidth: 5,
		paintOrder: 'stroke',
		textAnchor: 'middle',
		fontSize: '0.875rem',
		fontVariantNumeric: 'tabular-nums',
	},
	'& .across text': { stroke: 'var(--mui-palette-background-paper)' },
	'& text.length': { fontSize: '1.25rem', fontWeight: 700 },
	'& .lit .line': { stroke: 'var(--lw-focus)', strokeWidth: 3 },
	'& .lit text': { fill: 'var(--lw-focus)', fontWeight: 700 },
	'@media (forced-colors: active)': {
		'& .foot': { fill: 'Canvas' },
		'& text, & .across text': { fill: 'CanvasText', stroke: 'Canvas' },
		'& .lit .line': { stroke: 'Highlight' },
		'& .lit text': { fill: 'CanvasText' },
	},
} as const

export function FeetDrawing({ visit, focused, difference, lacks }: FeetDrawingProps) {
	const box = useRef<HTMLDivElement>(null)
	const room = useRoom(box)
	const seen = perSide((side) => seenOf(visit, side))
	const atHand = { side: sideOf(focused), part: helpOf(focused)?.part }
	const drawn = room && drawFeet(seen, room, atHand)
	return (
		<Box ref={box} sx={{ position: 'relative', flex: '1 1 0', minHeight: '14rem', minWidth: 0 }}>
			{drawn && (
				<Box
					component="svg"
					role="img"
					aria-label={[spoken(seen), difference].filter(Boolean).join(' ')}
					sx={ink}
				>
					{drawn.feet.map((foot) => (
						<Foot key={foot.side} foot={foot} letter={room.letter} />
					))}
					<text x={room.width / 2} y={drawn.bottom + room.letter * 2.9}>
						{difference}
					</text>
				</Box>
			)}
			{bothSides.map((side) =>
				seen[side].lengthMm === undefined ? (
					<Lacking key={side} side={side} says={lacks(side)} />
				) : null,
			)}
		</Box>
	)
}
function Foot({
	foot: { side, path, middle, dimensions },
	letter,
}: {
	foot: DrawnFoot
	letter: number
}) {
	return (
		<g>
			<path className="foot" d={path} />
			{dimensions.map((dimension) => (
				<DimensionShown key={dimension.part} dimension={dimension} />
			))}
			<text x={middle[0]} y={middle[1] + letter * 1.4}>
				{capital(side)}
			</text>
		</g>
	)
}
const upright: readonly string[] = ['length', 'ball-length']
function DimensionShown({ dimension }: { dimension: Dimension }) {
	const { part, lit, lines, figure, at, measured } = dimension
	const kind = upright.includes(part) ? 'along' : 'across'
	return (
		<g className={`${kind}${lit ? ' lit' : ''}`}>
			<path
				className={measured ? 'line' : 'line todo'}
				d={lines.map(([[x1, y1], [x2, y2]]) => `M${x1} ${y1}L${x2} ${y2}`).join('')}
			/>
			<text className={part} x={at[0]} y={at[1]}>
				{part === 'length' && figure ? `${figure} mm` : figure}
			</text>
		</g>
	)
}
/** In the place where the foot will be drawn. */
function Lacking({ side, says }: { side: Side; says: string }) {
	return (
		<Typography
			variant="body2"
			color="text.secondary"
			sx={{
				position: 'absolute',
				[side]: 0,
				width: '50%',
				top: '40%',
				px: 2,
				textAlign: 'center',
			}}
		>
			{says}
		</Typography>
	)
}
