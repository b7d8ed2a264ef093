/** The heel raise: one figure for each pair and foot, how it is worn in, and when it ends. */
import type { Gate } from '../../findings/assessment.ts'
import type { SettledPlan } from '../../prescription/settled.ts'
import { bothSides } from '../../visit/sides.ts'
import type { Visit } from '../../visit/visit.ts'
import type { Speak } from '../../words/speak.ts'
import { capital } from '../../words/words.ts'
import { heading, type Section, say } from '../base.ts'
import type { InnerBlock } from '../document.ts'
import { pairName } from '../pair-names.ts'
import { isOpen, planOf } from '../plan-of.ts'
import { isRaised, raiseLines } from '../raise-lines.ts'
import { type Reader, readerOf, toldBy } from '../reader.ts'
import { waits } from '../waits.ts'
import { ladder, sideBySide } from './ladder.ts'
import { moreItems } from './more.ts'

/** What limits the raise, with the pairs that it limits. */
function limitLines({ raise }: SettledPlan, reader: Reader, visit: Visit, t: Speak): string[] {
	const told = raise.pairs.flatMap(({ pair, limits }) =>
		limits.flatMap((limit) => {
			const says = toldBy(reader, limit)
			return says === undefined ? [] : [{ pair, says }]
		}),
	)
	return [...Map.groupBy(told, ({ says }) => says)].map(([says, ofPairs]) => {
		const names = [...new Set(ofPairs.map(({ pair }) => pairName(pair, visit, t)))]
		return t('player.raiseLimit', { pairs: capital(names.join(', ')), says })
	})
}
/** Nothing is worn in where the player may not yet play or run. */
const isStopped = (gate: Gate, when: string): boolean =>
	(when === 'match' && waits(gate, 'match')) ||
	((when === 'match' || when === 'training') && waits(gate, 'impact'))
/** Where it is made: on the sole, by an insert, or under the liner alone. */
function placeOf({ raise }: Pick<SettledPlan, 'raise'>) {
	const makers = new Set(raise.pairs.flatMap((pair) => bothSides.map((side) => pair[side].madeBy)))
	if (makers.has('outsole')) return 'player.raiseOnSole'
	return makers.has('insert') ? 'player.raiseInside' : 'player.raiseUnder'
}
/** Steps by which it is put on; the others say when it comes off. */
const wearingIn: ReadonlySet<string> = new Set(['everyday', 'training', 'match'])
/** How it is put on, and when it comes off, in the words of the reader. */
export function raiseSteps(
	reader: Reader,
	{ raise, gate }: SettledPlan,
): [on: string[], off: string[]] {
	const steps = raise.steps
		.filter(({ when }) => !isStopped(gate, when))
		.flatMap((step) => {
			const says = toldBy(reader, step)
			return says === undefined ? [] : [{ isOn: wearingIn.has(step.when), says }]
		})
	const those = (isOn: boolean) =>
		steps.filter((step) => step.isOn === isOn).map(({ says }) => says)
	return [those(true), those(false)]
}
/** What it is and how it is worn in; beside it when it comes off. */
export const raise: Section = (input, notes, t) => {
	const plan = planOf(input)
	if (!isRaised(plan) || waits(plan.gate, 'raise')) return []
	const reader = readerOf('player', input)
	const [on, off] = raiseSteps(reader, plan)
	const items = [
		...raiseLines(plan, input.visit, t).map(capital),
		...limitLines(plan, reader, input.visit, t),
	]
	const left: InnerBlock[] = [
		...(isOpen(plan, 'raise') ? [say(t('player.raiseProposed'))] : []),
		{ kind: 'list', items },
		say(`${t(placeOf(plan))} ${t('player.raiseHow')}`),
		...ladder(t('player.raiseWearIn'), on),
	]
	const right = ladder(t('player.raiseOff'), [...off, ...moreItems('raise', input, notes)])
	return [heading(t('player.raise')), ...sideBySide(left, right)]
}
