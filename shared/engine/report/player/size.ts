/** Which size to look for: inside length, labels, width fittings. */
import type { Kept, SizingResult, Span } from '../../findings/assessment.ts'
import { bothSides } from '../../visit/sides.ts'
import type { Speak } from '../../words/speak.ts'
import { shown } from '../../words/words.ts'
import { heading, type Section, say } from '../base.ts'
import type { Block } from '../document.ts'
import { wholeInside } from '../page-one/inside.ts'
import { saysSizes } from '../page-one/shop.ts'
import { planOf } from '../plan-of.ts'
import { buyingWaits } from '../waits.ts'
import { type Labelled, labelsOf, labelWords, nextUp } from './size-labels.ts'

/** The finding that labels differ between makers, for its source. */
const makersFinding = 'sizing.check-inside.both'

/**
 * How to check a size, and how wide the feet are; the lengths and labels themselves stand on page
 * one where something is to be found. Says so where no size is known. No size to buy by while buying
 * waits, or where it was set aside.
 */
export const size: Section = (input, notes, t) => {
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
		...(saysSizes(input) ? [] : lengthAndLabels(inside, systems, t)),
		say(roomWords(inside, fitLengthMm, t)),
		say(`${t('player.howToCheck')}${makersDiffer ? ` ${notes.mark(makersDiffer.basis)}` : ''}`),
		...(fittings.length > 0 ? [say(t('player.fitting', { fittings: fittings.join('; ') }))] : []),
	]
}
function lengthAndLabels(inside: Span, systems: readonly Labelled[], t: Speak): Block[] {
	return [
		{ kind: 'text', tone: 'strong', text: t('player.lookFor', wholeInside(inside)) },
		{
			kind: 'table',
			caption: t('player.labels'),
			head: ['', ...systems.map(([name]) => name)],
			rows: [
				[t('player.nearest'), ...systems.map(([, system]) => labelWords(system, system.label, t))],
				[
					t('player.between'),
					...systems.map(([, system]) => labelWords(system, nextUp(system), t)),
				],
			],
			widths: ['*', ...systems.map(() => 78)],
		},
	]
}
/** The room that the length leaves is reckoned from it, so that the two never disagree. All mm. */
const roomWords = ({ min, target, max }: Span, fitLengthMm: number, t: Speak): string =>
	t('player.room', {
		target: shown(target),
		roomMin: shown(Math.max(0, min - fitLengthMm)),
		roomMax: shown(Math.max(0, max - fitLengthMm)),
	})
/** The width fittings of each side that has any. */
const fittingWords = (sizing: Kept<SizingResult>, t: Speak): string[] =>
	bothSides.flatMap((side) => {
		const { jis, us } = sizing[side].fitting
		if (!jis && !us) return []
		const fittings = [
			...(jis ? [t('player.fittingJis', { letter: jis })] : []),
			...(us ? [t('player.fittingUs', { letter: us })] : []),
		]
		return [t('player.fittingSide', { side, fittings: fittings.join(', ') })]
	})
