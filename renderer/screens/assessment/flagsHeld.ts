/** What the gate holds, a sign at a time, in words of the Flags step. Pure. */
import type { Gate, Hold } from '../../../shared/engine/findings/gate.ts'
import { listed } from '../../../shared/engine/words/en/format.ts'
import { holdableNames, untilNames } from '../../../shared/engine/words/en/gate.ts'
import { capital } from '../../../shared/engine/words/words.ts'
import type { SignOf } from './flagsTyped.ts'

/** All that one sign holds. */
export interface HeldBySign extends SignOf {
	holds: Hold[]
}
export const gateParts = ['person', 'left', 'right'] as const
export const isSameSign = (one: SignOf, other: SignOf): boolean =>
	one.rule === other.rule && one.side === other.side
/** The holds of a gate, one group a sign and side. */
export function heldBySign(gate: Gate): HeldBySign[] {
	const groups = new Map<string, HeldBySign>()
	for (const hold of gateParts.flatMap((part) => gate[part].holds)) {
		const { rule, side = 'none' } = hold
		const key = `${rule} ${side}`
		const group = groups.get(key) ?? { rule, side, holds: [] }
		groups.set(key, { ...group, holds: [...group.holds, hold] })
	}
	return [...groups.values()]
}
/** Each way of ending, and what ends so: 'Sport and matches: until the treating doctor allows it.' */
export const endings = (holds: readonly Hold[]): string[] =>
	[...new Set(holds.map(({ until }) => until))].map((until) => {
		const held = holds.filter((hold) => hold.until === until).map(({ what }) => holdableNames[what])
		return `${capital(listed([...new Set(held)]))}: until ${untilNames[until]}.`
	})
/** The day since when a sign holds. */
export const sinceOf = ({ holds }: HeldBySign): string | undefined =>
	holds.map(({ since }) => since).sort()[0]
