/** Every measure of every visit, a column each visit. */
import { Box } from '@mui/material'
import { dayInWords } from '../../../shared/engine/plain/days.ts'
import { ageYears } from '../../../shared/engine/visit/age.ts'
import { fieldMeta } from '../../../shared/engine/visit/field-meta.ts'
import { measureAt } from '../../../shared/engine/visit/measures/catalogue.ts'
import { asNumber } from '../../../shared/engine/visit/measures/value.ts'
import { rounded } from '../../../shared/engine/visit/sides.ts'
import { termWords } from '../../../shared/engine/visit/terms.ts'
import { type Visit, visitSchema } from '../../../shared/engine/visit/visit.ts'
import { readPath } from '../../parts/draft-path.ts'
import { Panel } from '../../parts/panels.tsx'
import { scrollsX } from '../../parts/scrollsX.ts'
import { unitShown } from '../../parts/units.ts'
import { steps } from '../assessment/steps.ts'
import type { Opened } from './openVisits.ts'

/** What a cell of the table shows: the mean of repeats, the sum of items, words of a choice. */
function shown(visit: Visit, path: string): string {
	const value = readPath(visit, path)
	if (value === undefined || value === null)
		return visit.notMeasured?.[path] ? `not measured: ${visit.notMeasured[path]}` : ''
	const placed = measureAt(path)
	if (Array.isArray(value) || typeof value === 'number')
		return String(rounded((placed && asNumber(placed.measure, value)) ?? 0, 1))
	if (typeof value === 'boolean') return value ? 'yes' : 'no'
	return termWords(String(value))
}
const paths = [
	...new Set(
		steps.flatMap((step) =>
			step.groups.flatMap((group) => group.fields.flatMap((row) => [...row.paths])),
		),
	),
].filter((path) => path !== 'feet.examiner' && measureAt(path)?.measure.kind !== 'note')
function rowName(path: string): string {
	const { title, unit, kind } = fieldMeta(visitSchema, path)
	const side = /\.(left|right)\./.exec(path)?.[1]
	const words = kind === 'number' ? unitShown(unit) : ''
	return `${title}${side ? `, ${side}` : ''}${words ? ` (${words})` : ''}`
}
interface MeasureRow {
	key: string
	title: string
	/** one a visit */
	cells: readonly (string | number)[]
}
/** Measures that at least one visit has. */
const measureRows = (visits: readonly Visit[]): MeasureRow[] =>
	paths
		.map((path) => ({
			key: path,
			title: rowName(path),
			cells: visits.map((visit) => shown(visit, path)),
		}))
		.filter((row) => row.cells.some((cell) => cell !== ''))

/** The worst pain of each condition and side; where it was not asked, how the condition stands. */
function painRows(visits: readonly Visit[]): MeasureRow[] {
	const conditions = visits.flatMap((visit) => visit.conditions ?? [])
	const names = new Map(
		conditions.map(({ condition, side }) => [
			`${condition} ${side}`,
			`Worst pain, ${termWords(condition)}, ${termWords(side)} (/10)`,
		]),
	)
	return [...names].map(([key, title]) => ({
		key,
		title,
		cells: visits.map((visit) => {
			const found = visit.conditions?.find(({ condition, side }) => `${condition} ${side}` === key)
			return found ? (found.painWorst ?? found.status ?? '') : ''
		}),
	}))
}
const tableStyle = {
	borderCollapse: 'collapse',
	fontVariantNumeric: 'tabular-nums',
	'& th, & td': {
		textAlign: 'right',
		py: 0.75,
		pl: 4,
		borderBottom: 1,
		borderColor: 'divider',
	},
	'& th:first-of-type': { textAlign: 'left', pl: 0 },
	'& tbody th': { fontWeight: 400 },
} as const

export function SideBySide({ visits, draftDate }: Pick<Opened, 'visits' | 'draftDate'>) {
	const ages = visits.map((visit) => ageYears(visit.player.birthDate, visit.visitDate))
	const rows: MeasureRow[] = [
		{ key: 'age', title: 'Age (years)', cells: ages },
		...measureRows(visits),
		...painRows(visits),
	]
	return (
		<Panel title="Visits side by side">
			<Box role="region" aria-label="Visits side by side" tabIndex={0} sx={scrollsX}>
				<Box component="table" sx={tableStyle}>
					<thead>
						<tr>
							<th scope="col">Measure</th>
							{visits.map((visit) => (
								<th key={visit.visitDate} scope="col">
									{dayInWords(visit.visitDate)}
									{visit.visitDate === draftDate ? ' (draft)' : ''}
								</th>
							))}
						</tr>
					</thead>
					<tbody>
						{rows.map((row) => (
							<tr key={row.key}>
								<th scope="row">{row.title}</th>
								{row.cells.map((cell, index) => (
									<td key={visits[index]?.visitDate}>{cell}</td>
								))}
							</tr>
						))}
					</tbody>
				</Box>
			</Box>
		</Panel>
	)
}
