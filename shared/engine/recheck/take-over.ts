/** What a player who comes back has as on the visit before. Nothing asked or measured anew goes with it. */
import { canonicalJson } from '../plain/canonical.ts'
import type { OnFoot } from '../visit/recorded/on-foot.ts'
import { type TakenGroup, takenGroups } from '../visit/terms.ts'
import type { Pair, Visit } from '../visit/visit.ts'

type Recorded = NonNullable<Visit['conditions']>[number]
/** How a pair feels and how far it is worn is of its day. */
function asOwned(pair: Pair, on: string): Pair {
	const { comfort: _comfort, hurts: _hurts, damage: _damage, minutesWorn: _worn, ...rest } = pair
	const { onFoot, ...kept } = rest
	return onFoot === undefined ? kept : { ...kept, onFoot: asMeasured(onFoot, on) }
}
/** What the shoe itself is, and how it felt at first; what was seen on the foot is looked at again. */
function asMeasured({ left: _left, right: _right, ...onFoot }: OnFoot, on: string): OnFoot {
	const { role: _role, comfortLater: _later, ...kept } = onFoot
	return { tried: on, ...kept }
}
/**
 * A condition comes without status, pain, clearance and what it cost: they are asked again, and
 * nothing follows from it nor is signed before. What is past stays past.
 */
function toBeAsked(recorded: Recorded): Recorded {
	const { status, painWorst: _pain, note: _note, clearedBySurgeon: _cleared, ...rest } = recorded
	const { painNow: _now, daysOff: _off, sessionsMissed: _missed, ...kept } = rest
	return status === 'past' ? { ...kept, status } : kept
}
/** Its conditions and the pairs that are owned. One that was only planned may never have been bought. */
export function carriedLists({
	conditions = [],
	footwear = [],
	visitDate,
}: Visit): Pick<Visit, 'conditions' | 'footwear'> {
	const pairs = footwear.filter(({ plannedAs }) => plannedAs === undefined)
	return {
		...(conditions.length > 0 && { conditions: conditions.map(toBeAsked) }),
		...(pairs.length > 0 && { footwear: pairs.map((pair) => asOwned(pair, visitDate)) }),
	}
}
type Loose = Readonly<Record<string, unknown>>
const isGroup = (value: unknown): value is Loose =>
	typeof value === 'object' && value !== null && !Array.isArray(value)
/** What stands in `now`, and beside it what only stood before. */
function joined(then: unknown, now: unknown): unknown {
	if (now === undefined) return then
	if (!isGroup(then) || !isGroup(now)) return now
	const keys = new Set([...Object.keys(then), ...Object.keys(now)])
	return Object.fromEntries([...keys].map((key) => [key, joined(then[key], now[key])]))
}
/** What stands in `now` and did not stand so before; undefined where nothing is left. */
function apartFrom(then: unknown, now: unknown): unknown {
	if (canonicalJson(then ?? null) === canonicalJson(now ?? null)) return undefined
	if (!isGroup(then) || !isGroup(now)) return now
	const left = Object.entries(now).flatMap(([key, value]) => {
		const own = apartFrom(then[key], value)
		return own === undefined ? [] : [[key, own] as const]
	})
	return left.length > 0 ? Object.fromEntries(left) : undefined
}
/**
 * The visit with groups taken as they were, and those no longer named taken back. What was typed in
 * a group stays either way. @param groups those that are not measured again
 */
export function withUnchanged(visit: Visit, last: Visit, groups: readonly TakenGroup[]): Visit {
	const { since, ...rest } = visit
	if (!since) return visit
	const { unchanged = [], ...others } = since
	const parts: Record<string, unknown> = { ...rest }
	for (const group of takenGroups) {
		const [was, is] = [unchanged.includes(group), groups.includes(group)]
		if (was === is) continue
		const next = is ? joined(last[group], visit[group]) : apartFrom(last[group], visit[group])
		if (next === undefined) delete parts[group]
		else parts[group] = next
	}
	const taken = groups.length > 0 ? { unchanged: [...groups] } : {}
	return { ...(parts as typeof rest), since: { ...others, ...taken } }
}
/** Groups that were taken as they were and still are: one that was measured after all is not. */
export const stillAsBefore = ({ since, ...visit }: Visit, last: Visit | undefined): TakenGroup[] =>
	(since?.unchanged ?? []).filter(
		(group) => !last || canonicalJson(last[group] ?? null) === canonicalJson(visit[group] ?? null),
	)
