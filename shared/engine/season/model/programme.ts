/**
 * What a mixed-integer programme is made of: variables by name, rows that bind them, and a goal for
 * each level.
 */
import type { Level } from '../problem/levels.ts'
import type { Use } from '../problem/problem.ts'
import type { Variable } from './variables.ts'

/** A factor and the variable it multiplies. */
export type Term = readonly [factor: number, variable: string]
export interface Row {
	name: string
	terms: readonly Term[]
	sense: '<=' | '>=' | '='
	right: number
}
/** What the variables of a pair in a session mean. */
export interface Choice {
	/** variable that is 1 where the pair is worn */
	name: string
	slot: number
	pair: number
	/** minutes worn where the session is not shared */
	minutes: number
	/** variable of the minutes, where the session may be shared */
	part?: string
}
export interface Model {
	rows: Row[]
	/** What each level keeps low; no term is below 0. */
	goals: Record<Level, Term[]>
	binaries: string[]
	/** variables from 0 to 1 that need not be whole */
	bounds: string[]
	uses: Choice[]
	/** what is settled in each session */
	fixed: Use[][]
	/** every variable by its name */
	variables: Map<string, Variable>
}

/** Terms added up by variable, in the order they first came. */
export function gathered(terms: readonly Term[]): Term[] {
	const sum = new Map<string, number>()
	for (const [factor, variable] of terms) sum.set(variable, (sum.get(variable) ?? 0) + factor)
	return [...sum].map(([variable, factor]) => [factor, variable])
}
/**
 * A number as the programme's text writes it, the same everywhere: nine decimals, since with fewer
 * the rounding of a factor over a season's minutes would show.
 */
export const asWritten = (value: number): string => value.toFixed(9)
/**
 * What terms come to, with the factors that the solver reads: over hours of minutes the rest of a
 * factor adds up to more than a level may give up. A variable without a value counts as 0.
 */
export const worth = (terms: readonly Term[], values: ReadonlyMap<string, number>): number =>
	gathered(terms).reduce(
		(sum, [factor, variable]) => sum + Number(asWritten(factor)) * (values.get(variable) ?? 0),
		0,
	)
