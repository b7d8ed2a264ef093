/** Memory is what reading all records in order makes, however it was extended. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { joinPlayers } from '../../electron/services/records/join-players.ts'
import { keeperOf } from '../../electron/services/records/keep.ts'
import { Memory } from '../../electron/services/records/memory.ts'
import { forget, remember } from '../../electron/services/records/remember.ts'
import { Store, type StoredRecord } from '../../electron/store/store.ts'
import { inOrder } from '../../shared/desk/outreach/carried.ts'
import { folder, passphrase, player } from './bench-app.ts'

const at = '2027-01-20T09:30:00.000Z'
async function opened() {
	const store = new Store(folder(), { cost: 1024 })
	await store.setUp(passphrase)
	const memory = new Memory()
	return { store, memory, ...keeperOf(store, memory, () => new Date(at)) }
}
/** All that a screen could see of what is remembered. */
const shownOf = ({ people, players, holds, outbox, outreach, clinic, shelf, unread }: Memory) => ({
	people: people.all().sort((left, right) => (left.personId < right.personId ? -1 : 1)),
	players: players
		.ordered()
		.map(({ card, player: details, recordId }) => [card, details, recordId]),
	merges: [...players.merges.values()],
	holds: [...holds.byPlayer].sort(),
	contacts: outbox.contacts
		.all()
		.sort((left, right) => (left.contactId < right.contactId ? -1 : 1)),
	joined: [...outreach.joined].sort(),
	protocols: clinic.protocolVersions,
	shelf: [shelf.shelf, shelf.recordId],
	letterhead: clinic.letterhead,
	unread: unread.words().sort(),
})
const value = {
	person: (n: number) => ({
		...{ personId: 'p', slot: 's', name: `N${n}`, registration: '', role: 'student' },
		active: n % 2 === 0,
	}),
	player: (n: number) => ({ playerId: `P${n % 2}`, player: { ...player, club: `C${n}` } }),
	merge: (n: number) => ({
		...{ mergeId: `m${n % 2}`, from: `P${n % 2}`, into: `P${1 - (n % 2)}` },
		...{ undone: n > 5, reason: 'same person' },
	}),
	hold: (n: number) => ({ playerId: `P${n % 2}`, reason: 'dispute', on: n % 3 > 0 }),
	contact: (n: number) => ({
		...{ contactId: `c${n % 2}`, playerId: 'P0', name: `N${n}`, role: 'doctor', by: 'A', at },
		removed: n % 2 === 1,
	}),
	shelf: (n: number) => ({ format: 'lastwright-shelf', version: 1, note: `n${n}`, models: [] }),
	protocol: (n: number) => ({
		file: { format: 'lastwright-protocol', version: 1, id: 'clinic', revision: n + 1 },
		...{ why: 'why', by: 'A', at },
	}),
	answer: (n: number) => ({ what: 'version', of: 'x', joins: [`j${n}`], chosen: [], by: 'A' }),
}
type Kind = keyof typeof value
const versions: fc.Arbitrary<StoredRecord[]> = fc
	.array(
		fc.record({
			kind: fc.constantFrom(...(Object.keys(value) as Kind[])),
			tick: fc.integer({ min: 1, max: 30 }),
			origin: fc.constantFrom('aaaaaaaaaaaa', 'bbbbbbbbbbbb'),
			n: fc.integer({ min: 0, max: 8 }),
			broken: fc.integer({ min: 0, max: 9 }).map((drawn) => drawn === 9),
		}),
		{ maxLength: 12 },
	)
	.map((drawn) =>
		drawn.map(({ kind, tick, origin, n, broken }, index) => ({
			...{ id: `r${index}`, kind, version: 1, at, origin, tick, number: index },
			value: broken ? 0 : value[kind](n),
		})),
	)
const remembering = (records: readonly StoredRecord[]): Memory => {
	const memory = new Memory()
	for (const record of records) remember(memory, record)
	return memory
}

describe('memory', () => {
	it('is the same in whatever order records come', () => {
		fc.assert(
			fc.property(
				versions.chain((records) =>
					fc.tuple(
						fc.constant(records),
						fc.shuffledSubarray(records, { minLength: records.length }),
					),
				),
				([records, shuffled]) => {
					const inOrderRead = remembering(records.toSorted(inOrder))
					expect(shownOf(remembering(shuffled))).toEqual(shownOf(inOrderRead))
				},
			),
			{ numRuns: 300 },
		)
	})
	it('forgets what was destroyed as if it had never been read', () => {
		fc.assert(
			fc.property(versions, fc.constantFrom('P0', 'P1'), (records, gone) => {
				// all that is about a player goes together
				const isAbout = ({ value: of }: StoredRecord) =>
					typeof of === 'object' && Object.values(of ?? {}).includes(gone)
				const memory = remembering(records.toSorted(inOrder))
				forget(memory, new Set(records.filter(isAbout).map(({ id }) => id)))
				const rest = records.filter((record) => !isAbout(record))
				expect(shownOf(memory)).toEqual(shownOf(remembering(rest.toSorted(inOrder))))
			}),
			{ numRuns: 300 },
		)
	})
	it('is extended once the transaction is committed, and not by one that is rolled back', async () => {
		const { store, memory, keep, keepTogether } = await opened()
		const record = { kind: 'player' as const, value: value.player(1), about: 'P1' }
		expect(() =>
			store.together(() => {
				keep(record)
				keepTogether([record])
				expect(memory.players.byId.size).toBe(0)
				throw new Error('full')
			}),
		).toThrow('full')
		expect(memory.players.byId.size).toBe(0)
		expect(store.load(['player']).records).toEqual([])
		store.together(() => keep(record))
		expect(memory.players.nameOf('P1')).toBe('Zoë Marlowe-Nguyễn')
		store.close()
	})
	it('never takes a value that the ledger refuses', async () => {
		const { store, keep } = await opened()
		expect(() => keep({ kind: 'player', value: { playerId: 'P1' } })).toThrow(
			/not a player: player/,
		)
		expect(store.load(['player']).records).toEqual([])
		store.close()
	})
	it('joins what two places changed of a player, when the second comes', async () => {
		const { store, memory, keep, takeIn } = await opened()
		const first = keep({ kind: 'player', value: value.player(0), about: 'P0' })
		const here = { ...player, club: 'C0', phone: '12' }
		keep({ kind: 'player', value: { playerId: 'P0', player: here }, about: 'P0', follows: first })
		const away = { ...player, club: 'Harbour' }
		takeIn({
			...{ id: 'aaaaaaaa-0000-4000-8000-000000000000', kind: 'player', at, follows: first },
			...{ origin: 'cccccccccccc', tick: 2, about: 'P0' },
			value: { playerId: 'P0', player: away },
		})
		const joined = { ...player, club: 'Harbour', phone: '12' }
		expect(memory.players.entry('P0').player).toEqual(joined)
		const read = new Memory()
		store.each(['player'], (record) => remember(read, record), [])
		joinPlayers(read, store)
		expect(shownOf(read).players).toEqual(shownOf(memory).players)
		store.close()
	})
	it('does not go round where two places joined the same players both ways', () => {
		const into = (from: string, to: string, tick: number): StoredRecord => ({
			...{
				id: `${from}${to}`,
				kind: 'merge',
				version: 1,
				at,
				origin: 'aaaaaaaaaaaa',
				tick,
				number: 1,
			},
			value: { mergeId: `${from}${to}`, from, into: to, undone: false, reason: 'same person' },
		})
		const memory = remembering([into('P0', 'P1', 1), into('P1', 'P0', 2), into('P1', 'P1', 3)])
		expect(memory.players.idsOf('P1')).toEqual(['P1', 'P0'])
		expect(memory.players.rootOf('P0')).toBe('P1')
		expect(memory.players.mergedAway('P1')).toBe(false)
	})
	it('lets nothing leave that its unreadable newest version may have called back', () => {
		const item = (tick: number, of: unknown, follows?: string): StoredRecord => ({
			...{
				id: `r${tick}`,
				kind: 'contact',
				version: 1,
				at,
				origin: 'aaaaaaaaaaaa',
				tick,
				number: tick,
			},
			...(follows !== undefined && { follows }),
			value: of,
		})
		const memory = remembering([item(1, value.contact(0)), item(2, { removed: true }, 'r1')])
		expect(memory.outbox.contacts.all()).toEqual([])
		expect(memory.warnings).toHaveLength(1)
	})
})
