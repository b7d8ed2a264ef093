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
/**
 * @param ageYears whole years; @returns the usual ages where this one lies outside them, undefined
 * where it is usual or nothing is known of ages
 */
export function ageDoubt(
	condition: Condition,
	ageYears: number,
	protocol: Protocol,
): AgeDoubt | undefined {
	const [least, most] = [
		`conditions.${condition}.ageMinYears`,
		`conditions.${condition}.ageMaxYears`,
	]
	const fromYears = isRow(least) ? protocol.value(least) : undefined
	const toYears = isRow(most) ? protocol.value(most) : undefined
	const span = present({ fromYears, toYears })
	if (isRow(least) && fromYears !== undefined && ageYears < fromYears)
		return { ...span, passed: least }
	if (isRow(most) && toYears !== undefined && ageYears > toYears) return { ...span, passed: most }
	return undefined
}
