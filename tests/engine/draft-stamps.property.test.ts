/**
 * Stamps of drafts: two drafts that went different ways are joined as if somebody had watched every
 * key that was pressed. The watcher here keeps sets of all changes that a place knows of.
 */
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { joinStampedDrafts } from '../../shared/desk/outreach/drafts.ts'
import {
	type Stamp,
	type Stamped,
	type Stamps,
	stampChanges,
} from '../../shared/desk/outreach/stamps.ts'

const places = ['home', 'laptop', 'tablet'] as const
const fields = ['a', 'b', 'c.d', 'c.e'] as const
type Entries = Partial<Record<(typeof fields)[number], unknown>>
const contentOf = (entries: Entries): Record<string, unknown> => {
	const whole: Record<string, unknown> = { c: {} }
	for (const [path, value] of Object.entries(entries)) {
		const [group, key] = path.split('.')
		if (key === undefined) whole[path] = value
		else Object.assign(whole[group!] as object, { [key]: value })
	}
	return whole
}

/** A change as the watcher saw it. */
interface Change {
	value: unknown
	knownThen: ReadonlySet<string>
}
interface Place {
	draft: Stamped
	entries: Entries
	/** every change that it took in, by origin and number */
	known: Set<string>
	/** the change that each field stands by */
	standing: Map<string, string>
}
interface World {
	places: Place[]
	changes: Map<string, Change>
}
const nameOf = ({ origin, tick }: Stamp): string => `${origin} ${tick}`
const newWorld = (): World => {
	const changes = new Map<string, Change>()
	const draft = stampChanges(undefined, contentOf({ a: 1 }), { at: '0', origin: 'home' })
	const first = `${nameOf(draft.stamps.a!)} a`
	changes.set(first, { value: 1, knownThen: new Set() })
	return {
		changes,
		places: places.map(() => ({
			draft,
			entries: { a: 1 },
			known: new Set([first]),
			standing: new Map([['a', first]]),
		})),
	}
}
type Step =
	| { does: 'type'; place: number; field: (typeof fields)[number]; value: unknown; at: string }
	| { does: 'join'; place: number; other: number }
const placeIndex = fc.integer({ min: 0, max: places.length - 1 })
const step: fc.Arbitrary<Step> = fc.oneof(
	fc.record({
		does: fc.constant('type' as const),
		place: placeIndex,
		field: fc.constantFrom(...fields),
		value: fc.constantFrom<unknown>(1, 2, 'x', [1, 2], undefined),
		// clocks of three PCs agree on nothing
		at: fc.constantFrom('2027-01-20', '1970-01-01', '2031-05-05'),
	}),
	fc.record({ does: fc.constant('join' as const), place: placeIndex, other: placeIndex }),
)
const steps = fc.array(step, { maxLength: 25 })

function type(world: World, { place, field, value, at }: Extract<Step, { does: 'type' }>): void {
	const here = world.places[place]!
	const { [field]: _, ...rest } = here.entries
	const entries = value === undefined ? rest : { ...rest, [field]: value }
	const origin = places[place]!
	const before = here.draft
	const draft = stampChanges(before, contentOf(entries), { at, origin })
	const isSame = JSON.stringify(here.entries[field]) === JSON.stringify(value)
	expect(
		Object.keys(draft.stamps).filter((path) => draft.stamps[path] !== before.stamps?.[path]),
	).toEqual(isSame ? [] : [field])
	mustNotGoBack(before, draft)
	here.draft = draft
	here.entries = entries
	if (isSame) return
	const change = `${nameOf(draft.stamps[field]!)} ${field}`
	world.changes.set(change, { value, knownThen: new Set(here.known) })
	here.known.add(change)
	here.standing.set(field, change)
}
function mustNotGoBack(before: Stamped, after: Stamped): void {
	for (const [origin, tick] of Object.entries(before.seen ?? {}))
		expect(after.seen?.[origin]).toBeGreaterThanOrEqual(tick)
	for (const [path, stamp] of Object.entries(before.stamps ?? {})) {
		const now = after.stamps?.[path]
		expect(now, path).toBeDefined()
		// what it knew and had written over already never comes back
		if (nameOf(now!) !== nameOf(stamp))
			expect(before.seen?.[now!.origin] ?? 0, path).toBeLessThan(now!.tick)
	}
}
/** What the watcher says of a field: which change stands, or that a person must be asked. */
function watched(world: World, first: Place, second: Place, field: string): unknown[] | 'asked' {
	const [left, right] = [first.standing.get(field), second.standing.get(field)]
	const valueBy = (change: string | undefined) => change && world.changes.get(change)!.value
	const [leftValue, rightValue] = [valueBy(left), valueBy(right)]
	if (left === right || JSON.stringify(leftValue) === JSON.stringify(rightValue)) return [leftValue]
	if (left === undefined || (second.known.has(left) && !first.known.has(right!)))
		return [rightValue]
	if (right === undefined || first.known.has(right)) return [leftValue]
	return 'asked'
}
function join(world: World, { place, other }: Extract<Step, { does: 'join' }>): void {
	const [first, second] = [world.places[place]!, world.places[other]!]
	const joined = joinStampedDrafts(undefined, first.draft, second.draft)
	const asked = new Set(joined.conflicts.map(({ path }) => path))
	const entries: Entries = {}
	const standing = new Map<string, string>()
	for (const field of fields) {
		const says = watched(world, first, second, field)
		expect(asked.has(field), `${field} is asked`).toBe(says === 'asked')
		if (says === 'asked') continue
		if (says[0] !== undefined) entries[field] = says[0]
		const stamp = joined.stamps[field]
		if (stamp) standing.set(field, `${nameOf(stamp)} ${field}`)
	}
	if (asked.size > 0) return
	expect(joined.content).toEqual(contentOf(entries))
	mustNotGoBack(first.draft, joined)
	mustNotGoBack(second.draft, joined)
	const known = new Set([...first.known, ...second.known])
	world.places[place] = { draft: joined, entries, known, standing }
}
function play(all: readonly Step[]): World {
	const world = newWorld()
	for (const one of all)
		if (one.does === 'type') type(world, one)
		else join(world, one)
	return world
}

test('asked is exactly what two places typed without knowing of each other; nothing goes back', () => {
	fc.assert(
		fc.property(steps, (all) => {
			play(all)
		}),
		{ numRuns: 1000 },
	)
})
test('the order of two drafts does not matter, nor that of three where nothing is asked', () => {
	const swapped = (stamps: Stamps) => JSON.stringify(Object.entries(stamps).sort())
	fc.assert(
		fc.property(steps, (all) => {
			const drafts = play(all).places.map(({ draft }) => draft)
			const [first, second, third] = [drafts[0]!, drafts[1]!, drafts[2]!]
			const one = joinStampedDrafts(undefined, first, second)
			const other = joinStampedDrafts(undefined, second, first)
			expect(one.content).toEqual(other.content)
			expect([swapped(one.stamps), one.seen]).toEqual([swapped(other.stamps), other.seen])
			expect(one.conflicts).toEqual(
				other.conflicts.map(({ path, first: left, second: right }) => ({
					path,
					first: right,
					second: left,
				})),
			)
			const orders = [
				[first, second, third],
				[third, first, second],
				[second, third, first],
				[third, second, first],
			].map(([begin, ...more]) =>
				more.reduce(
					(whole, draft) => {
						const join = joinStampedDrafts(undefined, whole.draft, draft)
						return { draft: join, asked: whole.asked + join.conflicts.length }
					},
					{ draft: begin!, asked: 0 },
				),
			)
			if (orders.some(({ asked }) => asked > 0)) return
			for (const { draft } of orders) {
				expect(draft.content).toEqual(orders[0]!.draft.content)
				expect([swapped(draft.stamps!), draft.seen]).toEqual([
					swapped(orders[0]!.draft.stamps!),
					orders[0]!.draft.seen,
				])
			}
		}),
		{ numRuns: 1000 },
	)
})
test('nothing that was typed is lost: it stands, was written over knowingly, or is asked', () => {
	fc.assert(
		fc.property(steps, (all) => {
			const world = play(all)
			const [first, second] = [world.places[0]!, world.places[1]!]
			const joined = joinStampedDrafts(undefined, first.draft, second.draft)
			for (const [side, other] of [
				[first, second],
				[second, first],
			] as const)
				for (const [field, change] of side.standing) {
					const { value } = world.changes.get(change)!
					if (other.known.has(change) || value === undefined) continue
					const standing = joined.stamps[field]!
					const isThere = JSON.stringify(valueAt(joined.content, field)) === JSON.stringify(value)
					const isAsked = joined.conflicts.some(({ path }) => path === field)
					expect(isThere || isAsked, `${field} by ${nameOf(standing)}`).toBe(true)
				}
		}),
		{ numRuns: 500 },
	)
})
const valueAt = (content: Record<string, unknown>, field: string): unknown =>
	field
		.split('.')
		.reduce<unknown>((here, key) => (here as Record<string, unknown> | undefined)?.[key], content)
