/** Which size to look for: inside length, labels, width fittings. */
import type { Kept, SizingResult, Span } from '../../findings/assessment.ts'
import { bothSides } from '../../visit/sides.ts'
import type { Speak } from '../../words/speak.ts'
import { shown, sideWords } from '../../words/words.ts'
import { heading, say } from '../base.ts'
import type { InnerBlock } from '../document.ts'
import type { ReportInput } from '../inputs.ts'
import { type Notes, withMarks } from '../notes.ts'
import { wholeInside } from '../page-one/inside.ts'
import { saysSizes, sizeRows } from '../page-one/shop.ts'
import { planOf } from '../plan-of.ts'
import { buyingWaits } from '../waits.ts'
import { labelsOf } from './size-labels.ts'

/** The finding that labels differ between makers, for its source. */
const makersFinding = 'sizing.check-inside.both'

/**
 * How to check a size, and how wide the feet are; the lengths and labels themselves stand on page
 * one where something is to be found. Says so where no size is known. No size to buy by while buying
 * waits, or where it was set aside.
 */
export function size(input: ReportInput, notes: Notes, t: Speak): InnerBlock[] {
	const { visit, assessment } = input
	const { sizing } = assessment
	const plan = planOf(input)
	if (buyingWaits(plan.gate)) return []
	const systems = labelsOf(visit, sizing)
	const { fitLengthMm } = sizing
	if (systems.length === 0 || fitLengthMm === undefined)
		return [heading(t('player.size')), say(t('player.noSize'))]
	const inside = plan.size.boots
	if (!inside)
		return sizing.usableForBuying === false
			? [heading(t('player.size')), say(t('player.sizeLater'))]
			: []
	const makersDiffer = sizing.findings.find(({ id }) => id === makersFinding)
	const fittings = fittingWords(sizing, t)
	return [
		heading(t('player.size')),
		...(saysSizes(input) ? [] : lengthAndLabels(inside, input, t)),
		say(
			withMarks(
				`${roomWords(inside, fitLengthMm, t)} ${t('player.howToCheck')}`,
				makersDiffer ? notes.mark(makersDiffer.basis) : '',
			),
		),
		...(fittings.length > 0 ? [say(t('player.fitting', { fittings: fittings.join('; ') }))] : []),
	]
}
function lengthAndLabels(inside: Span, input: ReportInput, t: Speak): InnerBlock[] {
	return [
		{ kind: 'text', tone: 'strong', text: t('player.lookFor', wholeInside(inside)) },
		{ kind: 'facts', rows: sizeRows(input, t) },
	]
}
/** The nearest whole millimetre within the span. */
const wholeTarget = ({ min, target, max }: Span): number =>
	Math.min(Math.max(Math.round(target), min), max)
/**
 * The room that the length leaves is reckoned from it, so that the two never disagree; rounded
 * inwards as the length is. All mm.
 */
const roomWords = (inside: Span, fitLengthMm: number, t: Speak): string => {
	const room = wholeInside({ min: inside.min - fitLengthMm, max: inside.max - fitLengthMm })
	return t('player.room', {
		target: shown(wholeTarget(inside)),
		roomMin: room.min,
		roomMax: room.max,
	})
}
/** The width fittings of each side that has any; alike on both sides, once. */
function fittingWords(sizing: Kept<SizingResult>, t: Speak): string[] {
	const said = bothSides.flatMap((side) => {
		const { jis, us } = sizing[side].fitting
		if (!jis && !us) return []
		const fittings = [
			...(jis ? [t('player.fittingJis', { letter: jis })] : []),
			...(us ? [t('player.fittingUs', { letter: us })] : []),
		]
		return [{ side, fittings: fittings.join(', ') }]
	})
	const [one, other] = said
	if (one && one.fittings === other?.fittings)
		return [t('player.fittingSide', { side: sideWords.both, fittings: one.fittings })]
	return said.map((words) => t('player.fittingSide', words))
}
