/** The course of pain: what is beyond its error, that gaps stay gaps, and what was changed when. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { assess } from '../../shared/engine/assess.ts'
import { courseOf } from '../../shared/engine/course/course.ts'
import { courseSvg } from '../../shared/engine/course/drawing.ts'
import type { KeptAssessment } from '../../shared/engine/findings/assessment.ts'
import { openProtocol } from '../../shared/engine/protocol/protocol.ts'
import type { LastVisit } from '../../shared/engine/recheck/asked.ts'
import { type Decisions, noDecisions } from '../../shared/engine/visit/decisions.ts'
import { visitSchema } from '../../shared/engine/visit/visit.ts'

const protocol = openProtocol()
type Told = {
	painNow?: number | undefined
	painWorst?: number | undefined
	sessionsMissed?: number | undefined
}
function signed(
	date: string,
	told: Told,
	more: object = {},
	decisions: Decisions = noDecisions,
): LastVisit {
	const visit = visitSchema.parse({
		format: 'lastwright-visit',
		version: 1,
		player: { givenName: 'A', familyName: 'B', birthDate: '1995-01-01', sex: 'female' },
		visitDate: date,
		screening: { nightPain: false, fever: false, reducedSensation: false },
		conditions: [{ condition: 'achilles-midportion', side: 'left', status: 'current', ...told }],
		...more,
	})
	return { visit, assessment: assess(visit) as unknown as KeptAssessment, decisions }
}
const dates = ['2027-01-10', '2027-02-10', '2027-03-10', '2027-04-10']
describe('each change of pain', () => {
	it('is beyond error from the smallest published change on (Childs 2005: 2 points of 10)', () => {
		const course = courseOf(
			[6, 5, 3, 3].map((painWorst, at) => signed(dates[at] ?? '', { painWorst })),
			protocol,
		)
		expect(course.limit).toMatchObject({ points: 2, basis: { threshold: 'player.painRealChange' } })
		expect(course.complaints[0]?.steps.map(({ was, is, verdict }) => [was, is, verdict])).toEqual([
			[6, 5, 'within-error'],
			[5, 3, 'beyond-error'],
			[3, 3, 'within-error'],
		])
	})
	it('is taken against the last visit that asked; what was not asked is absent, never zero', () => {
		const pain = fc.option(fc.integer({ min: 0, max: 10 }), { nil: undefined })
		fc.assert(
			fc.property(fc.array(pain, { minLength: 1, maxLength: 4 }), (told) => {
				const visits = told.map((painNow, at) => signed(dates[at] ?? '', { painNow }))
				const [complaint] = courseOf(visits, protocol).complaints
				expect((complaint?.readings ?? []).flatMap(({ now }) => now ?? [])).toEqual(
					told.filter((one) => one !== undefined),
				)
				const known = told.flatMap((one) => one ?? [])
				expect(complaint?.steps.length ?? 0).toBe(Math.max(0, known.length - 1))
			}),
			{ numRuns: 30 },
		)
	})
})
describe('the drawing', () => {
	const lines = (visits: LastVisit[]) =>
		courseSvg(courseOf(visits, protocol), { colour: '#17524f', widthPt: 300 })
	const paths = (svg: string) => svg.match(/<path /g)?.length ?? 0
	it('joins neighbours, and draws no line across a visit that did not ask', () => {
		const whole = [5, 4, 3].map((painNow, at) => signed(dates[at] ?? '', { painNow }))
		expect(paths(lines(whole))).toBe(2)
		const gap = [5, undefined, 3].map((painNow, at) => signed(dates[at] ?? '', { painNow }))
		const svg = lines(gap)
		expect(paths(svg)).toBe(0)
		expect(svg.match(/<circle /g)?.length).toBe(3)
	})
	it('keeps every word within its width, however narrow', () => {
		const svg = courseSvg(
			courseOf([signed(dates[0] ?? '', { painNow: 3, sessionsMissed: 12 })], protocol),
			{ colour: '#17524f', widthPt: 180 },
		)
		for (const [, x = '0'] of svg.matchAll(/<text x="([^"]+)"/g)) {
			expect(Number(x)).toBeGreaterThanOrEqual(0)
			expect(Number(x)).toBeLessThanOrEqual(180)
		}
		expect(svg).not.toMatch(/NaN|Infinity/)
	})
})
describe('what was changed', () => {
	it('a raise is asked for, and left off as it was told; each visit has one letter', () => {
		const stiff = {
			ankles: {
				left: { lungeDeg: [33, 33, 33], lungeCm: [7, 7, 7] },
				right: { lungeDeg: [40, 40, 40], lungeCm: [10, 10, 10] },
			},
			footwear: [{ id: 'p1', name: 'match boots', sole: 'firm-ground', heelToForefootOffsetMm: 2 }],
		}
		const since = {
			visitDate: '2027-01-10',
			worn: [{ what: 'raise', side: 'both', now: 'weaned-as-planned' }],
			bought: [{ role: 'match', answer: 'bought' }],
		}
		const course = courseOf(
			[
				signed('2027-02-10', { painWorst: 3 }, { since, conditions: [] }),
				signed('2027-01-10', { painWorst: 6 }, stiff),
			],
			protocol,
		)
		expect(course.visits.map(({ date, mark }) => [date, mark])).toEqual([
			['2027-01-10', 'A'],
			['2027-02-10', 'B'],
		])
		expect(course.visits[0]?.changes.join(' ')).toContain('Heel raise asked for')
		expect(course.visits[1]?.changes.join(' ')).toContain('Heel raise left off step by step')
		expect(course.visits[1]?.changes.join(' ')).toContain('Bought since the visit before')
	})
})
