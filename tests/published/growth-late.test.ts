/** Late maturers, stages that are not known, an adult stature that was told. Each with its source. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { assess } from '../../shared/engine/assess.ts'
import { growth } from '../../shared/engine/growth/growth.ts'
import type { Visit } from '../../shared/engine/visit/visit.ts'
import { protocol, visit } from './growth-visit.ts'

const feet = { left: { heelToToeMm: 262 }, right: { heelToToeMm: 261 } }
/** 15.3 years, 160 of 178 cm: 90 %, within 88 to 96 % (Monasterio 2021): around the spurt. */
const late = (more: Partial<Visit> = {}): Visit =>
	visit({
		birthDate: '2011-10-01',
		body: { statureCm: 160, adultStatureCm: 178 },
		feet,
		footwear: [{ id: 'p', sole: 'firm-ground', insideLengthMm: 272 }],
		...more,
	})

describe('a late maturer of 15', () => {
	const found = growth(late(), [], protocol)!
	it('is around the spurt, so the foot is still forecast and measured every three months', () => {
		expect([found.band, found.aroundSpurt]).toEqual(['around', true])
		expect(found.footForecast).toHaveLength(12)
		// 8.5 mm a year (Cheng 1997): a year on, 8.5 mm more; the slow edge may have stopped
		const last = found.footForecast!.at(-1)!
		expect(last.lengthMm - 262).toBeCloseTo(8.5, 1)
		expect(last.lowMm).toBe(262)
		expect(found.measureAgainBy).toBe('2027-04-20')
	})
	it('outgrows the pair, where one past the spurt does not', () => {
		expect(found.toeRoom[0]).toMatchObject({ state: 'runs-out', toeRoomMm: 10 })
		const past = growth(late({ body: { statureCm: 177, adultStatureCm: 178 } }), [], protocol)!
		expect([past.band, past.aroundSpurt, past.footForecast]).toEqual([
			'after',
			undefined,
			undefined,
		])
		expect([past.toeRoom[0]?.state, past.measureAgainBy]).toEqual(['lasts', '2027-07-20'])
	})
	it('toe room is counted from the length to fit', () => {
		expect(growth(late(), [], protocol, 266)!.toeRoom[0]?.toeRoomMm).toBe(6)
	})
})
describe('a stage that is not known', () => {
	const spurt = (of: Visit) => assess(of).findings.some(({ id }) => id === 'footwear.growth-spurt')
	it.each(['2021-12-01', '2020-12-01', '2009-06-01', '2013-05-02'])(
		'born %s, nothing but feet measured: no word of a spurt',
		(birthDate) => {
			const of = visit({ birthDate, feet })
			expect(growth(of, [], protocol)).toMatchObject({ band: 'uncertain', stageKnown: false })
			expect(spurt(of)).toBe(false)
		},
	)
	// best ages of the offset, boys 12 to 16 (limits of the authors' web utility)
	it('an offset alone, outside the ages at which it is useful, is none either', () => {
		const short = { statureCm: 158, sittingHeightCm: 80, massKg: 44 }
		const at17 = growth(visit({ birthDate: '2009-06-01', body: short }), [], protocol)!
		expect([at17.stageKnown, at17.aroundSpurt]).toEqual([true, undefined])
	})
	it('around the spurt it is said', () => expect(spurt(late())).toBe(true))
	it('a growing heel is of growing bone: none at 40', () => {
		const heel = (birthDate: string) =>
			assess(
				visit({
					birthDate,
					conditions: [{ condition: 'calcaneal-apophysitis', side: 'left', status: 'current' }],
				}),
			).findings.map(({ id }) => id)
		expect(heel('1986-06-01')).not.toContain('footwear.growing-heel')
		expect(heel('1986-06-01')).toContain('conditions.unusual-age.calcaneal-apophysitis.left')
		expect(heel('2015-06-01')).toContain('footwear.growing-heel')
	})
})
describe('an adult stature that was told', () => {
	const told = (adultStatureCm: number) =>
		growth(
			visit({
				body: {
					statureCm: 160,
					massKg: 48,
					motherStatureCm: 166,
					fatherStatureCm: 181,
					adultStatureCm,
				},
			}),
			[],
			protocol,
		)!
	it('stands in place of the equation, without an error that nobody knows', () => {
		const found = told(180)
		expect(found.predictedAdultStatureCm).toBe(180)
		expect(found.percentAdultStature).toBeCloseTo(88.889, 3)
		expect([found.percentAdultStatureRange, found.predictedAdultStatureRangeCm]).toEqual([
			undefined,
			undefined,
		])
		expect(found.workings.find(({ id }) => id === 'growth.adult-stature')?.lines).toEqual([
			'180 cm',
		])
	})
	it('is never below the present stature', () => {
		const found = told(150)
		expect(found.predictedAdultStatureCm).toBe(160)
		expect(
			found.findings.find(({ code }) => code === 'growth.adult-stature-entered')?.params,
		).toEqual({ enteredCm: 150, held: true })
	})
})
it('two earlier visits of one day: their order on coming in decides nothing', () => {
	const then = (heelToToeMm: number, statureCm: number, visitDate: string): Visit => ({
		...late({ feet: { left: { heelToToeMm } }, body: { statureCm, adultStatureCm: 178 } }),
		visitDate,
	})
	const earlier = [
		then(255, 156, '2026-09-20'),
		then(258, 157, '2026-09-20'),
		then(256, 155, '2026-09-20'),
		then(250, 150, '2026-03-20'),
		then(262, 160, '2027-01-20'),
	]
	const known = assess(late(), earlier)
	fc.assert(
		fc.property(fc.shuffledSubarray(earlier, { minLength: earlier.length }), (shuffled) => {
			expect(assess(late(), shuffled)).toEqual(known)
		}),
		{ numRuns: 12 },
	)
})
