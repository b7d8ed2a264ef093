/** What must hold for any shelf and any feet. */
import fc from 'fast-check'
import { expect, it } from 'vitest'
import { assess } from '../../shared/engine/assess.ts'
import { shippedProtocol } from '../../shared/engine/protocol/protocol.ts'
import type { Model, Shelf, ShelfSize } from '../../shared/engine/visit/shelf.ts'
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
	.uniqueArray(modelOf, { selector: (one: Model) => one.id, maxLength: 6 })
	.map((models): Shelf => ({ format: 'lastwright-shelf', version: 1, models }))
const rank = (visit: Visit, shelf: Shelf) =>
	assess(visit, [], shippedProtocol, shelf).footwear.ranked
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
			.filter((one) => one.system === size.system && one.label === size.label)
			.map((one) => one.insideLengthMm),
	)
const tenth = (min: number, max: number) =>
	fc.integer({ min: min * 10, max: max * 10 }).map((n) => n / 10)

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
			for (const one of rank(visit, shelf)) {
				const rules = [...one.stops, ...one.for, ...one.against].map((reason) => reason.rule)
				if (both.every((foot) => foot?.ballWidthMm === undefined))
					expect(
						rules.filter((rule) => /narrow|tight|width|loose|wide-fitting/.test(rule)),
					).toEqual([])
				if (both.every((foot) => foot?.toeDepthMm === undefined))
					expect(rules.filter((rule) => /shallow|depth|deep-toe/.test(rule))).toEqual([])
				if (both.every((foot) => foot?.heelToBallMm === undefined))
					expect([one.studs, rules.filter((rule) => rule.startsWith('stud-'))]).toEqual([
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
	'unsuitable comes last, points rise, ties go by id; every number is finite; a stop always ' +
		'says why',
	() =>
		fc.assert(
			fc.property(visits, shelves, (visit, shelf) => {
				const ranked = rank(visit, shelf)
				expect(numbers(ranked).every(Number.isFinite)).toBe(true)
				const keys = ranked.map(
					(one) => [Number(one.verdict === 'unsuitable'), one.points, one.id] as const,
				)
				for (let i = 1; i < keys.length; i++) {
					const [a, b] = [keys[i - 1]!, keys[i]!]
					expect(a[0] - b[0] || a[1] - b[1] || (a[2] < b[2] ? -1 : 1)).toBeLessThan(0)
				}
				for (const one of ranked) expect(one.verdict === 'unsuitable').toBe(one.stops.length > 0)
				for (const one of ranked) expect(one.points).toBeGreaterThanOrEqual(0)
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
		expect(all.against.some((one) => one.rule === 'sole-part' || one.rule === 'surface')).toBe(true)
	}
})
