/** The raise under the shorter leg. */
import type { AnkleResult, InsertElement } from '../findings/assessment.ts'
import type { Because } from '../protocol/basis.ts'
import { legLengthSymptomatic } from '../visit/leg-length.ts'
import { otherSide, rounded } from '../visit/sides.ts'
import type { Visit } from '../visit/visit.ts'
import { legLengthRaiseMm } from './dose.ts'
import type { InsertFacts } from './facts.ts'

/**
 * Undefined on the longer leg, for a difference within error of measurement, and without symptoms
 * unless an adult's difference is large. One that needs referral is named, without a figure.
 */
export function legLengthElement(
	visit: Visit,
	facts: InsertFacts,
	ankle: AnkleResult,
): InsertElement | undefined {
	const { protocol, legLengthMm: differenceMm } = facts
	if (differenceMm === undefined || !facts.shorter) return undefined
	if (differenceMm < protocol.value('posture.legLengthRecordMm')) return undefined
	const large = differenceMm >= protocol.value('posture.legLengthConsiderMm')
	if (!legLengthSymptomatic(visit) && !(large && facts.adult)) return undefined
	const because: Because[] = [
		{ measure: 'Shorter leg', value: differenceMm, unit: 'mm' },
		...symptomReasons(visit),
	]
	if (differenceMm >= protocol.value('posture.legLengthReferMm'))
		return {
			element: 'leg-length-raise',
			where: 'both',
			says: `A difference of ${differenceMm} mm is for referral before any raise.`,
			because,
			basis: protocol.basis('leg-length difference', 'posture.legLengthReferMm'),
			cautions: ['No raise is proposed.'],
		}
	const { valueMm, words } = raiseFor(differenceMm, facts, ankle)
	return {
		element: 'leg-length-raise',
		value: valueMm,
		unit: 'mm',
		range: [
			rounded(differenceMm * protocol.value('posture.legLengthShareMin'), 1),
			rounded(differenceMm * protocol.value('posture.legLengthShareMax'), 1),
		],
		where: 'both',
		says:
			`Raise under the shorter ${facts.side} leg, ${words}: full at the heel, half at the ` +
			'ball.',
		because,
		basis: protocol.basis('leg-length difference', 'insert.legLengthPercent'),
		cautions: [
			'Measure again with blocks before it is made; a clinical reading can be wrong by more ' +
				'than 5 mm.',
			...(facts.adult ? [] : ['Growing player: measure again each season.']),
		],
	}
}
/** The condition as recorded: current only, whatever the side. */
const symptomReasons = (visit: Visit): Because[] =>
	(visit.conditions ?? [])
		.filter(
			({ condition, status }) => condition === 'leg-length-difference' && status === 'current',
		)
		.map(({ status, painWorst }) => ({
			measure: 'Leg-length difference',
			value: painWorst === undefined ? status : `${status}, worst pain ${painWorst} of 10`,
		}))
/**
 * Where the ankle room already proposes unequal raises, the difference between them is this
 * correction: one figure on every page.
 */
function raiseFor(
	differenceMm: number,
	{ protocol, side }: InsertFacts,
	{ heelRaiseMm }: AnkleResult,
): { valueMm: number; words: string } {
	const byAnkleMm = heelRaiseMm ? rounded(heelRaiseMm[side] - heelRaiseMm[otherSide(side)], 1) : 0
	if (byAnkleMm > 0)
		return {
			valueMm: byAnkleMm,
			words:
				`${rounded(byAnkleMm, 1)} mm of the ${differenceMm} mm difference, as proposed with the ` +
				'heel raise',
		}
	const percent = protocol.value('insert.legLengthPercent')
	return {
		valueMm: legLengthRaiseMm(differenceMm, percent),
		words: `${percent} % of the ${differenceMm} mm difference to start with`,
	}
}
