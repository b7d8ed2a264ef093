/** No number of the growth room is ever NaN or infinite; the sides mirror. */
import { expect, it } from 'vitest'
import { growth } from '../../shared/growth/growth.ts'
import { openProtocol } from '../../shared/protocol/protocol.ts'
import type { Visit } from '../../shared/visit/visit.ts'

const numbers = (value: unknown): number[] => (typeof value === 'number' ? [value] : value && typeof value === 'object' ? Object.values(value).flatMap(numbers) : [])
it('extreme bodies at every age', () => {
	for (const sex of ['male', 'female'] as const) for (let year = 2009; year < 2026; year++) for (const statureCm of [70, 150, 240]) for (const massKg of [10, 50, 250]) {
		const feet = (a: number, b: number): Visit => ({ format: 'lastwright-visit', version: 1, player: { givenName: 'A', familyName: 'B', birthDate: `${year}-05-02`, sex }, visitDate: '2027-01-20', body: { statureCm, sittingHeightCm: statureCm / 2, massKg, motherStatureCm: 160, fatherStatureCm: 175 }, feet: { left: { heelToToeMm: a }, right: { heelToToeMm: b } } })
		const result = growth(feet(240, 245), [], openProtocol())
		expect(numbers(result).every(Number.isFinite)).toBe(true)
		expect(growth(feet(245, 240), [], openProtocol())).toEqual(result)
	}
})
