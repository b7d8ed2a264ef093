/**
 * Work on a pair, chosen by findings: what its rows look at, what a row is, and which rows apply.
 * The rows stand in modifications.ts and lacing.ts.
 */

import { conditionReasons, hasCondition } from '../conditions/query.ts'
import { isHeld, openGate } from '../facts/held.ts'
import type {
	FeatureWish,
	FootwearResult,
	FootwearWork,
	Gate,
	Holdable,
	PostureResult,
	RaiseInFoot,
	RaiseKind,
	RaiseResult,
} from '../findings/assessment.ts'
import { reading } from '../findings/finding.ts'
import type { Basis, Because } from '../protocol/basis.ts'
import { commonPractice } from '../protocol/basis.ts'
import type { Protocol } from '../protocol/protocol.ts'
import type { SettlingRank } from '../protocol/settling.table.ts'
import { bothSides, perSide } from '../visit/sides.ts'
import { type Condition, type Feature, type PairRole, pairRoles } from '../visit/terms.ts'
import type { Pair, Side, Visit } from '../visit/visit.ts'
import { type Statement, type StatementCode, state } from '../words/statement.ts'
import type { FootwearContext } from './facts.ts'
import { once } from './once.ts'
import { settle, standsBefore } from './settle.ts'

/** What the rows look at. */
export interface WorkFacts {
	target: FootwearResult['target']
	/** What is raised under the heel in which pair, where wedges or soles make it. */
	raise: { pairs: RaisedPair[]; because: Because[]; kind: RaiseKind } | undefined
	gate: Gate
	posture: PostureResult
	visit: Visit
	protocol: Protocol
}
/** Heel raise of a pair, mm a side, with what makes it. */
interface RaisedPair {
	/** An owned pair by its name, or the role of one to be chosen. */
	pair?: string
	role?: PairRole
	leftMm: number
	rightMm: number
	leftBy: RaiseInFoot['madeBy']
	rightBy: RaiseInFoot['madeBy']
}
/** `role.match` is the match pair to be chosen; any other id is one of the pairs owned. */
function namedPair(id: string, owned: readonly Pair[]): Pick<RaisedPair, 'pair' | 'role'> {
	const role = pairRoles.find((one) => id === `role.${one}`)
	return role ? { role } : { pair: owned.find((pair) => pair.id === id)?.name ?? id }
}
/** Made in or on the shoe, and not by an insert. */
const isWork = (by: RaiseInFoot['madeBy']): boolean => by === 'wedge' || by === 'outsole'
/**
 * The raise of the plan in the pairs that need work for it, as it is: what evens the legs is never
 * made the same on both sides.
 */
function raisedPairs({ footwear = [] }: Visit, raise: RaiseResult | undefined): WorkFacts['raise'] {
	const pairs = (raise?.pairs ?? [])
		.map(
			({ pair, left, right }): RaisedPair => ({
				...namedPair(pair, footwear),
				leftMm: left.addMm,
				rightMm: right.addMm,
				leftBy: left.madeBy,
				rightBy: right.madeBy,
			}),
		)
		.filter(({ leftBy, rightBy }) => isWork(leftBy) || isWork(rightBy))
	if (raise === undefined || pairs.length === 0) return undefined
	const most = perSide((side) => Math.max(...pairs.map((one) => one[`${side}Mm`])))
	return {
		pairs,
		kind: raise.aim.kind,
		because: [
			...raise.aim.because,
			...bothSides
				.filter((side) => most[side] > 0)
				.map((side) => reading('heelRaiseProposedMm', most[side], 'mm', side)),
		],
	}
}
/** @param target what the footwear rules seek and avoid: what gave way calls for no work */
export function workFacts(
	visit: Visit,
	{ posture, gate = openGate, raise }: FootwearContext,
	target: FootwearResult['target'],
	protocol: Protocol,
): WorkFacts {
	const { seek, avoid } = settle(target.seek, target.avoid)
	return {
		target: { seek, avoid },
		raise: raisedPairs(visit, raise),
		gate,
		posture,
		visit,
		protocol,
	}
}

/** What speaks against a piece of work, or asks for care with it. */
export interface Caution {
	/** Any of these now; on the side of the work where it is of one. */
	conditions: readonly Condition[]
	code: Extract<StatementCode, `work.caution-${string}`>
}
/** A sentence of a row by itself, or with the numbers of the protocol and the facts. */
type Saying = (facts: WorkFacts, side: FootwearWork['side']) => Statement
export interface WorkRow {
	id: string
	/** Side by side, where what calls for it is of a side; else for a pair as a whole. */
	sided: boolean
	/** Any of these now: current or recovering. */
	conditions?: readonly Condition[]
	/** Any of these features sought, or to be avoided, by the footwear rules. */
	sought?: readonly Feature[]
	avoided?: readonly Feature[]
	/** Sought for what stands before this in the order of settling; else a pair to come has it. */
	soughtBefore?: SettlingRank
	/** What was measured that calls for it. @param side of a row that is told side by side */
	found?(facts: WorkFacts, side: Side): Because[]
	/** It does what these do, and more: they are not offered beside it. */
	insteadOf?: readonly string[]
	/** Only where each of these is sought as well. */
	onlyWithSought?: readonly Feature[]
	/** Where the sentence or its limits tell more than their code. */
	says?: Saying
	limits?: Saying
	against: readonly Caution[]
	/** Any of these now: it is not offered at all. */
	never?: readonly Condition[]
	/** What of the gate holds it back; of a limb where the work is of one side. */
	heldBy?: readonly Holdable[]
	/** Common practice where it is left out. */
	basis?(facts: WorkFacts): Basis
}
const wishReasons = (wishes: readonly FeatureWish[], features: readonly Feature[]): Because[] =>
	wishes.filter((wish) => features.includes(wish.feature)).flatMap((wish) => wish.because)
/** Held by the gate, or never to be done to a foot with this. */
const isHeldBack = (
	{ never = [], heldBy = [] }: WorkRow,
	{ gate, visit }: WorkFacts,
	side: Side | undefined,
): boolean =>
	isHeld(gate, 'sport') ||
	heldBy.some((what) => isHeld(gate, what, side)) ||
	hasCondition(visit, never, side === undefined ? {} : { side })
/** The reasons that call for a piece of work; none: it is not proposed. @param side none: of a pair */
function reasonsOf(row: WorkRow, facts: WorkFacts, side: Side | undefined): Because[] {
	const { seek, avoid } = facts.target
	const { sought = [], avoided = [], onlyWithSought = [], conditions = [], soughtBefore } = row
	const wanted = soughtBefore ? seek.filter((wish) => standsBefore(wish, soughtBefore)) : seek
	const isSought = (feature: Feature) => seek.some((wish) => wish.feature === feature)
	if (!onlyWithSought.every(isSought)) return []
	if (isHeldBack(row, facts, side)) return []
	return once([
		...(side === undefined
			? bothSides.flatMap((each) => row.found?.(facts, each) ?? [])
			: (row.found?.(facts, side) ?? [])),
		...wishReasons(wanted, sought),
		...wishReasons(avoid, avoided),
		...conditionReasons(facts.visit, conditions, side === undefined ? {} : { side }),
	])
}
/** A row without sentences of its own fails the test of the rows. */
type PlainCode = Extract<StatementCode, 'work.window' | 'work.window.name' | 'work.window.limits'>
const plain = (code: string): Statement => state(code as PlainCode)
function madeOf(
	row: WorkRow,
	side: FootwearWork['side'],
	because: Because[],
	facts: WorkFacts,
): FootwearWork {
	const code = `work.${row.id}`
	const name = plain(`${code}.name`)
	const limits = row.limits?.(facts, side) ?? plain(`${code}.limits`)
	const cautions = row.against
		.filter(({ conditions }) =>
			hasCondition(facts.visit, conditions, side === 'both' ? {} : { side }),
		)
		.map((caution) => state(caution.code))
	return {
		id: row.id,
		name: name.says,
		side,
		...(row.says?.(facts, side) ?? plain(code)),
		limits: limits.says,
		because,
		cautions: cautions.map(({ says }) => says),
		stated: { name, limits, cautions },
		basis: row.basis?.(facts) ?? {
			rule: name.says.toLowerCase(),
			...commonPractice,
		},
	}
}
function appliedTo(row: WorkRow, facts: WorkFacts): FootwearWork[] {
	if (!row.sided) {
		const because = reasonsOf(row, facts, undefined)
		return because.length > 0 ? [madeOf(row, 'both', because, facts)] : []
	}
	const found = bothSides
		.map((side) => ({ side, because: reasonsOf(row, facts, side) }))
		.filter(({ because }) => because.length > 0)
	if (found.length < 2) return found.map(({ side, because }) => madeOf(row, side, because, facts))
	return [madeOf(row, 'both', once(found.flatMap(({ because }) => because)), facts)]
}
/** The rows that apply, in their order; both sides are told as one where both hold. */
export function workOf(rows: readonly WorkRow[], facts: WorkFacts): FootwearWork[] {
	const work = rows.flatMap((row) => appliedTo(row, facts))
	const spared = rows
		.filter(({ id }) => work.some((one) => one.id === id))
		.flatMap(({ insteadOf = [] }) => insteadOf)
	return work.filter(({ id }) => !spared.includes(id))
}
