/** Which parts of the plan stay as they were at the visit before, and which are others now. */
import type { Gate, Kept, KeptAssessment } from '../findings/assessment.ts'
import type { Answer } from '../visit/answers.ts'
import type { Decisions } from '../visit/decisions.ts'
import type { Since, Visit } from '../visit/visit.ts'
import { troublesTold } from './told.ts'

type Before = NonNullable<Since['plan']>[number]
export interface PlanSince {
	/** Questions by their ids, in the order in which they are asked. */
	stays: string[]
	/** Others now, or looked at anew. */
	changed: string[]
	/** Part of the plan then, and no more. */
	gone: string[]
}
/** The same proposal taken again, or left as it was. */
const isSame = (answer: Answer | undefined, before: Before | undefined): boolean =>
	answer?.choice === 'unchanged' ||
	(answer?.choice === 'as-proposed' && before?.choice === 'as-proposed' && before.of === answer.of)
/** Trouble with what is worn speaks against whatever goes into or onto a shoe. */
const isOfShoe = (id: string): boolean => id !== 'complaint' && id !== 'review'
const isAnythingHeld = ({ person, left, right }: Kept<Gate>): boolean =>
	[person, left, right].some(({ holds }) => holds.length > 0)
/** The gate is said by itself, and what is held is no part of the plan. */
export function planSince(
	visit: Pick<Visit, 'since'>,
	{ prescription }: KeptAssessment,
	{ answers = [] }: Decisions,
): PlanSince {
	const before = visit.since?.plan ?? []
	const isTroubled = troublesTold(visit).length > 0
	const asked = (prescription?.questions ?? []).filter(({ id, held }) => id !== 'gate' && !held)
	const stays = asked
		.map(({ id }) => id)
		.filter((id) => !(isTroubled && isOfShoe(id)))
		.filter((id) =>
			isSame(
				answers.findLast(({ question }) => question === id),
				before.find(({ question }) => question === id),
			),
		)
	const all = new Set((prescription?.questions ?? []).map(({ id }) => id))
	return {
		stays,
		changed: asked.map(({ id }) => id).filter((id) => !stays.includes(id)),
		// what waits is not asked, and is still part of the plan
		gone: (prescription && isAnythingHeld(prescription.gate) ? [] : before)
			.filter(({ question, choice }) => choice !== 'set-aside' && !all.has(question))
			.map(({ question }) => question),
	}
}
