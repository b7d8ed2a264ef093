import { readdirSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { z } from 'zod'
import { defineKind } from '../../shared/desk/ledger/kind.ts'
import { kindNames, kinds, ledger, readValue } from '../../shared/desk/ledger/ledger.ts'
import { putBack } from '../../shared/desk/ledger/put-back.ts'
import { readWith } from '../../shared/desk/ledger/read.ts'
import { boundedRecord } from '../../shared/engine/plain/bounded.ts'
import { rows } from '../../shared/engine/protocol/rows.ts'
import { sentences } from '../../shared/engine/words/en/documents.table.ts'
import { clinic } from '../demo.ts'
import { formOf } from './form-of.ts'
import { forms } from './ledger-forms.table.ts'

const folder = new URL('../../shared/desk/ledger/kinds/', import.meta.url)

describe('the ledger', () => {
	it('holds every kind that has a file, each under its name', () => {
		const files = readdirSync(folder).map((file) => file.replace(/\.ts$/, ''))
		expect([...kindNames].sort()).toEqual(files.sort())
		for (const name of kindNames) expect(kinds[name].name).toBe(name)
		expect(ledger.size).toBe(kindNames.length)
	})
	it.each(kindNames)('knows all that there is to know of %s', (name) => {
		const { version, upgrades, words, mayWrite, travels } = kinds[name]
		expect(version).toBeGreaterThanOrEqual(1)
		expect(upgrades, 'a step from each earlier version').toHaveLength(version - 1)
		expect(words.one).not.toBe('')
		expect(words.many).not.toBe('')
		expect(mayWrite === 'program' || mayWrite.length > 0).toBe(true)
		expect(['player', 'clinic', 'no']).toContain(travels.pack)
	})
	it.each(kindNames)('has the form of %s that its version had', (name) => {
		const { schema, version } = kinds[name]
		const at = `${name} ${version}`
		expect(
			{ [at]: formOf(schema) },
			`The form of "${name}" changed. A form that was released stays: raise the version of the ` +
				'kind and write the step (shared/desk/ledger/README.md). In a version that was not ' +
				'released yet renew its line in tests/engine/ledger-forms.table.ts.',
		).toEqual({ [at]: forms[at] })
	})
	it('lists no form of a kind or version that is not there', () => {
		const known = kindNames.flatMap((name) =>
			Array.from({ length: kinds[name].version }, (_, index) => `${name} ${index + 1}`),
		)
		expect(Object.keys(forms).filter((form) => !known.includes(form))).toEqual([])
	})
	it('never lets home be told who works there, what they know, or how it mails', () => {
		for (const name of ['person', 'settings', 'mail', 'clinic'] as const)
			expect(kinds[name].travels.home, name).toBe(false)
	})
	it('reads what is longer than may be typed today at its length', () => {
		const notMeasured = { 'feet.left': 'x'.repeat(5000) }
		const visit = z.strictObject({ notMeasured: boundedRecord(200, z.string().max(1000), 500) })
		const { thingOf: _, foundBy: __, ...rest } = lace
		const long = defineKind({ ...rest, version: 1, upgrades: [], schema: visit })
		expect(readWith(long, 1, { notMeasured, newer: 1 })).toMatchObject({
			state: 'read',
			value: { notMeasured },
			unknown: [{ path: 'newer', value: 1 }],
		})
		const many = Object.fromEntries(Array.from({ length: 900 }, (_, at) => [`k${at}`, 'x']))
		expect(readWith(long, 1, { notMeasured: many })).toMatchObject({ value: { notMeasured: many } })
	})
	it('says that a kind is unknown', () => {
		expect(readValue('weather', 1, {})).toEqual({ state: 'unknown-kind' })
		expect(readValue('constructor', 1, {})).toEqual({ state: 'unknown-kind' })
	})
})

/** Version 1: { size }. 2: { sizeMm }. 3: { sizes }. */
const lace = defineKind({
	name: 'lace',
	version: 3,
	schema: z.strictObject({
		laceId: z.string(),
		sizes: z.array(z.strictObject({ side: z.enum(['left', 'right']), mm: z.number() })),
		colour: z.enum(['black', 'white']).optional(),
	}),
	upgrades: [
		(value) => {
			const { size, ...rest } = z.looseObject({ size: z.number() }).parse(value)
			return { ...rest, sizeMm: size * 10 }
		},
		(value) => {
			const { sizeMm, ...rest } = z.looseObject({ sizeMm: z.number() }).parse(value)
			const sizes = ['left', 'right'].map((side) => ({ side, mm: sizeMm }))
			return { ...rest, sizes }
		},
	],
	readsPartly: true,
	mayWrite: ['owner'],
	travels: { pack: 'no', home: false, share: false },
	chained: false,
	audit: 'create',
	words: { one: 'lace', many: 'laces' },
	thingOf: ({ laceId }) => laceId,
})
const both = (mm: number) => [
	{ side: 'left', mm },
	{ side: 'right', mm },
]

describe('a kind with earlier versions', () => {
	it.each([
		[1, { laceId: 'a', size: 90 }],
		[2, { laceId: 'a', sizeMm: 900 }],
		[3, { laceId: 'a', sizes: both(900) }],
	])('reads version %i', (version, value) => {
		expect(readWith(lace, version, value)).toEqual({
			state: 'read',
			value: { laceId: 'a', sizes: both(900) },
			unknown: [],
			newer: false,
		})
	})
	it('keeps what it does not know of an older version too', () => {
		expect(readWith(lace, 1, { laceId: 'a', size: 90, wax: 'thin' })).toMatchObject({
			state: 'read',
			unknown: [{ path: 'wax', value: 'thin' }],
		})
	})
	it('names a value that its step cannot take, and does not call it newer', () => {
		expect(readWith(lace, 1, { laceId: 'a' })).toMatchObject({ state: 'unreadable', newer: false })
	})
	it.each([0, -1, 1.5, Number.NaN])('refuses the version %d', (version) => {
		expect(readWith(lace, version, { laceId: 'a', sizes: [] })).toMatchObject({
			state: 'unreadable',
			problems: [{ path: 'version' }],
		})
	})
})

describe('a newer version', () => {
	const written = {
		laceId: 'a',
		sizes: [
			{ side: 'left', mm: 900 },
			{ side: 'both', mm: 800 },
			{ side: 'right', mm: 700, knots: 2 },
		],
		colour: 'green',
	}
	it('is read as far as it goes', () => {
		expect(readWith(lace, 4, written)).toMatchObject({
			state: 'read',
			newer: true,
			value: {
				laceId: 'a',
				sizes: [
					{ side: 'left', mm: 900 },
					{ side: 'right', mm: 700 },
				],
			},
		})
	})
	it('names what is left out, where it stood, and gives it back', () => {
		const reading = readWith(lace, 4, written)
		if (reading.state !== 'read') throw new Error('not read')
		expect(reading.unknown.map(({ path }) => path)).toEqual(['colour', 'sizes.1', 'sizes.2.knots'])
		const { sizes } = reading.value
		const next = { ...reading.value, sizes: [{ side: 'left', mm: 910 }, ...sizes.slice(1)] }
		expect(putBack(next, reading.value, reading.unknown)).toEqual({
			...written,
			sizes: [{ side: 'left', mm: 910 }, ...written.sizes.slice(1)],
		})
	})
	it('is damaged at the same version, where the same entries cannot stand', () => {
		expect(readWith(lace, 3, written)).toMatchObject({
			state: 'unreadable',
			newer: false,
			problems: [{ path: 'sizes.1.side' }, { path: 'colour' }],
		})
	})
	it('counts as a whole or not at all where half of it could permit what the whole forbids', () => {
		const strict = { ...lace, readsPartly: false }
		expect(readWith(strict, 4, written)).toMatchObject({ state: 'unreadable', newer: true })
		expect(readWith(strict, 4, { laceId: 'a', sizes: [], tip: 'x' })).toMatchObject({
			state: 'read',
			unknown: [{ path: 'tip' }],
		})
	})
	it('cannot be read without what the whole rests on', () => {
		expect(readWith(lace, 4, { sizes: [] })).toMatchObject({ state: 'unreadable', newer: true })
	})
})

describe('words and thresholds that another version of the catalogue had', () => {
	it('of the letterhead are left out by name, and the letterhead stands', () => {
		const texts = { 'no.such.sentence': 'We say', ...oneText }
		const reading = readValue('clinic', 1, { ...clinic, texts })
		expect(reading).toMatchObject({
			state: 'read',
			value: { name: clinic.name, texts: oneText },
			unknown: [{ path: 'texts.no.such.sentence', value: 'We say' }],
		})
	})
	it('of the protocol are left out by name, and the protocol is in force', () => {
		const [key = ''] = Object.keys(rows)
		const file = { format: 'lastwright-protocol', version: 1, id: 'clinic', revision: 3 }
		const values = { 'room.toCome': 4, [key]: rows[key as keyof typeof rows].value }
		const value = { file: { ...file, values }, why: 'w', by: 'A', at: '2027-01-20' }
		const reading = readValue('protocol', 1, value)
		expect(reading).toMatchObject({ state: 'read', unknown: [{ path: 'file.values.room.toCome' }] })
		if (reading.state !== 'read') throw new Error('not read')
		expect(putBack(reading.value, reading.value, reading.unknown)).toEqual(value)
	})
})
const [sentence = ''] = Object.keys(sentences)
const oneText = { [sentence]: sentences[sentence as keyof typeof sentences] }

describe('what is put back', () => {
	const list = z.strictObject({ items: z.array(z.strictObject({ id: z.string(), n: z.number() })) })
	const kind = { ...lace, schema: list, upgrades: [], version: 1 } as never
	const before = {
		items: [
			{ id: 'a', n: 1, x: 'ax' },
			{ id: 'b', n: 2, x: 'bx' },
		],
	}
	it('goes with its entry of a list, wherever that stands now', () => {
		const reading = readWith(kind, 1, before)
		if (reading.state !== 'read') throw new Error('not read')
		const next = {
			items: [
				{ id: 'c', n: 0 },
				{ id: 'b', n: 5 },
			],
		}
		expect(putBack(next, reading.value, reading.unknown)).toEqual({
			items: [
				{ id: 'c', n: 0 },
				{ id: 'b', n: 5, x: 'bx' },
			],
		})
	})
	it('never writes over what the next version says itself', () => {
		const unknown = [{ path: 'colour', value: 'green', parent: [], key: 'colour' }]
		expect(putBack({ colour: 'black' }, {}, unknown)).toEqual({ colour: 'black' })
		expect(putBack({}, {}, unknown)).toEqual({ colour: 'green' })
	})
})
