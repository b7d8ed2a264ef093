/**
 * What the settled plan of a visit asks of its season: what the gate holds, and what is put into
 * the pairs. Nothing of it is judged here again; which pairs are worn stands in judged-pairs.ts.
 */
import { holdsOn } from '../../facts/held.ts'
import { isToBuy } from '../../facts/planned-pairs.ts'
import type { Hold, Holdable, Kept } from '../../findings/assessment.ts'
import { type Finding, findingOf } from '../../findings/finding.ts'
import type { SettledPlan } from '../../prescription/settled.ts'
import { type Because, commonPractice } from '../../protocol/basis.ts'
import { bothSides } from '../../visit/sides.ts'
import type { Pair, Session } from '../../visit/visit.ts'
import { type Statement, state } from '../../words/statement.ts'

/** What of the settled plan a season reads. */
export type SeasonPlan = Pick<SettledPlan, 'gate' | 'owned' | 'insert' | 'raise' | 'open'>
type Gated = Pick<SeasonPlan, 'gate'>

/** What is held, once for each end. */
const endsOf = (holds: readonly Kept<Hold>[]): { what: Holdable; until: Hold['until'] }[] => {
	const ends = new Map(holds.map(({ what, until }) => [`${what} ${until}`, { what, until }]))
	return [...ends.values()]
}
const holdsOf = ({ gate }: Gated, ...whats: readonly Holdable[]): Hold[] =>
	whats.flatMap((what) => holdsOn(gate, what))
/** The gate in a finding: its own findings stand under it. */
function gateFinding(
	statement: Statement,
	level: Finding['level'],
	holds: readonly Hold[],
): Finding & Statement {
	return findingOf(statement, {
		id: statement.code,
		side: 'none',
		level,
		because: [...new Set(holds.map(({ rule }) => rule))].map((rule) => ({
			measure: 'warningSign',
			value: rule.replace(/^screening\.(condition-)?/, ''),
		})),
		basis: { rule: 'what the gate holds is not planned', ...commonPractice },
	})
}
/**
 * A foot that waits for its protection review: each boot is looked at before it is worn, so no
 * rotation is made of them (NICE NG19, high risk: no boot without a review).
 */
const reviewFirst = (plan: Gated): Hold[] =>
	holdsOf(plan, 'purchase')
		.filter(({ until }) => until === 'foot-protection-review')
		.map((hold) => ({ ...hold, what: 'season' }))
/** The finding that nothing is planned, with what ends it; undefined where sport may be planned. */
export function heldSeason(plan: Gated): (Finding & Statement) | undefined {
	const holds = [...holdsOf(plan, 'season', 'sport'), ...reviewFirst(plan)]
	if (holds.length === 0) return undefined
	return gateFinding(state('season.held', { holds: endsOf(holds) }), 'stop', holds)
}
/** Whether matches wait while trainings may be planned. */
export const matchesHeld = (plan: Gated): boolean => holdsOf(plan, 'match').length > 0
/**
 * What waits of a season that is planned: its matches, and running and jumping in its trainings.
 * @param matches those ahead that are left out
 */
export function waitingFindings(
	plan: Gated,
	matches: readonly Pick<Session, 'date' | 'start' | 'surface'>[],
): Finding[] {
	const [match, impact] = [holdsOf(plan, 'match'), holdsOf(plan, 'impact')]
	const waiting = matches.map(
		({ date, start, surface }): Because => ({
			measure: 'matchHeld',
			at: start === undefined ? date : `${date}T${start}`,
			value: surface,
		}),
	)
	const said = (code: 'season.match-held' | 'season.impact-held', holds: readonly Hold[]) =>
		holds.length === 0 ? [] : [gateFinding(state(code, { holds: endsOf(holds) }), 'caution', holds)]
	const held = said('season.match-held', match).map((finding) => ({
		...finding,
		because: [...finding.because, ...waiting],
	}))
	return [...held, ...said('season.impact-held', impact)]
}
/** A pair still to be bought is raised as the plan raises its role. */
function heelOfPlanned(
	{ roles = [], heelToForefootOffsetMm: offsetMm }: Pick<Pair, 'roles' | 'heelToForefootOffsetMm'>,
	{ pairs }: SeasonPlan['raise'],
): number | undefined {
	const raised = pairs.find(({ pair }) => roles.some((role) => pair === `role.${role}`))
	if (!raised || offsetMm === undefined) return undefined
	return offsetMm + Math.min(...bothSides.map((side) => raised[side].addedUnderHeelMm))
}
/**
 * Heel above forefoot with what the plan puts inside, the lower foot, mm; undefined where the plan
 * has no figure for the pair.
 */
export function heelAboveForefootMm(
	pair: Pick<Pair, 'id' | 'plannedAs' | 'roles' | 'heelToForefootOffsetMm'>,
	{ raise }: Pick<SeasonPlan, 'raise'>,
): number | undefined {
	if (isToBuy(pair)) return heelOfPlanned(pair, raise)
	const raised = raise.pairs.find((one) => one.pair === pair.id)
	const feet = bothSides.flatMap((side) => raised?.[side].heelAboveForefootMm ?? [])
	return feet.length > 0 ? Math.min(...feet) : undefined
}
/** Whether an insert or a raise is begun: settled, and something is put inside. */
export function startsInsert({ insert, raise, open }: SeasonPlan): boolean {
	const inserts = bothSides.some((side) => insert[side].state === 'proposed')
	const raises = raise.pairs.some((pair) => bothSides.some((side) => pair[side].addMm > 0))
	return (inserts && !open.includes('insert')) || (raises && !open.includes('raise'))
}
