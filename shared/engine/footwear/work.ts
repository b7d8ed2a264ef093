/**
 * Work on a pair, chosen by findings: what its rows look at, what a row is, and which rows apply.
 * The rows stand in modifications.ts and lacing.ts.
 */
import type {
	AnkleResult,
	FeatureWish,
	FootwearResult,
	FootwearWork,
	PostureResult,
} from '../findings/assessment.ts'
import type { Basis, Because } from '../protocol/basis.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { bothSides } from '../visit/sides.ts'
import { type Condition, type Feature, termWords } from '../visit/terms.ts'
import type { Side, Visit } from '../visit/visit.ts'

/** What the rows look at. */
export interface WorkFacts {
	wished(...features: Feature[]): Because[]
	unwished(...features: Feature[]): Because[]
	/** Current or recovering on this side, on both, or recorded without a side. */
	nowOnSideOrUnsided(side: Side, ...conditions: Condition[]): Because[]
	/** Current or recovering, whatever the side. */
	nowAnywhere(...conditions: Condition[]): Because[]
	/** The larger of the two sides' heel raises proposed, where there is one. */
	raise: { mm: number; because: Because[] } | undefined
	plantarflexedFirstRay(side: Side): Because[]
	posture: PostureResult
	visit: Visit
	protocol: Protocol
}
type Recorded = NonNullable<Visit['conditions']>[number]
/** Each measure told once, as it was first given. */
function oncePerMeasure(reasons: readonly Because[]): Because[] {
	const seen = new Set<string>()
	return reasons.filter(({ measure }) => {
		if (seen.has(measure)) return false
		seen.add(measure)
		return true
	})
}
const reasonsFor = (wishes: readonly FeatureWish[], features: readonly Feature[]): Because[] =>
	oncePerMeasure(
		wishes.filter((wish) => features.includes(wish.feature)).flatMap((wish) => wish.because),
	)
const touchesSideOrUnsided = (condition: Recorded, side: Side): boolean =>
	condition.side === side || condition.side === 'both' || condition.side === 'none'
/** A condition that is not past, as a reason. */
const asReason = ({ condition, side, status }: Recorded): Because => ({
	measure: `${termWords(condition)}${side === 'none' ? '' : ` (${side})`}`,
	value: status,
})
function largerRaise({ heelRaiseMm }: AnkleResult): WorkFacts['raise'] {
	const raiseMm = heelRaiseMm === undefined ? 0 : Math.max(heelRaiseMm.left, heelRaiseMm.right)
	if (!(raiseMm > 0)) return undefined
	return { mm: raiseMm, because: [{ measure: 'Heel raise proposed', value: raiseMm, unit: 'mm' }] }
}

/** @param target what the footwear rules seek and avoid */
export function workFacts(
	visit: Visit,
	ankle: AnkleResult,
	posture: PostureResult,
	target: FootwearResult['target'],
	protocol: Protocol,
): WorkFacts {
	const nowRecorded = (wanted: readonly Condition[]) =>
		(visit.conditions ?? []).filter(
			({ condition, status }) => wanted.includes(condition) && status !== 'past',
		)
	return {
		wished: (...features) => reasonsFor(target.seek, features),
		unwished: (...features) => reasonsFor(target.avoid, features),
		nowOnSideOrUnsided: (side, ...conditions) =>
			nowRecorded(conditions)
				.filter((condition) => touchesSideOrUnsided(condition, side))
				.map(asReason),
		nowAnywhere: (...conditions) => nowRecorded(conditions).map(asReason),
		raise: largerRaise(ankle),
		plantarflexedFirstRay: (side) =>
			posture[side].firstRay === 'plantarflexed'
				? [{ measure: `First ray, ${side}`, value: 'plantarflexed' }]
				: [],
		posture,
		visit,
		protocol,
	}
}
interface Row {
	id: string
	name: string
	says(facts: WorkFacts): string
	limits: string
	/** Conditions that speak against it, with the words to show. */
	against: readonly { conditions: readonly Condition[]; says: string }[]
	/** Common practice where it is left out. */
	basis?(facts: WorkFacts): Basis
}
/** For a pair as a whole. */
interface PairRow extends Row {
	sided: false
	when(facts: WorkFacts): Because[]
}
/** Side by side, where the finding is of a side. */
interface SideRow extends Row {
	sided: true
	when(facts: WorkFacts, side: Side): Because[]
}
/** A piece of work, and the reasons that call for it; none: it is not proposed. */
export type WorkRow = PairRow | SideRow

function madeOf(
	row: WorkRow,
	side: FootwearWork['side'],
	because: Because[],
	facts: WorkFacts,
): FootwearWork {
	const holds = (conditions: readonly Condition[]) =>
		side === 'both'
			? facts.nowAnywhere(...conditions)
			: facts.nowOnSideOrUnsided(side, ...conditions)
	return {
		id: row.id,
		name: row.name,
		side,
		says: row.says(facts),
		limits: row.limits,
		because,
		cautions: row.against
			.filter(({ conditions }) => holds(conditions).length > 0)
			.map(({ says }) => says),
		basis: row.basis?.(facts) ?? {
			rule: row.name.toLowerCase(),
			source: 'common practice, no source',
			strength: 'practice',
		},
	}
}
function appliedTo(row: WorkRow, facts: WorkFacts): FootwearWork[] {
	if (!row.sided) {
		const because = row.when(facts)
		return because.length > 0 ? [madeOf(row, 'both', because, facts)] : []
	}
	const found = bothSides
		.map((side) => ({ side, because: row.when(facts, side) }))
		.filter(({ because }) => because.length > 0)
	if (found.length < 2) return found.map(({ side, because }) => madeOf(row, side, because, facts))
	return [madeOf(row, 'both', oncePerMeasure(found.flatMap(({ because }) => because)), facts)]
}
/** The rows that apply, in their order; both sides are told as one where both hold. */
export const workOf = (rows: readonly WorkRow[], facts: WorkFacts): FootwearWork[] =>
	rows.flatMap((row) => appliedTo(row, facts))
