/** What a page lets wait for what was found. */
import type { Action, KeptAssessment } from '../../findings/assessment.ts'
import type { StatementCode } from '../../words/statement.ts'

/** Whether screening asks for more than a letter: that comes before all else. */
export const isUrgent = (action: Action): boolean => action !== 'proceed' && action !== 'letter'
/** Signs of a foot at risk that ask for a review before new footwear. */
const reviewFirst: ReadonlySet<string | undefined> = new Set<StatementCode>([
	'screening.reducedSensation',
	'screening.monofilament',
	'screening.condition-neuropathy',
	'screening.condition-previous-foot-ulcer',
	'screening.diabetic-foot-high',
])
/** Whether new boots wait until what was found has been looked at. */
export const newBootsWait = ({ screening }: Pick<KeptAssessment, 'screening'>): boolean =>
	isUrgent(screening.action) ||
	screening.items.some(({ state, code }) => state === 'yes' && reviewFirst.has(code))
