/**
 * The insert room over random visits: a proposal keeps its own limits, shape alone calls for nothing,
 * what the gate holds is not proposed, and left and right mirror.
 */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { assess } from '../../shared/engine/assess.ts'
import type { InsertElement, RaiseInPair } from '../../shared/engine/findings/assessment.ts'
import { elementRows } from '../../shared/engine/insert/elements/elements.ts'
import { openProtocol } from '../../shared/engine/protocol/protocol.ts'
import { bothSides, otherSide } from '../../shared/engine/visit/sides.ts'
import { type Condition, conditions, firstRays, forefeet } from '../../shared/engine/visit/terms.ts'
import { type Visit, visitSchema } from '../../shared/engine/visit/visit.ts'
import { swapVisit } from './mirror.ts'

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
/** The pairs of elements of which one foot never has both, written out apart from the engine's table. */
const excluding = [
	['rearfoot-post-medial', 'rearfoot-post-lateral'],
	['medial-skive', 'lateral-skive'],
	['rearfoot-post-medial', 'lateral-skive'],
	['medial-skive', 'rearfoot-post-lateral'],
	['forefoot-post-medial', 'forefoot-post-lateral'],
	['first-ray-cutout', 'forefoot-stiffener'],
	['first-ray-cutout', 'forefoot-post-medial'],
	['metatarsal-dome', 'forefoot-cushion'],
] as const
const heightMm = (elements: readonly InsertElement[], names: readonly string[]) =>
	elements
		.filter(({ element, where }) => names.includes(element) && where !== 'trainer')
		.reduce((sumMm, { value }) => sumMm + (value ?? 0), 0)
/** A reason and a basis, and an amount within its range; what a boot does not hold is cut. */
function expectSound({ element, because, basis, value, range }: InsertElement) {
	expect(because.length).toBeGreaterThan(0)
	expect(basis.source.length).toBeGreaterThan(5)
	if (value === undefined || range === undefined) return
	expect(value, element).toBeGreaterThanOrEqual(range[0])
	expect(value, element).toBeLessThanOrEqual(range[1])
}
/** clinical.md 4.5: shell 3.5 mm, cup 10 mm and 6 mm under the heel at most; a skive needs 14 mm of cup. */
function expectWithinLimits(elements: readonly InsertElement[]) {
	const of = (name: string) => elements.find(({ element }) => element === name)
	expect(of('shell')?.value ?? 0).toBeLessThanOrEqual(3.5)
	const stacked = ['shell', 'cover', 'heel-cushion', 'heel-raise', 'leg-length-raise']
	expect(heightMm(elements, stacked)).toBeLessThanOrEqual(6 + 1e-9)
	for (const pair of excluding)
		expect(
			pair.every((name) => of(name) !== undefined),
			pair.join(' and '),
		).toBe(false)
	const skives = elements.filter(({ element }) => element.endsWith('skive'))
	for (const skive of skives) expect(skive.where).toBe('trainer')
	if (skives.length > 0) expect(of('heel-cup')!.value).toBeGreaterThanOrEqual(14)
	const cup = of('heel-cup')
	if (cup && cup.where !== 'trainer') expect(cup.value).toBeLessThanOrEqual(10)
}
/** What an insert makes of a raise is in it, and a boot holds what lies in it. */
function expectOneFigure(
	{ pair, ...feet }: RaiseInPair,
	side: 'left' | 'right',
	elements: readonly InsertElement[],
) {
	const foot = feet[side]
	const roomy = pair === 'role.running' || pair === 'role.everyday'
	if (!roomy) expect(foot.addedUnderHeelMm).toBeLessThanOrEqual(6 + 1e-9)
	if (foot.madeBy !== 'insert') return
	const made = elements.filter(({ element }) => element.endsWith('raise'))
	const madeMm = made.reduce((sumMm, { value }) => sumMm + (value ?? 0), 0)
	expect(madeMm).toBeGreaterThan(0)
	expect(madeMm).toBeLessThanOrEqual(foot.addMm + 1e-9)
}
interface Body {
	birthDate: string
	massKg: number
	fpi: number
}
const everyBody: readonly Body[] = ['1995-01-01', '2015-01-01'].flatMap((birthDate) =>
	[35, 70, 95].flatMap((massKg) => [-1, 0, 2].map((fpi) => ({ birthDate, massKg, fpi }))),
)
/** Stiff ankles, and one condition of the left. */
const bodyWith = ({ birthDate, massKg, fpi }: Body, condition: Condition): Visit =>
	visitSchema.parse({
		format: 'lastwright-visit',
		version: 1,
		player: { givenName: 'A', familyName: 'B', birthDate, sex: 'male' },
		visitDate: '2027-01-20',
		conditions: [{ condition, side: 'left', status: 'current' }],
		posture: { left: { fpi6: Array(6).fill(fpi), supinationResistance: 'high' } },
		ankles: { left: { lungeDeg: 30 }, right: { lungeDeg: 30 } },
		body: { massKg },
	})
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
	it('keep within their own limits, every element with a reason and a basis, and leave nothing open', () =>
		fc.assert(
			fc.property(visits, (visit) => {
				const { insert } = assess(visit)
				expect(insert.conflicts).toEqual([])
				for (const side of bothSides) {
					const { elements } = insert[side]
					expect(new Set(elements.map(({ element }) => element)).size).toBe(elements.length)
					elements.forEach(expectSound)
					expectWithinLimits(elements)
				}
				const ids = insert.findings.map(({ id }) => id)
				expect(new Set(ids).size).toBe(ids.length)
			}),
			{ numRuns: 150 },
		))
	it.each(conditions)('%s alone, at each age and weight, keeps within the limits', (condition) => {
		for (const one of everyBody)
			expectWithinLimits(assess(bodyWith(one, condition)).insert.left.elements)
	})
	it('carry the raise of the plan: one figure under a heel, and room for all of it', () =>
		fc.assert(
			fc.property(visits, (visit) => {
				const { insert, prescription } = assess(visit)
				for (const pair of prescription.raise.pairs)
					for (const side of bothSides) expectOneFigure(pair, side, insert[side].elements)
			}),
			{ numRuns: 100 },
		))
	it('left and right mirror', () =>
		fc.assert(
			fc.property(visits, (visit) => {
				const [seen, mirror] = [assess(visit).insert, assess(swapVisit(visit)).insert]
				for (const side of bothSides) {
					const other = mirror[otherSide(side)]
					expect(other.state).toBe(seen[side].state)
					const told = ({ element, value, where }: InsertElement) => [element, value, where]
					expect(other.elements.map(told)).toEqual(seen[side].elements.map(told))
				}
				expect(mirror.settled!.map(({ code }) => code).sort()).toEqual(
					seen.settled!.map(({ code }) => code).sort(),
				)
			}),
			{ numRuns: 60 },
		))
	it('never for shape alone: without a condition, a stiff ankle or a leg difference, nothing', () =>
		fc.assert(
			fc.property(visits, (visit) => {
				const { insert } = assess({ ...visit, conditions: [], body: {} })
				for (const side of bothSides)
					expect(insert[side]).toEqual({ state: 'not-needed', stoppedBy: [], elements: [] })
			}),
			{ numRuns: 60 },
		))
	it('a warning sign on one limb holds that limb whatever else is recorded', () =>
		fc.assert(
			fc.property(visits, (visit) => {
				const { insert, screening } = assess({
					...visit,
					screening: { achilles: { side: 'right', gap: true } },
				})
				expect(insert.right).toMatchObject({ state: 'held', elements: [] })
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
	it('every row of the table is reached, by a condition that it names, or gives way', () => {
		const reaches = (element: string, posture: object, condition: string): boolean => {
			const visit = visitSchema.parse({
				format: 'lastwright-visit',
				version: 1,
				player: { givenName: 'A', familyName: 'B', birthDate: '1995-01-01', sex: 'male' },
				visitDate: '2027-01-20',
				conditions: [{ condition, side: 'left', status: 'current' }],
				posture: { left: posture },
			})
			const { left, settled } = assess(visit).insert
			const gaveWay = settled!.some(
				({ params }) => params.gives === element || params.element === element,
			)
			return gaveWay || left.elements.some((one) => one.element === element)
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
