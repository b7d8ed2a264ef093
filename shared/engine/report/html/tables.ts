/**
 * Tables and wall charts as elements. Where there is little room each row becomes a block of its own
 * and each cell a line under the name of its column (style.ts); the roles are written out, because a
 * browser forgets what a table is once it is laid out otherwise.
 */
import { type BlockOf, type ChartCell, type ChartEntry, cellTexts, entriesOf } from '../document.ts'
import { element, escaped, worded } from './elements.ts'

type Align = BlockOf<'table'>['align']
/** From so many columns on a table wants more room than a page of text has. */
const manyColumns = 5

/** Where a cell stands: the column's name is told beside it where there is no room for a head. */
const under = (head: string | undefined): string => (head ? ` data-head="${escaped(head)}"` : '')
const aligned = (align: Align, column: number): string =>
	align?.[column] === 'right' ? ' class="number"' : ''

function table(
	{ caption, head, align }: { caption: string; head: readonly string[]; align?: Align },
	rows: readonly string[],
	kind = '',
): string {
	const columns = head.map((text, column) =>
		text
			? worded('th', text, ` scope="col" role="columnheader"${aligned(align, column)}`)
			: element('td', '', ' role="cell"'),
	)
	const classes = [kind, head.length >= manyColumns ? 'wide' : ''].filter(Boolean).join(' ')
	return element(
		'table',
		worded('caption', caption) +
			element('thead', element('tr', columns.join(''), ' role="row"'), ' role="rowgroup"') +
			element('tbody', rows.join(''), ' role="rowgroup"'),
		` role="table"${classes ? ` class="${classes}"` : ''}`,
	)
}
/** A row whose first cell names it; without a name that cell is like the others. */
const row = (first: string, rest: string): string =>
	element(
		'tr',
		(first === ''
			? element('td', '', ' role="cell"')
			: worded('th', first, ' scope="row" role="rowheader"')) + rest,
		' role="row"',
	)
export function tableHtml({ caption, head, rows, align }: BlockOf<'table'>): string {
	const cellOf = (text: string, column: number) =>
		worded('td', text, ` role="cell"${aligned(align, column)}${under(head[column])}`)
	const lines = rows.map(([first = '', ...rest]) =>
		row(
			first,
			head
				.slice(1)
				.map((_, at) => cellOf(rest[at] ?? '', at + 1))
				.join(''),
		),
	)
	return table({ caption, head, ...(align && { align }) }, lines)
}
export function chartHtml({ caption, head, rows }: BlockOf<'chart'>): string {
	const lines = rows.map(([first, ...rest]) =>
		row(
			first ? cellTexts(first).join(', ') : '',
			rest.map((cell, at) => chartCell(cell, head[at + 1])).join(''),
		),
	)
	return table({ caption, head }, lines, 'chart')
}
const chartCell = (cell: ChartCell, head: string | undefined): string =>
	element(
		'td',
		entriesOf(cell).map(chartEntry).join('<br>'),
		` role="cell"${cell.pattern ? ` class="pattern-${cell.pattern}"` : ''}${under(head)}`,
	)
const chartEntry = ({ text, below, after, beside }: ChartEntry): string =>
	(text ? worded('strong', text) : '') +
	(after ? ` ${worded('strong', after)}` : '') +
	(beside ? ` ${worded('span', beside)}` : '') +
	(below ? ` ${worded('span', below)}` : '')
