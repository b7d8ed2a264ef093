/** Centiles: published and recomputed check values, each with its source. */
import { describe, expect, it } from 'vitest'
import { bmiCentile, centile, lmsAt, lmsZ } from '../../shared/engine/growth/centiles.ts'
import { cdcBmi, cdcMass, cdcStature } from '../../shared/engine/protocol/norms/cdc2000.table.ts'

describe('centiles (CDC 2000 percentile columns)', () => {
	it.each([
		['bmi', 'male', 120.5, 14.218655083, -1.644854],
		['bmi', 'male', 120.5, 19.390411298, 1.036433],
		['bmi', 'female', 132.5, 14.084503604, -1.880794],
		['bmi', 'female', 180.5, 30.385201795, 1.880794],
		['stature', 'male', 144.5, 135.6621289, -1.880794],
		['stature', 'male', 168.5, 158.6614636, -0.67449],
		['stature', 'female', 144.5, 139.2235689, -1.644854],
		['mass', 'male', 156.5, 36.32176053, -1.281552],
		['mass', 'male', 156.5, 66.1035867, 1.644854],
	] as const)('%s %s %f', (table, sex, months, value, z) => {
		expect(
			Math.abs(
				lmsZ(
					value,
					lmsAt({ bmi: cdcBmi, stature: cdcStature, mass: cdcMass }[table], sex, months)!,
				) - z,
			),
		).toBeLessThan(0.0001)
	})
	it('interpolated and extended (growth.md 3.1, recomputed)', () => {
		expect(centile(cdcStature, 'female', 140.25, 150)!.z).toBeCloseTo(0.1458, 3)
		expect(centile(cdcMass, 'male', 162.3, 48)!.z).toBeCloseTo(-0.045, 3)
		expect(bmiCentile(cdcBmi, 'male', 168, 15)!.z).toBeCloseTo(-2.3872, 3)
		expect(bmiCentile(cdcBmi, 'male', 156.5, 30)!.percentile).toBeCloseTo(98.053, 2)
		expect(bmiCentile(cdcBmi, 'female', 156.5, 32)!.z).toBeCloseTo(2.1717, 3)
	})
})
describe('more centile columns (CDC 2000, growth.md 3.1), tolerance 0.0001', () => {
	it.each([
		['bmi', 'male', 156.5, 18.471797059, 0],
		['bmi', 'female', 132.5, 24.141414065, 1.644854],
		['stature', 'male', 168.5, 178.8164693, 1.880794],
	] as const)('%s %s %f', (table, sex, months, value, z) =>
		expect(
			Math.abs(lmsZ(value, lmsAt({ bmi: cdcBmi, stature: cdcStature }[table], sex, months)!) - z),
		).toBeLessThan(0.0001),
	)
	// CDC's own example of the formula (from memory for its origin).
	it('9.7 kg', () =>
		expect(lmsZ(9.7, { l: -0.1600954, m: 9.4765, s: 0.11218624 })).toBeCloseTo(0.207, 3))
	it('interpolated, and the extended method beside its sigma', () => {
		expect(centile(cdcStature, 'female', 140.25, 150)!.percentile).toBeCloseTo(55.8, 1)
		expect(bmiCentile(cdcBmi, 'male', 150.75, 19.5)).toMatchObject({
			z: expect.closeTo(0.4948, 3),
			percentile: expect.closeTo(69, 1),
		})
		expect(centile(cdcMass, 'male', 162.3, 48)!.percentile).toBeCloseTo(48.2, 1)
		expect(bmiCentile(cdcBmi, 'male', 156.5, 30)!.z).toBeCloseTo(2.0649, 3)
		expect(bmiCentile(cdcBmi, 'female', 156.5, 32)!.percentile).toBeCloseTo(98.506, 2)
	})
	it('outside the table there is none', () =>
		expect([lmsAt(cdcStature, 'male', 59), lmsAt(cdcStature, 'male', 241)]).toEqual([
			undefined,
			undefined,
		]))
})
