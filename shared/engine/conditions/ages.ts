/** Whether a condition is recorded outside the ages at which it is usually seen. */
import { present } from '../plain/present.ts'
import type { Protocol, ThresholdKey } from '../protocol/protocol.ts'
import { rows } from '../protocol/rows.ts'
import type { Condition } from '../visit/terms.ts'

/** The usual ages in whole years, both included, and the row that is passed. */
export interface AgeDoubt {
	fromYears?: number
	toYears?: number
	passed: ThresholdKey
}
const isRow = (key: string): key is ThresholdKey => Object.hasOwn(rows, key)
const rowOf = (key: string): ThresholdKey | undefined => (isRow(key) ? key : undefined)
/** The rows of its usual ages; undefined where it has none. */
const rowsOf = (condition: Condition) => ({
	least: rowOf(`conditions.${condition}.ageMinYears`),
	most: rowOf(`conditions.${condition}.ageMaxYears`),
})
/** The usual ages of a condition in whole years, both included; empty where nothing is known. */
export function usualAges(
	condition: Condition,
	protocol: Protocol,
): Pick<AgeDoubt, 'fromYears' | 'toYears'> {
	const { least, most } = rowsOf(condition)
	return present({
		fromYears: least && protocol.value(least),
		toYears: most && protocol.value(most),
	})
}
/**
 * @param ageYears whole years; @returns the usual ages where this one lies outside them, undefined
 * where it is usual or nothing is known of ages
 */
export function ageDoubt(
	condition: Condition,
	ageYears: number,
	protocol: Protocol,
): AgeDoubt | undefined {
	const { least, most } = rowsOf(condition)
	const span = usualAges(condition, protocol)
	if (least && ageYears < protocol.value(least)) return { ...span, passed: least }
	if (most && ageYears > protocol.value(most)) return { ...span, passed: most }
	return undefined
}
