/**
 * The ages at which conditions are usually seen, as thresholds of the clinic: their numbers and
 * sources stand in the table of conditions.
 */
import { type Registry, registry } from '../../conditions/registry.ts'
import type { ConditionRow } from '../../conditions/row.ts'
import { type Row, row } from '../row.ts'

type Bounded<End> = {
	[Name in keyof Registry]: Registry[Name] extends { ages: End } ? Name : never
}[keyof Registry]
type Rows = Record<
	| `conditions.${Bounded<{ fromYears: number }>}.ageMinYears`
	| `conditions.${Bounded<{ toYears: number }>}.ageMaxYears`,
	Row
>
function rowsOf(name: string, { ages }: ConditionRow): [string, Row][] {
	if (!ages) return []
	const { fromYears, toYears, population, source, strength, surety } = ages
	const ends = [
		[`conditions.${name}.ageMinYears`, fromYears],
		[`conditions.${name}.ageMaxYears`, toYears],
	] as const
	return ends.flatMap(([key, years]): [string, Row][] =>
		years === undefined ? [] : [[key, row(years, 'years', population, source, strength, surety)]],
	)
}
export const conditionRows = Object.fromEntries(
	Object.entries(registry).flatMap(([name, given]) => rowsOf(name, given)),
) as Rows
