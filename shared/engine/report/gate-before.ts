/**
 * What danger holds back on the pages of a record that has no prescription: made from what its
 * screening found. A sign above a letter stopped sport and all that is bought or worn for it; a foot
 * at risk waited with new footwear.
 */
import { openGate } from '../facts/held.ts'
import {
	type Action,
	actions,
	type Gate,
	type Hold,
	type Holdable,
	type Kept,
	type KeptAssessment,
} from '../findings/assessment.ts'
import type { StatementCode } from '../words/statement.ts'

/** Whether an action asks for more than a letter: that comes before all else. */
export const isUrgent = (action: Action): boolean =>
	actions.indexOf(action) > actions.indexOf('letter')
const ofSport = ['sport', 'match', 'impact', 'purchase', 'shelf', 'season', 'raise'] as const
const ofFootAtRisk = ['purchase', 'shelf'] as const
/** Signs of a foot at risk that ask for a review before new footwear. */
const reviewFirst: ReadonlySet<string | undefined> = new Set<StatementCode>([
	'screening.reducedSensation',
	'screening.monofilament',
	'screening.condition-neuropathy',
	'screening.condition-previous-foot-ulcer',
	'screening.diabetic-foot-high',
])
/** The rule that such a hold is named by. */
const rule = 'record-before-the-plan'

/**
 * The gate of such a record, with what its plan holds on each limb. @param made by the plan: a limb
 * waited until it was recorded what was done about its signs
 */
export function gateBefore(
	{ screening, visitDate }: Pick<KeptAssessment, 'screening' | 'visitDate'>,
	made: Kept<Gate>,
): Kept<Gate> {
	const yes = screening.items.filter(({ state }) => state === 'yes')
	const urgent = yes.filter(({ action }) => isUrgent(action))
	const atRisk = yes.filter(({ code }) => reviewFirst.has(code))
	const holdsOf = (whats: readonly Holdable[], until: Hold['until']): Hold[] =>
		whats.map((what) => ({ what, rule, until, since: visitDate }))
	const stops = isUrgent(screening.action)
	const holds = [
		...(stops ? holdsOf(ofSport, 'outcome') : []),
		...(atRisk.length > 0 ? holdsOf(ofFootAtRisk, 'foot-protection-review') : []),
		...made.person.holds,
	]
	return {
		...made,
		person: {
			...openGate.person,
			state: holds.length > 0 ? 'held' : 'nothing-found',
			action: screening.action,
			holds,
			because: [...urgent, ...atRisk].map(({ id }) => id),
		},
	}
}
