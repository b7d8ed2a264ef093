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
	type GatePart,
	type Hold,
	type Holdable,
	type KeptAssessment,
} from '../findings/assessment.ts'
import { stillBlocked } from '../insert/decided.ts'
import type { Decisions } from '../visit/decisions.ts'
import { perSide } from '../visit/sides.ts'
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

/** Open where nothing was found that waits. */
export function gateBefore(
	{ screening, visitDate }: Pick<KeptAssessment, 'screening' | 'visitDate'>,
	decisions: Pick<Decisions, 'screeningDone'>,
): Gate {
	const yes = screening.items.filter(({ state }) => state === 'yes')
	const urgent = yes.filter(({ action }) => isUrgent(action))
	const atRisk = yes.filter(({ code }) => reviewFirst.has(code))
	const holdsOf = (whats: readonly Holdable[], until: Hold['until']): Hold[] =>
		whats.map((what) => ({ what, rule, until, since: visitDate }))
	const stops = isUrgent(screening.action)
	const holds = [
		...(stops ? holdsOf(ofSport, 'outcome') : []),
		...(atRisk.length > 0 ? holdsOf(ofFootAtRisk, 'foot-protection-review') : []),
	]
	const blocked = stillBlocked({ screening }, decisions)
	return {
		person: partOf(
			holds,
			stops ? screening.action : 'proceed',
			[...urgent, ...atRisk].map(({ id }) => id),
		),
		...perSide((side) =>
			blocked.includes(side)
				? partOf(holdsOf(['insert'], 'outcome'), 'proceed', screening.blockedBy[side])
				: openGate[side],
		),
	}
}
const partOf = (holds: Hold[], action: Action, because: readonly string[]): GatePart => ({
	...openGate.person,
	state: holds.length > 0 ? 'held' : 'nothing-found',
	action,
	holds,
	because: [...new Set(because)],
})
