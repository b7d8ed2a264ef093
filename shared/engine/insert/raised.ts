/**
 * The raises of an insert: the raise room's figures for the pairs it goes into. What is for both
 * heels is the lower of the two feet; what one foot has above it lifts the shorter leg.
 */
import type { InsertElement, Kept, RaisePlan } from '../findings/assessment.ts'
import { present } from '../plain/present.ts'
import { bothSides, otherSide, rounded } from '../visit/sides.ts'
import type { Sole } from '../visit/terms.ts'
import type { Side, Visit } from '../visit/visit.ts'
import { type Statement, state } from '../words/statement.ts'
import { practiceBasis } from './basis.ts'
import type { InsertFacts } from './facts.ts'
import { cautionsOf } from './said.ts'

/** Aim and figures, with or without the steps. */
export type RaiseFigures = Pick<Kept<RaisePlan>, 'aim' | 'pairs'>
type RaisedPair = RaiseFigures['pairs'][number]

const trainerSoles: readonly Sole[] = ['trail', 'road']
const trainerRoles: readonly string[] = ['role.running', 'role.everyday']
/** Whether a pair, owned or of a role, has the room of a trainer and not of a boot. */
export function isTrainerPair(pair: string, { footwear = [] }: Pick<Visit, 'footwear'>): boolean {
	const owned = footwear.find(({ id }) => id === pair)
	if (!owned) return trainerRoles.includes(pair)
	if (owned.sole !== undefined && trainerSoles.includes(owned.sole)) return true
	return owned.roles?.every((role) => trainerRoles.includes(`role.${role}`)) ?? false
}
/** What lies inside of a raise, whatever makes it; what is under the sole is not. */
const insideMm = (pair: RaisedPair, side: Side): number =>
	Math.min(pair[side].addMm, pair[side].addedUnderHeelMm)
const isByInsert = (pair: RaisedPair, side: Side): boolean => pair[side].madeBy === 'insert'
/** For both heels: the other may have it by a wedge. */
const sharedMm = (pair: RaisedPair, side: Side): number =>
	isByInsert(pair, side) ? Math.min(...bothSides.map((foot) => insideMm(pair, foot))) : 0
const aboveMm = (pair: RaisedPair, side: Side): number =>
	isByInsert(pair, side) ? Math.max(0, insideMm(pair, side) - insideMm(pair, otherSide(side))) : 0

/** How the raise differs from pair to pair; undefined where it is the same in all. */
function byPair(
	pairs: readonly RaisedPair[],
	{ footwear = [] }: Visit,
	side: Side,
	heightOf: (pair: RaisedPair) => number,
) {
	const heights = pairs.map((raised) => {
		const name = footwear.find(({ id }) => id === raised.pair)?.name
		return present({ pair: raised.pair, name, mm: rounded(heightOf(raised), 1) })
	})
	return new Set(heights.map(({ mm }) => mm)).size > 1 ? { side, heights } : undefined
}
const whereOf = (pairs: readonly RaisedPair[], visit: Visit): InsertElement['where'] => {
	const inTrainers = pairs.filter(({ pair }) => isTrainerPair(pair, visit)).length
	if (inTrainers === 0) return 'boot'
	return inTrainers === pairs.length ? 'trainer' : 'both'
}
interface Made {
	element: 'heel-raise' | 'leg-length-raise'
	heightOf: (pair: RaisedPair) => number
	stated: (mm: number) => Statement
	cautions: Statement[]
}
/** The raise for both heels, and that of the shorter leg. */
function rowsFor({ side, protocol, adult, legLengthMm, nowAnywhere }: InsertFacts): Made[] {
	const growingHeel = !adult && nowAnywhere('calcaneal-apophysitis')
	const weeks = protocol.value('insert.growingHeelReviewWeeks')
	return [
		{
			element: 'heel-raise',
			heightOf: (pair) => sharedMm(pair, side),
			stated: () => state('insert.heel-raise', {}),
			cautions: [
				state('insert.caution-same-raise'),
				...(growingHeel ? [state('insert.caution-growing-heel', { weeks })] : []),
			],
		},
		{
			element: 'leg-length-raise',
			heightOf: (pair) => aboveMm(pair, side),
			stated: (mm) =>
				state('insert.leg-length-raise', { side, differenceMm: legLengthMm ?? mm, byRaisesMm: mm }),
			cautions: [
				state('insert.caution-blocks', { errorMm: protocol.value('posture.legLengthRecordMm') }),
				...(adult ? [] : [state('insert.caution-growing-leg')]),
			],
		},
	]
}
/**
 * The raise elements of one foot; none where the raise room makes none by an insert. The insert
 * carries the least of its pairs, and a loose wedge the rest of the others.
 */
export function raiseElements(
	visit: Visit,
	raise: RaiseFigures,
	facts: InsertFacts,
): InsertElement[] {
	const { aim } = raise
	return rowsFor(facts).flatMap(({ element, heightOf, stated, cautions }): InsertElement[] => {
		const pairs = raise.pairs.filter((pair) => heightOf(pair) > 0)
		if (pairs.length === 0) return []
		const value = rounded(Math.min(...pairs.map(heightOf)), 1)
		const differing = byPair(pairs, visit, facts.side, heightOf)
		return [
			{
				element,
				value,
				unit: 'mm',
				where: whereOf(pairs, visit),
				...stated(value),
				because: aim.because,
				basis: aim.basis ?? practiceBasis('heel raise in an insert'),
				...cautionsOf([
					...(differing ? [state('insert.caution-by-pair', differing)] : []),
					...cautions,
				]),
			},
		]
	})
}
/** What is wanted of a raise under this heel inside a boot. */
export interface WantedRaise {
	/** The most of any boot, whatever makes it. */
	mm: number
	/** It is for pain, and stands before a cushion; one for range or length makes do with less. */
	forPain: boolean
}
export const wantedInBoots = (
	visit: Visit,
	{ aim, pairs }: RaiseFigures,
	side: Side,
): WantedRaise => ({
	mm: Math.max(
		0,
		...pairs.filter(({ pair }) => !isTrainerPair(pair, visit)).map((pair) => insideMm(pair, side)),
	),
	forPain: aim.kind === 'pain',
})
