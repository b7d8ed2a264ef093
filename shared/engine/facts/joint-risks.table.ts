/** What puts a joint at risk; past conditions count where the history stays relevant. */
import type { JointName } from '../visit/shelf.ts'
import type { BoneSite, Condition } from '../visit/terms.ts'

export const jointNames: readonly JointName[] = ['first metatarsal head', 'fifth metatarsal head', 'heel centre']
export interface JointRiskRow {
	joints: readonly JointName[]
	conditions: readonly Condition[]
	when: 'now' | 'ever'
}
export const riskRows: readonly JointRiskRow[] = [
	{ joints: ['first metatarsal head'], conditions: ['sesamoid-pain', 'first-mtp-osteoarthritis', 'hallux-limitus', 'turf-toe'], when: 'now' },
	{ joints: ['fifth metatarsal head'], conditions: ['fifth-metatarsal-stress-fracture'], when: 'ever' },
	{ joints: ['fifth metatarsal head'], conditions: ['bunionette', 'fifth-metatarsal-apophysitis'], when: 'now' },
	{ joints: ['heel centre'], conditions: ['plantar-heel-pain', 'calcaneal-apophysitis'], when: 'now' },
	{ joints: jointNames, conditions: ['previous-foot-ulcer', 'neuropathy'], when: 'ever' },
]
/** A bone at which a stress injury is suspected by the answers, and the joint that lies at it. */
export const siteJoints: readonly { site: BoneSite; joint: JointName }[] = [
	{ site: 'hallux-sesamoid', joint: 'first metatarsal head' },
	{ site: 'fifth-metatarsal-proximal', joint: 'fifth metatarsal head' },
	{ site: 'calcaneus', joint: 'heel centre' },
]
