/** What the line of each question says: codes and figures of the plan; the words come last. */
import type { Assessment, Kept, OwnedPair, RolePair } from '../findings/assessment.ts'
import type { Action } from '../findings/screening-result.ts'
import { oppositesOf } from '../footwear/opposites.ts'
import { byWeight } from '../footwear/settle.ts'
import { canonicalJson } from '../plain/canonical.ts'
import { present } from '../plain/present.ts'
import { bothSides } from '../visit/sides.ts'
import { type Feature, type PairRole, pairRoles } from '../visit/terms.ts'
import type { Visit } from '../visit/visit.ts'
import { newPairNames } from '../words/en/new-pair.ts'
import type { LoadParams } from '../words/en/question-lines.ts'
import { type Statement, state } from '../words/statement.ts'
import { type Complained, complaintsOf, loadWaits } from './load.ts'
import { soleFeatures } from './roles/sole.table.ts'
import type { Planned, Told } from './subjects.ts'
import { mostUrgent } from './urgency.ts'

/** What lines name beside the plan. */
export interface Named extends Told {
	complaints: readonly Complained[]
	/** An owned pair, or one that is still to be chosen (`role.match`). */
	nameOf(id: string): string
	/** Labels of the size, by the length to fit. */
	eu?: number
	uk?: number
	child?: true
	/** Features of a pair, those that matter most first. */
	byWeight(features: readonly Feature[], role: PairRole): Feature[]
}
/** The names of a visit and of what its rooms found. */
export function namedIn(
	visit: Visit,
	{ sizing: { sizes }, footwear: { target } }: Pick<Assessment, 'sizing' | 'footwear'>,
): Named {
	const wishes = [...target.seek, ...target.avoid]
	return present({
		complaint: visit.complaint?.trim() ?? '',
		complaints: complaintsOf(visit),
		nameOf: (id: string) => nameOfPair(visit, id),
		eu: sizes?.eu.label,
		uk: sizes?.uk.label,
		child: sizes?.uk.scale === 'child' ? (true as const) : undefined,
		byWeight: (features: readonly Feature[], role: PairRole) =>
			byWeight(
				wishes.filter(({ roles }) => roles?.includes(role) ?? true),
				features,
			),
	})
}
function nameOfPair({ footwear = [] }: Pick<Visit, 'footwear'>, id: string): string {
	const owned = footwear.find((pair) => pair.id === id)
	if (owned) return owned.name ?? `pair ${id}`
	const role = id.replace(/^role\./, '')
	return Object.hasOwn(newPairNames, role) ? newPairNames[role as PairRole] : `pair ${id}`
}
type Line = (plan: Planned, named: Named) => Statement

const gate: Line = ({ gate: { person, left, right } }) => {
	const parts = [person, left, right]
	const states = parts.map((part) => part.state)
	const found = (['held', 'not-established'] as const).find((one) => states.includes(one))
	const action: Action = mostUrgent(parts.map((part) => part.action))
	return state('question.gate', {
		state: found ?? 'nothing-found',
		action,
		unasked: new Set(parts.flatMap((part) => part.unasked)).size,
		held: [...new Set(parts.flatMap(({ holds }) => holds.map(({ what }) => what)))],
	})
}
/** What the clinician set stands in place of what was proposed. */
function loadParams({ load }: Planned): LoadParams {
	const { exercises: _, own, ...proposed } = load ?? { exercises: [] }
	if (!own) return proposed
	const { steps, ...set } = own
	return present({ ...set, ownSteps: steps?.length })
}
const complaint: Line = (plan, { complaint: told, complaints }) => {
	const { insert, raise, gate: gates } = plan
	const beside = [
		...(raise.aim.kind === 'pain' ? (['raise'] as const) : []),
		...(bothSides.some((side) => insert[side].state === 'proposed') ? (['insert'] as const) : []),
	]
	return state('question.complaint', {
		complaint: told,
		conditions: complaints,
		load: loadParams(plan),
		exercises: plan.load?.exercises ?? [],
		beside: complaints.length > 0 ? beside : [],
		waits: loadWaits(gates),
	})
}
const size: Line = ({ size: { boots } }, { eu, uk, child }) =>
	state('question.size', { insideLengthMm: boots ?? false, ...present({ eu, uk, child }) })
const raise: Line = ({ raise: { aim, pairs } }, { nameOf }) => {
	const heights = Map.groupBy(pairs, ({ left, right }) => `${left.addMm} ${right.addMm}`)
	const groups = [...heights.values()].flatMap((alike) =>
		alike.slice(0, 1).map(({ left, right }) => ({
			pairs: alike.map(({ pair }) => nameOf(pair)),
			leftMm: left.addMm,
			rightMm: right.addMm,
		})),
	)
	const isRaised = ({ leftMm, rightMm }: (typeof groups)[number]) => leftMm > 0 || rightMm > 0
	return state('question.raise', {
		raised: groups.filter(isRaised),
		none: groups.filter((group) => !isRaised(group)).flatMap((group) => group.pairs),
		wanted: aim.kind !== 'none',
	})
}
/** As many features as a line names. */
const mostNamed = 3
const once = <Item>(items: readonly Item[]): Item[] => [...new Set(items)]
/** What is asked of the pairs of a role: its soles, and the features that matter most. */
function askedOf(role: PairRole, { pairs }: Planned, { byWeight: weighed }: Named) {
	const ofRole = pairs.filter((pair) => pair.role === role)
	const all = <Item>(of: (pair: Kept<RolePair>) => readonly Item[]) => once(ofRole.flatMap(of))
	const isNamed = (feature: Feature) => !soleFeatures.includes(feature)
	const seek = weighed(
		all((pair) => pair.seek),
		role,
	).filter(isNamed)
	const avoid = unmirrored(
		weighed(
			all((pair) => pair.avoid),
			role,
		),
		seek,
	).filter(isNamed)
	const named = seek.slice(0, mostNamed)
	const means = (['buy', 'with-what-you-have'] as const).find((one) =>
		ofRole.some((pair) => pair.means === one),
	)
	return {
		all,
		soles: all(({ sole }) => (sole === undefined ? [] : [sole])),
		seek: named,
		avoid: avoid.slice(0, mostNamed - named.length),
		means: means ?? ('keep' as const),
	}
}
const pairOf =
	(role: PairRole): Line =>
	(plan, named) => {
		const { all, ...asked } = askedOf(role, plan, named)
		const models = all((pair) => pair.shelf)
		const keep = all(({ ownedPair }) => (ownedPair === undefined ? [] : [ownedPair]))
		const alike = earlierRoles(role).find((other) => {
			const { all: _, ...before } = askedOf(other, plan, named)
			return before.soles.length > 0 && canonicalJson(before) === canonicalJson(asked)
		})
		return state('question.pair', {
			role,
			...asked,
			as: alike ?? '',
			models: models.length,
			keep: keep.map(named.nameOf).join(', '),
		})
	}
const earlierRoles = (role: PairRole): readonly PairRole[] =>
	pairRoles.slice(0, pairRoles.indexOf(role))
/** What is avoided without what is sought saying it already. */
export const unmirrored = (avoid: readonly Feature[], seek: readonly Feature[]): Feature[] =>
	avoid.filter((feature) => !oppositesOf(feature).some((other) => seek.includes(other)))
/** Most urgent first. */
const urgency: readonly OwnedPair['verdict'][] = [
	'stop-wearing',
	'replace',
	'modify',
	'training-only',
	'keep',
]
const owned: Line = ({ owned: pairs }, { nameOf }) => {
	const inOrder = pairs.toSorted(
		(one, other) => urgency.indexOf(one.verdict) - urgency.indexOf(other.verdict),
	)
	return state('question.owned', {
		pairs: inOrder
			.filter(({ verdict }) => verdict !== 'keep')
			.map(({ id, verdict, by }) => present({ pair: nameOf(id), verdict, by })),
		kept: inOrder.filter(({ verdict }) => verdict === 'keep').map(({ id }) => nameOf(id)),
	})
}
const insert: Line = ({ insert: { left, right }, insertKept: kept }) =>
	state('question.insert', {
		left: left.elements,
		right: right.elements,
		...(kept && kept.anew !== true && { kept: { on: kept.orderedOn, lines: kept.lines } }),
	})
/** Lacing stands with the changes where it is not asked about by itself. */
const changes =
	(withLacing: boolean): Line =>
	({ changes: works, lacing: laced }) =>
		state('question.changes', { works: withLacing ? [...works, ...laced] : works })
const lacing: Line = ({ lacing: works }) => state('question.lacing', { works })
const review: Line = ({ review: proposed }) =>
	state('question.review', { date: proposed?.date ?? '' })
const lines: Readonly<Record<string, Line>> = {
	gate,
	complaint,
	size,
	raise,
	owned,
	insert,
	lacing,
	review,
}
/**
 * The line of a question. @param withLacing lacing is asked about under the changes
 */
export function lineOf(id: string, plan: Planned, named: Named, withLacing: boolean): Statement {
	if (id.startsWith('pair.')) return pairOf(id.slice('pair.'.length) as PairRole)(plan, named)
	return (lines[id] ?? changes(withLacing))(plan, named)
}
