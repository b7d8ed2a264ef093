/** Players for whom the equations do not hold: a treatment or disorder that changes growth. */
import type { Finding } from '../findings/finding.ts'
import type { Basis, Because } from '../protocol/basis.ts'
import type { Visit } from '../visit/visit.ts'
import { state } from '../words/statement.ts'
import { growthFinding } from './says.ts'

const limitsOfUse: Basis = {
	rule: 'growth treatment',
	source: 'limits stated with the equations; common practice',
	strength: 'expert',
}
const reasonsOf = ({ body, screening }: Visit): Because[] => [
	...(body?.growthOrHormoneTreatment === true
		? [{ measure: 'growthOrHormoneTreatment', value: 'yes' }]
		: []),
	...(screening?.corticosteroidLongTerm === true
		? [{ measure: 'corticosteroidLongTerm', value: 'yes' }]
		: []),
]
/** Whether the player is treated so, or takes a corticosteroid for long. */
export const isTreated = (visit: Visit): boolean => reasonsOf(visit).length > 0
/** Says that no estimate is made of such a player, and what it rests on. */
export function treatmentFindings(visit: Visit): Finding[] {
	const because = reasonsOf(visit)
	return because.length === 0
		? []
		: [growthFinding(state('growth.treatment'), 'caution', because, limitsOfUse)]
}
