/**
 * A chart of the engine on screen: the drawing of the report in the colours of the look, its words
 * for those who do not see it, its numbers one press away.
 */
import { Box, Button, Collapse, Typography } from '@mui/material'
import { useId, useState } from 'react'
import type { Chart } from '../../shared/engine/charts/chart.ts'
import { chartSvg } from '../../shared/engine/charts/svg.ts'
import { FittedDrawing } from './FittedDrawing.tsx'
import { spokenOnly } from './spokenOnly.ts'
import { restsOn } from './Workings.tsx'

const heightPt = 205

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
const drawChart = (chart: Chart, size: { colour: string; widthPt: number }): string =>
	chartSvg(chart, { ...size, heightPt })
const Drawn = ({ chart }: { chart: Chart }) => (
	<FittedDrawing
		of={chart}
		draw={drawChart}
		leastWidthPt={260}
		mostWidthPt={520}
		alternative={chart.alternative}
	/>
)
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
