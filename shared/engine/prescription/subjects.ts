/**
 * What each question is about: its proposal, whether there is one, and whether it is held. The
 * content is codes and figures, never words: an answer holds as long as the content does.
 */
import { isHeld } from '../facts/held.ts'
import type { OwnedPair, Prescription, RolePair } from '../findings/assessment.ts'
import type { Action } from '../findings/screening-result.ts'
import { bothSides } from '../visit/sides.ts'
import { pairRoles } from '../visit/terms.ts'
import { type Statement, state } from '../words/statement.ts'
import { mostUrgent } from './urgency.ts'

/** The parts of a plan that are asked about, and what was recorded beside them. */
export interface Planned extends Omit<Prescription, 'questions' | 'priorities'> {
	size: {
		boots?: Prescription['pairs'][number]['insideLengthMm']
		trainers?: RolePair['insideLengthMm']
	}
	complaint: string
	returnSteps: number
	/** The name of an owned pair. */
	nameOf(id: string): string
}
export interface SubjectOfQuestion {
	id: string
	/** There is something to settle even without a caution. */
	isProposed: boolean
	/** What it is about is held: it is not settled. */
	held: boolean
	content: unknown
	line: Statement
}
type About = (plan: Planned) => SubjectOfQuestion

const gate: About = ({ gate: { person, left, right } }) => {
	const parts = [person, left, right]
	const states = parts.map((part) => part.state)
	const state_ = states.includes('held')
		? 'held'
		: states.includes('not-established')
			? 'not-established'
			: 'nothing-found'
	const action: Action = mostUrgent(parts.map((part) => part.action))
	const unasked = new Set(parts.flatMap((part) => part.unasked))
	return {
		id: 'gate',
		isProposed: true,
		held: false,
		content: parts.map(({ because: _, ...part }) => part),
		line: state('question.gate', { state: state_, action, unasked: unasked.size }),
	}
}
const complaint: About = ({ complaint: told, returnSteps }) => ({
	id: 'complaint',
	isProposed: told !== '' || returnSteps > 0,
	held: false,
	content: { told, returnSteps },
	line: state('question.complaint', { complaint: told, steps: returnSteps }),
})
const size: About = ({ size: { boots, trainers } }) => ({
	id: 'size',
	isProposed: boots !== undefined,
	held: false,
	content: { boots, trainers },
	line: state('question.size', { insideLengthMm: boots ?? false }),
})
const raise: About = ({ gate: gates, raise: { aim, pairs, steps } }) => {
	const highest = (side: 'left' | 'right') => Math.max(0, ...pairs.map((pair) => pair[side].addMm))
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
		line: state('question.raise', {
			leftMm: highest('left'),
			rightMm: highest('right'),
			pairs: raised.length,
			wanted: aim.kind !== 'none',
		}),
	}
}
const codeOf = ({ code, params }: Pick<Statement, 'code' | 'params'>) => ({ code, params })
/** Nothing to settle where what the player has serves, or nothing but its length is asked. */
const asksSomething = ({ seek, avoid, shelf, settled, means, ownedPair }: RolePair): boolean =>
	!(means === 'keep' && ownedPair !== undefined) &&
	(means === 'buy' || seek.length + avoid.length + shelf.length + settled.length > 0)
const pairOf =
	(role: RolePair['role']): About =>
	({ gate: gates, pairs }) => {
		const ofRole = pairs.filter((pair) => pair.role === role)
		const count = (key: 'seek' | 'avoid' | 'shelf') =>
			new Set(ofRole.flatMap((pair): string[] => pair[key])).size
		return {
			id: `pair.${role}`,
			isProposed: ofRole.some(asksSomething),
			held: ofRole.length === 0 && isHeld(gates, 'purchase'),
			content: ofRole.map(({ settled, reasons: _, beside: __, ...pair }) => ({
				...pair,
				settled: settled.map(codeOf),
			})),
			line: state('question.pair', {
				role,
				soles: [...new Set(ofRole.flatMap(({ sole }) => sole ?? []))],
				seek: count('seek'),
				avoid: count('avoid'),
				models: count('shelf'),
			}),
		}
	}
const ownedContent = ({ id, verdict, by, work, code, params }: OwnedPair) => ({
	id,
	verdict,
	by,
	work,
	code,
	params,
})
const owned: About = ({ owned: pairs, nameOf }) => {
	const acted = pairs.filter(({ verdict }) => verdict !== 'keep')
	return {
		id: 'owned',
		isProposed: acted.length > 0,
		held: false,
		content: pairs.map(ownedContent),
		line: state('question.owned', {
			pairs: acted.map(({ id, verdict }) => ({ pair: nameOf(id), verdict })),
		}),
	}
}
const insert: About = ({ insert: sides }) => {
	const states = bothSides.map((side) => sides[side].state)
	return {
		id: 'insert',
		isProposed: states.includes('proposed'),
		held: states.includes('held') && !states.includes('proposed'),
		content: sides,
		line: state('question.insert', {
			left: sides.left.elements.length,
			right: sides.right.elements.length,
		}),
	}
}
const changes: About = (plan) => ({
	id: 'changes',
	isProposed: plan.changes.length > 0,
	held: false,
	content: plan.changes,
	line: state('question.changes', { changes: plan.changes.length, lacings: 0 }),
})
const lacing: About = (plan) => ({
	id: 'lacing',
	isProposed: plan.lacing.length > 0,
	held: false,
	content: plan.lacing,
	line: state('question.lacing', { lacings: plan.lacing.length }),
})
const review: About = ({ review: proposed }) => ({
	id: 'review',
	isProposed: proposed !== undefined,
	held: false,
	content: proposed?.date ?? '',
	line: state('question.review', { date: proposed?.date ?? '' }),
})
/** In the order in which a clinician thinks. */
const subjects: readonly About[] = [
	gate,
	complaint,
	size,
	raise,
	...pairRoles.map(pairOf),
	owned,
	insert,
	changes,
	lacing,
	review,
]
export const subjectsOf = (plan: Planned): SubjectOfQuestion[] =>
	subjects.map((about) => about(plan))
/** Lacing read under changes: where there would be more questions than the clinic allows. */
export const changesWithLacing = (plan: Planned): SubjectOfQuestion => ({
	id: 'changes',
	isProposed: plan.changes.length + plan.lacing.length > 0,
	held: false,
	content: { changes: plan.changes, lacing: plan.lacing },
	line: state('question.changes', {
		changes: plan.changes.length,
		lacings: plan.lacing.length,
	}),
})
