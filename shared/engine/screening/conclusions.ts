/** What every group of questions is given, and what it hands back. */
import type { Action, ScreeningItem } from '../findings/assessment.ts'
import { type Finding, type FindingSide, findingOf, type Level } from '../findings/finding.ts'
import type { Basis, Because } from '../protocol/basis.ts'
import type { Protocol } from '../protocol/protocol.ts'
import type { Screening, Visit } from '../visit/visit.ts'
import type { Statement } from '../words/statement.ts'
import type { Tri } from './answers.ts'

/**
 * `ageYears` in completed years; `decimalAgeYears` where 'above 9' means from the day after the
 * birthday on.
 */
export interface Screened {
	visit: Visit
	answers: Screening
	minor: boolean
	ageYears: number
	decimalAgeYears: number
	protocol: Protocol
}
/** An item made now: its code and what it is filled in with are always there. */
export type StatedItem = ScreeningItem & Statement
/** Items carry an action of their own; findings are what is said besides. */
export interface Conclusions {
	items: StatedItem[]
	findings: Finding[]
	/** What an item rests on where it is not the answers alone, by its id. */
	because?: Readonly<Record<string, Because[]>>
}

/** An answer, or whether a rule holds, as the state of an item. */
export const stateOf = (answer: Tri): ScreeningItem['state'] => {
	if (answer === undefined) return 'not-asked'
	return answer ? 'yes' : 'no'
}
/** The id of what is said of a side; without a side, the code by itself. */
export const sidedId = (code: string, side: FindingSide): string =>
	side === 'none' ? code : `${code}.${side}`
/** The sides that are named, each once. */
export const distinctSides = (found: readonly { side: FindingSide }[]): FindingSide[] => [
	...new Set(found.map(({ side }) => side)),
]
/** The action of a row that holds; that of a minor may be higher. */
export const actionFor = (
	row: { action: Action; minorAction?: Action | undefined },
	minor: boolean,
): Action => (minor ? (row.minorAction ?? row.action) : row.action)

/** `id` where it is not code and side. */
interface Said {
	side: FindingSide
	basis: Basis
	id?: string
}
/** An item of the screen: what is stated, whether it holds and what it asks for. */
export const itemOf = (
	statement: Statement,
	{ side, basis, id, state, action }: Said & Pick<ScreeningItem, 'state' | 'action'>,
): StatedItem => ({
	id: id ?? sidedId(statement.code, side),
	side,
	state,
	action,
	...statement,
	basis,
})
/** A finding of the screening room; without reasons where none are given. */
export const screeningFinding = (
	statement: Statement,
	{ side, level, because = [], basis, id }: Said & { level: Level; because?: Because[] },
): Finding =>
	findingOf(statement, { side, level, because, basis, id: id ?? sidedId(statement.code, side) })
