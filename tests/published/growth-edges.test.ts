/** Edges of age and of the growth stages. */
import { describe, expect, it } from 'vitest'
import { growth } from '../../shared/engine/growth/growth.ts'
import { fransenRatioBoys } from '../../shared/engine/growth/maturity.ts'
import { stage } from '../../shared/engine/growth/stage.ts'
import { parseVisit } from '../../shared/engine/visit/parse.ts'
import type { Visit } from '../../shared/engine/visit/visit.ts'
import { protocol, sized, visit } from './growth-visit.ts'

describe('edges of age', () => {
	const body = { statureCm: 135, sittingHeightCm: 71, massKg: 30 }
	const at = (birthDate: string, sex: 'male' | 'female' = 'male', more: Visit['body'] = body) =>
		growth(visit({ body: more, birthDate, sex }), [], protocol)!
	const methods = (result: ReturnType<typeof at>) => Object.keys(result.maturityOffsetYears).sort()
	// growth.md 1.1: boys from 9, girls 8 to 16, Moore 7.5 to 17.5, Fransen 8 to 17 years. A birthday
	// counts, although days / 365.25 may be 8.9993 on it.
	it('boys from the ninth birthday on', () => {
		expect(at('2018-01-20').decimalAgeYears).toBeLessThan(9)
		expect(methods(at('2018-01-20'))).toEqual(['fransen', 'mirwald', 'moore', 'mooreSitting'])
		expect(methods(at('2018-01-24'))).toEqual([])
		for (const refusal of at('2018-01-24').findings.filter((found) =>
			found.id.startsWith('growth.outside'),
		))
			expect(refusal).toMatchObject({ code: 'growth.outside-ages', params: { ageYears: 8.99 } })
	})
	it('girls from 8 to 16', () => {
		expect([methods(at('2019-01-20', 'female')), methods(at('2019-01-24', 'female'))]).toEqual([
			['mirwald', 'moore'],
			[],
		])
		const tall = { statureCm: 165, sittingHeightCm: 87, massKg: 56 }
		expect([
			methods(at('2011-01-20', 'female', tall)),
			methods(at('2011-01-16', 'female', tall)),
		]).toEqual([['mirwald', 'moore'], []])
	})
	it('Fransen to 17, Moore to 17.5', () => {
		const tall = { statureCm: 178, sittingHeightCm: 93, massKg: 68 }
		expect(methods(at('2010-01-20', 'male', tall))).toEqual([
			'fransen',
			'mirwald',
			'moore',
			'mooreSitting',
		])
		expect(methods(at('2010-01-10', 'male', tall))).toEqual(['mirwald', 'moore', 'mooreSitting'])
		expect(methods(at('2009-07-10', 'male', tall))).toEqual(['mirwald'])
	})
	it('adult stature from 4.0 to 17.5 years', () => {
		const parents = { motherStatureCm: 165, fatherStatureCm: 180 }
		const of = (birthDate: string, statureCm: number, massKg: number) =>
			at(birthDate, 'male', { statureCm, massKg, ...parents }).predictedAdultStatureCm !== undefined
		expect([
			of('2023-01-20', 103, 17),
			of('2023-01-26', 103, 17),
			of('2009-07-22', 176, 66),
			of('2009-07-10', 176, 66),
		]).toEqual([true, false, true, false])
	})
	// growth.md 1.1: best ages girls 9 to 13, boys 12 to 16.
	it.each([
		['male', '2015-01-20', false],
		['male', '2015-01-30', true],
		['male', '2011-01-20', false],
		['male', '2011-01-10', true],
		['female', '2014-01-20', false],
		['female', '2014-01-10', true],
	] as const)('%s born %s outside the best ages: %s', (sex, birth, outside) =>
		expect(
			at(birth, sex, { statureCm: 155, sittingHeightCm: 80, massKg: 44 }).findings.some(
				(finding) => finding.id === 'growth.best-ages',
			),
		).toBe(outside),
	)
	// Season rule (sizing.md 4.3): every 3 months under 15 (boys) and 14 (girls), by completed years:
	// 13.9986 on a fourteenth birthday is 14.
	it.each([
		['female', '2013-01-20', '2027-07-20'],
		['female', '2013-01-21', '2027-04-20'],
		['male', '2013-01-20', '2027-04-20'],
		['male', '2012-01-20', '2027-07-20'],
		['male', '2012-01-21', '2027-04-20'],
	] as const)('%s born %s: again by %s', (sex, birth, date) =>
		expect(growth(visit({ sex, birthDate: birth }), [], protocol)!.measureAgainBy).toBe(date),
	)
	// growth.md 1.5: sitting height not below stature is refused where the visit is read; a ratio
	// outside 0.46 to 0.58 is questioned (common practice).
	it('sitting height', () => {
		const problems = (sittingHeightCm: number) => {
			const read = parseVisit(visit({ body: { statureCm: 120, sittingHeightCm } }))
			return read.ok ? [] : read.problems.map((problem) => problem.path)
		}
		expect([problems(120), problems(119.9)]).toEqual([['body.sittingHeightCm'], []])
		const asked = (sittingHeightCm: number) =>
			at('2013-05-02', 'male', { statureCm: 150, sittingHeightCm, massKg: 40 }).findings.some(
				(finding) => finding.id === 'growth.sitting-ratio',
			)
		expect([68.9, 69, 87, 87.1].map(asked)).toEqual([true, false, false, true])
	})
	// growth.md 1.1: an offset beyond 4 years either way is refused, with the reason.
	it('an offset beyond four years', () => {
		const far = at('2010-02-01', 'male', { statureCm: 205, sittingHeightCm: 115, massKg: 110 })
		expect(far.maturityOffsetYears).not.toHaveProperty('mirwald')
		expect(far.findings.find((finding) => finding.id === 'growth.outside-mirwald')).toMatchObject({
			code: 'growth.outside-result',
			params: { method: 'mirwald', limitYears: 4 },
		})
	})
	it('parents: missing ones are named, unrecorded origin is said', () => {
		const of = (more: Visit['body']) =>
			at('2014-01-20', 'male', { statureCm: 158, massKg: 46, ...more }).findings
		expect(
			of({ motherStatureCm: 165 }).find((finding) => finding.id === 'growth.adult-stature-missing')!
				.params,
		).toEqual({ lacking: ['fatherStatureCm'] })
		expect(
			of({ motherStatureCm: 165, fatherStatureCm: 180 }).find(
				(finding) => finding.id === 'growth.adult-stature',
			)!.params,
		).toMatchObject({ parents: 'not-recorded' })
		expect(
			of({ motherStatureCm: 165, fatherStatureCm: 180, parentStatures: 'measured' }).find(
				(finding) => finding.id === 'growth.adult-stature',
			)!.params,
		).toMatchObject({ parents: 'measured' })
	})
	// The basis panel's own line, worked out, gives the ratio: no coefficient of Fransen 2018 is
	// mistyped in it.
	it('the Fransen line with the numbers put in', () => {
		const result = at('2013-05-02', 'male', { statureCm: 158, sittingHeightCm: 82, massKg: 46 })
		const line = result.workings.find((working) => working.id === 'growth.offset-fransen')!
			.lines[0]!
		const terms = line
			.replaceAll(' - ', ' + -')
			.split(' + ')
			.map((term) =>
				term.split(' x ').reduce((product, factor) => {
					const [number, power] = factor.split(' ')
					return product * Number(number) ** (power === 'squared' ? 2 : power === 'cubed' ? 3 : 1)
				}, 1),
			)
		expect(terms.reduce((sum, term) => sum + term, 0)).toBeCloseTo(
			fransenRatioBoys(sized(result.decimalAgeYears, 158, 82, 46)),
			4,
		)
	})
	// growth.md 1.1: never two decimals.
	it('the offset is shown to result decimal, and its error only where an offset stands', () => {
		const result = at('2013-05-02', 'male', { statureCm: 158, sittingHeightCm: 82, massKg: 46 })
		for (const working of result.workings.filter((each) => each.id.startsWith('growth.offset-')))
			expect(working.lines.find((line) => line.startsWith('Offset'))).toMatch(
				/^Offset -?\d+(\.\d)? years; .* = \d+(\.\d)? years/,
			)
		expect(result.findings.find((found) => found.id === 'growth.stage')!.params).toMatchObject({
			offsetErrorYears: 0.6,
		})
		const share = at('2019-06-01', 'female', {
			statureCm: 125,
			massKg: 25,
			motherStatureCm: 165,
			fatherStatureCm: 180,
		})
		expect(share.findings.find((found) => found.id === 'growth.stage')!.params).toEqual({
			stage: 'before',
			byPercent: true,
		})
	})
})
describe('stages, edge by edge', () => {
	// Monasterio 2021: around from 88 to 96 %, both included; Salter 2021: offset from -1.0 to +1.0,
	// both included (growth.md 1.3, 2.6).
	it.each([
		[87.99, 'before'],
		[88, 'around'],
		[96, 'around'],
		[96.01, 'after'],
	] as const)('%f %%: %s', (percent, band) =>
		expect(stage(percent, undefined, protocol).band).toBe(band),
	)
	it.each([
		[-1.0001, 'before'],
		[-1, 'around'],
		[1, 'around'],
		[1.0001, 'after'],
	] as const)('offset %f: %s', (offset, band) =>
		expect(stage(undefined, offset, protocol).band).toBe(band),
	)
	// growth.md 6: share of adult stature first; where the two disagree, uncertain, treated as
	// around.
	it('disagreeing and missing', () => {
		expect([
			stage(85, 0, protocol).band,
			stage(85, -2, protocol).band,
			stage(undefined, undefined, protocol).band,
		]).toEqual(['uncertain', 'before', 'uncertain'])
		expect(stage(85, 0, protocol).findings[0]).toMatchObject({
			code: 'growth.uncertain',
			params: { byPercent: 'before', byOffset: 'around' },
		})
	})
	// growth.md 6: foot before 88 %, knee 86 to 91 %, hip after.
	it.each([
		[85.9, ['foot']],
		[86, ['foot', 'knee']],
		[87.9, ['foot', 'knee']],
		[88, ['knee']],
		[91, ['knee']],
		[91.1, ['hip']],
	] as const)('parts to feel at %f %%: %j', (percent, parts) =>
		expect(
			stage(percent, undefined, protocol).findings.flatMap((finding) =>
				finding.id.startsWith('growth.apophysis-') ? [finding.id.slice(17)] : [],
			),
		).toEqual(parts),
	)
})
