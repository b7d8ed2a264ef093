/** The signs that stand open at a visit: its own, and what earlier visits left. */
import type { ScreeningResult } from '../findings/screening-result.ts'
import { holdRows } from '../protocol/holds.table.ts'
import type { Protocol } from '../protocol/protocol.ts'
import type { Outcome, Visit } from '../visit/visit.ts'
import { afterOutcomes } from './outcomes.ts'
import { screening } from './screening.ts'
import { type OpenSign, signsOf } from './signs-of.ts'

const mayHold = ({ screening: answers, conditions }: Visit): boolean =>
	answers !== undefined || (conditions ?? []).length > 0
const stands = ({ rule }: OpenSign): boolean =>
	holdRows.some((row) => row.rule === rule && row.standsMonths !== undefined)
const isOfTheDay = ({ rule }: OpenSign): boolean =>
	holdRows.some((row) => row.rule === rule && row.today === true)
/** Earlier outcomes about what is there for good still count for a sign found again. */
const forSign = (sign: OpenSign, now: readonly Outcome[], earlier: readonly Outcome[]) =>
	stands(sign) ? [...earlier, ...now] : now

/**
 * What is open before today's outcomes, and after them. @param before the player's earlier visits,
 * oldest first: each visit's own signs, less what it or a later one ended, pass on
 */
export function openSigns(
	visit: Visit,
	before: readonly Visit[],
	found: ScreeningResult,
	protocol: Protocol,
): { asked: OpenSign[]; open: OpenSign[] } {
	let carried: OpenSign[] = []
	let asked: OpenSign[] = []
	const past: Outcome[] = []
	for (const then of [...before, visit]) {
		const own =
			then === visit || mayHold(then)
				? signsOf(then, then === visit ? found : screening(then, protocol), protocol)
				: []
		const left = carried.filter((sign) => sign.holds.length > 0 && !isOfTheDay(sign))
		asked = [...left, ...own]
		const now = then.outcomes ?? []
		carried = asked.flatMap(
			(sign) => afterOutcomes(sign, forSign(sign, now, past), then, protocol) ?? [],
		)
		past.push(...now)
	}
	return { asked, open: carried }
}
