/** Where pages end, by how much stands before: a heading, its words and a signature at every height. */
import { describe, expect, it } from 'vitest'
import { renderPdf } from '../../electron/pdf/render.ts'
import type { Block, LwDocument } from '../../shared/engine/report/document.ts'
import { kinds } from '../../shared/engine/report/kinds.ts'
import { demoNames, inputOf, measured } from './kind-input.ts'
import { faultsOf } from './page-checks.ts'
import { markedPages } from './page-marks.ts'

const sentence =
	'A sentence of some length that stands for what a clinician says of feet and footwear. '
const text = (words: string): Block => ({ kind: 'text', text: words })
const signature: Block = {
	kind: 'signature',
	name: 'A. Example',
	registration: 'Registration X1',
	date: 'Signed 1 March 2027',
}
/** What stands under the heading. */
const under: Record<string, Block[]> = {
	'a sentence': [text(sentence)],
	'a long paragraph': [text(sentence.repeat(9))],
	'a list': [{ kind: 'list', items: ['one thing', 'another thing', 'a third thing'] }],
	'a sentence and a list': [
		text('What leads on to it.'),
		{ kind: 'list', items: ['one thing', 'another thing'] },
	],
	'a long table': [
		{
			kind: 'table',
			caption: 'What is in it',
			head: ['Name', 'Length, mm'],
			rows: Array.from({ length: 9 }, (_, at) => [`row ${at}`, `${200 + at}`]),
			align: ['left', 'right'],
		},
	],
	facts: [{ kind: 'facts', rows: [{ label: 'Name', text: 'what it holds' }] }],
	'actions to do': [
		{
			kind: 'actions',
			items: [{ what: 'Come back to be checked.', when: 'by 5 May 2027', who: 'you' }],
		},
	],
	'an alert': [{ kind: 'alert', title: 'Stop sport today', text: sentence }],
	'a smaller heading': [{ kind: 'heading', text: 'Smaller', level: 2 }, text(sentence)],
	'a figure': [
		{
			kind: 'figure',
			caption: 'What is drawn',
			alternative: 'A line.',
			svg: '<svg viewBox="0 0 90 60" width="90" height="60"><path d="M0 0H90" stroke="#000"/></svg>',
			widthPt: 90,
			heightPt: 60,
		},
	],
}
const { letterhead, ...frame } = kinds.guardian.compose(
	inputOf(measured(demoNames[0] ?? ''), 'guardian'),
)
const { logo: _logo, ...plain } = letterhead
const documentOf = (
	lines: number,
	after: readonly Block[],
	print: NonNullable<LwDocument['print']>,
): LwDocument => ({
	...frame,
	letterhead: plain,
	print,
	notes: [],
	blocks: [
		{ kind: 'heading', text: 'What comes before' },
		...Array.from({ length: lines }, (_, at) => text(`Line ${at}. ${sentence}`)),
		{ kind: 'heading', text: 'What must not stand alone' },
		...after,
		signature,
	],
})
describe('a heading goes with what it heads, and a signature is never alone', () => {
	// the heading comes to stand about the foot of the page
	const cases = Object.keys(under).flatMap((name, at) => [
		...(name === 'a long table' ? [['body', name, 9] as const] : []),
		['body', name, 18] as const,
		...(at % 3 === 0 ? [['compact', name, 23] as const] : []),
	])
	it.each(cases)('in a page of the kind %s, over %s', async (print, name, least) => {
		const faults = await Promise.all(
			Array.from({ length: 9 }, async (_, more) => {
				const document = documentOf(least + more, under[name] ?? [], print)
				const pages = await markedPages(await renderPdf(document))
				return faultsOf(pages, document, { edge: 53.5, leastPt: 6.3, mostPages: 3 }).map(
					(fault) => `${least + more} lines before: ${fault}`,
				)
			}),
		)
		expect(faults.flat()).toEqual([])
	})
})
