/**
 * When and where each entry of a draft was last typed. Two drafts that went different ways tell by
 * their stamps which entry is the newer one of the same line, and which two places typed without
 * knowing of each other.
 */
import { z } from 'zod'
import { canonicalJson } from '../../engine/plain/canonical.ts'
import { isEmptyGroup, isGroup } from './leaves.ts'

/** What is typed at one moment in one place. Keys of a later version stay with it. */
const stampSchema = z.looseObject({
	/** by the clock of that PC, ISO 8601 */
	at: z.string(),
	/** the installation */
	origin: z.string(),
	/**
	 * counts on with each change of a draft: a later one that knew of an earlier one has a higher
	 * number
	 */
	tick: z.int().min(1),
})
export type Stamp = z.infer<typeof stampSchema>
/** The last change of each entry by its path, also of one that was taken out. */
export type Stamps = Readonly<Record<string, Stamp>>
/** For each installation the last of its changes that a draft knows of. */
export type Seen = Readonly<Record<string, number>>
export const stampsSchema = z.record(z.string(), stampSchema)
export const seenSchema = z.record(z.string(), z.int().min(0))

/** A draft's content with its stamps; drafts of version 0.1.0 have none. */
export interface Stamped {
	content: unknown
	stamps?: Stamps | undefined
	seen?: Seen | undefined
}
export const sameValue = (first: unknown, second: unknown): boolean =>
	first === second || canonicalJson(first ?? null) === canonicalJson(second ?? null)
/** Where the screen stood is no entry, and a group without anything in it neither. */
const isEntry = (path: string, value: unknown): boolean =>
	path !== 'step' && value !== undefined && !isEmptyGroup(value)

/**
 * Adds the paths whose entry is not what it was, among them those that came or went. A part that
 * reads the same is not looked into: a draft is saved every second.
 */
function addChanged(before: unknown, now: unknown, path: string, changed: Set<string>): void {
	if (before === now || JSON.stringify(before) === JSON.stringify(now)) return
	if (isGroup(before) && isGroup(now)) {
		for (const key of new Set([...Object.keys(before), ...Object.keys(now)]))
			addChanged(before[key], now[key], path === '' ? key : `${path}.${key}`, changed)
		return
	}
	if (!isGroup(before) && !isGroup(now) && sameValue(before, now)) return
	for (const value of [before, now]) addEntries(value, path, changed)
}
/** The paths of all entries of a part. */
function addEntries(value: unknown, path: string, found: Set<string>): void {
	if (isGroup(value))
		for (const [key, inner] of Object.entries(value))
			addEntries(inner, path === '' ? key : `${path}.${key}`, found)
	else if (isEntry(path, value)) found.add(path)
}
function changedPaths(before: unknown, now: unknown): string[] {
	const changed = new Set<string>()
	addChanged(before, now, '', changed)
	return [...changed]
}
function lastTick({ stamps = {}, seen = {} }: Stamped): number {
	let last = 0
	for (const { tick } of Object.values(stamps)) last = Math.max(last, tick)
	for (const tick of Object.values(seen)) last = Math.max(last, tick)
	return last
}
/**
 * The next number of a draft. It never falls behind the seconds since 1970: where the stamps were
 * lost (a draft that was damaged, or went through version 0.1.0) no number of before comes again, by
 * which others would take a new entry for one they know.
 */
function nextTick(known: Stamped, at: string): number {
	const seconds = Math.floor(Date.parse(at) / 1000)
	return Math.max(lastTick(known) + 1, Number.isFinite(seconds) ? seconds : 0)
}
/**
 * The content as it is saved, with a new stamp for each entry that changed.
 * @param before as it stood; undefined for a new draft
 * @param typed when and where
 */
export function stampChanges(
	before: Stamped | undefined,
	content: unknown,
	typed: { at: string; origin: string },
): Required<Stamped> {
	const known: Stamped = before ?? { content: undefined }
	const { stamps = {}, seen = {} } = known
	const changed = changedPaths(known.content, content)
	if (changed.length === 0) return { content, stamps, seen }
	const stamp: Stamp = { at: typed.at, origin: typed.origin, tick: nextTick(known, typed.at) }
	return {
		content,
		stamps: { ...stamps, ...Object.fromEntries(changed.map((path) => [path, stamp])) },
		seen: { ...seen, [stamp.origin]: stamp.tick },
	}
}
/** Whether a draft knows of a change: it took it in, whatever came after. */
export const knows = ({ seen = {} }: Stamped, stamp: Stamp): boolean =>
	(seen[stamp.origin] ?? 0) >= stamp.tick

export const isSameStamp = (first: Stamp, second: Stamp): boolean =>
	first.origin === second.origin && first.tick === second.tick
/** The later of two in the order that every place agrees on; the one there is where one is absent. */
export function laterStamp(first: Stamp | undefined, second: Stamp | undefined): Stamp | undefined {
	if (!first || !second) return first ?? second
	if (first.tick !== second.tick) return first.tick > second.tick ? first : second
	return first.origin >= second.origin ? first : second
}
/** What two drafts know together. */
export function seenByBoth({ seen: first = {} }: Stamped, { seen: second = {} }: Stamped): Seen {
	const both: Record<string, number> = { ...first }
	for (const [origin, tick] of Object.entries(second))
		both[origin] = Math.max(both[origin] ?? 0, tick)
	return both
}
