/** Fittings, adults of the same sex, and measuring error: check values, each with its source. */
import { describe, expect, it } from 'vitest'
import {
	girthForLengthZ,
	jisFitting,
	jisLettersAbove,
	lengthZ,
	usMenFitting,
	widthForLengthZ,
} from '../../shared/engine/sizing/fittings.ts'
import { sizesOf } from '../../shared/engine/sizing/sizes.ts'
import { sizing } from '../../shared/engine/sizing/sizing.ts'
import { protocol, visit } from './sizing-visit.ts'

describe('JIS S 5037 girth letters', () => {
	// Printed on two Japanese pages (sizing.md 2.3): girth centre of E, EE, EEE, EEEE; band 3 below
	// to 2 above.
	const men: [number, number][] = [
		[230, 231],
		[235, 234],
		[240, 237],
		[245, 240],
		[250, 243],
		[255, 246],
		[260, 249],
		[265, 252],
		[270, 255],
	]
	const women: [number, number][] = [
		[220, 222],
		[225, 225],
		[230, 228],
		[235, 231],
		[240, 234],
		[245, 237],
		[250, 240],
		[255, 243],
		[260, 246],
	]
	const letters = ['E', 'EE', 'EEE', 'EEEE']
	it.each([
		...men.map((row) => ['male', ...row] as const),
		...women.map((row) => ['female', ...row] as const),
	])('%s %i mm, E at %i mm', (sex, length, centre) => {
		letters.forEach((letter, i) => {
			for (const off of [-3, 0, 2]) {
				const girth = centre + 6 * i + off
				expect(jisFitting(length, girth, sex, protocol)).toBe(`${length / 10}${letter}`)
				expect(jisLettersAbove(length, girth, sex, protocol)).toBe(i)
			}
		})
		expect(jisFitting(length, centre - 4, sex, protocol)).toBe(`${length / 10}D`)
	})
	// Printed: men 235 A to D 210, 216, 222, 228; women 235 A to D 207, 213, 219, 225.
	it.each([
		['male', [210, 216, 222, 228]],
		['female', [207, 213, 219, 225]],
	] as const)('%s 235 mm, A to D', (sex, girths) => {
		expect(girths.map((girth) => jisFitting(235, girth, sex, protocol))).toEqual([
			'23.5A',
			'23.5B',
			'23.5C',
			'23.5D',
		])
	})
	// Printed examples: man 260/261 is 26EEE, woman 233/233 is 23.5E; median man 271/252 is 27E, the
	// lower edge of its band (sizing.md 2.3, 4.1).
	it('examples', () => {
		expect(jisFitting(260, 261, 'male', protocol)).toBe('26EEE')
		expect(jisFitting(233, 233, 'female', protocol)).toBe('23.5E')
		expect(jisFitting(271, 252, 'male', protocol)).toBe('27E')
	})
	it('says nothing outside A to G', () => {
		expect(jisFitting(250, 243 - 24 - 4, 'male', protocol)).toBeUndefined()
		expect(jisFitting(250, 243 + 30 + 3, 'male', protocol)).toBeUndefined()
	})
})
describe("US men's width letters", () => {
	// Lowest and highest mm of C; D is 5, E 10 and 2E 15 mm more (sizing.md Table A, retailer's
	// chart).
	const chart: [number, number][] = [
		[5, 78],
		[5.5, 78],
		[6, 81],
		[6.5, 81],
		[7, 84],
		[7.5, 84],
		[8, 87],
		[8.5, 87],
		[9, 90],
		[9.5, 90],
		[10, 93],
		[10.5, 93],
		[11, 97],
		[11.5, 97],
		[12, 100],
		[13, 103],
		[14, 106],
		[15, 109],
	]
	const lengthOf = (us: number): number => ((us + 22) * 25.4) / 3
	it.each(chart)('US %f', (us, c) => {
		const later = us === 15 ? 1 : 0
		// US 15 prints E 11.9 to 12.4 and 2E 12.5 to 12.9: one band that is a millimetre wider
		const bands: [string, number, number][] = [
			['C', c, c + 4],
			['D', c + 5, c + 9],
			['E', c + 10, c + 14 + later],
			['2E', c + 15 + later, c + 19 + later],
		]
		for (const [letter, low, high] of bands)
			for (const mm of [low, high])
				expect(usMenFitting(lengthOf(us), mm, protocol), `${mm} mm`).toBe(letter)
	})
	// The same chart: US 15 prints E 11.9 to 12.4 cm and 2E 12.5 to 12.9 cm, half sizes below it not.
	it('US 15: E is a millimetre wider, and 2E begins and ends so much later', () => {
		const at15 = (mm: number) => usMenFitting(lengthOf(15), mm, protocol)
		expect([118, 119, 124, 125, 129, 130].map(at15)).toEqual(['D', 'E', 'E', '2E', '2E', undefined])
		expect([120, 121].map((mm) => usMenFitting(lengthOf(14), mm, protocol))).toEqual(['E', '2E'])
		expect(protocol.row('sizing.usWidthWiderEMm').source).toContain('US 15')
	})
	it('says nothing outside US 5 to 15', () => {
		expect(usMenFitting(lengthOf(4.5), 80, protocol)).toBeUndefined()
		expect(usMenFitting(lengthOf(15.5), 112, protocol)).toBeUndefined()
	})
})
// Printed range of the standard: men 20 to 30 cm, women 19.5 to 27 cm (sizing.md 2.3). Outside it
// the letters would be invented.
it.each([
	['male', 197, false],
	['male', 198, true],
	['male', 302, true],
	['male', 303, false],
	['female', 192, false],
	['female', 193, true],
	['female', 272, true],
	['female', 273, false],
] as const)('JIS, %s foot of %i mm printed: %s', (sex, mm, printed) => {
	const size = sizesOf(mm).mondopoint.lengthMm
	expect(jisFitting(mm, 243 + 0.6 * (size - 250) - (sex === 'female' ? 3 : 0), sex, protocol)).toBe(
		printed ? `${size / 10}E` : undefined,
	)
})
describe('population and error', () => {
	// ANSUR II foot length (sizing.md 4.1): man 290 mm z 1.437, 92.5 %; man 250 mm z -1.617, 5.3 %;
	// woman 265 mm z 1.504, 93.4 %; tolerance 0.005 and 0.1.
	it.each([
		['male', 290, 1.437, 92.5],
		['male', 250, -1.617, 5.3],
		['female', 265, 1.504, 93.4],
	] as const)('%s foot of %i mm among adults', (sex, mm, z, percentile) => {
		expect(Math.abs(lengthZ(mm, sex, protocol).value - z)).toBeLessThan(0.005)
		const { left } = sizing(visit({ left: { heelToToeMm: mm } }, { sex }), [], protocol)
		expect(Math.abs(left.lengthPercentile! - percentile)).toBeLessThan(0.1)
		expect(
			sizing(visit({ left: { heelToToeMm: mm } }, { sex, birthDate: '2012-01-01' }), [], protocol)
				.left,
		).not.toHaveProperty('lengthPercentile')
	})
	// sizing.md 4.1: breadth expected 101.83 at 271 mm and 92.66 at 246 mm.
	it.each([
		['male', 271, 101.83],
		['female', 246, 92.66],
	] as const)('%s %i mm: breadth expected %f', (sex, mm, expected) =>
		expect(Math.abs(widthForLengthZ(mm, expected, sex, protocol))).toBeLessThan(0.005),
	)
	// Regressions computed from the public ANSUR II data (sizing.md 4.1), tolerance 0.01.
	it.each([
		['male', 271, 102, 0.04],
		['female', 246, 100, 1.85],
	] as const)('%s %i/%i mm: z %f', (sex, length, width, z) =>
		expect(Math.abs(widthForLengthZ(length, width, sex, protocol) - z)).toBeLessThan(0.01),
	)
	// Girth regression of the same data: at the expected girth z is 0, one residual SD above it 1;
	// the median man (271, 252 mm) is 0.01 above.
	it.each([
		['male', 271, 92.15 + 0.5895 * 271, 10.38],
		['female', 246, 86.942 + 0.5732 * 246, 9.37],
	] as const)('%s %i mm: girth expected %f mm', (sex, length, expected, sd) => {
		expect(girthForLengthZ(length, expected, sex, protocol)).toBeCloseTo(0, 9)
		expect(girthForLengthZ(length, expected + sd, sex, protocol)).toBeCloseTo(1, 9)
	})
	it('the median man', () =>
		expect(Math.abs(girthForLengthZ(271, 252, 'male', protocol))).toBeLessThan(0.02))
	// sizing.md 6: SD 13.10, ICC .99 gives SEM 1.310 and MDC95 3.631; MAD 0.73 and 1.50 mm give SEM
	// 0.647 and 1.329, MDC95 1.79 and 3.68; d 1, -2, 0, 1, 2 gives TEM 1.
	it('error formulas of the rows, recomputed', () => {
		const sem = 13.1 * Math.sqrt(1 - 0.99)
		expect(
			[sem, 1.96 * Math.SQRT2 * sem, 0.8862 * 0.73, 2.4565 * 0.73, 2.4565 * 1.5].map((value) =>
				Number(value.toFixed(2)),
			),
		).toEqual([1.31, 3.63, 0.65, 1.79, 3.68])
		expect(Math.sqrt([1, -2, 0, 1, 2].reduce((sum, d) => sum + d * d, 0) / 10)).toBeCloseTo(1, 9)
		// Real change of length: above the limit of one reading.
		expect(protocol.value('sizing.realLengthSameMm')).toBeGreaterThan(2.4565 * 1.5)
	})
	// sizing.md 2.1: a man's 201 mm of ball length asks for 271.3 mm (ratio 0.741).
	it('length from heel to ball', () =>
		expect(
			sizing(visit({ left: { heelToBallMm: 201 } }), [], protocol).left.archLengthMm,
		).toBeCloseTo(271.3, 1))
	// sizing.md 6: mean absolute difference 1.50 mm gives SEM 1.329 mm. UK 7 is 254 mm exactly; half
	// a label step is 2.117 mm, 1.593 SEM, 88.9 % of a normal curve; with four readings 3.186 SEM,
	// 99.86 %.
	it('probability that the label is right', () => {
		expect(protocol.value('sizing.readingSemMm')).toBeCloseTo(0.8862 * 1.5, 3)
		expect(sizing(visit({ left: { heelToToeMm: 254 } }), [], protocol).sizeConfidence).toBeCloseTo(
			0.8888,
			3,
		)
		expect(
			sizing(visit({ left: { heelToToeMm: [254, 254, 254, 254] } }), [], protocol).sizeConfidence,
		).toBeCloseTo(0.9986, 3)
		// Feet that tie are as sure as the one read fewer times, whichever side that is.
		for (const feet of [
			{ left: { heelToToeMm: 254 }, right: { heelToToeMm: [254, 254, 254, 254] } },
			{ left: { heelToToeMm: [254, 254, 254, 254] }, right: { heelToToeMm: 254 } },
		])
			expect(sizing(visit(feet), [], protocol).sizeConfidence).toBeCloseTo(0.8888, 3)
	})
})
