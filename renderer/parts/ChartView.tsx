/**
 * A chart of the engine on screen: the same drawing as in the report, its words for those who do
 * not see it, its numbers one press away.
 */
import { Box, Button, Collapse, Typography } from '@mui/material'
import { createElement, type ReactNode, useId, useMemo, useState } from 'react'
import type { Chart } from '../../shared/engine/charts/chart.ts'
import { chartSvg } from '../../shared/engine/charts/svg.ts'
import { spokenOnly } from './spokenOnly.ts'
import { restsOn } from './Workings.tsx'

/** The drawing keeps its paper in the dark too, so its ink stays legible. */
const look = { colour: '#17524f', widthPt: 350, heightPt: 205 }
const camel = (name: string) =>
	name.replace(/-([a-z])/g, (_, letter: string) => letter.toUpperCase())

/** The drawn text as elements: nothing is set as raw markup. */
function elementOf(node: Element, key: number): ReactNode {
	const given = Object.fromEntries(
		[...node.attributes]
			.filter((attribute) => attribute.name !== 'xmlns')
			.map((attribute) => [camel(attribute.name), attribute.value]),
	)
	const inside = [...node.childNodes].map((child, index) =>
		child instanceof Element ? elementOf(child, index) : child.textContent,
	)
	return createElement(node.tagName, { key, ...given }, ...inside)
}
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
					textAlign: 'left',
					py: 0.5,
					pr: 1.5,
					borderBottom: 1,
					borderColor: 'divider',
					verticalAlign: 'top',
				},
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
function Drawing({ chart }: { chart: Chart }) {
	const drawn = useMemo(
		() =>
			elementOf(
				new DOMParser().parseFromString(chartSvg(chart, look), 'image/svg+xml').documentElement,
				0,
			),
		[chart],
	)
	return (
		<Box
			role="img"
			aria-label={chart.alternative}
			sx={{
				p: 1,
				bgcolor: '#ffffff',
				border: 1,
				borderColor: 'divider',
				borderRadius: 1,
				'& svg': { display: 'block', width: '100%', height: 'auto' },
				'& text': { fontFamily: "'Noto Sans', sans-serif" },
			}}
		>
			{drawn}
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
			<Drawing chart={chart} />
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
