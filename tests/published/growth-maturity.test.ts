/** Maturity equations: published and recomputed check values, each with its source. */
import { describe, expect, it } from 'vitest'
import { khamisRocheCm } from '../../shared/engine/growth/adult-stature.ts'
import { lmsAt } from '../../shared/engine/growth/centiles.ts'
import { growth } from '../../shared/engine/growth/growth.ts'
import {
	fransenRatioBoys,
	mirwaldBoys,
	mirwaldGirls,
	mooreBoys,
	mooreGirls,
	mooreSittingBoys,
} from '../../shared/engine/growth/maturity.ts'
import { bandOf } from '../../shared/engine/growth/stage.ts'
import { cdcMass, cdcStature } from '../../shared/engine/protocol/norms/cdc2000.table.ts'
import { khamisRoche } from '../../shared/engine/protocol/norms/khamis-roche.table.ts'
import type { Visit } from '../../shared/engine/visit/visit.ts'
import { protocol, sized, visit } from './growth-visit.ts'

describe('maturity', () => {
	// Outputs documented by an open R package (growth.md 1.4), tolerance 0.006.
	it.each([
		[13.1992, 164.633, 77, 53.333, -1.26, -1.64],
		[13.5359, 168.1, 85.8, 53.6, -0.07, 0.11],
		[14.1985, 173.7, 86.5, 60.9, 0.41, 0.37],
		[13.0705, 167.533, 87.5, 52.2, -0.11, 0.18],
		[15.4251, 174.15, 91.2, 61.7, 1.65, 1.68],
	])('boy %f y, documented', (a, h, sh, m, mirwald, fransen) => {
		expect(Math.abs(mirwaldBoys(sized(a, h, sh, m)) - mirwald)).toBeLessThan(0.006)
		expect(Math.abs(a - a / fransenRatioBoys(sized(a, h, sh, m)) - fransen)).toBeLessThan(0.006)
	})
	it.each([
		[11.2991, 152, 78.5, 38.5, -0.49],
		[11.9699, 156, 80.8, 43.5, 0.16],
	])('girl %f y, documented', (a, h, sh, m, mo) =>
		expect(Math.abs(mirwaldGirls(sized(a, h, sh, m)) - mo)).toBeLessThan(0.006),
	)
	// Recomputed from the printed equations (growth.md 1.5), tolerance 0.0005.
	it.each([
		[11.5, 145, 75.5, 36, -2.3099, -2.0209, -1.9763, 0.827785],
		[12.5, 152, 78.5, 41.5, -1.495, -1.226, -1.1364, 0.895137],
		[13.8, 165, 85.5, 54, 0.0445, 0.1714, 0.2254, 1.015312],
		[16, 177, 92.5, 68, 2.1925, 2.2825, 2.2303, 1.148706],
	])('boy %f y, recomputed', (a, h, sh, m, mirwald, sitting, moore, ratio) => {
		expect(mirwaldBoys(sized(a, h, sh, m))).toBeCloseTo(mirwald, 3)
		expect(mooreSittingBoys(a, sh)).toBeCloseTo(sitting, 3)
		expect(mooreBoys(a, h)).toBeCloseTo(moore, 3)
		expect(fransenRatioBoys(sized(a, h, sh, m))).toBeCloseTo(ratio, 5)
	})
	it.each([
		[11, 146, 77, 38, -0.8677, -0.9267],
		[12, 153, 81, 43.5, 0.0996, 0.0447],
		[14.5, 163, 87, 55, 2.1372, 2.2724],
		[15.5, 165, 88, 57, 2.8013, 3.0917],
	])('girl %f y, recomputed', (a, h, sh, m, mirwald, moore) => {
		expect(mirwaldGirls(sized(a, h, sh, m))).toBeCloseTo(mirwald, 3)
		expect(mooreGirls(a, h)).toBeCloseTo(moore, 3)
	})
	it('bands are inclusive on around', () =>
		expect([bandOf(-1, -1, 1), bandOf(-1.0001, -1, 1), bandOf(1, -1, 1)]).toEqual([
			'around',
			'before',
			'around',
		]))
	it('Fransen is for boys only and absent for girls', () => {
		const body = { statureCm: 158, sittingHeightCm: 82, massKg: 46 }
		expect(Object.keys(growth(visit({ body }), [], protocol)!.maturityOffsetYears).sort()).toEqual([
			'fransen',
			'mirwald',
			'moore',
			'mooreSitting',
		])
		expect(
			Object.keys(growth(visit({ body, sex: 'female' }), [], protocol)!.maturityOffsetYears).sort(),
		).toEqual(['mirwald', 'moore'])
	})
	it('treatment and age outside the limits leave no estimate', () => {
		const body = {
			statureCm: 158,
			sittingHeightCm: 82,
			massKg: 46,
			motherStatureCm: 165,
			fatherStatureCm: 180,
		}
		const treated = growth(
			visit({ body: { ...body, growthOrHormoneTreatment: true } }),
			[],
			protocol,
		)!
		expect([
			treated.maturityOffsetYears,
			treated.predictedAdultStatureCm,
			treated.findings.some((finding) => finding.id === 'growth.treatment'),
		]).toEqual([{}, undefined, true])
		// the same for a corticosteroid taken for long: common practice, no source
		for (const steroid of [true, false]) {
			const found = growth(
				{ ...visit({ body }), screening: { corticosteroidLongTerm: steroid } },
				[],
				protocol,
			)!
			expect([
				Object.keys(found.maturityOffsetYears).length === 0,
				found.predictedAdultStatureCm === undefined,
				found.band === 'uncertain',
				found.findings.some((finding) => finding.id === 'growth.treatment'),
			]).toEqual([steroid, steroid, steroid, steroid])
		}
		expect(
			growth(visit({ body, birthDate: '2019-01-01' }), [], protocol)!.maturityOffsetYears,
		).toEqual({})
		expect(growth(visit({ birthDate: '2009-01-20' }), [], protocol)).toBeUndefined()
	})
})
describe('ages at peak height velocity (growth.md 1.5, recomputed), tolerance 0.0005', () => {
	it.each([
		['male', 11.5, 145, 75.5, 36, 13.8099],
		['male', 12.5, 152, 78.5, 41.5, 13.995],
		['male', 13.8, 165, 85.5, 54, 13.7555],
		['male', 16, 177, 92.5, 68, 13.8075],
		['female', 11, 146, 77, 38, 11.8677],
		['female', 12, 153, 81, 43.5, 11.9004],
		['female', 14.5, 163, 87, 55, 12.3628],
		['female', 15.5, 165, 88, 57, 12.6987],
	] as const)('Mirwald, %s %f y', (sex, a, h, sh, m, peak) =>
		expect(
			Math.abs(a - (sex === 'male' ? mirwaldBoys : mirwaldGirls)(sized(a, h, sh, m)) - peak),
		).toBeLessThan(0.0005),
	)
	it.each([
		[11, 146, 11.9267],
		[12, 153, 11.9553],
		[14.5, 163, 12.2276],
		[15.5, 165, 12.4083],
	])('Moore, girl %f y', (a, h, peak) =>
		expect(Math.abs(a - mooreGirls(a, h) - peak)).toBeLessThan(0.0005),
	)
	// The room gives the same: age less offset, and Fransen's own age.
	it('as the room gives them', () => {
		const result = growth(
			visit({ body: { statureCm: 165, sittingHeightCm: 85.5, massKg: 54 } }),
			[],
			protocol,
		)!
		for (const method of ['mirwald', 'moore', 'mooreSitting', 'fransen'] as const)
			expect(result.ageAtPeakHeightVelocityYears[method]!).toBeCloseTo(
				result.decimalAgeYears - result.maturityOffsetYears[method]!,
				9,
			)
		expect(result.ageAtPeakHeightVelocityYears.fransen!).toBeCloseTo(
			result.decimalAgeYears / fransenRatioBoys(sized(result.decimalAgeYears, 165, 85.5, 54)),
			9,
		)
	})
})
describe('Fransen 2018, boys', () => {
	// Documented by an open R package (growth.md 1.4): age at peak, tolerance 0.006.
	it.each([
		[13.1992, 164.633, 77, 53.333, 14.84],
		[13.5359, 168.1, 85.8, 53.6, 13.43],
		[14.1985, 173.7, 86.5, 60.9, 13.83],
		[13.0705, 167.533, 87.5, 52.2, 12.89],
		[15.4251, 174.15, 91.2, 61.7, 13.74],
	])('%f y, documented', (a, h, sh, m, peak) =>
		expect(Math.abs(a / fransenRatioBoys(sized(a, h, sh, m)) - peak)).toBeLessThan(0.006),
	)
	// Recomputed (growth.md 1.5), tolerance 0.0005.
	it.each([
		[11.5, 145, 75.5, 36, 13.8925, -2.3925],
		[12.5, 152, 78.5, 41.5, 13.9643, -1.4643],
		[13.8, 165, 85.5, 54, 13.5919, 0.2081],
		[16, 177, 92.5, 68, 13.9287, 2.0713],
	])('%f y, recomputed', (a, h, sh, m, peak, offset) => {
		const age = a / fransenRatioBoys(sized(a, h, sh, m))
		expect(Math.abs(age - peak)).toBeLessThan(0.0005)
		expect(Math.abs(a - age - offset)).toBeLessThan(0.0005)
	})
})
describe('sensitivity (growth.md 1.5, recomputed)', () => {
	const boy = sized(13.8, 165, 85.5, 54),
		girl = sized(12, 153, 81, 43.5)
	it('one cm of sitting height, one kg, a tenth of a year', () => {
		expect(
			[
				mirwaldBoys({ ...boy, sittingHeightCm: 86.5 }) - mirwaldBoys(boy),
				mirwaldGirls({ ...girl, sittingHeightCm: 82 }) - mirwaldGirls(girl),
			].map((difference) => difference.toFixed(3)),
		).toEqual(['0.121', '0.042'])
		expect(
			[
				mirwaldBoys({ ...boy, massKg: 55 }) - mirwaldBoys(boy),
				mirwaldGirls({ ...girl, massKg: 44.5 }) - mirwaldGirls(girl),
			].map((difference) => difference.toFixed(3)),
		).toEqual(['0.014', '0.018'])
		expect(
			[
				mirwaldBoys({ ...boy, ageYears: 13.9 }) - mirwaldBoys(boy),
				mirwaldGirls({ ...girl, ageYears: 12.1 }) - mirwaldGirls(girl),
			].map((difference) => difference.toFixed(3)),
		).toEqual(['0.048', '0.052'])
		const offset = (at: typeof boy) => at.ageYears - at.ageYears / fransenRatioBoys(at)
		expect((offset({ ...boy, sittingHeightCm: 86.5 }) - offset(boy)).toFixed(3)).toBe('0.137')
	})
})
describe('the five traps (growth.md 0)', () => {
	const body = {
		statureCm: 158,
		sittingHeightCm: 82,
		massKg: 46,
		motherStatureCm: 165,
		fatherStatureCm: 180,
	}
	// 1: the weight column of the 1994 print is ten times too small; it makes a median girl of 10
	// 177.2 cm (growth.md 2.3).
	it('1: the weights are those of the 1995 erratum', () => {
		const [h, m] = [cdcStature, cdcMass].map((table) => lmsAt(table, 'female', 120)!.m) as [
			number,
			number,
		]
		const adult = khamisRocheCm({
			sex: 'female',
			ageYears: 10,
			statureCm: h,
			massKg: m,
			motherCm: 163.34,
			fatherCm: 176.85,
			reported: false,
		})!
		expect(adult).toBeCloseTo(164.9, 0)
		const weight = khamisRoche.female.find(([age]) => age === 10)![3]
		expect(adult - 0.9 * weight * (m / 0.45359237) * 2.54).toBeCloseTo(177.2, 0)
		expect(khamisRoche.male.find(([age]) => age === 7.5)![3]).toBe(-0.047256)
		expect(khamisRoche.male.find(([age]) => age === 9)![3]).toBe(-0.045254)
	})
	// 2: mass over stature is taken a hundred times; without it the boy of 13.8 comes out at -0.698
	// (growth.md 0).
	it('2: mass / stature x 100', () => {
		const boy = mirwaldBoys(sized(13.8, 165, 85.5, 54))
		expect(boy).toBeCloseTo(0.0445, 3)
		expect(boy - 0.02292 * (54 / 165) * 99).toBeCloseTo(-0.698, 3)
	})
	// 3: constants misprinted elsewhere: -8.125741, 0.02293, a minus before 6.986, -7999994, and
	// 0.2683693 subtracted.
	it('3: the constants are the right ones', () => {
		expect(mooreSittingBoys(0, 85)).toBe(-8.128741)
		expect(mooreBoys(0, 165)).toBe(-7.999994)
		expect(mirwaldBoys(sized(0, 100, 0, 1)) - mirwaldBoys(sized(0, 100, 0, 0))).toBeCloseTo(
			0.02292,
			9,
		)
		expect(fransenRatioBoys(sized(0, 0, 0, 0))).toBe(6.986547255416)
	})
	it('4: Fransen is for boys: absent for a girl, never 0', () =>
		expect(
			growth(visit({ body, sex: 'female' }), [], protocol)!.maturityOffsetYears,
		).not.toHaveProperty('fransen'))
	it('5: one method over time', () => {
		const at = (visitDate: string, recorded: Visit['body']): Visit => ({
			...visit({ body: recorded }),
			visitDate,
		})
		const { statureCm, sittingHeightCm, massKg } = body
		const first = at('2026-07-01', { statureCm, sittingHeightCm, massKg }),
			now = at('2027-01-20', body)
		expect(growth(now, [], protocol)).toMatchObject({ method: 'percentAdultStature' })
		expect(growth(now, [first], protocol)).toMatchObject({ method: 'mirwald' })
		expect(
			growth(at('2027-01-20', { statureCm }), [first], protocol)!.findings.map(
				(finding) => finding.id,
			),
		).toContain('growth.method-changed')
		expect(growth(now, [at('2026-07-01', { statureCm })], protocol)).toMatchObject({
			method: 'moore',
		})
		// The age is at most 16 for a girl's offset: nothing is mixed in where the kept method is
		// refused.
		expect(growth(now, [first], protocol)!.findings.map((finding) => finding.id)).not.toContain(
			'growth.method-changed',
		)
	})
})
