/** What must be seen first: the list of actions and the alert, on a wash of colour. */
import type { BlockOf } from '../../../shared/engine/report/document.ts'
import { keepTogether, type Look, lengthOf, lined, type Node, quiet, words } from '../look.ts'

const wash = '#f3f1ea'
const alertColours = { edge: '#a3262a', wash: '#fbeeec', title: '#8d1f23' }

/** A table without lines beside it: number, what, when, who. A long one may break between rows. */
export const actions = ({ items }: BlockOf<'actions'>, look: Look): Node => ({
	unbreakable: lengthOf(items.map((item) => item.what)) < keepTogether,
	margin: [0, 0, 0, 4],
	layout: lined((row, rows) => (row === 0 || row === rows ? 0 : 0.6)),
	table: {
		widths: [16, '*', 96, 92],
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
export const alert = ({ title, text }: BlockOf<'alert'>, { scale }: Look): Node => ({
	unbreakable: text.length < keepTogether,
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
							bold: true,
							fontSize: scale.body + 1.5,
							color: alertColours.title,
							margin: [0, 0, 0, 3],
						}),
						words(text),
					],
				},
			],
		],
	},
})
