/** Random visits that pass the visit schema, and the same visit with left and right swapped. */
import fc from 'fast-check'
import {
	codes,
	endFeels,
	firstRays,
	sexes,
	soles,
	surfaces,
} from '../../shared/engine/visit/terms.ts'
import {
	generalFlagShape,
	injurySchema,
	unfoldedShape,
	type Visit,
	visitSchema,
	wellsSchema,
} from '../../shared/engine/visit/visit.ts'

export const tenth = (min: number, max: number) =>
	fc.integer({ min: min * 10, max: max * 10 }).map((n) => n / 10)
/**
 * Mostly everyday values, sometimes the edges of what may be recorded; once or repeated; often on
 * whole numbers so that sides tie.
 */
const reading = (hard: [number, number], usual: [number, number]) => {
	const one = fc.oneof(
		{ weight: 3, arbitrary: fc.integer({ min: usual[0], max: usual[1] }) },
		{ weight: 3, arbitrary: tenth(...usual) },
		{ weight: 1, arbitrary: tenth(...hard) },
	)
	return fc.oneof(one, fc.array(one, { minLength: 1, maxLength: 6 }))
}
const partly = <T>(shape: { [K in keyof T]: fc.Arbitrary<T[K]> }) =>
	fc.record(shape, { requiredKeys: [] })
const sided = <T>(one: fc.Arbitrary<T>) => ({ left: one, right: one })

export const player = fc.record({
	givenName: fc.constant('A'),
	familyName: fc.constant('B'),
	sex: fc.constantFrom(...sexes),
	birthDate: fc
		.record({
			y: fc.integer({ min: 1935, max: 2020 }),
			m: fc.integer({ min: 1, max: 12 }),
			d: fc.integer({ min: 1, max: 28 }),
		})
		.map(({ y, m, d }) => `${y}-${String(m).padStart(2, '0')}-${String(d).padStart(2, '0')}`),
})
const foot = partly({
	heelToToeMm: reading([90, 400], [240, 262]),
	heelToBallMm: reading([60, 300], [175, 200]),
	ballWidthMm: reading([35, 170], [85, 110]),
	ballGirthMm: reading([90, 400], [220, 265]),
})
export const feet = partly({
	...sided(foot),
	stance: fc.constantFrom('standing' as const, 'seated' as const),
	sockMm: tenth(0, 15),
})
export const ankles = partly(
	sided(
		partly({
			lungeCm: reading([-10, 30], [5, 14]),
			lungeDeg: reading([0, 75], [25, 48]),
			kneeStraightDeg: reading([-40, 50], [-5, 25]),
			kneeBentDeg: reading([-40, 60], [0, 40]),
			endFeel: fc.constantFrom(...endFeels),
		}),
	),
)
export const postures = partly(
	sided(
		partly({
			fpi6: fc.array(fc.integer({ min: -2, max: 2 }), { minLength: 6, maxLength: 6 }),
			navicularDropMm: reading([-10, 40], [3, 15]),
			firstRay: fc.constantFrom(...firstRays),
			firstMtpDegNonWeightBearing: reading([0, 120], [40, 80]),
			jackTestDeg: reading([0, 90], [5, 30]),
			heelRises: fc.integer({ min: 0, max: 150 }),
		}),
	),
)
export const conditions = fc.array(
	fc.record({
		condition: fc.constantFrom(
			'calcaneal-apophysitis' as const,
			'hallux-limitus' as const,
			'first-mtp-osteoarthritis' as const,
			'blister' as const,
		),
		side: fc.constantFrom('left' as const, 'right' as const, 'both' as const, 'none' as const),
		status: fc.constantFrom('current' as const, 'recovering' as const, 'past' as const),
	}),
	{ maxLength: 3 },
)
export const footwear = fc.uniqueArray(
	fc.record(
		{
			id: fc.constantFrom('p1', 'p2', 'p3', 'p4'),
			sole: fc.constantFrom(...soles),
			heelToForefootOffsetMm: tenth(-10, 30),
			insideLengthMm: tenth(200, 320),
			heelLiftMm: tenth(0, 25),
		},
		{ requiredKeys: ['id'] },
	),
	{ selector: (pair) => pair.id, maxLength: 4 },
)

export const body = partly({
	statureCm: tenth(70, 240),
	sittingHeightCm: tenth(40, 130),
	massKg: tenth(10, 250),
	motherStatureCm: tenth(120, 220),
	fatherStatureCm: tenth(120, 230),
	parentStatures: fc.constantFrom('reported' as const, 'measured' as const),
	growthOrHormoneTreatment: fc.boolean(),
	legLengthDifferenceMm: fc.integer({ min: 0, max: 30 }),
	shorterLeg: fc.constantFrom('left' as const, 'right' as const),
	legLengthReason: fc.constant('back pain'),
	legLengthSymptoms: fc.boolean(),
	legLengthYears: fc.integer({ min: 0, max: 60 }),
	legLengthCompensation: fc.constantFrom('none' as const, 'side-bending' as const, 'bony' as const),
	puberty: fc.constantFrom('before' as const, 'during' as const, 'after' as const),
	beighton: fc.integer({ min: 0, max: 9 }),
	hypermobilityHistory: fc.integer({ min: 0, max: 5 }),
})
export const play = partly({
	code: fc.constantFrom(...codes),
	position: fc.constantFrom('winger', 'prop', 'ruck', 'goalkeeper'),
	surfaces: fc.uniqueArray(fc.constantFrom(...surfaces), { maxLength: 4 }),
	matchesPerWeek: tenth(0, 14),
	trainingsPerWeek: tenth(0, 21),
	organisedHoursPerWeek: tenth(0, 60),
	freePlayHoursPerWeek: tenth(0, 80),
	monthsPerYearInOneSport: fc.integer({ min: 0, max: 12 }),
	daysOffPerWeek: fc.integer({ min: 0, max: 7 }),
	weeks: fc.array(
		fc.record({
			from: fc.constantFrom('2026-08-03', '2026-08-10', '2026-08-17'),
			days: fc.array(fc.integer({ min: 0, max: 6000 }), { minLength: 7, maxLength: 7 }),
		}),
		{ maxLength: 3 },
	),
})
/**
 * Any answers to any questions, drawn from the schemas themselves: booleans, counts, measures,
 * choices; sides nested.
 */
interface Shape {
	type?: string
	unwrap?(): Shape
	shape?: Record<string, Shape>
	options?: readonly string[]
	minValue?: number | null
	maxValue?: number | null
	meta?(): { softMax?: number } | undefined
}
const mostlyNo = fc.oneof(
	{ weight: 4, arbitrary: fc.constant(false) },
	{ weight: 1, arbitrary: fc.constant(true) },
)
function answersTo(shape: Record<string, Shape>): fc.Arbitrary<Record<string, unknown>> {
	const drawn = Object.entries(shape).map(
		([key, schema]): [string, fc.Arbitrary<unknown>, boolean] => {
			const inner = schema.type === 'optional' ? schema.unwrap!() : schema
			const one: fc.Arbitrary<unknown> =
				inner.type === 'boolean'
					? mostlyNo
					: inner.type === 'enum'
						? fc.constantFrom(...inner.options!)
						: inner.type === 'object'
							? answersTo(inner.shape!)
							: fc.integer({
									min: Math.ceil(inner.minValue ?? 0),
									max: Math.floor(inner.maxValue ?? 10),
								})
			return [key, one, schema.type !== 'optional']
		},
	)
	return fc.record(Object.fromEntries(drawn.map(([key, one]) => [key, one])), {
		requiredKeys: drawn.flatMap(([key, , needed]) => (needed ? [key] : [])),
	})
}
const shapeOf = (schema: unknown): Record<string, Shape> => (schema as Shape).shape!
/** A few questions asked, mostly answered no, as in the clinic: a sign then shows in the action. */
export const screening = fc
	.record(
		{
			injury: answersTo(shapeOf(injurySchema)),
			wells: answersTo(shapeOf(wellsSchema)),
			...Object.fromEntries(
				Object.entries(unfoldedShape).map(([key, optional]) => [
					key,
					answersTo(shapeOf((optional as unknown as Shape).unwrap!())),
				]),
			),
			...Object.fromEntries(
				Object.keys(generalFlagShape).map((key) => [
					key,
					fc.oneof(
						{ weight: 60, arbitrary: fc.constant(false) },
						{ weight: 1, arbitrary: fc.constant(true) },
					),
				]),
			),
		},
		{ requiredKeys: [] },
	)
	.chain((all) =>
		fc
			.subarray(Object.keys(all), { minLength: 0, maxLength: Math.min(8, Object.keys(all).length) })
			.map(
				(kept): Record<string, unknown> =>
					Object.fromEntries(kept.map((key) => [key, (all as Record<string, unknown>)[key]])),
			),
	)
/** A visit with these parts; the schema must accept what was drawn. */
export const validVisit = (
	parts: { player: typeof player } & { [K in keyof Visit]?: fc.Arbitrary<unknown> },
): fc.Arbitrary<Visit> =>
	fc
		.record(parts as Record<string, fc.Arbitrary<unknown>>, { requiredKeys: ['player'] })
		.map((drawn) =>
			visitSchema.parse({
				format: 'lastwright-visit',
				version: 1,
				visitDate: '2026-09-01',
				...drawn,
			}),
		)

/** A basis names its rule, not a side of this player: it stays as it is. */
const swapWord = (text: string): string =>
	text.replace(/\b(left|right)\b/g, (word) => (word === 'left' ? 'right' : 'left'))
function swapped(value: unknown): unknown {
	if (typeof value === 'string') return swapWord(value)
	if (Array.isArray(value)) return value.map(swapped)
	if (value && typeof value === 'object')
		return Object.fromEntries(
			Object.entries(value).map(([key, one]) => [
				swapWord(key),
				key === 'basis' ? one : swapped(one),
			]),
		)
	return value
}
/** The same visit seen in a mirror: every left is a right. */
export const swapVisit = (visit: Visit): Visit => visitSchema.parse(swapped(visit))
const text = (value: unknown): string => JSON.stringify(value)
/** A result brought to a comparable order, and (unless told not to) seen in a mirror. */
export function mirrored<
	T extends {
		findings: { id: string; because: unknown[] }[]
		workings?: { id: string; lines: string[] }[]
	},
>(result: T, swap = true): unknown {
	const seen = (swap ? swapped(result) : result) as T
	const findings = seen.findings
		.map((one) => ({
			...one,
			because: [...one.because].sort((a, b) => (text(a) < text(b) ? -1 : 1)),
		}))
		.sort((a, b) => (a.id < b.id ? -1 : 1))
	// Left and right come in a fixed order: lines and workings are compared without it.
	const workings = seen.workings
		?.map((one) => ({ ...one, lines: [...one.lines].sort() }))
		.sort((a, b) => (a.id < b.id ? -1 : 1))
	return JSON.parse(text({ ...seen, findings, ...(workings ? { workings } : {}) }))
}
/** Every number inside a value. */
export const numbers = (value: unknown): number[] =>
	typeof value === 'number'
		? [value]
		: value && typeof value === 'object'
			? Object.values(value).flatMap(numbers)
			: []
