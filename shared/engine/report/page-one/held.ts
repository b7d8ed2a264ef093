/** Where to go, with whom, what to wear and bring, why, and what comes next: each where it is known. */
import { isHeld } from '../../facts/held.ts'
import type { SettledPlan } from '../../prescription/settled.ts'
import { listed } from '../../words/en/format.ts'
import type { Speak } from '../../words/speak.ts'
import { state } from '../../words/statement.ts'
import { dateWords } from '../../words/words.ts'
import { say } from '../base.ts'
import type { BlockOf } from '../document.ts'
import type { ReportInput } from '../inputs.ts'
import { medicinesAsked } from '../medicines.ts'
import { pairName } from '../pair-names.ts'
import { planOf } from '../plan-of.ts'
import { type Reader, toldBy } from '../reader.ts'
import { type Danger, waits } from '../waits.ts'
import { concernOf, reasonsFor } from './danger.ts'
import { wrongPairs } from './head.ts'
import type { Part } from './part.ts'
import { companionOf } from './who.ts'

type Fact = BlockOf<'facts'>['rows'][number]
/** One fact, none where it is not known. */
const fact = (label: string, ...texts: readonly (string | undefined)[]): Fact[] => {
	const text = texts.filter(Boolean).join(' ')
	return text === '' ? [] : [{ label, text }]
}
/** What is asked for now, where the head did not say it. */
const whereTo = (reader: Reader, { action, stops }: Danger): string | undefined =>
	action === 'proceed' || !stops.includes('sport')
		? undefined
		: toldBy(reader, state('priority.act', { action }))
/** Nobody drives with a leg that bears no weight, or to an emergency. Common practice, no source. */
function along(reader: Reader, input: ReportInput, concern: Danger, t: Speak): string[] {
	if (!concern.isUrgent) return []
	const companion = companionOf(reader, input, t)
	if (companion !== undefined) return [companion]
	const isUnfit = concern.action === 'emergency' || concern.noWeight.length > 0
	return isUnfit ? [t('pageOne.doNotDrive')] : []
}
/** A loose shoe where a limb is spared (common practice, no source), and what is not worn. */
function toWear(input: ReportInput, { noWeight, stops }: Danger, t: Speak): string[] {
	const [side, other] = noWeight
	const loose = side && (other ? t('pageOne.looseBoth') : t('pageOne.loose', { side }))
	const wrong = stops.includes('sport') ? wrongPairs(input) : undefined
	const names = wrong && listed(wrong.pairs.map(({ id }) => pairName(id, input.visit, t)))
	return [
		...(loose ? [loose] : []),
		...(wrong && names
			? [t(wrong.way === 'mend' ? 'pageOne.mend' : 'pageOne.notThese', { pairs: names })]
			: []),
	]
}
/** Medicines are private: they are spoken of to whoever may be told of them. */
function toBring({ told }: Reader, { visit }: ReportInput, { isUrgent }: Danger, t: Speak) {
	if (!isUrgent) return []
	const takesAny = medicinesAsked(visit).some(({ taken }) => taken)
	return [
		t('pageOne.bringPage'),
		...(takesAny && told.includes('medication') ? [t('pageOne.bringMedicines')] : []),
	]
}
/** When the player is seen here again, and when sooner. */
const next = ({ review }: SettledPlan, t: Speak): string[] => [
	...(review ? [t('pageOne.comeBack', { date: dateWords(review.date) })] : []),
	t('player.reviewPain'),
]
/** Facts under the head; in the form of a held page, what else waits. */
export const held: Part = (input, reader, t, notes) => {
	const concern = concernOf(input)
	if (!concern) return []
	const plan = planOf(input)
	const { said } = reasonsFor(reader, input, concern, notes)
	const isStopped = waits(plan.gate, 'sport')
	const { referralDone, screeningDone = [] } = input.decisions
	const done = [referralDone, ...screeningDone.map((about) => about.done)].filter(Boolean)
	const isPlayer = reader.audience !== 'guardian'
	const rows = [
		...fact(t('pageOne.now'), whereTo(reader, concern)),
		...fact(t('pageOne.withYou'), ...along(reader, input, concern, t)),
		...fact(t('pageOne.wear'), ...toWear(input, concern, t)),
		...fact(t('pageOne.bring'), ...toBring(reader, input, concern, t)),
		...fact(
			t('common.why'),
			concern.since && t('player.stillOpen', { date: dateWords(concern.since) }),
			...new Set(said.map(({ says }) => says)),
		),
		...fact(t('pageOne.done'), ...done),
		...(isPlayer && isHeld(plan.gate, 'sport') ? fact(t('pageOne.next'), ...next(plan, t)) : []),
	]
	return [
		...(rows.length > 0 ? [{ kind: 'facts' as const, rows }] : []),
		...(isStopped && isPlayer ? [say(t('pageOne.waits'))] : []),
	]
}
