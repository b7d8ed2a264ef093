/** Check values of an insert's amounts: post heights by arithmetic, shell by a published protocol. */
import { describe, expect, it } from 'vitest'
import {
	eversionChangeDeg,
	heiligLimitMm,
	postHeightMm,
	shellThickness,
} from '../../shared/engine/insert/dose.ts'
import { wearInHours } from '../../shared/engine/insert/wear-in.ts'
import { openProtocol } from '../../shared/engine/protocol/protocol.ts'

const protocol = openProtocol()
describe('doses', () => {
	it.each([
		[60, 2, 2.1],
		[60, 4, 4.2],
		[60, 6, 6.31],
		[55, 4, 3.85],
		[65, 4, 4.55],
	])('post on %i mm at %i degrees: %f mm', (width, deg, mm) =>
		expect(postHeightMm(width, deg)).toBeCloseTo(mm, 2),
	)
	it.each([
		[0, 4],
		[60, 45],
		[60, -1],
	])('refuses width %i, angle %i', (width, deg) =>
		expect(() => postHeightMm(width, deg)).toThrow(RangeError),
	)
	it('6 degrees of medial post: about 1.2 degrees less eversion (Telfer 2013, within 0.9)', () =>
		expect(Math.abs(eversionChangeDeg(6, protocol) + 1.2)).toBeLessThan(0.9))
	it.each([
		[6, 74.9, 4],
		[6, 75, 4.5],
		[-3, 70, 3],
		[-3, 80, 4],
	])('FPI %i at %f kg: %f mm', (fpi, kg, mm) =>
		expect(shellThickness(fpi, kg, true, protocol)).toMatchObject({ mm }),
	)
	it.each([
		[0, 70],
		[-3, 75],
		[undefined, 70],
		[6, undefined],
	])('FPI %s at %s kg is undefined', (fpi, kg) =>
		expect(shellThickness(fpi, kg, true, protocol)).toHaveProperty('unknown'),
	)
	it('child of 39 kg', () =>
		expect(shellThickness(0, 39, false, protocol)).toMatchObject({ mm: 2.5 }))
	it.each([
		[12, 2, 1, 4],
		[12, 1, 0, 12],
		[10, 3, 2, 2],
	])('Heilig %i, %i, %i: below %f', (sbu, d, c, limit) =>
		expect(heiligLimitMm(sbu, d, c)).toBe(limit),
	)
	it('wear-in: day n is n + 1 hours, 8 on day 7', () =>
		expect([1, 2, 7].map((day) => wearInHours(day, protocol))).toEqual([2, 3, 8]))
	// clinical.md 4.5, scheme B in print: 1, 2, 3, 5, 7, 9 and 10 hours are 37 by day 10; scheme A in
	// use comes to 35 by day 7.
	it('wear-in against the other scheme', () =>
		expect(
			[1, 2, 3, 5, 7, 9, 10].reduce((sum, hours) => sum + hours, 0) -
				[1, 2, 3, 4, 5, 6, 7].reduce((sum, day) => sum + wearInHours(day, protocol), 0),
		).toBe(2))
})
