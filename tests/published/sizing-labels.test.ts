/** Size labels: published and recomputed check values, each with its source. */
import { describe, expect, it } from 'vitest'
import { euLongerOf, sizesOf } from '../../shared/engine/sizing/sizes.ts'
import { sizing } from '../../shared/engine/sizing/sizing.ts'
import { protocol, visit } from './sizing-visit.ts'

const scaled = ({ label, scale }: { label: number; scale: string }): string =>
	`${label}${scale === 'child' ? 'c' : ''}`
describe('labels', () => {
	// Recomputed from the printed formulas (sizing.md 1.3): EU 1.5F + 2, UK child 3F - 10, US men 3F
	// - 22, US women 3F - 21, US child 3F - 29/3; nearest half, ties up; c = child.
	const recomputed: [number, number, number, string, number | null, number | null, string][] = [
		[160, 16, 26, '9c', null, null, '9c'],
		[170, 17, 27.5, '10c', null, null, '10.5c'],
		[190, 19, 30.5, '12.5c', null, null, '13c'],
		[200, 20, 32, '13.5c', null, null, '1'],
		[210, 21, 33.5, '2', 3, 4, '2'],
		[220, 22, 35, '3', 4, 5, '3.5'],
		[230, 23, 36.5, '4', 5, 6, '4.5'],
		[240, 24, 38, '5.5', 6.5, 7.5, '5.5'],
		[245, 24.5, 39, '6', 7, 8, '6.5'],
		[250, 25, 39.5, '6.5', 7.5, 8.5, '7'],
		[255, 25.5, 40.5, '7', 8, 9, '7.5'],
		[260, 26, 41, '7.5', 8.5, 9.5, '8'],
		[270, 27, 42.5, '9', 10, 11, '9'],
		[275, 27.5, 43.5, '9.5', 10.5, 11.5, '10'],
		[280, 28, 44, '10', 11, 12, '10.5'],
		[290, 29, 45.5, '11.5', 12.5, 13.5, '11.5'],
		[295, 29.5, 46.5, '12', 13, 14, '12'],
		[300, 30, 47, '12.5', 13.5, 14.5, '13'],
		[305, 30.5, 48, '13', 14, 15, '13.5'],
		[315, 31.5, 49.5, '14', 15, 16, '14.5'],
	]
	it.each(recomputed)('foot of %i mm', (mm, jp, eu, uk, usMen, usWomen, usChild) => {
		const sizes = sizesOf(mm)
		expect([sizes.jpCm.label, sizes.eu.label, scaled(sizes.uk), scaled(sizes.usChild)]).toEqual([
			jp,
			eu,
			uk,
			usChild,
		])
		if (usMen !== null) expect([sizes.usMen.label, sizes.usWomen.label]).toEqual([usMen, usWomen])
	})
	// Every unrounded column of the same table, tolerance 0.01: F mm, EU 1.5F + 2, EU 1.5F + 2.25
	// with its label, UK 3F - 10, US men, US women, US child; child scales run on past 13.5.
	const unrounded: [
		number,
		number,
		number,
		number,
		number,
		number | null,
		number | null,
		number,
	][] = [
		[160, 26, 26.25, 26.5, 8.9, null, null, 9.23],
		[170, 27.5, 27.75, 28, 10.08, null, null, 10.41],
		[190, 30.5, 30.75, 31, 12.44, null, null, 12.77],
		[200, 32, 32.25, 32.5, 13.62, null, null, 13.96],
		[210, 33.5, 33.75, 34, 14.8, 2.8, 3.8, 15.14],
		[220, 35, 35.25, 35.5, 15.98, 3.98, 4.98, 16.32],
		[230, 36.5, 36.75, 37, 17.17, 5.17, 6.17, 17.5],
		[240, 38, 38.25, 38.5, 18.35, 6.35, 7.35, 18.68],
		[245, 38.75, 39, 39, 18.94, 6.94, 7.94, 19.27],
		[250, 39.5, 39.75, 40, 19.53, 7.53, 8.53, 19.86],
		[255, 40.25, 40.5, 40.5, 20.12, 8.12, 9.12, 20.45],
		[260, 41, 41.25, 41.5, 20.71, 8.71, 9.71, 21.04],
		[270, 42.5, 42.75, 43, 21.89, 9.89, 10.89, 22.22],
		[275, 43.25, 43.5, 43.5, 22.48, 10.48, 11.48, 22.81],
		[280, 44, 44.25, 44.5, 23.07, 11.07, 12.07, 23.4],
		[290, 45.5, 45.75, 46, 24.25, 12.25, 13.25, 24.59],
		[295, 46.25, 46.5, 46.5, 24.84, 12.84, 13.84, 25.18],
		[300, 47, 47.25, 47.5, 25.43, 13.43, 14.43, 25.77],
		[305, 47.75, 48, 48, 26.02, 14.02, 15.02, 26.36],
		[315, 49.25, 49.5, 49.5, 27.2, 15.2, 16.2, 27.54],
	]
	it.each(unrounded)(
		'every unrounded column, foot of %i mm',
		(mm, eu, euLonger, euLongerLabel, ukChild, usMen, usWomen, usChild) => {
			const sizes = sizesOf(mm),
				runs = ({ exact, scale }: { exact: number; scale: string }) =>
					exact + (scale === 'child' ? 0 : 13)
			for (const [got, want] of [
				[sizes.eu.exact, eu],
				[euLongerOf(mm).exact, euLonger],
				[runs(sizes.uk), ukChild],
				[sizes.usMen.exact, usMen],
				[sizes.usWomen.exact, usWomen],
				[runs(sizes.usChild), usChild],
			] as const)
				if (want !== null) expect(Math.abs(got - want)).toBeLessThan(0.01)
			expect(euLongerOf(mm).label).toBe(euLongerLabel)
			expect(sizes.jpCm.exact).toBe(mm / 10)
		},
	)
	it('the other EU formula is told beside the first, and refuses what is no length', () => {
		expect(
			sizing(visit({ left: { heelToToeMm: 270 } }), [], protocol)
				.workings.find((working) => working.id === 'sizing.size-eu')!
				.lines.join(' '),
		).toContain('42.75, label 43')
		expect(() => euLongerOf(0)).toThrow(/give a positive number of mm/)
	})
	// Unrounded columns of the same table, tolerance 0.01.
	it.each([
		[160, 26, 8.9, 9.23],
		[200, 32, 13.62, 13.96],
		[245, 38.75, 18.94, 19.27],
		[275, 43.25, 22.48, 22.81],
		[315, 49.25, 27.2, 27.54],
	])('unrounded, foot of %i mm', (mm, eu, ukChild, usChild) => {
		const { eu: e, uk, usChild: us } = sizesOf(mm)
		const onChildScale = ({ exact, scale }: { exact: number; scale: string }) =>
			exact + (scale === 'child' ? 0 : 13)
		for (const [got, want] of [
			[e.exact, eu],
			[onChildScale(uk), ukChild],
			[onChildScale(us), usChild],
		] as const)
			expect(Math.abs(got - want)).toBeLessThan(0.01)
	})
	// Printed by a retailer's men's chart (sizing.md Table A): US against inches, within 0.02 of 3F -
	// 22 on its 18 rows.
	const chart: [number, number][] = [
		[5, 9],
		[5.5, 9.17],
		[6, 9.33],
		[6.5, 9.5],
		[7, 9.67],
		[7.5, 9.83],
		[8, 10],
		[8.5, 10.17],
		[9, 10.33],
		[9.5, 10.5],
		[10, 10.67],
		[10.5, 10.83],
		[11, 11],
		[11.5, 11.16],
		[12, 11.33],
		[13, 11.66],
		[14, 12],
		[15, 12.33],
	]
	it.each(chart)('US men %f at %f in', (us, inches) => {
		expect(Math.abs(sizesOf(inches * 25.4).usMen.exact - us)).toBeLessThan(0.021)
		expect(sizesOf(inches * 25.4).usMen.label).toBe(us)
	})
	// One size is a third of an inch, 8.467 mm, or a Paris point, 6.667 mm (sizing.md 1.1, invariants
	// of 1.3).
	it('steps and distances between systems', () => {
		const a = sizesOf(250),
			inch = sizesOf(250 + 25.4 / 3),
			point = sizesOf(250 + 20 / 3)
		expect(inch.uk.exact - a.uk.exact).toBeCloseTo(1, 5)
		expect(point.eu.exact - a.eu.exact).toBeCloseTo(1, 5)
		expect(a.usMen.exact - a.uk.exact).toBeCloseTo(1, 9)
		expect(a.usWomen.exact - a.usMen.exact).toBeCloseTo(1, 9)
		expect(a.au).toEqual(a.uk)
	})
	// sizing.md 1.2: ties occur when mm ends in 5 (235 gives 37.25, label 37.5); 2.3 edge test: 232
	// gives 230, 233 gives 235.
	it('ties and Mondopoint edges', () => {
		expect(sizesOf(235).eu.label).toBe(37.5)
		expect(sizesOf(232).mondopoint.lengthMm).toBe(230)
		expect(sizesOf(233).mondopoint.lengthMm).toBe(235)
		expect(sizesOf(232.5).mondopoint.lengthMm).toBe(235)
	})
	// Fitting is the next half up; the wrap at child 13.5 then 1 is sizing.md 1.2 and Table C (EU 33,
	// UK 1).
	it('fitting past child 13.5 is 1 while the label stays on the child scale', () => {
		expect(sizesOf(200).uk).toMatchObject({ label: 13.5, fitting: 1, scale: 'child' })
		expect(sizesOf(198).uk).toMatchObject({ label: 13.5, fitting: 13.5, scale: 'child' })
		expect(sizesOf(254).uk).toEqual({ exact: 7, label: 7, fitting: 7, scale: 'adult' })
		expect(sizesOf(255).uk).toMatchObject({ label: 7, fitting: 7.5 })
	})
	it.each([0, -1, Number.NaN, Number.POSITIVE_INFINITY])('refuses a length of %f mm', (mm) =>
		expect(() => sizesOf(mm)).toThrow(/foot length: .* give a positive number of mm/),
	)
})
