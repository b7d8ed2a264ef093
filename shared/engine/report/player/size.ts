/** Which size to look for: inside length, labels, width fittings. */
import type { Kept, SizeLabel, Sizes, SizingResult, Span } from '../../findings/assessment.ts'
import { lastChildSize } from '../../sizing/sizes.ts'
import { bothSides } from '../../visit/sides.ts'
import { termWords } from '../../visit/terms.ts'
import type { Visit } from '../../visit/visit.ts'
import type { Speak } from '../../words/speak.ts'
import { shown, sizeShown } from '../../words/words.ts'
import { heading, type Section, say } from '../base.ts'
import type { Block } from '../document.ts'
import { wholeInside } from '../page-one/inside.ts'
import { saysSizes } from '../page-one/shop.ts'
import { planOf } from '../plan-of.ts'
import { buyingWaits } from '../waits.ts'

type System = Exclude<keyof Sizes, 'mondopoint'>
const halfSize = 0.5
/** After the last child size the scale begins again. */
const firstOfNextScale = 1
/** The finding that labels differ between makers, for its source. */
const makersFinding = 'sizing.check-inside.both'

/** A size system by its name, the player's label in it, and which it is. */
type Labelled = [name: string, label: SizeLabel, system: System]
/** The size systems of a player, in the order the reader looks for them. */
export function systemsOf(visit: Visit, { sizes }: Kept<SizingResult>): [System, SizeLabel][] {
	if (!sizes) return []
	const childSize = sizes.usChild.scale === 'child' || sizes.uk.scale === 'child'
	const adultSystem: System = visit.player.sex === 'female' ? 'usWomen' : 'usMen'
	const systems: System[] = ['eu', 'uk', childSize ? 'usChild' : adultSystem, 'jpCm']
	return systems.map((system) => [system, sizes[system]])
}
/** The same by the names of the systems. */
export const labelsOf = (visit: Visit, sizing: Kept<SizingResult>): Labelled[] =>
	systemsOf(visit, sizing).map(([system, label]) => [termWords(system), label, system])
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
/** A label as its scale writes it: a child's size says so. */
export const labelWords = ({ scale, label }: SizeLabel, value: number, t: Speak): string =>
	scale === 'child' && value >= label
		? t('player.child', { size: sizeShown(value) })
		: sizeShown(value)
/** The next label to try where the closest is too tight: the next half up, never the same again. */
export function nextUp({ label, fitting, scale }: SizeLabel): number {
	if (fitting !== label) return fitting
	return scale === 'child' && label >= lastChildSize ? firstOfNextScale : label + halfSize
}
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
