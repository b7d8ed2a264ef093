/** What is recorded of a limb that is injured or must not be tested. */
import { type Finding, findingOf, reading } from '../findings/finding.ts'
import { type Because, commonPractice } from '../protocol/basis.ts'
import { meanOf } from '../visit/sides.ts'
import type { Side, Visit } from '../visit/visit.ts'
import { state } from '../words/statement.ts'

/** A finding where heel rises or the standing toe test were entered: nothing is made of them. */
export function recordedOnlyFindings({ posture }: Visit, side: Side): Finding[] {
	const heelRises = posture?.[side]?.heelRises
	const jackDeg = meanOf(posture?.[side]?.jackTestDeg)
	const because: Because[] = [
		...(heelRises === undefined ? [] : [{ measure: 'heelRises', side, value: heelRises }]),
		...(jackDeg === undefined ? [] : [reading('jackTestDeg', jackDeg, 'deg', side)]),
	]
	if (because.length === 0) return []
	return [
		findingOf(state('posture.recorded-only', { side }), {
			side,
			level: 'note',
			because,
			basis: { rule: 'an injured limb is not compared', ...commonPractice },
		}),
	]
}
