/** The insert at true size, or what is missing for its outline. */
import type { DecidedElement, DecidedInsert } from '../../insert/decided.ts'
import { insertSheets } from '../../insert/outline/outline.ts'
import { openProtocol } from '../../protocol/protocol.ts'
import { meanOf } from '../../visit/sides.ts'
import type { Side, Visit } from '../../visit/visit.ts'
import type { Speak } from '../../words/speak.ts'
import { capital, dateWords, sideWords } from '../../words/words.ts'
import { nameOf, say } from '../base.ts'
import type { Block } from '../document.ts'
import type { ReportInput } from '../inputs.ts'

/** A sheet for each outline that can be drawn, and what was not measured for the others. */
export function trueSize(input: ReportInput, { left, right }: DecidedInsert, t: Speak): Block[] {
	const { visit, protocol, clinic } = input
	const { sheets, missing } = insertSheets(
		{ left: insertOf(visit, 'left', left), right: insertOf(visit, 'right', right) },
		protocol ?? openProtocol(),
		clinic.paper,
	)
	return [
		...missing.map(({ side, measures }) =>
			say(t('order.noOutline', { side: sideWords[side], measures: measures.join(', ') })),
		),
		...sheets.map(
			({ sides, svg, widthMm, heightMm, alternative }): Block => ({
				kind: 'true-size',
				caption: captionOf(input, sides, t),
				alternative,
				svg,
				widthMm,
				heightMm,
			}),
		),
	]
}
/** Whose insert it is and of which side: a sheet is parted from its order. */
function captionOf(
	{ visit, recordNumber, decisions }: ReportInput,
	sides: readonly Side[],
	t: Speak,
): string {
	const { number } = decisions.order ?? {}
	return [
		t('order.trueSizeWhose', {
			name: nameOf(visit),
			born: dateWords(visit.player.birthDate),
			sides: capital(sides.map((side) => sideWords[side]).join(t('order.trueSizeAnd'))),
		}),
		recordNumber && t('order.trueSizeRecord', { record: recordNumber }),
		number && t('order.trueSizeOrder', { number }),
		t('order.trueSizeCaption', { date: dateWords(visit.visitDate) }),
	]
		.filter(Boolean)
		.join(' ')
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
