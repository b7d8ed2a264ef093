/**
 * The insert room over random visits: limits hold, shape alone calls for nothing, stops stop, and
 * the drawing is a mirror image.
 */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { assess } from '../../shared/engine/assess.ts'
import type { InsertElement } from '../../shared/engine/findings/assessment.ts'
import { elementRows } from '../../shared/engine/insert/elements/elements.ts'
import {
	controlBarMm,
	type InsertMeasures,
	insertSheets,
	sheet,
	tooLarge,
} from '../../shared/engine/insert/outline/outline.ts'
import { openProtocol } from '../../shared/engine/protocol/protocol.ts'
import { bothSides } from '../../shared/engine/visit/sides.ts'
import { conditions, firstRays, forefeet } from '../../shared/engine/visit/terms.ts'
import { type Visit, visitSchema } from '../../shared/engine/visit/visit.ts'

const protocol = openProtocol()
const side = fc.constantFrom('left' as const, 'right' as const, 'both' as const)
const recorded = fc.array(
	fc.record({
		condition: fc.constantFrom(...conditions),
		side,
		status: fc.constantFrom('current' as const, 'recovering' as const, 'past' as const),
	}),
	{ maxLength: 6 },
)
const foot = fc.record({
	heelToToeMm: fc.integer({ min: 200, max: 310 }),
	heelToBallMm: fc.integer({ min: 140, max: 225 }),
	ballWidthMm: fc.integer({ min: 75, max: 120 }),
	heelWidthMm: fc.integer({ min: 45, max: 80 }),
})
const stance = fc.record({
	fpi6: fc.array(fc.integer({ min: -2, max: 2 }), { minLength: 6, maxLength: 6 }),
	firstRay: fc.constantFrom(...firstRays),
	forefoot: fc.constantFrom(...forefeet),
	supinationResistance: fc.constantFrom('low' as const, 'usual' as const, 'high' as const),
	firstMtpDegNonWeightBearing: fc.integer({ min: 30, max: 90 }),
	jackTestDeg: fc.integer({ min: 5, max: 30 }),
})
const both = <Value>(value: fc.Arbitrary<Value>) => fc.record({ left: value, right: value })
const visits = fc
	.record({
		conditions: recorded,
		feet: both(foot),
		posture: both(stance),
		massKg: fc.integer({ min: 25, max: 120 }),
		difference: fc.integer({ min: 0, max: 25 }),
		shorterLeg: fc.constantFrom('left' as const, 'right' as const),
		birthDate: fc.constantFrom('1995-01-01', '2015-01-01'),
	})
	.map(
		({ massKg, difference, shorterLeg, birthDate, ...rest }): Visit =>
			visitSchema.parse({
				format: 'lastwright-visit',
				version: 1,
				player: { givenName: 'A', familyName: 'B', birthDate, sex: 'female' },
				visitDate: '2027-01-20',
				...rest,
				body: { massKg, legLengthDifferenceMm: difference, shorterLeg },
			}),
	)
const raisesMm = (elements: readonly InsertElement[]) =>
	elements
		.filter(({ element }) => element === 'heel-raise' || element === 'leg-length-raise')
		.reduce((sumMm, { value }) => sumMm + (value ?? 0), 0)
/** A reason and a basis, and an amount within its range; raises are cut to what a boot holds. */
function expectSound({ element, because, basis, value, range }: InsertElement) {
	expect(because.length).toBeGreaterThan(0)
	expect(basis.source.length).toBeGreaterThan(5)
	if (value === undefined || range === undefined || element.endsWith('raise')) return
	expect(value).toBeGreaterThanOrEqual(range[0])
	expect(value).toBeLessThanOrEqual(range[1])
}
/** A skive needs a deep heel cup. */
function expectCupForSkive(elements: readonly InsertElement[]) {
	if (!elements.some(({ element }) => element.endsWith('skive'))) return
	expect(elements.find(({ element }) => element === 'heel-cup')!.value).toBeGreaterThanOrEqual(14)
}
/** Postures spread over every term, none with both a first ray and a forefoot out of neutral. */
const everyPosture = [-1, 0, 2]
	.flatMap((fpi) => firstRays.map((firstRay) => ({ fpi, firstRay })))
	.flatMap((posture) => forefeet.map((forefoot) => ({ ...posture, forefoot })))
	.filter(({ firstRay, forefoot }) => firstRay === 'neutral' || forefoot === 'neutral')
	.flatMap((posture) => [5, 25].map((jackTestDeg) => ({ ...posture, jackTestDeg })))
	.map(({ fpi, ...posture }) => ({
		...posture,
		fpi6: Array(6).fill(fpi),
		supinationResistance: 'high',
		firstMtpDegNonWeightBearing: 60,
	}))

describe('proposals', () => {
	it(
		'keep every raise together at 6 mm, every amount in its range, every element with a reason ' +
			'and a basis',
		() =>
			fc.assert(
				fc.property(visits, (visit) => {
					const { insert } = assess(visit)
					for (const side of bothSides) {
						const { elements } = insert[side]
						expect(raisesMm(elements)).toBeLessThanOrEqual(6 + 1e-9)
						expect(new Set(elements.map(({ element }) => element)).size).toBe(elements.length)
						elements.forEach(expectSound)
						expectCupForSkive(elements)
					}
				}),
				{ numRuns: 150 },
			),
	)
	it('never for shape alone: without a condition, a stiff ankle or a leg difference, nothing', () =>
		fc.assert(
			fc.property(visits, (visit) => {
				const { insert } = assess({ ...visit, conditions: [], body: {} })
				for (const side of bothSides)
					expect(insert[side]).toEqual({ state: 'not-needed', stoppedBy: [], elements: [] })
			}),
			{ numRuns: 60 },
		))
	it('a warning sign on one limb stops that limb whatever else is recorded', () =>
		fc.assert(
			fc.property(visits, (visit) => {
				const { insert, screening } = assess({
					...visit,
					screening: { achilles: { side: 'right', gap: true } },
				})
				expect(insert.right).toMatchObject({ state: 'stopped', elements: [] })
				expect(screening.blockedSides).toContain('right')
			}),
			{ numRuns: 60 },
		))
	it('every usual amount lies in its usual range', () => {
		for (const row of elementRows) {
			expect(protocol.value(row.range[0]), row.element).toBeLessThanOrEqual(protocol.value(row.key))
			expect(protocol.value(row.key), row.element).toBeLessThanOrEqual(protocol.value(row.range[1]))
		}
	})
	it('every row of the table is reached, by a condition that it names', () => {
		const reaches = (element: string, posture: object, condition: string): boolean => {
			const visit = visitSchema.parse({
				format: 'lastwright-visit',
				version: 1,
				player: { givenName: 'A', familyName: 'B', birthDate: '1995-01-01', sex: 'male' },
				visitDate: '2027-01-20',
				conditions: [{ condition, side: 'left', status: 'current' }],
				posture: { left: posture },
			})
			return assess(visit).insert.left.elements.some((one) => one.element === element)
		}
		for (const { element, calls } of elementRows) {
			const named = calls.flat().flatMap((need) => need.conditions ?? [])
			expect(
				everyPosture.some((posture) =>
					named.some((condition) => reaches(element, posture, condition)),
				),
				element,
			).toBe(true)
		}
	})
})
describe('the drawing at true size', () => {
	const sizes = fc.record({
		lengthMm: fc.integer({ min: 200, max: 265 }),
		ballLengthMm: fc.integer({ min: 130, max: 190 }),
		widthMm: fc.integer({ min: 70, max: 86 }),
		heelWidthMm: fc.integer({ min: 45, max: 68 }),
	})
	const elements = (length: string): InsertElement[] =>
		elementRows
			.map(
				(row): InsertElement => ({
					element: row.element,
					value: protocol.value(row.range[0]),
					unit: row.unit,
					where: 'both',
					says: '',
					because: [],
					basis: { rule: '', source: '', strength: 'practice' },
					cautions: [],
				}),
			)
			.concat([
				{
					element: 'length',
					choice: length,
					where: 'both',
					says: '',
					because: [],
					basis: { rule: '', source: '', strength: 'practice' },
					cautions: [],
				},
			])
	const draw = (left: InsertMeasures, right: InsertMeasures, length = 'full') =>
		insertSheets(
			{
				left: { measures: left, elements: elements(length) },
				right: { measures: right, elements: elements(length) },
			},
			protocol,
		)
	const outline = (svg: string) => {
		const path = /<path d="([^"]+)" fill="#f4f7f6"/.exec(svg)![1]!
		const all = [...path.matchAll(/-?\d+(\.\d+)?/g)].map(([number]) => Number(number))
		return {
			xs: all.filter((_, index) => index % 2 === 0),
			ys: all.filter((_, index) => index % 2 === 1),
		}
	}
	const anchors = (svg: string) =>
		[...svg.matchAll(/<path d="([^"]+)" fill="#f4f7f6"/g)].map((found) =>
			[...found[1]!.matchAll(/(-?[\d.]+) (-?[\d.]+)/g)].map(
				(pair) => [Number(pair[1]), Number(pair[2])] as const,
			),
		)
	it('is as long and as wide as the foot, in millimetres, with a 100 mm bar', () =>
		fc.assert(
			fc.property(sizes, (measures) => {
				const { sheets } = draw(measures, measures)
				for (const figure of sheets) {
					const { xs, ys } = outline(figure.svg)
					expect(Math.max(...ys) - Math.min(...ys)).toBeCloseTo(measures.lengthMm, 1)
					expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo(
						Math.max(measures.widthMm, measures.heelWidthMm),
						1,
					)
					expect(figure.svg).toContain(`H ${6 + controlBarMm}`)
					expect(figure.svg).toContain(`viewBox="0 0 ${/width="([\d.]+)mm"/.exec(figure.svg)![1]}`)
					expect(figure.widthPt / figure.widthMm).toBeCloseTo(72 / 25.4, 9)
					expect(tooLarge(figure)).toBe(
						figure.widthMm > sheet.widthMm || figure.heightMm > sheet.heightMm,
					)
				}
			}),
		))
	it('right is the mirror of left', () =>
		fc.assert(
			fc.property(sizes, (measures) => {
				const feet = draw(measures, measures).sheets.flatMap(({ svg }) => anchors(svg))
				expect(feet).toHaveLength(2)
				const [left, right] = feet as [(readonly [number, number])[], (readonly [number, number])[]]
				const middle = (left[0]![0] + right[0]![0]) / 2
				for (const [index, [x, y]] of left.entries()) {
					expect(2 * middle - x).toBeCloseTo(right[index]![0], 1)
					expect(right[index]![1]).toBeCloseTo(y, 2)
				}
			}),
		))
	it('three-quarter ends behind the heads', () => {
		const measures = { lengthMm: 260, ballLengthMm: 190, widthMm: 80, heelWidthMm: 60 }
		const { ys } = outline(draw(measures, measures, 'three-quarter').sheets[0]!.svg)
		expect(Math.max(...ys) - Math.min(...ys)).toBeCloseTo(185, 1)
	})
	it('a missing measure is named, never guessed', () =>
		expect(
			insertSheets(
				{
					left: { measures: { lengthMm: 260, widthMm: 90 }, elements: elements('full') },
					right: { measures: {}, elements: [] },
				},
				protocol,
			),
		).toEqual({
			sheets: [],
			missing: [{ side: 'left', measures: ['heel to ball', 'heel width'] }],
		}))
	it('says nothing the page font lacks', () => {
		for (const figure of draw(
			{ lengthMm: 260, ballLengthMm: 190, widthMm: 90, heelWidthMm: 60 },
			{},
		).sheets)
			expect(figure.svg).not.toMatch(/[^\x20-\x7e]/)
	})
})
