/** What calls for an element on one side, and what speaks against it: the rows read on the facts. */
import type { Because } from '../../protocol/basis.ts'
import type { Objection } from '../../words/en/insert-cautions.ts'
import type { InsertFacts } from '../facts.ts'
import type { Against, ElementRow, Need, Reading } from './row.ts'

/** What a reading is called, and what stands for it, as a reason. */
function readingReason(facts: InsertFacts, { measure, is }: Reading): Because[] {
	const term = facts[measure]
	if (term === undefined || !is.includes(term)) return []
	return measure === 'fpiBand'
		? [{ measure: 'footPostureIndex', side: facts.side, value: facts.fpi ?? term }]
		: [{ measure, side: facts.side, value: term }]
}
const readReasons = (facts: InsertFacts, readings: readonly Reading[] = []): Because[] =>
	readings.flatMap((reading) => readingReason(facts, reading))
/** The reasons by which a need is met; none where it is not. */
const reasonsOf = (facts: InsertFacts, need: Need): Because[] => [
	...readReasons(facts, need.readings),
	...facts.reasons(need.conditions ?? [], need.eitherSide ? {} : { side: facts.side }),
]
const isSame = (one: Because, other: Because): boolean =>
	one.measure === other.measure && one.side === other.side && one.value === other.value
/** Every reason once, in their order. */
export const withoutRepeats = (reasons: readonly Because[]): Because[] =>
	reasons.filter((one, index) => reasons.findIndex((other) => isSame(one, other)) === index)
/** The reasons that call for an element; none: it is not proposed. */
export const callsFor = ({ calls }: ElementRow, facts: InsertFacts): Because[] =>
	withoutRepeats(
		calls.flatMap((needs) => {
			const met = needs.map((need) => reasonsOf(facts, need))
			return met.every((reasons) => reasons.length > 0) ? met.flat() : []
		}),
	)
function objectionOf(facts: InsertFacts, against: Against): (Objection & Against) | undefined {
	const { conditions = [], past, readings, rule } = against
	if (readReasons(facts, readings).length > 0) return { ...against, rule, conditions: [] }
	const recorded = facts.recorded(conditions, {
		side: facts.side,
		when: past ? 'ever' : 'now',
	})
	return recorded.length > 0 ? { ...against, rule, conditions: recorded } : undefined
}
/** What speaks against an element on this side; what leaves it out, apart. */
export function objectionsTo(
	{ against }: ElementRow,
	facts: InsertFacts,
): { leaveOut: Objection[]; caution: Objection[] } {
	const found = against.flatMap((one) => objectionOf(facts, one) ?? [])
	const plain = ({ rule, conditions }: Objection): Objection => ({ rule, conditions })
	return {
		leaveOut: found.filter(({ leavesOut }) => leavesOut === true).map(plain),
		caution: found.filter(({ leavesOut }) => leavesOut !== true).map(plain),
	}
}
