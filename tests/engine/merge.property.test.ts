/**
 * Merging is a union: any order of any set of stores means the same, twice is once, and nothing is
 * overwritten.
 */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Carried, CarriedDraft } from '../../shared/desk/outreach/carried.ts'
import { contestedConsents, joinFields } from '../../shared/desk/outreach/heads.ts'
import {
	type Coming,
	countsAgree,
	draftDigest,
	type Holding,
	playerOf,
	recordDigest,
	union,
	viewOf,
} from '../../shared/desk/outreach/merge.ts'

const at = (tick: number) => `2027-01-20T09:${String(tick % 60).padStart(2, '0')}:00.000Z`
const player = (over: object = {}) => ({
	playerId: 'p1',
	player: {
		givenName: 'Tui',
		familyName: 'Ashdown',
		birthDate: '2013-05-02',
		sex: 'male',
		...over,
	},
})
const record = (over: Partial<Carried>): Carried => ({
	id: 'r',
	kind: 'player',
	at: at(over.tick ?? 1),
	origin: 'home',
	tick: 1,
	value: player(),
	about: 'p1',
	...over,
})
const base: Carried[] = [
	record({ id: 'base', tick: 1 }),
	record({
		id: 'c0',
		kind: 'consent',
		tick: 2,
		value: { consentId: 'c0', purpose: 'photos', recipient: '', decision: 'permit' },
	}),
	record({ id: 's0', kind: 'shelf', tick: 3, value: { models: [] } }),
]
delete base[2]!.about
const draft = (id: string, words: string): CarriedDraft => ({ id, at: at(1), value: { words } })
const startDraft = draft('d1', 'as it went out')

/** What one place may do with the copy it was given. */
const deed = fc.oneof(
	fc.record({
		do: fc.constant('details' as const),
		field: fc.constantFrom('club', 'phone', 'givenName'),
		to: fc.constantFrom('a', 'b', 'c'),
	}),
	fc.record({
		do: fc.constant('consent' as const),
		decision: fc.constantFrom('permit' as const, 'deny' as const),
		withdrawn: fc.boolean(),
	}),
	fc.record({ do: fc.constant('visit' as const), note: fc.string({ maxLength: 5 }) }),
	fc.record({ do: fc.constant('shelf' as const), size: fc.nat(3) }),
	fc.record({ do: fc.constant('draft' as const), words: fc.constantFrom('x', 'y', 'z') }),
	fc.record({ do: fc.constant('sign draft' as const) }),
	// an id clash or a record altered on the way
	fc.record({
		do: fc.constant('alter' as const),
		id: fc.constantFrom('base', 'c0', 'clash'),
		to: fc.constantFrom('q', 'r'),
	}),
)
type Deed = typeof deed extends fc.Arbitrary<infer Made> ? Made : never
/** A copy while a place works on it. */
class Place {
	readonly records = [...base]
	drafts = [startDraft]
	readonly #origin: string
	#tick = 10
	readonly #last = { player: 'base', consent: 'c0', shelf: 's0' }
	#fields = {}
	constructor(origin: string) {
		this.#origin = origin
	}
	#next() {
		const tick = ++this.#tick
		return { id: `${this.#origin}-${tick}`, origin: this.#origin, tick }
	}
	/** Writes a version of what has one. */
	#follow(kind: 'player' | 'consent' | 'shelf', value: (id: string) => unknown): void {
		const next = this.#next()
		const follows = this.#last[kind]
		this.records.push(record({ ...next, kind, follows, value: value(next.id) }))
		this.#last[kind] = next.id
	}
	do(doing: Deed): void {
		if (doing.do === 'details') {
			this.#fields = { ...this.#fields, [doing.field]: doing.to }
			this.#follow('player', () => player(this.#fields))
		}
		if (doing.do === 'consent')
			this.#follow('consent', (consentId) => ({
				consentId,
				purpose: 'photos',
				recipient: '',
				decision: doing.decision,
				...(doing.withdrawn ? { withdrawn: '2027-01-20' } : {}),
			}))
		if (doing.do === 'visit') {
			const next = this.#next()
			const value = { visitId: next.id, note: doing.note }
			this.records.push(record({ ...next, kind: 'visit', value }))
		}
		if (doing.do === 'shelf') this.#follow('shelf', () => ({ models: Array(doing.size).fill(0) }))
		this.#doToDraft(doing)
		if (doing.do === 'alter') this.#alter(doing.id, doing.to)
	}
	#doToDraft(doing: Deed): void {
		if (doing.do === 'draft' && this.drafts.length > 0)
			this.drafts = [draft('d1', `${this.#origin} ${doing.words}`)]
		if (doing.do === 'sign draft') this.drafts = []
	}
	#alter(id: string, club: string): void {
		const index = this.records.findIndex((known) => known.id === id)
		const known = this.records[index]
		if (known) this.records[index] = { ...known, value: { ...(known.value as object), club } }
		else this.records.push(record({ id, origin: 'home', tick: 5, value: player({ club }) }))
	}
}
function lived(origin: string, deeds: readonly Deed[]): Coming {
	const place = new Place(origin)
	for (const doing of deeds) place.do(doing)
	const { records, drafts } = place
	return { records, drafts, bases: [{ id: 'd1', digest: draftDigest(startDraft) }] }
}
const stores = fc
	.array(fc.array(deed, { maxLength: 6 }), { minLength: 1, maxLength: 4 })
	.map((all) => all.map((deeds, index) => lived(`laptop${index}`, deeds)))
const home = fc.array(deed, { maxLength: 4 }).map((deeds) => lived('home', deeds))
const all = (at: Holding, order: readonly Coming[]) =>
	order.reduce((now, coming) => union(now, coming), at)
const shuffled = (list: readonly Coming[]) =>
	fc.shuffledSubarray([...list], { minLength: list.length, maxLength: list.length })

describe('merging', () => {
	test('any order of merging any set of stores gives the same state', () => {
		fc.assert(
			fc.property(
				home,
				stores.chain((list) => fc.tuple(fc.constant(list), shuffled(list))),
				(at, [list, shuffledList]) => {
					expect(viewOf(all(at, list))).toEqual(viewOf(all(at, shuffledList)))
				},
			),
			{ numRuns: 300 },
		)
	})
	test('twice merged is once merged', () => {
		fc.assert(
			fc.property(home, stores, (at, list) => {
				const once = all(at, list)
				const taken = new Set(
					list.flatMap(({ drafts }) => drafts.map((own) => `${own.id} ${draftDigest(own)}`)),
				)
				expect(viewOf(list.reduce((now, coming) => union(now, coming, taken), once))).toEqual(
					viewOf(once),
				)
			}),
			{ numRuns: 200 },
		)
	})
	test('nothing that was recorded anywhere is missing afterwards, and every edited draft stands', () => {
		fc.assert(
			fc.property(home, stores, (at, list) => {
				const merged = all(at, list)
				const have = new Set(merged.records.map(recordDigest))
				const words = merged.drafts.map(draftDigest)
				const places = [at, ...list]
				for (const own of places.flatMap(({ records }) => records))
					expect(have).toContain(recordDigest(own))
				const edited = places
					.flatMap(({ drafts }) => drafts.map(draftDigest))
					.filter((digest) => digest !== draftDigest(startDraft))
				for (const digest of edited) expect(words).toContain(digest)
			}),
			{ numRuns: 200 },
		)
	})
})
describe('rules', () => {
	const line = [
		record({ id: 'base' }),
		record({ id: 'h', tick: 5, follows: 'base', value: player({ club: 'Rovers', phone: '1' }) }),
		record({
			id: 'l',
			tick: 6,
			origin: 'laptop',
			follows: 'base',
			value: player({ club: 'United', givenName: 'Tūī' }),
		}),
	]
	test('what one place changed is taken, what two changed differently is asked with both values', () => {
		const { value, questions } = joinFields(line, playerOf)
		expect(value).toMatchObject({ givenName: 'Tūī', phone: '1' })
		expect(questions).toEqual([
			{
				field: 'club',
				values: [
					expect.objectContaining({ record: 'h', value: 'Rovers' }),
					expect.objectContaining({ record: 'l', value: 'United' }),
				],
			},
		])
	})
	test('an answer puts the question to rest', () => {
		const answered = [
			...line,
			record({
				id: 'n',
				tick: 9,
				follows: 'l',
				value: player({ club: 'Rovers', phone: '1', givenName: 'Tūī' }),
			}),
		]
		expect(joinFields(answered, playerOf, new Set(['h', 'l']))).toMatchObject({
			questions: [],
			value: { club: 'Rovers' },
			heads: ['n'],
		})
	})
	test('the stricter consent stands, a withdrawal above all', () => {
		const consent = (id: string, origin: string, over: object) => ({
			...record({
				id,
				origin,
				tick: id === 'c0' ? 1 : 5,
				...(id === 'c0' ? {} : { follows: 'c0' }),
			}),
			value: {
				consentId: id,
				purpose: 'photos',
				recipient: '',
				decision: 'permit' as const,
				...over,
			},
		})
		const apart = [
			consent('c0', 'home', {}),
			consent('no', 'home', { decision: 'deny' }),
			consent('yes', 'laptop', {}),
			consent('gone', 'other', { withdrawn: '2027-01-21' }),
		]
		expect(contestedConsents(apart as never)).toMatchObject([{ standing: 'gone' }])
		expect(contestedConsents(apart.slice(0, 3) as never)).toMatchObject([{ standing: 'no' }])
		expect(contestedConsents(apart as never, new Set(['no', 'gone']))).toEqual([])
	})
	test('counts that do not add up are seen', () => {
		expect(
			countsAgree({
				in: 5,
				added: 2,
				already: 1,
				quarantined: 1,
				heldBack: 1,
				before: 10,
				after: 12,
			}),
		).toBe(true)
		expect(
			countsAgree({
				in: 5,
				added: 2,
				already: 1,
				quarantined: 0,
				heldBack: 1,
				before: 10,
				after: 12,
			}),
		).toBe(false)
		expect(
			countsAgree({
				in: 1,
				added: 1,
				already: 0,
				quarantined: 0,
				heldBack: 0,
				before: 10,
				after: 10,
			}),
		).toBe(false)
	})
})
