/** Every kind of block in elements that carry its meaning. */
import {
	type Block,
	type BlockKind,
	type BlockOf,
	byKind,
	type ChartCell,
	type ChartEntry,
	cellTexts,
	entriesOf,
	type ForEachKind,
	type Tone,
} from '../document.ts'
import { element, escaped, listed, worded } from './elements.ts'

const toneClass: Record<Tone, string> = {
	body: '',
	small: ' class="small"',
	strong: ' class="strong"',
	lead: ' class="lead"',
	headline: ' class="headline"',
}
const figure = ({ svg, caption, alternative }: BlockOf<'figure' | 'true-size'>, id: string) =>
	element('figure', describedSvg(svg, id, caption, alternative) + worded('figcaption', caption))

const blocks: ForEachKind<BlockKind, [id: string], string> = {
	heading: ({ level, text, newPage, notOnPageOne }) =>
		worded(level === 2 ? 'h3' : 'h2', text, newPage || notOnPageOne ? ' class="new-page"' : ''),
	text: ({ tone = 'body', text }) => worded('p', text, toneClass[tone]),
	list: ({ ordered, items }) => element(ordered ? 'ol' : 'ul', listed('li', items)),
	actions: ({ items }) => element('ol', items.map(action).join(''), ' class="actions"'),
	alert: ({ title, text, large }, id) =>
		element(
			'section',
			worded('h2', title, ` id="${id}"`) + (text === '' ? '' : worded('p', text)),
			` class="alert${large ? ' large' : ''}" aria-labelledby="${id}"`,
		),
	facts: ({ title, boxed, rows }, id) => {
		const named = rows.map(({ label, text }) =>
			element('div', worded('dt', label) + worded('dd', text)),
		)
		const list = element('dl', named.join(''), ' class="facts"')
		if (title === undefined) return list
		return element(
			'section',
			worded('h2', title, ` id="${id}"`) + list,
			`${boxed ? ' class="boxed"' : ''} aria-labelledby="${id}"`,
		)
	},
	table: ({ caption, head, rows, align }) =>
		table(
			caption,
			head,
			rows.map(([first = '', ...rest]) => {
				const cells = head
					.slice(1)
					.map((_, column) => worded('td', rest[column] ?? '', aligned(align, column + 1)))
				return row(first, cells.join(''))
			}),
			'',
			align,
		),
	chart: ({ caption, head, rows }) =>
		table(
			caption,
			head,
			rows.map(([first, ...rest]) => {
				const words = first ? cellTexts(first).join(' ') : ''
				return row(words, rest.map(chartCell).join(''))
			}),
			' class="chart"',
		),
	figure,
	'true-size': figure,
	signature: ({ name, registration, date }) =>
		element(
			'p',
			[worded('strong', name), escaped(registration), escaped(date)].join('<br>'),
			' class="signature"',
		),
	beside: ({ left, right }, id) =>
		element(
			'div',
			[left, right]
				.map((run, side) =>
					element(
						'div',
						run.map((block, at) => byKind(blocks, block, `${id}-${side}-${at}`)).join('\n'),
					),
				)
				.join(''),
			' class="beside"',
		),
}
/** @param id of the block in the page, for what its parts refer to */
export const blockHtml = (block: Block, id: string): string => byKind(blocks, block, id)

function action({ what, when, who }: BlockOf<'actions'>['items'][number]): string {
	const asides = [when, who].filter(Boolean).map((aside) => ` ${worded('span', aside)}`)
	return element('li', worded('strong', what) + asides.join(''))
}
function table(
	caption: string,
	head: readonly string[],
	rows: readonly string[],
	attributes = '',
	align?: BlockOf<'table'>['align'],
): string {
	const columns = head.map((text, column) =>
		text ? worded('th', text, ` scope="col"${aligned(align, column)}`) : element('td', ''),
	)
	return element(
		'table',
		worded('caption', caption) +
			element('thead', element('tr', columns.join(''))) +
			element('tbody', rows.join('')),
		attributes,
	)
}
const aligned = (align: BlockOf<'table'>['align'], column: number): string =>
	align?.[column] === 'right' ? ' class="number"' : ''
/** A row whose first cell names it. @param rest the other cells as elements */
const row = (first: string, rest: string): string =>
	element('tr', worded('th', first, ' scope="row"') + rest)
const chartCell = (cell: ChartCell): string =>
	element(
		'td',
		entriesOf(cell).map(chartEntry).join('<br>'),
		cell.pattern ? ` class="pattern-${cell.pattern}"` : '',
	)
const chartEntry = ({ text, below, after, beside }: ChartEntry): string =>
	(text ? worded('strong', text) : '') +
	(after ? ` ${worded('strong', after)}` : '') +
	(beside ? ` ${worded('span', beside)}` : '') +
	(below ? ` ${worded('span', below)}` : '')
/** An own figure with its name and description inside, for those who do not see it. */
function describedSvg(svg: string, id: string, title: string, description: string): string {
	return svg.replace(/<svg\b/, `<svg role="img" aria-labelledby="${id}-title ${id}-desc"`).replace(
		/<svg\b[^>]*>/,
		// a function: in a text to put in, '$&' of a caption would stand for the whole element
		(start) =>
			start +
			worded('title', title, ` id="${id}-title"`) +
			worded('desc', description, ` id="${id}-desc"`),
	)
}
