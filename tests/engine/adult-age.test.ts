/** One adult age for every room, also where a clinic had set it under one of its keys of before. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { readAs } from '../../shared/desk/ledger/ledger.ts'
import { assess } from '../../shared/engine/assess.ts'
import { isAdult, isMinor } from '../../shared/engine/facts/age.ts'
import { isTrainer } from '../../shared/engine/facts/trainer.ts'
import {
	openProtocol,
	protocolSchema,
	shippedProtocol,
} from '../../shared/engine/protocol/protocol.ts'
import { retiredKeys } from '../../shared/engine/protocol/retired.table.ts'
import { rows } from '../../shared/engine/protocol/rows.ts'
import { soles } from '../../shared/engine/visit/terms.ts'
import { visitSchema } from '../../shared/engine/visit/visit.ts'

const oldKeys = Object.keys(retiredKeys) as (keyof typeof retiredKeys)[]
const fileOf = (values: Record<string, number>) => ({ ...shippedProtocol, id: 'clinic', values })
const read = (values: Record<string, number>) => protocolSchema.parse(fileOf(values))
const adultFrom = (values: Record<string, number>) =>
	openProtocol(read(values)).value('player.adultFromYears')
const bornOn = (birthDate: string) =>
	visitSchema.parse({
		format: 'lastwright-visit',
		version: 1,
		player: { givenName: 'A', familyName: 'B', birthDate, sex: 'male' },
		visitDate: '2027-01-20',
		play: { code: 'association', organisedHoursPerWeek: 40 },
	})

describe('the adult age', () => {
	it('is reached on the birthday', () => {
		const protocol = openProtocol()
		expect([
			isAdult(bornOn('2009-01-20'), protocol),
			isAdult(bornOn('2009-01-21'), protocol),
			isMinor(bornOn('2009-01-21'), protocol),
		]).toEqual([true, false, true])
	})
	it('moves every room at once', () => {
		const visit = bornOn('2007-06-01')
		const ids = (values: Record<string, number>) =>
			assess(visit, [], read(values)).findings.map(({ id }) => id)
		const asMinor = assess(visit, [], read({ 'player.adultFromYears': 21 }))
		expect(ids({}).filter((id) => id.startsWith('loading.hours-over-age'))).toEqual([])
		expect(ids({ 'player.adultFromYears': 21 })).toContain('loading.hours-over-age')
		expect([assess(visit).growth === undefined, asMinor.growth === undefined]).toEqual([
			true,
			false,
		])
	})
	it('is not set below 18: what is published for adults is for 18 and over', () => {
		expect(protocolSchema.safeParse(fileOf({ 'player.adultFromYears': 17 })).success).toBe(false)
		expect(protocolSchema.safeParse(fileOf({ 'player.adultFromYears': 20 })).success).toBe(true)
	})
})
describe('a value set under a key of before', () => {
	it.each(oldKeys)('%s is read as the one age, and its key is no row any more', (key) => {
		expect(rows).not.toHaveProperty([key])
		expect(read({ [key]: 20, 'ankle.restrictedCm': 8 }).values).toEqual({
			'player.adultFromYears': 20,
			'ankle.restrictedCm': 8,
		})
	})
	it('nobody whom one of them held a minor is an adult by the change', () => {
		const anySet = fc.dictionary(fc.constantFrom(...oldKeys), fc.integer({ min: 0, max: 120 }))
		fc.assert(
			fc.property(anySet, (set) => {
				const highest = Math.max(
					...oldKeys.map((key) => set[key] ?? rows['player.adultFromYears'].value),
				)
				expect(adultFrom(set)).toBeGreaterThanOrEqual(highest)
				expect(adultFrom(set)).toBe(
					Math.max(rows['player.adultFromYears'].value, ...Object.values(set)),
				)
			}),
		)
	})
	it('gives way to one set under the new key', () =>
		expect(adultFrom({ 'growth.adultFromYears': 25, 'player.adultFromYears': 19 })).toBe(19))
	it('is refused by its own name where it never could be set', () => {
		const refused = protocolSchema.safeParse(fileOf({ 'growth.adultFromYears': -1 }))
		expect(refused.error?.issues.map(({ path }) => path)).toEqual([
			['values', 'growth.adultFromYears'],
		])
	})
	it('is read from a record too', () => {
		const record = readAs('protocol', 1, {
			file: fileOf({ 'footwear.adultFromYears': 19, 'ankle.restrictedCm': 8 }),
			why: 'tried',
			by: 'A. Example',
			at: '2027-01-20T09:00:00.000Z',
		})
		expect(record).toMatchObject({ state: 'read', unknown: [] })
		expect(record.state === 'read' && record.value.file.values).toEqual({
			'player.adultFromYears': 19,
			'ankle.restrictedCm': 8,
		})
	})
})
describe('a trainer', () => {
	it('is a pair for road or trail', () =>
		expect(soles.filter((sole) => isTrainer({ sole }))).toEqual(['trail', 'road']))
	it('is none where the sole is not recorded', () => expect(isTrainer({})).toBe(false))
})
