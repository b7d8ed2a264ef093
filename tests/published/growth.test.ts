/** Published and recomputed check values of the growth room, each with its source. */
import { describe, expect, it } from 'vitest'
import { adjustedParentCm, khamisRocheCm } from '../../shared/growth/adult-stature.ts'
import { bmiCentile, centile, lmsAt, lmsZ } from '../../shared/growth/centiles.ts'
import { growth } from '../../shared/growth/growth.ts'
import { fransenRatioBoys, mirwaldBoys, mirwaldGirls, mooreBoys, mooreGirls, mooreSittingBoys } from '../../shared/growth/maturity.ts'
import { bandOf } from '../../shared/growth/stage.ts'
import { perYear, perYearError } from '../../shared/growth/velocity.ts'
import { cdcBmi, cdcMass, cdcStature } from '../../shared/protocol/norms/cdc2000.ts'
import { openProtocol } from '../../shared/protocol/protocol.ts'
import type { Visit } from '../../shared/visit/visit.ts'

const sized = (ageYears: number, statureCm: number, sittingHeightCm: number, massKg: number) => ({ ageYears, statureCm, sittingHeightCm, massKg })
const visit = (more: Partial<Visit> & { sex?: 'male' | 'female'; birthDate?: string } = {}): Visit => {
	const { sex = 'male', birthDate = '2013-05-02', ...rest } = more
	return { format: 'lastwright-visit', version: 1, player: { givenName: 'A', familyName: 'B', birthDate, sex }, visitDate: '2027-01-20', ...rest }
}
const protocol = openProtocol()

describe('maturity', () => {
	// Outputs documented by an open R package (growth.md 1.4), tolerance 0.006.
	it.each([[13.1992, 164.633, 77, 53.333, -1.26, -1.64], [13.5359, 168.1, 85.8, 53.6, -0.07, 0.11], [14.1985, 173.7, 86.5, 60.9, 0.41, 0.37], [13.0705, 167.533, 87.5, 52.2, -0.11, 0.18], [15.4251, 174.15, 91.2, 61.7, 1.65, 1.68]])('boy %f y, documented', (a, h, sh, m, mirwald, fransen) => {
		expect(Math.abs(mirwaldBoys(sized(a, h, sh, m)) - mirwald)).toBeLessThan(0.006)
		expect(Math.abs(a - a / fransenRatioBoys(sized(a, h, sh, m)) - fransen)).toBeLessThan(0.006)
	})
	it.each([[11.2991, 152, 78.5, 38.5, -0.49], [11.9699, 156, 80.8, 43.5, 0.16]])('girl %f y, documented', (a, h, sh, m, mo) => expect(Math.abs(mirwaldGirls(sized(a, h, sh, m)) - mo)).toBeLessThan(0.006))
	// Recomputed from the printed equations (growth.md 1.5), tolerance 0.0005.
	it.each([[11.5, 145, 75.5, 36, -2.3099, -2.0209, -1.9763, 0.827785], [12.5, 152, 78.5, 41.5, -1.495, -1.226, -1.1364, 0.895137], [13.8, 165, 85.5, 54, 0.0445, 0.1714, 0.2254, 1.015312], [16, 177, 92.5, 68, 2.1925, 2.2825, 2.2303, 1.148706]])('boy %f y, recomputed', (a, h, sh, m, mirwald, sitting, moore, ratio) => {
		expect(mirwaldBoys(sized(a, h, sh, m))).toBeCloseTo(mirwald, 3)
		expect(mooreSittingBoys(a, sh)).toBeCloseTo(sitting, 3)
		expect(mooreBoys(a, h)).toBeCloseTo(moore, 3)
		expect(fransenRatioBoys(sized(a, h, sh, m))).toBeCloseTo(ratio, 5)
	})
	it.each([[11, 146, 77, 38, -0.8677, -0.9267], [12, 153, 81, 43.5, 0.0996, 0.0447], [14.5, 163, 87, 55, 2.1372, 2.2724], [15.5, 165, 88, 57, 2.8013, 3.0917]])('girl %f y, recomputed', (a, h, sh, m, mirwald, moore) => {
		expect(mirwaldGirls(sized(a, h, sh, m))).toBeCloseTo(mirwald, 3)
		expect(mooreGirls(a, h)).toBeCloseTo(moore, 3)
	})
	it('bands are inclusive on around', () => expect([bandOf(-1, -1, 1), bandOf(-1.0001, -1, 1), bandOf(1, -1, 1)]).toEqual(['around', 'before', 'around']))
	it('Fransen is for boys only and absent for girls', () => {
		const body = { statureCm: 158, sittingHeightCm: 82, massKg: 46 }
		expect(Object.keys(growth(visit({ body }), [], protocol)!.maturityOffsetYears).sort()).toEqual(['fransen', 'mirwald', 'moore', 'mooreSitting'])
		expect(Object.keys(growth(visit({ body, sex: 'female' }), [], protocol)!.maturityOffsetYears).sort()).toEqual(['mirwald', 'moore'])
	})
	it('treatment and age outside the limits leave no estimate', () => {
		const body = { statureCm: 158, sittingHeightCm: 82, massKg: 46, motherStatureCm: 165, fatherStatureCm: 180 }
		const treated = growth(visit({ body: { ...body, growthOrHormoneTreatment: true } }), [], protocol)!
		expect([treated.maturityOffsetYears, treated.predictedAdultStatureCm, treated.findings.some((one) => one.id === 'growth.treatment')]).toEqual([{}, undefined, true])
		expect(growth(visit({ body, birthDate: '2019-01-01' }), [], protocol)!.maturityOffsetYears).toEqual({})
		expect(growth(visit({ birthDate: '2009-01-20' }), [], protocol)).toBeUndefined()
	})
})

describe('adult stature (Khamis-Roche, weights of the 1995 erratum)', () => {
	// Comment in an open implementation, tolerance 0.05.
	it('published', () => {
		expect(khamisRocheCm({ sex: 'male', ageYears: 10, statureCm: 138, massKg: 32, motherCm: 163, fatherCm: 178, reported: false })).toBeCloseTo(177.16, 1)
		expect(khamisRocheCm({ sex: 'female', ageYears: 12, statureCm: 150, massKg: 42, motherCm: 165, fatherCm: 179, reported: false })).toBeCloseTo(165.39, 1)
	})
	// Recomputed (growth.md 2.5), tolerance 0.02.
	it.each([['male', 11, 143, 35, 178.33, 177.55], ['male', 13, 158, 46, 180.19, 179.3], ['male', 14, 168, 56, 181.34, 180.5], ['male', 15.5, 175, 66, 179.97, 179.36], ['female', 10, 139, 33, 166.6, 166.06], ['female', 11, 146, 38, 166.44, 165.84], ['female', 13, 159, 49, 166.77, 166.32], ['female', 14.5, 163, 55, 165.89, 165.68]] as const)('%s %f y', (sex, ageYears, statureCm, massKg, plain, adjusted) => {
		const input = { sex, ageYears, statureCm, massKg, motherCm: 165, fatherCm: 180 }
		expect(Math.abs(khamisRocheCm({ ...input, reported: false })! - plain)).toBeLessThan(0.02)
		expect(Math.abs(khamisRocheCm({ ...input, reported: true })! - adjusted)).toBeLessThan(0.02)
	})
	it('reported parents', () => expect([adjustedParentCm('mother', 165), adjustedParentCm('father', 180)].map((one) => one.toFixed(2))).toEqual(['164.36', '177.78']))
	it('the median child of median parents comes out within 2.5 cm (the column ten times too small does not)', () => {
		for (const [sex, expected] of [['male', 176.85], ['female', 163.34]] as const)
			for (let ageYears = 5; ageYears <= 17; ageYears += 0.5) {
				const [h, m] = [cdcStature, cdcMass].map((table) => lmsAt(table, sex, ageYears * 12)!.m)
				expect(Math.abs(khamisRocheCm({ sex, ageYears, statureCm: h!, massKg: m!, motherCm: 163.34, fatherCm: 176.85, reported: false })! - expected)).toBeLessThan(2.5)
			}
	})
})

describe('centiles (CDC 2000 percentile columns)', () => {
	it.each([['bmi', 'male', 120.5, 14.218655083, -1.644854], ['bmi', 'male', 120.5, 19.390411298, 1.036433], ['bmi', 'female', 132.5, 14.084503604, -1.880794], ['bmi', 'female', 180.5, 30.385201795, 1.880794], ['stature', 'male', 144.5, 135.6621289, -1.880794], ['stature', 'male', 168.5, 158.6614636, -0.67449], ['stature', 'female', 144.5, 139.2235689, -1.644854], ['mass', 'male', 156.5, 36.32176053, -1.281552], ['mass', 'male', 156.5, 66.1035867, 1.644854]] as const)('%s %s %f', (table, sex, months, value, z) => {
		expect(Math.abs(lmsZ(value, lmsAt({ bmi: cdcBmi, stature: cdcStature, mass: cdcMass }[table], sex, months)!) - z)).toBeLessThan(0.0001)
	})
	it('interpolated and extended (growth.md 3.1, recomputed)', () => {
		expect(centile(cdcStature, 'female', 140.25, 150)!.z).toBeCloseTo(0.1458, 3)
		expect(centile(cdcMass, 'male', 162.3, 48)!.z).toBeCloseTo(-0.045, 3)
		expect(bmiCentile(cdcBmi, 'male', 168, 15)!.z).toBeCloseTo(-2.3872, 3)
		expect(bmiCentile(cdcBmi, 'male', 156.5, 30)!.percentile).toBeCloseTo(98.053, 2)
		expect(bmiCentile(cdcBmi, 'female', 156.5, 32)!.z).toBeCloseTo(2.1717, 3)
	})
})

describe('growth rate', () => {
	// Documented outputs of an open R package, tolerance 0.02.
	it.each([[164.63, 168.1, 123, 10.3], [170.8, 173.7, 120, 8.82], [167.53, 169.15, 92, 6.43], [156, 160, 120, 12.17], [152, 154, 123, 5.93]])('%f to %f cm in %i days', (from, to, days, rate) => expect(Math.abs(perYear(to - from, days) - rate)).toBeLessThan(0.02))
	it('error by interval', () => { expect(perYearError(0.3, 365.25 / 4)).toBeCloseTo(3.33, 2); expect(perYearError(0.2, 365.25 / 2)).toBeCloseTo(1.11, 2) })
})
