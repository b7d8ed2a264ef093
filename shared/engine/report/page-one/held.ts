/** Where to go, with whom, what to wear and bring, why, and what comes next: each where it is known. */
import { isHeld } from '../../facts/held.ts'
import { placeFor } from '../../prescription/emergency-department.ts'
import type { SettledPlan } from '../../prescription/settled.ts'
import { listed } from '../../words/en/format.ts'
import type { Speak } from '../../words/speak.ts'
import { state } from '../../words/statement.ts'
import { dateWords } from '../../words/words.ts'
import { say } from '../base.ts'
import type { BlockOf } from '../document.ts'
import { doneWords } from '../done-told.ts'
import type { ReportInput } from '../inputs.ts'
import { medicinesAsked } from '../medicines.ts'
import { pairName } from '../pair-names.ts'
import { planOf } from '../plan-of.ts'
import { isKeptFrom, type Reader, toldBy } from '../reader.ts'
import { type Danger, waits } from '../waits.ts'
import { concernOf, reasonsFor } from './danger.ts'
import { pairsSaid, type WrongPairs, wrongPairs } from './head.ts'
import type { Part } from './part.ts'
import { companionOf } from './who.ts'

type Fact = BlockOf<'facts'>['rows'][number]
/** One fact, none where it is not known. */
const fact = (label: string, ...texts: readonly (string | undefined)[]): Fact[] => {
	const text = texts.filter(Boolean).join(' ')
	return text === '' ? [] : [{ label, text }]
}
/** What is asked for now, where the head did not say it. */
function whereTo(reader: Reader, input: ReportInput, concern: Danger): string | undefined {
	const { action, stops, because } = concern
	if (action === 'proceed' || !stops.includes('sport')) return undefined
	const place = placeFor(action, input.assessment.screening.items, because)
	return toldBy(reader, state('priority.act', { action, ...place }))
}
/** Nobody drives with a leg that bears no weight, or to an emergency. Common practice, no source. */
function along(reader: Reader, input: ReportInput, concern: Danger, t: Speak): string[] {
	if (!concern.isUrgent) return []
	const companion = companionOf(reader, input, t)
	if (companion !== undefined) return [companion]
	const isUnfit = concern.action === 'emergency' || concern.noWeight.length > 0
	return isUnfit ? [t('pageOne.doNotDrive')] : []
}
/** A loose shoe where a limb is spared (common practice, no source), and what is not worn. */
function toWear(reader: Reader, input: ReportInput, concern: Danger, t: Speak): string[] {
	const { noWeight, stops } = concern
	const [side, other] = noWeight
	const loose = side && (other ? t('pageOne.looseBoth') : t('pageOne.loose', { side }))
	const isTold = stops.includes('sport') && !isKeptFrom(reader, input, 'footwear')
	const wrong = isTold ? wrongPairs(input) : undefined
	return [...(loose ? [loose] : []), ...(wrong ? [notWorn(wrong, reader, input, t)] : [])]
}
function notWorn(wrong: WrongPairs, reader: Reader, input: ReportInput, t: Speak): string {
	if (wrong.way === 'mend') return pairsSaid(wrong, reader, input, t)
	const names = listed(wrong.pairs.map(({ id }) => pairName(id, input.visit, t)))
	return t('pageOne.notThese', { pairs: names })
}
/** Medicines are private: they are spoken of to whoever may be told of them. */
function toBring(reader: Reader, { visit }: ReportInput, { isUrgent }: Danger, t: Speak) {
	const { told, audience } = reader
	if (!isUrgent) return []
	const takesAny = medicinesAsked(visit).some(({ taken }) => taken)
	return [
		t('pageOne.bringPage'),
		...(takesAny && told.includes('medication')
			? [t(audience === 'guardian' ? 'guardian.bringMedicines' : 'pageOne.bringMedicines')]
			: []),
	]
}
/** When the player is seen here again, and when sooner. */
const next = ({ audience }: Reader, { review }: SettledPlan, t: Speak): string[] => [
	...(review ? [t('pageOne.comeBack', { date: dateWords(review.date) })] : []),
	t(audience === 'guardian' ? 'guardian.soonerPain' : 'player.reviewPain'),
]
/** Facts under the head; in the form of a held page, what else waits. */
export const held: Part = (input, reader, t, notes) => {
	const concern = concernOf(input)
	if (!concern) return []
	const plan = planOf(input)
	const { said } = reasonsFor(reader, input, concern, notes)
	const isStopped = waits(plan.gate, 'sport')
	const rows = [
		...fact(t('pageOne.now'), whereTo(reader, input, concern)),
		...fact(t('pageOne.withYou'), ...along(reader, input, concern, t)),
		...fact(t('pageOne.wear'), ...toWear(reader, input, concern, t)),
		...fact(t('pageOne.bring'), ...toBring(reader, input, concern, t)),
		...fact(
			t('common.why'),
			concern.since && t('player.stillOpen', { date: dateWords(concern.since) }),
			...new Set(said.map(({ says }) => says)),
		),
		...fact(t('pageOne.done'), ...doneWords(reader.told, input)),
		...(isHeld(plan.gate, 'sport') ? fact(t('pageOne.next'), ...next(reader, plan, t)) : []),
	]
	return [
		...(rows.length > 0 ? [{ kind: 'facts' as const, rows }] : []),
		...(isStopped ? [say(t('pageOne.waits'))] : []),
	]
}
