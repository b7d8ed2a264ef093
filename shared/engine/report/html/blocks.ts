/** Every kind of block in elements that carry its meaning. */
import {
	type Block,
	type BlockKind,
	type BlockOf,
	byKind,
	type ForEachKind,
	type Tone,
} from '../document.ts'
import { element, escaped, listed, worded } from './elements.ts'
import { figureHtml, trueSizeHtml } from './figures.ts'
import { chartHtml, tableHtml } from './tables.ts'

const toneClass: Record<Tone, string> = {
	body: '',
	small: ' class="small"',
	strong: ' class="strong"',
	lead: ' class="lead"',
	headline: ' class="headline"',
}
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
	table: tableHtml,
	chart: chartHtml,
	figure: figureHtml,
	'true-size': trueSizeHtml,
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
	const aside = [when, who].filter(Boolean).join(', ')
	return element('li', worded('strong', what) + (aside ? ` ${worded('span', aside)}` : ''))
}
