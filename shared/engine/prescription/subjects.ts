/**
 * What each question is about: its proposal, whether there is one, and whether it is held. The
 * content is codes and figures, never words: an answer holds as long as the content does. What its
 * line says stands in lines.ts.
 */
import { isHeld } from '../facts/held.ts'
import type { Kept, OwnedPair, Prescription, RolePair } from '../findings/assessment.ts'
import { bothSides } from '../visit/sides.ts'
import { pairRoles } from '../visit/terms.ts'
import type { Stated } from '../words/statement.ts'
import type { SettledSize } from './settled-size.ts'

/** The parts of a plan that are asked about; as a record may hold them. */
export interface Planned
	extends Omit<Kept<Prescription>, 'questions' | 'priorities' | 'reviewAsked'> {
	size: SettledSize
}
/** What was recorded beside the plan. */
export interface Told {
	complaint: string
	/** Conditions that the player comes with, as codes. */
	complaints: readonly object[]
}
export interface SubjectOfQuestion {
	id: string
	/** There is something to settle even without a caution. */
	isProposed: boolean
	/** What it is about is held: it is not settled. */
	held: boolean
	content: unknown
}
type Pair = Kept<RolePair>
type About = (plan: Planned, told: Told) => SubjectOfQuestion

const gate: About = ({ gate: { person, left, right } }) => ({
	id: 'gate',
	isProposed: true,
	held: false,
	content: [person, left, right].map(({ because: _, ...part }) => part),
})
const complaint: About = ({ load }, { complaint: told, complaints }) => ({
	id: 'complaint',
	isProposed:
		told !== '' ||
		complaints.length > 0 ||
		(load !== undefined && Object.keys(load).length > 1) ||
		(load?.exercises.length ?? 0) > 0,
	held: false,
	content: { told, complaints, load },
})
const size: About = ({ size: { boots, trainers } }) => ({
	id: 'size',
	isProposed: boots !== undefined,
	held: false,
	content: { boots, trainers },
})
const raise: About = ({ gate: gates, raise: { aim, pairs, steps } }) => {
	const raised = pairs.filter(({ left, right }) => left.addMm > 0 || right.addMm > 0)
	return {
		id: 'raise',
		isProposed: aim.kind !== 'none' || raised.length > 0,
		held: isHeld(gates, 'raise'),
		content: {
			kind: aim.kind,
			pairs: pairs.map(({ limits, ...pair }) => ({ ...pair, limits: limits.map(codeOf) })),
			steps: steps.map(codeOf),
		},
	}
}
const codeOf = ({ code, params }: Stated) => ({ code, params })
/** Nothing to settle where what the player has serves, or nothing but its length is asked. */
const asksSomething = ({ seek, avoid, shelf, settled, means, ownedPair }: Pair): boolean =>
	!(means === 'keep' && ownedPair !== undefined) &&
	(means === 'buy' || seek.length + avoid.length + shelf.length + settled.length > 0)
const pairOf =
	(role: RolePair['role']): About =>
	({ gate: gates, pairs }) => {
		const ofRole = pairs.filter((pair) => pair.role === role)
		return {
			id: `pair.${role}`,
			isProposed: ofRole.some(asksSomething),
			held: ofRole.length === 0 && isHeld(gates, 'purchase'),
			content: ofRole.map(({ settled, reasons: _, beside: __, couldServe: ___, ...pair }) => ({
				...pair,
				settled: settled.map(codeOf),
			})),
		}
	}
const ownedContent = ({ id, verdict, by, work, code, params }: Kept<OwnedPair>) => ({
	id,
	verdict,
	by,
	work,
	code,
	params,
})
const owned: About = ({ owned: pairs }) => ({
	id: 'owned',
	isProposed: pairs.some(({ verdict }) => verdict !== 'keep'),
	held: false,
	content: pairs.map(ownedContent),
})
const insert: About = ({ insert: sides, insertKept: kept }) => {
	const states = bothSides.map((side) => sides[side].state)
	const isAdjusted = kept !== undefined && kept.lines.length > 0
	const isProposed = states.includes('proposed') || isAdjusted
	return {
		id: 'insert',
		isProposed,
		held: states.includes('held') && !isProposed,
		// the digest of what was proposed before an insert could be kept stays as it was
		content: kept ? { sides, orderedOn: kept.orderedOn, lines: kept.lines } : sides,
	}
}
const changes: About = (plan) => ({
	id: 'changes',
	isProposed: plan.changes.length > 0,
	held: false,
	content: plan.changes,
})
const lacing: About = (plan) => ({
	id: 'lacing',
	isProposed: plan.lacing.length > 0,
	held: false,
	content: plan.lacing,
})
const review: About = ({ review: proposed }) => ({
	id: 'review',
	isProposed: proposed !== undefined,
	held: false,
	content: proposed?.date ?? '',
})
/** In the order in which a clinician thinks. */
const subjects: readonly (readonly [id: string, about: About])[] = [
	['gate', gate],
	['complaint', complaint],
	['size', size],
	['raise', raise],
	...pairRoles.map((role) => [`pair.${role}`, pairOf(role)] as const),
	['owned', owned],
	['insert', insert],
	['changes', changes],
	['lacing', lacing],
	['review', review],
]
export const subjectsOf = (plan: Planned, told: Told): SubjectOfQuestion[] =>
	subjects.map(([, about]) => about(plan, told))
/** One subject of a plan; what was told is no part of it. */
export const subjectOf = (id: string, plan: Planned): SubjectOfQuestion | undefined =>
	subjects.find(([known]) => known === id)?.[1](plan, { complaint: '', complaints: [] })
/** Lacing read under changes: where there would be more questions than the clinic allows. */
export const changesWithLacing = (plan: Planned): SubjectOfQuestion => ({
	id: 'changes',
	isProposed: plan.changes.length + plan.lacing.length > 0,
	held: false,
	content: { changes: plan.changes, lacing: plan.lacing },
})
