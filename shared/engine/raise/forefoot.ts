/** Forefeet and knees that a raised heel loads more. */
import { conditionReasons } from '../conditions/query.ts'
import type { PostureResult } from '../findings/assessment.ts'
import type { Because } from '../protocol/basis.ts'
import { bothSides } from '../visit/sides.ts'
import type { Condition } from '../visit/terms.ts'
import type { Visit } from '../visit/visit.ts'

const forefootConditions: readonly Condition[] = [
	'hallux-limitus',
	'first-mtp-osteoarthritis',
	'turf-toe',
	'sesamoid-pain',
	'interdigital-neuroma',
	'metatarsalgia',
	'plantar-plate-injury',
	'second-metatarsal-stress-fracture',
]
const kneeConditions: readonly Condition[] = ['patellofemoral-pain', 'patellar-tendinopathy']

/** Why the forefoot bears no more load; empty where nothing says so. */
export const forefootAtRisk = (visit: Visit, posture: PostureResult): Because[] => [
	...conditionReasons(visit, forefootConditions),
	...bothSides.flatMap((side): Because[] =>
		posture[side].firstMtp === 'structural-limit'
			? [{ measure: 'firstMtp', side, value: 'structural-limit' }]
			: [],
	),
]
/** Why the front of the knee is asked about. */
export const kneeAtRisk = (visit: Visit): Because[] => conditionReasons(visit, kneeConditions)
