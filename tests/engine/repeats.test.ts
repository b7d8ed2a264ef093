/** Stature, sitting height and body mass read more than once: kept as read, counted by their mean. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { judge } from '../../renderer/parts/judge.ts'
import { swapQuestions } from '../../shared/desk/squad/swapped.ts'
import { assess } from '../../shared/engine/assess.ts'
import { bodySize } from '../../shared/engine/visit/body-size.ts'
import { parseVisit } from '../../shared/engine/visit/parse.ts'
import { type Visit, visitSchema } from '../../shared/engine/visit/visit.ts'
import { wholeVisit } from './random-visit.ts'

const keys = ['statureCm', 'sittingHeightCm', 'massKg'] as const
/** Every one of the three as the readings it is made of. */
const withReadings = (visit: Visit, readings: (value: number) => number | number[]): Visit => {
	const body: Record<string, unknown> = { ...visit.body }
	for (const [key, value] of Object.entries(bodySize(visit))) body[key] = readings(value)
	return visit.body ? visitSchema.parse({ ...visit, body }) : visit
}
const visit = (body: Visit['body'], visitDate = '2027-01-20'): Visit =>
	visitSchema.parse({
		format: 'lastwright-visit',
		version: 1,
		player: { givenName: 'A', familyName: 'B', birthDate: '2013-05-02', sex: 'male' },
		visitDate,
		body,
	})
const workingIds = (of: Visit) => assess(of).growth?.workings.map(({ id }) => id)

it('read twice alike is what it is when read once', () => {
	fc.assert(
		fc.property(wholeVisit, (drawn) => {
			const once = withReadings(drawn, (value) => value)
			const { growth, ...rest } = assess(withReadings(drawn, (value) => [value, value]))
			const { growth: plain, ...others } = assess(once)
			expect(rest).toEqual(others)
			const ofMeans = growth?.workings.filter(({ id }) => id.startsWith('growth.mean-')) ?? []
			expect(ofMeans.length).toBe(growth ? keys.filter((key) => once.body?.[key]).length : 0)
			expect({
				...growth,
				workings: growth?.workings.filter((one) => !ofMeans.includes(one)),
			}).toEqual({ ...plain, workings: plain?.workings })
		}),
		{ numRuns: 50 },
	)
})
describe('several readings', () => {
	const body = {
		statureCm: [158.4, 158.6],
		sittingHeightCm: [81, 81.4],
		massKg: [46.2, 46.4, 46.3],
	}
	it('are typed in one field, and stand in the file as they were read', () => {
		for (const key of keys)
			expect(judge(`body.${key}`, body[key].join(' '))).toEqual({ value: body[key] })
		expect(judge('body.motherStatureCm', '165 166').error).toContain('One value')
		expect(visit(body).body).toEqual(body)
	})
	it('count by their mean, and the working says so', () => {
		const size = bodySize(visit(body))
		expect(size.statureCm).toBeCloseTo(158.5, 9)
		expect(size.sittingHeightCm).toBeCloseTo(81.2, 9)
		expect(size.massKg).toBeCloseTo(46.3, 9)
		const mean = { statureCm: 158.5, sittingHeightCm: 81.2, massKg: 46.3 }
		const [{ growth }, plain] = [assess(visit(body)), assess(visit(mean)).growth!]
		expect(growth?.maturityOffsetYears.mirwald).toBeCloseTo(plain.maturityOffsetYears.mirwald!, 9)
		expect(growth?.centiles.stature?.percentile).toBeCloseTo(plain.centiles.stature!.percentile, 6)
		expect(workingIds(visit(body))).toContain('growth.mean-stature-cm')
		expect(workingIds(visit(mean))).not.toContain('growth.mean-stature-cm')
		expect(growth?.workings.find(({ id }) => id === 'growth.mean-mass-kg')?.lines).toEqual([
			'Mean of 3 readings: (46.2 + 46.4 + 46.3) / 3 = 46.3 kg',
		])
	})
	it('a sitting height that one stature does not exceed is refused', () => {
		const problems = (of: Visit['body']) => {
			const read = parseVisit(visit(of))
			return read.ok ? [] : read.problems.map(({ path, params }) => [path, params.given])
		}
		expect(problems({ statureCm: [120, 121], sittingHeightCm: [119, 119.9] })).toEqual([])
		expect(problems({ statureCm: [121, 120], sittingHeightCm: [119, 120.5] })).toEqual([
			['body.sittingHeightCm', 120.5],
		])
	})
	it('are compared with those of another day', () => {
		const now = visit({ statureCm: [140.1, 140.3] }, '2027-01-20')
		const before = visit({ statureCm: [158.4, 158.6] }, '2026-01-20')
		const asked = swapQuestions(now, [before])
		expect(asked.map(({ says }) => says).join()).toContain('158.5 cm then, 140.2 cm now')
	})
})
