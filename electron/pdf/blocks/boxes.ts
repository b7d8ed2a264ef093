/** What must be seen first: the list of actions and the alert, on a wash of colour. */
import type { BlockOf } from '../../../shared/engine/report/document.ts'
import {
	bare,
	hair,
	ink,
	keepTogether,
	type Look,
	lengthOf,
	lined,
	type Node,
	quiet,
	words,
} from '../look.ts'

const wash = '#f3f1ea'
const alertColours = { edge: '#a3262a', wash: '#fbeeec', title: '#8d1f23' }

/** Print as large as this needs wider columns for day and persons, points. */
const leastForWide = 10.5
export const isShortActions = ({ items }: Pick<BlockOf<'actions'>, 'items'>): boolean =>
	lengthOf(items.map((item) => item.what)) < keepTogether
export const isShortAlert = ({ text }: Pick<BlockOf<'alert'>, 'text'>): boolean =>
	text.length < keepTogether
/** A table without lines beside it: number, what, when, who. A long one may break between rows. */
export const actions = ({ items }: BlockOf<'actions'>, look: Look): Node => ({
	unbreakable: isShortActions({ items }),
	is: 'items',
	margin: [0, 0, 0, 4],
	layout: lined((row, rows) => (row === 0 || row === rows ? 0 : 0.6)),
	table: {
		widths: [16, '*', ...(look.scale.body > leastForWide ? [98, 124] : [96, 92])],
		body: items.map((item, index) =>
			actionCells(item, index + 1, look).map((cell) => ({ ...cell, fillColor: wash })),
		),
	},
})
function actionCells(
	{ what, when, who }: BlockOf<'actions'>['items'][number],
	number: number,
	{ colour, scale }: Look,
): Node[] {
	const aside = { color: quiet, fontSize: scale.cell }
	return [
		{
			text: String(number),
			bold: true,
			fontSize: scale.body + 3,
			color: colour,
			lineHeight: 1,
		},
		words(what, { bold: true }),
		words(when, aside),
		words(who, aside),
	]
}
/** A wash with a strong edge; only a text that could fill a page may be torn. */
export const alert = ({ title, text, large }: BlockOf<'alert'>, { scale }: Look): Node => ({
	is: 'box',
	unbreakable: isShortAlert({ text }),
	margin: [0, 6, 0, 8],
	layout: {
		hLineWidth: () => 0,
		vLineWidth: (column: number) => (column === 0 ? 4 : 0),
		vLineColor: () => alertColours.edge,
		paddingLeft: () => 10,
		paddingRight: () => 8,
		paddingTop: () => 7,
		paddingBottom: () => 7,
	},
	table: {
		widths: ['*'],
		body: [
			[
				{
					fillColor: alertColours.wash,
					stack: [
						words(title, {
							is: 'heading',
							bold: true,
							fontSize: large ? scale.headline : scale.body + 1.5,
							...(large && { lineHeight: 1.05 }),
							color: alertColours.title,
							margin: [0, 0, 0, text === '' ? 0 : 3],
						}),
						...(text === '' ? [] : [words(text)]),
					],
				},
			],
		],
	},
})

/** How wide the names of facts are, against the size of ordinary print. */
const labelWide = 8.4
/** Whether they stay whole: a card always does, if a page can hold it. */
export const isShortFacts = ({ boxed, rows }: Pick<BlockOf<'facts'>, 'boxed' | 'rows'>): boolean =>
	lengthOf(rows.map(({ text }) => text)) < (boxed ? keepTogether : keepTogether / 2)
/** Facts under their names; boxed they stand in a frame as a card does. */
export function facts({ title, boxed, rows }: BlockOf<'facts'>, look: Look): Node {
	const { colour, scale } = look
	const short = isShortFacts({ boxed, rows })
	const head = words(title ?? '', {
		is: 'sub',
		bold: true,
		fontSize: scale.sub,
		color: colour,
		margin: [0, 0, 0, 2],
	})
	const named: Node = {
		is: 'facts',
		layout: bare(6, 1.6 * Math.max(1, scale.gap)),
		table: {
			dontBreakRows: true,
			widths: [labelWide * scale.body, '*'],
			body: rows.map(({ label, text }) => [
				words(label, { color: quiet, fontSize: scale.cell }),
				words(text, { color: ink, bold: boxed === true && rows[0]?.label === label }),
			]),
		},
	}
	const stack = [...(title === undefined ? [] : [head]), ...(rows.length > 0 ? [named] : [])]
	if (!boxed) return { unbreakable: short, stack, margin: [0, 2, 0, 5 * scale.gap] }
	return { unbreakable: short, margin: [0, 5, 0, 8 * scale.gap], ...card(stack, colour) }
}
const card = (stack: readonly Node[], colour: string): Node => ({
	is: 'box',
	layout: {
		hLineWidth: () => 1,
		vLineWidth: () => 1,
		hLineColor: () => colour,
		vLineColor: () => hair,
		paddingLeft: () => 10,
		paddingRight: () => 8,
		paddingTop: () => 6,
		paddingBottom: () => 5,
	},
	table: { widths: ['*'], body: [[{ stack }]] },
})
