/** The raise under the shorter leg. */
import { conditionReasons } from '../conditions/query.ts'
import type { AnkleResult, InsertElement } from '../findings/assessment.ts'
import type { Because } from '../protocol/basis.ts'
import { legLengthSymptomatic } from '../visit/leg-length.ts'
import { otherSide, rounded } from '../visit/sides.ts'
import type { Visit } from '../visit/visit.ts'
import { type ParamsOf, state } from '../words/statement.ts'
import { legLengthRaiseMm } from './dose.ts'
import type { InsertFacts } from './facts.ts'
import { cautionsOf } from './said.ts'

/**
 * Undefined on the longer leg, for a difference within error of measurement, and without symptoms
 * unless an adult's difference is large. One that needs referral is named, without a figure.
 */
export function legLengthElement(
	visit: Visit,
	facts: InsertFacts,
	ankle: Pick<AnkleResult, 'heelRaiseMm'>,
): InsertElement | undefined {
	const { protocol, legLengthMm: differenceMm } = facts
	if (differenceMm === undefined || !facts.shorter) return undefined
	if (differenceMm < protocol.value('posture.legLengthRecordMm')) return undefined
	const large = differenceMm >= protocol.value('posture.legLengthConsiderMm')
	if (!legLengthSymptomatic(visit) && !(large && facts.adult)) return undefined
	const because: Because[] = [
		{ measure: 'legLengthDifferenceMm', side: facts.side, value: differenceMm, unit: 'mm' },
		...conditionReasons(visit, ['leg-length-difference'], { when: 'current' }),
	]
	if (differenceMm >= protocol.value('posture.legLengthReferMm'))
		return {
			element: 'leg-length-raise',
			where: 'both',
			...state('insert.leg-length-refer', { differenceMm }),
			because,
			basis: protocol.basis('leg-length difference', 'posture.legLengthReferMm'),
			...cautionsOf([state('insert.caution-no-raise')]),
		}
	const { valueMm, ...share } = raiseFor(differenceMm, facts, ankle)
	return {
		element: 'leg-length-raise',
		value: valueMm,
		unit: 'mm',
		range: [
			rounded(differenceMm * protocol.value('posture.legLengthShareMin'), 1),
			rounded(differenceMm * protocol.value('posture.legLengthShareMax'), 1),
		],
		where: 'both',
		...state('insert.leg-length-raise', { side: facts.side, differenceMm, ...share }),
		because,
		basis: protocol.basis('leg-length difference', 'insert.legLengthPercent'),
		...cautionsOf([
			state('insert.caution-blocks', { errorMm: protocol.value('posture.legLengthRecordMm') }),
			...(facts.adult ? [] : [state('insert.caution-growing-leg')]),
		]),
	}
}
/**
 * Where the ankle room already proposes unequal raises, the difference between them is this
 * correction: one figure on every page.
 */
function raiseFor(
	differenceMm: number,
	{ protocol, side }: InsertFacts,
	{ heelRaiseMm }: Pick<AnkleResult, 'heelRaiseMm'>,
): { valueMm: number } & Pick<ParamsOf<'insert.leg-length-raise'>, 'percent' | 'byRaisesMm'> {
	const byAnkleMm = heelRaiseMm ? rounded(heelRaiseMm[side] - heelRaiseMm[otherSide(side)], 1) : 0
	if (byAnkleMm > 0) return { valueMm: byAnkleMm, byRaisesMm: byAnkleMm }
	const percent = protocol.value('insert.legLengthPercent')
	return { valueMm: legLengthRaiseMm(differenceMm, percent), percent }
}
