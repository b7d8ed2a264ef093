/** The insert at true size, or what is missing for its outline. */
import type { DecidedElement, DecidedInsert } from '../../insert/decided.ts'
import { insertSheets } from '../../insert/outline/outline.ts'
import { openProtocol } from '../../protocol/protocol.ts'
import { meanOf } from '../../visit/sides.ts'
import type { Side, Visit } from '../../visit/visit.ts'
import type { Speak } from '../../words/speak.ts'
import { sideWords } from '../../words/words.ts'
import { nameOf, say } from '../base.ts'
import type { Block } from '../document.ts'
import type { ReportInput } from '../inputs.ts'

/** A sheet for each outline that can be drawn, and what was not measured for the others. */
export function trueSize(
	{ visit, protocol }: ReportInput,
	{ left, right }: DecidedInsert,
	t: Speak,
): Block[] {
	const { sheets, missing } = insertSheets(
		{ left: insertOf(visit, 'left', left), right: insertOf(visit, 'right', right) },
		protocol ?? openProtocol(),
	)
	return [
		...missing.map(({ side, measures }) =>
			say(t('order.noOutline', { side: sideWords[side], measures: measures.join(', ') })),
		),
		...sheets.map(
			({ svg, widthMm, heightMm, alternative }): Block => ({
				kind: 'true-size',
				caption: t('order.trueSizeCaption', { name: nameOf(visit) }),
				alternative,
				svg,
				widthMm,
				heightMm,
			}),
		),
	]
}
function insertOf(visit: Visit, side: Side, elements: readonly DecidedElement[]) {
	const foot = visit.feet?.[side]
	return {
		measures: {
			lengthMm: meanOf(foot?.heelToToeMm),
			ballLengthMm: meanOf(foot?.heelToBallMm),
			widthMm: meanOf(foot?.ballWidthMm),
			heelWidthMm: meanOf(foot?.heelWidthMm),
		},
		elements: elements.map(({ element }) => element),
	}
}
