/**
 * A chart of the engine on screen: the drawing of the report in the colours of the look, its words
 * for those who do not see it, its numbers one press away.
 */
import { Box, Button, Collapse, Typography } from '@mui/material'
import { useId, useMemo, useRef, useState } from 'react'
import type { Chart } from '../../shared/engine/charts/chart.ts'
import { fontSize } from '../../shared/engine/charts/drawing/shapes.ts'
import { chartSvg } from '../../shared/engine/charts/svg.ts'
import { Drawing } from './Drawing.tsx'
import { screenInk } from './figureInk.ts'
import { spokenOnly } from './spokenOnly.ts'
import { useRoom } from './useRoom.ts'
import { restsOn } from './Workings.tsx'

/**
 * Drawn for the room it stands in, so that its words have one size on every screen: as wide as the
 * room allows, within what stays readable, points.
 */
const leastWidthPt = 260
const mostWidthPt = 520
const heightPt = 205
const colour = '#17524f'
/** The first drawing, before the room is known. */
const firstWidthPt = 350

function Numbers({ head, rows }: Chart['table']) {
	return (
		<Box
			component="table"
			sx={{
				borderCollapse: 'collapse',
				width: '100%',
				fontSize: '0.875rem',
				fontVariantNumeric: 'tabular-nums',
				'& th, & td': {
					textAlign: 'right',
					py: 0.5,
					pr: 1.5,
					borderBottom: 1,
					borderColor: 'divider',
					verticalAlign: 'top',
				},
				'& th:first-of-type': { textAlign: 'left' },
				'& tbody th': { fontWeight: 400 },
			}}
		>
			<thead>
				<tr>
					{head.map((name) => (
						<th key={name} scope="col">
							{name}
						</th>
					))}
				</tr>
			</thead>
			<tbody>
				{rows.map(([first, ...cells]) => (
					<tr key={[first, ...cells].join(' ')}>
						<th scope="row">{first}</th>
						{head.slice(1).map((name, index) => (
							<td key={name}>{cells[index]}</td>
						))}
					</tr>
				))}
			</tbody>
		</Box>
	)
}
function Drawn({ chart }: { chart: Chart }) {
	const box = useRef<HTMLDivElement>(null)
	const room = useRoom(box)
	const widthPt = room
		? Math.round(
				Math.min(mostWidthPt, Math.max(leastWidthPt, (room.width * fontSize) / room.letter)),
			)
		: firstWidthPt
	const svg = useMemo(() => chartSvg(chart, { colour, widthPt, heightPt }), [chart, widthPt])
	return (
		<Box sx={{ ...screenInk, p: 1, borderRadius: 1 }}>
			<Box ref={box} sx={{ fontSize: '0.875rem' }}>
				<Drawing
					svg={svg}
					alternative={chart.alternative}
					sx={{ '& svg': { display: 'block', width: '100%', height: 'auto' } }}
				/>
			</Box>
		</Box>
	)
}
export function ChartView({ chart }: { chart: Chart }) {
	const [open, setOpen] = useState(false)
	const id = useId()
	return (
		<Box component="figure" sx={{ m: 0, mt: 2 }}>
			<Typography component="figcaption" variant="h3" sx={{ mb: 0.5 }}>
				{chart.title}
			</Typography>
			<Drawn chart={chart} />
			<Button
				variant="text"
				size="small"
				aria-expanded={open}
				aria-controls={id}
				onClick={() => setOpen(!open)}
				sx={{ minHeight: 44, px: 1 }}
			>
				Numbers
				<Box component="span" sx={spokenOnly}>
					: {chart.title}
				</Box>
			</Button>
			<Collapse in={open} id={id} unmountOnExit>
				<Box
					sx={{ overflowX: 'auto' }}
					role="region"
					aria-label={`Numbers: ${chart.title}`}
					tabIndex={0}
				>
					<Numbers {...chart.table} />
				</Box>
				{chart.basis.map((basis) => (
					<Typography key={restsOn(basis)} variant="body2" color="text.secondary" sx={{ mt: 0.5 }}>
						{restsOn(basis)}
					</Typography>
				))}
			</Collapse>
		</Box>
	)
}
