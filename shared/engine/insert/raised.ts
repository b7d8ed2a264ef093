/**
 * The raises of an insert: the raise room's figures for the pairs it goes into. What is for both
 * shoes is the lower of the two feet; what one foot has above it lifts the shorter leg.
 */
import type { InsertElement, Kept, RaiseInFoot, RaisePlan } from '../findings/assessment.ts'
import { bothSides, otherSide, rounded } from '../visit/sides.ts'
import type { Sole } from '../visit/terms.ts'
import type { Side, Visit } from '../visit/visit.ts'
import { type Statement, state } from '../words/statement.ts'
import { practiceBasis } from './basis.ts'
import type { InsertFacts } from './facts.ts'
import { cautionsOf } from './said.ts'

export type Raises = Kept<RaisePlan>
type RaisedPair = Raises['pairs'][number]

const trainerSoles: readonly Sole[] = ['trail', 'road']
const trainerRoles: readonly string[] = ['role.running', 'role.everyday']
/** Whether a pair, owned or of a role, has the room of a trainer and not of a boot. */
export function isTrainerPair(pair: string, { footwear = [] }: Pick<Visit, 'footwear'>): boolean {
	const owned = footwear.find(({ id }) => id === pair)
	if (!owned) return trainerRoles.includes(pair)
	if (owned.sole !== undefined) return trainerSoles.includes(owned.sole)
	return owned.roles?.every((role) => role === 'running' || role === 'everyday') ?? false
}
const byInsert = ({ madeBy, addMm }: RaiseInFoot): boolean => madeBy === 'insert' && addMm > 0
const isByInsert = (pair: RaisedPair): boolean => bothSides.some((side) => byInsert(pair[side]))
/** The pair with the most by an insert: the insert is made for it, and goes into the others too. */
const leading = (pairs: readonly RaisedPair[]): RaisedPair | undefined => {
	const madeMm = (pair: RaisedPair) =>
		bothSides.reduce((sumMm, side) => sumMm + (byInsert(pair[side]) ? pair[side].addMm : 0), 0)
	return pairs.toSorted((one, other) => madeMm(other) - madeMm(one))[0]
}
const whereOf = (pairs: readonly RaisedPair[], visit: Visit): InsertElement['where'] => {
	const inTrainers = pairs.filter(({ pair }) => isTrainerPair(pair, visit)).length
	if (inTrainers === 0) return 'boot'
	return inTrainers === pairs.length ? 'trainer' : 'both'
}
/** How the raise differs from pair to pair; undefined where it is the same in all. */
function byPair(pairs: readonly RaisedPair[], side: Side, heightOf: (pair: RaisedPair) => number) {
	const heights = pairs.map((pair) => ({ pair: pair.pair, mm: rounded(heightOf(pair), 1) }))
	return new Set(heights.map(({ mm }) => mm)).size > 1 ? { side, heights } : undefined
}
const addedMm = (pair: RaisedPair, side: Side): number =>
	byInsert(pair[side]) ? pair[side].addMm : 0
const sharedMm = (pair: RaisedPair): number =>
	Math.min(addedMm(pair, 'left'), addedMm(pair, 'right'))
const aboveMm = (pair: RaisedPair, side: Side): number =>
	Math.max(0, addedMm(pair, side) - addedMm(pair, otherSide(side)))

interface Made {
	element: 'heel-raise' | 'leg-length-raise'
	height: (pair: RaisedPair) => number
	statement: Statement
	cautions: Statement[]
}
/** The raise elements of one foot; none where the raise room makes none by an insert. */
export function raiseElements(visit: Visit, raise: Raises, facts: InsertFacts): InsertElement[] {
	const { side, protocol, adult } = facts
	const pairs = raise.pairs.filter(isByInsert)
	const first = leading(pairs)
	if (!first) return []
	const { aim } = raise
	const growingHeel = !adult && facts.nowAnywhere('calcaneal-apophysitis')
	const weeks = protocol.value('insert.growingHeelReviewWeeks')
	const rows: Made[] = [
		{
			element: 'heel-raise',
			height: sharedMm,
			statement: state('insert.heel-raise', {}),
			cautions: [
				state('insert.caution-same-raise'),
				...(growingHeel ? [state('insert.caution-growing-heel', { weeks })] : []),
			],
		},
		{
			element: 'leg-length-raise',
			height: (pair) => aboveMm(pair, side),
			statement: state('insert.leg-length-raise', {
				side,
				differenceMm: facts.legLengthMm ?? aboveMm(first, side),
				byRaisesMm: rounded(aboveMm(first, side), 1),
			}),
			cautions: [
				state('insert.caution-blocks', { errorMm: protocol.value('posture.legLengthRecordMm') }),
				...(adult ? [] : [state('insert.caution-growing-leg')]),
			],
		},
	]
	return rows.flatMap(({ element, height, statement, cautions }): InsertElement[] => {
		const valueMm = rounded(height(first), 1)
		if (valueMm === 0) return []
		const differing = byPair(pairs, side, height)
		return [
			{
				element,
				value: valueMm,
				unit: 'mm',
				where: whereOf(
					pairs.filter((pair) => height(pair) > 0),
					visit,
				),
				...statement,
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
/** What a wedge adds under the heel in boots besides the insert, at most, mm. */
export const wedgeMm = (visit: Visit, { pairs }: Raises, side: Side): number =>
	Math.max(
		0,
		...pairs
			.filter(({ pair }) => !isTrainerPair(pair, visit))
			.filter((pair) => pair[side].madeBy === 'wedge')
			.map((pair) => pair[side].addMm),
	)
