/**
 * No number of the growth room is ever NaN or infinite; the sides mirror; every age near a table's
 * edge is answered.
 */
import { describe, expect, it } from 'vitest'
import { growth } from '../../shared/engine/growth/growth.ts'
import { addDays, addMonths } from '../../shared/engine/plain/days.ts'
import { openProtocol } from '../../shared/engine/protocol/protocol.ts'
import type { Visit } from '../../shared/engine/visit/visit.ts'
import { numbers } from './random-visit.ts'

it('extreme bodies at every age', () => {
	for (const sex of ['male', 'female'] as const)
		for (let year = 2009; year < 2026; year++)
			for (const statureCm of [70, 150, 240])
				for (const massKg of [10, 50, 250]) {
					const feet = (a: number, b: number): Visit => ({
						format: 'lastwright-visit',
						version: 1,
						player: { givenName: 'A', familyName: 'B', birthDate: `${year}-05-02`, sex },
						visitDate: '2027-01-20',
						body: {
							statureCm,
							sittingHeightCm: statureCm / 2,
							massKg,
							motherStatureCm: 160,
							fatherStatureCm: 175,
						},
						feet: { left: { heelToToeMm: a }, right: { heelToToeMm: b } },
					})
					const result = growth(feet(240, 245), [], openProtocol())
					expect(numbers(result).every(Number.isFinite)).toBe(true)
					expect(growth(feet(245, 240), [], openProtocol())).toEqual(result)
				}
})
/**
 * The tables and equations begin and end on whole and half years; days / 365.25 falls a little
 * short of a birthday or past it.
 */
const halfYears = Array.from({ length: 35 }, (_, index) => index + 7)
const weekAround = Array.from({ length: 15 }, (_, index) => index - 7)
const born = '2007-03-01'
const bodyAt = (
	visitDate: string,
	sex: 'male' | 'female',
	parentStatures: 'measured' | 'reported',
): Visit => ({
	format: 'lastwright-visit',
	version: 1,
	player: { givenName: 'A', familyName: 'B', birthDate: born, sex },
	visitDate,
	body: {
		statureCm: 150,
		sittingHeightCm: 78,
		massKg: 45,
		motherStatureCm: 160,
		fatherStatureCm: 175,
		parentStatures,
	},
	feet: { left: { heelToToeMm: 240 }, right: { heelToToeMm: 245 } },
})
describe.each(['male', 'female'] as const)('%s', (sex) => {
	it.each(['measured', 'reported'] as const)(
		'every day within a week of a birthday and of a half year, from 3.5 to 20.5 years, parents %s',
		(parentStatures) => {
			for (const half of halfYears)
				for (const day of weekAround) {
					const visitDate = addDays(addMonths(born, 6 * half), day)
					const result = growth(bodyAt(visitDate, sex, parentStatures), [], openProtocol())
					// an adult has no growth stage
					if (!result) {
						expect(half * 6 + day / 30, visitDate).toBeGreaterThanOrEqual(18 * 12)
						continue
					}
					expect(numbers(result).every(Number.isFinite), visitDate).toBe(true)
					// what is predicted is worked out in front of the reader, and nothing else is
					expect(
						result.workings.some(({ id }) => id === 'growth.adult-stature'),
						visitDate,
					).toBe(result.predictedAdultStatureCm !== undefined)
				}
		},
	)
})
