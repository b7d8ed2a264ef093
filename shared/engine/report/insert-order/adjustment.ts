/** The insert that is worn, adjusted: what is done to it, where, and what it is made of now. */

import type { Adjustment, InsertWorn } from '../../visit/recorded/insert-worn.ts'
import { bothSides } from '../../visit/sides.ts'
import { adjustmentAmount, adjustmentText, insertPlaceNames } from '../../words/en/insert-adjust.ts'
import { elementText } from '../../words/en/insert-names.ts'
import type { Speak } from '../../words/speak.ts'
import { spokenTo } from '../../words/statement.ts'
import { capital, dateWords, sideWords } from '../../words/words.ts'
import { adjustmentsOf } from '../adjustments-of.ts'
import { heading, small } from '../base.ts'
import type { Block, BlockOf } from '../document.ts'
import type { ReportInput } from '../inputs.ts'

type Adjusted = NonNullable<ReturnType<typeof adjustmentsOf>>
/** What to mind with a line, where it stands as it was proposed. */
function mindOf(line: Adjustment, { proposed }: Adjusted): string {
	const own = proposed.find((one) => one.line.side === line.side && one.line.place === line.place)
	if (own?.line.act !== line.act || own.line.element !== line.element) return ''
	return own.against.flatMap((against) => spokenTo('laboratory', against) ?? []).join(' ')
}
const table = (adjusted: Adjusted, t: Speak): BlockOf<'table'> => ({
	kind: 'table',
	caption: t('adjust.caption'),
	head: [t('adjust.side'), t('adjust.place'), t('adjust.what'), t('adjust.much'), t('adjust.mind')],
	widths: [42, 82, '*', 62, '*'],
	rows: adjusted.lines.map((line) => {
		const { mm: _, deg: __, ...unsized } = line
		return [
			capital(sideWords[line.side]),
			capital(insertPlaceNames[line.place]),
			capital(adjustmentText(unsized)),
			adjustmentAmount(line) || t('adjust.judge'),
			mindOf(line, adjusted),
		]
	}),
})
/** What each side is made of, as it was ordered and adjusted before. */
function asItIs(worn: InsertWorn, t: Speak): Block[] {
	const rows = bothSides.flatMap((side) => {
		const elements = worn[side]?.elements ?? []
		if (elements.length === 0) return []
		const text = elements.map(({ element, value, unit }) =>
			elementText({
				element,
				...(value !== undefined && { value }),
				...(unit !== undefined && { unit }),
			}),
		)
		return [{ label: capital(sideWords[side]), text: `${capital(text.join('; '))}.` }]
	})
	return rows.length > 0 ? [heading(t('adjust.asItIs'), { level: 2 }), { kind: 'facts', rows }] : []
}
/** When it was ordered, and each time it was adjusted, with what was done. */
function history({ orderedOn, adjusted = [] }: InsertWorn, t: Speak): Block[] {
	const rows = [
		{ label: dateWords(orderedOn), text: t('adjust.ordered') },
		...adjusted.map(({ on, lines }) => ({
			label: dateWords(on),
			text: lines
				.map((line) =>
					t('adjust.done', {
						side: capital(sideWords[line.side]),
						place: insertPlaceNames[line.place],
						what: adjustmentText(line),
					}),
				)
				.join(' '),
		})),
	]
	return [heading(t('adjust.history'), { level: 2 }), { kind: 'facts', rows }]
}
/** @param input of a visit whose insert is adjusted */
export function adjustment(input: ReportInput, t: Speak): Block[] {
	const adjusted = adjustmentsOf(input)
	const worn = input.visit.insertWorn
	if (!adjusted || !worn) return []
	return [
		heading(t('adjust.heading', { date: dateWords(worn.orderedOn) })),
		table(adjusted, t),
		small(t('adjust.elseNone')),
		...asItIs(worn, t),
		...history(worn, t),
	]
}
