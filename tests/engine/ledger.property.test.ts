import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { kindNames, kinds, readValue } from '../../shared/desk/ledger/ledger.ts'
import { putBack } from '../../shared/desk/ledger/put-back.ts'
import { type NewEntry, newEntries, recordOf } from './random-records.ts'

type Group = Record<string, unknown>
interface Place {
	path: string[]
	group: Group
}
const isGroup = (value: unknown): value is Group =>
	typeof value === 'object' && value !== null && !Array.isArray(value)
const copy = <T>(value: T): T => JSON.parse(JSON.stringify(value)) as T

/** Groups whose keys are free: a key there is an entry like any other, not one of a newer version. */
const free = [
	'texts',
	'values',
	'notMeasured',
	'counts',
	'counted',
	'chosen',
	'assessment',
	'content',
	'record',
	'decisions',
	'drafts',
	'done',
	'params',
]
/** Every group of a value whose keys the schema knows. */
function groupsOf(value: unknown, path: string[] = []): Place[] {
	if (path.some((key) => free.includes(key))) return []
	if (Array.isArray(value))
		return value.flatMap((item, index) => groupsOf(item, [...path, String(index)]))
	if (!isGroup(value)) return []
	return [
		{ path, group: value },
		...Object.entries(value).flatMap(([key, inner]) => groupsOf(inner, [...path, key])),
	]
}
/** Puts the entries in, each into some group. @returns their paths */
function addEntries(value: unknown, entries: readonly NewEntry[]): string[] {
	const places = groupsOf(value)
	return [
		...new Set(
			entries.map(({ key, value: inner, where }) => {
				const place = places[where % places.length]!
				place.group[key] = inner
				return [...place.path, key].join('.')
			}),
		),
	]
}
const runs = { numRuns: 40 }

describe.each(kindNames)('a record of the kind %s', (kind) => {
	const { version } = kinds[kind]

	it('reads as it was written', () => {
		fc.assert(
			fc.property(recordOf(kind), (value) => {
				const written = copy(value)
				const reading = readValue(kind, version, written)
				expect(reading).toMatchObject({ state: 'read', unknown: [], newer: false })
			}),
			runs,
		)
	})
	it('keeps keys of a newer program by name, and gives them back when it is rewritten', () => {
		fc.assert(
			fc.property(recordOf(kind), newEntries, fc.boolean(), (value, entries, newer) => {
				const plain = readValue(kind, version, copy(value))
				const written = copy(value)
				const paths = addEntries(written, copy(entries))
				const reading = readValue(kind, newer ? version + 1 : version, copy(written))
				if (reading.state !== 'read' || plain.state !== 'read')
					throw new Error(`not read: ${JSON.stringify(reading)}`)
				expect(reading.value).toEqual(plain.value)
				expect(reading.newer).toBe(newer)
				expect(reading.unknown.map(({ path }) => path).sort()).toEqual(paths.sort())
				expect(putBack(copy(value), reading.value, reading.unknown)).toEqual(written)
			}),
			runs,
		)
	})
	it('never throws, whatever became of it', () => {
		fc.assert(
			fc.property(
				recordOf(kind),
				fc.jsonValue({ maxDepth: 2 }),
				fc.nat(),
				fc.constantFrom(0, 1, 2, 99, 0.5),
				(value, broken, where, written) => {
					const spoilt = spoil(copy(value), broken, where)
					const reading = readValue(kind, written, spoilt)
					if (reading.state === 'unreadable') expect(reading.problems.length).toBeGreaterThan(0)
					else if (reading.state === 'read')
						expect(kinds[kind].schema.safeParse(reading.value).success).toBe(true)
					expect(readValue(kind, written, broken).state).not.toBe('unknown-kind')
				},
			),
			runs,
		)
	})
})

/** Puts something else in the place of one part of a value. */
function spoil(value: unknown, broken: unknown, where: number): unknown {
	const places = groupsOf(value)
	const group = places[where % places.length]?.group
	const keys = Object.keys(group ?? {})
	const key = keys[where % keys.length]
	if (!group || key === undefined) return broken
	group[key] = broken
	return value
}
