/**
 * Independent oracles: GNU units for sizes and inches, mathjs for conversion, simple-statistics for
 * the normal curve.
 */
import { spawnSync } from 'node:child_process'
import { unit } from 'mathjs'
import { errorFunction, probit } from 'simple-statistics'
import { describe, expect, it } from 'vitest'
import { below, quantileAbove } from '../../shared/engine/plain/normal.ts'
import { sizesOf } from '../../shared/engine/sizing/sizes.ts'

const installed = spawnSync('units', ['--version']).status === 0
const gnu = (from: string, to: string): number =>
	Number(spawnSync('units', ['-t', from, to], { encoding: 'utf8' }).stdout.trim())

if (!installed)
	console.warn(
		'GNU units is not installed: its checks are skipped. Install the Debian package "units" to ' +
			'run them.',
	)
describe.skipIf(!installed)('GNU units (Debian package units)', () => {
	// Documented by the package and run for sizing.md 1.4: sizes are of shoe or last, tolerance 0.001
	// mm.
	it.each([
		['shoesize_men(5)', 251.883],
		['shoesize_men(8)', 277.283],
		['shoesize_men(9)', 285.75],
		['shoesize_men(10)', 294.217],
		['shoesize_men(12)', 311.15],
		['shoesize_women(6)', 251.883],
		['shoesize_women(8)', 268.817],
		['shoesize_boys(6)', 150.283],
		['shoesize_boys(13)', 209.55],
		['shoesize_girls(13)', 201.083],
		['38 europeshoesize', 253.333],
		['42 europeshoesize', 280],
	])('%s is %f mm', (size, mm) => expect(Math.abs(gnu(size, 'mm') - mm)).toBeLessThan(0.001))
	// Its men's scale starts at a last of 8.25 in, ours at a foot of 22/3 in: one constant allowance,
	// 23.283 mm, at every size.
	it.each([5, 8, 9, 10, 12])('US men %i: the same step and one constant allowance', (size) => {
		const last = gnu(`shoesize_men(${size})`, 'mm'),
			foot = gnu(`${size + 22} * 1|3 inch`, 'mm')
		expect(last - foot).toBeCloseTo((8.25 - 22 / 3) * 25.4, 3)
		expect(sizesOf(foot).usMen).toMatchObject({ label: size, exact: expect.closeTo(size, 3) })
	})
	it.each([38, 42])('EU %i: the Paris point', (size) => {
		// Ours allows two points (1.5 F + 2): the foot of EU n is n - 2 points long.
		expect(sizesOf(gnu(`${size - 2} europeshoesize`, 'mm')).eu).toMatchObject({
			label: size,
			exact: expect.closeTo(size, 3),
		})
	})
	it('boys 13 and men 0 are the same last', () =>
		expect(gnu('shoesize_boys(13)', 'mm')).toBeCloseTo(gnu('shoesize_men(0)', 'mm'), 3))
	// Its barleycorn is the inch of 1922; one size is a third of today's inch.
	it('one UK or US size', () =>
		expect(sizesOf(254 + gnu('1|3 inch', 'mm')).uk.exact - sizesOf(254).uk.exact).toBeCloseTo(1, 4))
})

describe('mathjs', () => {
	it.each([9, 9.5, 10, 10.5, 11, 12])('%f in, turned into mm by mathjs', (inches) => {
		const mm = unit(inches, 'inch').toNumber('mm')
		expect(sizesOf(mm).uk.exact).toBeCloseTo(3 * inches - 23, 4)
		expect(sizesOf(mm).usMen.exact).toBeCloseTo(3 * inches - 22, 4)
		expect(sizesOf(mm).usWomen.exact).toBeCloseTo(3 * inches - 21, 4)
		expect(sizesOf(mm).jpCm.exact).toBeCloseTo(unit(inches, 'inch').toNumber('cm'), 4)
	})
})

describe('simple-statistics', () => {
	// Its error function is good to about 1e-7; percentiles of sizing.md 4.1: z 1.437 is 92.5 %,
	// -1.617 is 5.3 %, 1.504 is 93.4 %.
	it.each([
		[1.437, 92.5],
		[-1.617, 5.3],
		[1.504, 93.4],
		[0, 50],
	])('z %f is centile %f', (z, centile) => {
		expect(100 * below(z)).toBeCloseTo(50 * (1 + errorFunction(z / Math.SQRT2)), 4)
		expect(Math.abs(100 * below(z) - centile)).toBeLessThan(0.1)
	})
	// ANSUR II foot length (sizing.md 4.1): man 290 and 250 mm, woman 265 mm.
	it.each([
		[290, 271.18, 13.1, 1.437],
		[250, 271.18, 13.1, -1.617],
		[265, 246.29, 12.44, 1.504],
	])('%f mm of mean %f and SD %f is z %f', (mm, mean, sd, z) =>
		expect(Math.abs((mm - mean) / sd - z)).toBeLessThan(0.005),
	)
	it.each([0.03, 0.05, 0.25, 0.5, 0.85, 0.97])('quantile %f', (p) =>
		expect(quantileAbove(1 - p)).toBeCloseTo(probit(p), 2),
	)
})
