/** What must hold for any shelf and any feet. */
import fc from 'fast-check'
import { expect, it } from 'vitest'
import { assess } from '../../shared/engine/assess.ts'
import { jointRisks } from '../../shared/engine/footwear/studs.ts'
import { shippedProtocol } from '../../shared/engine/protocol/protocol.ts'
import type { Model, Shelf, ShelfSize } from '../../shared/engine/visit/shelf.ts'
import { bothSides } from '../../shared/engine/visit/sides.ts'
import { soles, surfaces } from '../../shared/engine/visit/terms.ts'
import type { Visit } from '../../shared/engine/visit/visit.ts'
import { modelOf } from './random-shelf.ts'
import { ankles, conditions, feet, numbers, player, postures, validVisit } from './random-visit.ts'

const visits = validVisit({
	player,
	feet,
	ankles,
	posture: postures,
	conditions,
	play: fc.record({ surfaces: fc.uniqueArray(fc.constantFrom(...surfaces), { maxLength: 4 }) }),
})
const shelves = fc
	.uniqueArray(modelOf, { selector: (model: Model) => model.id, maxLength: 6 })
	.map((models): Shelf => ({ format: 'lastwright-shelf', version: 1, models }))
const rank = (visit: Visit, shelf: Shelf) =>
	assess(visit, [], shippedProtocol, shelf).footwear.ranked
const isUnder = ({ studs }: ReturnType<typeof rank>[number]): boolean =>
	[...(studs?.left ?? []), ...(studs?.right ?? [])].some(
		({ under, atRisk }) => under.length > 0 && atRisk.length > 0,
	)
const isAtRisk = (visit: Visit): boolean => {
	const { posture } = assess(visit)
	return bothSides.some((side) =>
		Object.values(jointRisks(visit, posture, side)).some((because) => because.length > 0),
	)
}
function inOrder(ranked: ReturnType<typeof rank>, visit: Visit): void {
	const keys = ranked.map(
		(model) =>
			[
				Number(model.verdict === 'unsuitable'),
				Number(isUnder(model)),
				model.points,
				model.id,
			] as const,
	)
	for (const [index, [stopped, under, points, id]] of keys.slice(1).entries()) {
		const [stoppedBefore, underBefore, pointsBefore, idBefore] = keys[index]!
		const first = stoppedBefore - stopped || underBefore - under
		expect(first).toBeLessThanOrEqual(0)
		// where a joint is at risk, models whose studs are not known stand between
		if (first === 0 && !isAtRisk(visit))
			expect(pointsBefore - points || (idBefore < id ? -1 : 1)).toBeLessThan(0)
	}
}
const plain = (lengthMm: number, widthMm: number): Visit => ({
	format: 'lastwright-visit',
	version: 1,
	player: { givenName: 'A', familyName: 'B', birthDate: '2000-01-01', sex: 'male' },
	visitDate: '2027-01-20',
	feet: { left: { heelToToeMm: lengthMm, ballWidthMm: widthMm } },
})
const chosen = (model: Model, lengthMm: number, widthMm: number): ShelfSize =>
	rank(plain(lengthMm, widthMm), {
		format: 'lastwright-shelf',
		version: 1,
		models: [{ ...model, retired: false }],
	})[0]!.size as ShelfSize
/** The length of a label: that of its shortest fitting. */
const labelLength = (model: Model, size: ShelfSize) =>
	Math.min(
		...model.sizes
			.filter((fitting) => fitting.system === size.system && fitting.label === size.label)
			.map((fitting) => fitting.insideLengthMm),
	)
const tenth = (min: number, max: number) =>
	fc.integer({ min: min * 10, max: max * 10 }).map((tenths) => tenths / 10)

it('a wider foot never gets a narrower fitting', () =>
	fc.assert(
		fc.property(
			modelOf,
			tenth(200, 320),
			tenth(70, 130),
			tenth(0, 30),
			(model, length, width, more) => {
				expect(chosen(model, length, width + more).ballWidthMm).toBeGreaterThanOrEqual(
					chosen(model, length, width).ballWidthMm,
				)
			},
		),
	))
it('a longer foot never gets a shorter best size', () =>
	fc.assert(
		fc.property(
			modelOf,
			tenth(200, 320),
			tenth(0, 40),
			tenth(70, 130),
			(model, length, more, width) => {
				expect(labelLength(model, chosen(model, length + more, width))).toBeGreaterThanOrEqual(
					labelLength(model, chosen(model, length, width)),
				)
			},
		),
	))
it('the same shelf and visit give the same answer, whatever the order of the models', () =>
	fc.assert(
		fc.property(visits, shelves, (visit, shelf) => {
			expect(rank(visit, { ...shelf, models: [...shelf.models].reverse() })).toEqual(
				rank(visit, shelf),
			)
		}),
		{ numRuns: 60 },
	))
it('no reason without its measures: width, depth and studs are silent where they were not measured', () =>
	fc.assert(
		fc.property(visits, shelves, (visit, shelf) => {
			const both = [visit.feet?.left, visit.feet?.right]
			for (const ranked of rank(visit, shelf)) {
				const rules = [...ranked.stops, ...ranked.for, ...ranked.against].map(
					(reason) => reason.rule,
				)
				if (both.every((foot) => foot?.ballWidthMm === undefined))
					expect(
						rules.filter((rule) => /narrow|tight|width|loose|wide-fitting/.test(rule)),
					).toEqual([])
				if (both.every((foot) => foot?.toeDepthMm === undefined))
					expect(rules.filter((rule) => /shallow|depth|deep-toe/.test(rule))).toEqual([])
				if (both.every((foot) => foot?.heelToBallMm === undefined))
					expect([ranked.studs, rules.filter((rule) => rule.startsWith('stud-'))]).toEqual([
						undefined,
						[],
					])
				if (!visit.play?.surfaces?.length)
					expect(rules.filter((rule) => /^sole|^surface/.test(rule))).toEqual([])
			}
		}),
		{ numRuns: 80 },
	))
it(
	'unsuitable comes last, then studs under joints at risk, then points rise, ties go by id; every ' +
		'number is finite; a stop always ' +
		'says why',
	() =>
		fc.assert(
			fc.property(visits, shelves, (visit, shelf) => {
				const ranked = rank(visit, shelf)
				expect(numbers(ranked).every(Number.isFinite)).toBe(true)
				inOrder(ranked, visit)
				for (const model of ranked)
					expect(model.verdict === 'unsuitable').toBe(model.stops.length > 0)
				for (const model of ranked) expect(model.points).toBeGreaterThanOrEqual(0)
			}),
			{ numRuns: 80 },
		),
)
it('each sole is forbidden somewhere or costs something: no sole suits everything best', () => {
	for (const sole of soles) {
		const all = rank(
			{ ...plain(260, 95), play: { surfaces: [...surfaces] } },
			{
				format: 'lastwright-shelf',
				version: 1,
				models: [
					{
						id: 'a',
						name: 'A',
						sole,
						sizes: [{ system: 'uk', label: 8, insideLengthMm: 268, ballWidthMm: 97 }],
					},
				],
			},
		)[0]!
		expect(
			all.against.some((reason) => reason.rule === 'sole-part' || reason.rule === 'surface'),
		).toBe(true)
	}
})
