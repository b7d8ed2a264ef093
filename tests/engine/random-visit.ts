/**
 * Random visits that pass the visit schema, drawn from the schema itself. Weights are kept where
 * the clinical tests need them: mostly everyday values, most questions answered no.
 */
import fc from 'fast-check'
import { bodySchema } from '../../shared/engine/visit/recorded/body.ts'
import { conditionSchema } from '../../shared/engine/visit/recorded/conditions.ts'
import { pairSchema } from '../../shared/engine/visit/recorded/pairs.ts'
import { screeningSchema } from '../../shared/engine/visit/recorded/screening.ts'
import { troubles } from '../../shared/engine/visit/terms.ts'
import {
	generalFlagShape,
	type Pair,
	playerSchema,
	type Visit,
	visitSchema,
} from '../../shared/engine/visit/visit.ts'
import { valuesOf, type Weights } from './from-schema.ts'

type Condition = NonNullable<Visit['conditions']>[number]

const isGeneralFlag = (path: string): boolean =>
	Object.keys(generalFlagShape).some((flag) => path === `screening.${flag}`)
/** As in the clinic: a sign then shows in the action. */
function oneYesIn(path: string): number {
	if (isGeneralFlag(path)) return 61
	return path.startsWith('screening.') ? 5 : 2
}
/** As in the clinic: most wear it without trouble. */
const mostlyNone = fc.oneof(
	{ weight: 40, arbitrary: fc.constant(['none']) },
	{ weight: 1, arbitrary: fc.subarray([...troubles], { minLength: 1 }) },
)
const weights: Weights = {
	oneYesIn,
	/** Narrow enough that sides tie, that a label wraps, that a limit is met on both its sides. */
	usual: {
		'feet.*.heelToToeMm': [240, 262],
		'feet.*.heelToBallMm': [175, 200],
		'feet.*.ballWidthMm': [85, 110],
		'feet.*.ballGirthMm': [220, 265],
		'ankles.*.lungeCm': [5, 14],
		'ankles.*.lungeDeg': [25, 48],
		'ankles.*.kneeStraightDeg': [-5, 25],
		'ankles.*.kneeBentDeg': [0, 40],
		'posture.*.navicularDropMm': [3, 15],
		'posture.*.firstMtpDegNonWeightBearing': [40, 80],
		'posture.*.jackTestDeg': [5, 30],
		'body.legLengthDifferenceMm': [0, 30],
		'footwear.heelToForefootOffsetMm': [-10, 30],
		'footwear.insideLengthMm': [200, 320],
		'footwear.heelLiftMm': [0, 25],
	},
	most: { conditions: 3, 'season.sessions': 3, 'season.pattern': 2, 'season.exceptions': 2 },
	own: {
		'player.birthDate': fc
			.record({
				year: fc.integer({ min: 1935, max: 2020 }),
				month: fc.integer({ min: 1, max: 12 }),
				day: fc.integer({ min: 1, max: 28 }),
			})
			.map(({ year, month, day }) =>
				[year, String(month).padStart(2, '0'), String(day).padStart(2, '0')].join('-'),
			),
		'play.position': fc.constantFrom('winger', 'prop', 'ruck', 'goalkeeper'),
		'play.surfaces': fc.uniqueArray(
			valuesOf(visitSchema.shape.play.unwrap().shape.surfaces.unwrap().element),
			{
				maxLength: 4,
			},
		),
		/** Weeks that follow each other, so that a change is worked out. */
		'play.weeks.from': fc.constantFrom('2026-08-03', '2026-08-10', '2026-08-17'),
		'footwear.id': fc.constantFrom('p1', 'p2', 'p3', 'p4'),
		'since.worn.trouble': mostlyNone,
		'since.bought.trouble': mostlyNone,
		notMeasured: fc.dictionary(
			fc.constantFrom('feet.left.heelToToeMm', 'ankles.right.endFeel', 'body.massKg'),
			fc.constant('no time'),
			{ maxKeys: 2 },
		),
	},
}
/** A part of the visit file as the schema has it. */
const partOf = (part: keyof Visit) => valuesOf(visitSchema.shape[part], part, weights)

export const player = valuesOf(playerSchema, 'player', weights)
export const feet = partOf('feet')
export const ankles = partOf('ankles')
export const postures = partOf('posture')
export const body = valuesOf(bodySchema, 'body', weights)

const anyCondition = valuesOf(conditionSchema, 'conditions', weights) as fc.Arbitrary<Condition>
/** Conditions that other rooms read, as often as all the others together. */
const readByRooms = fc
	.record({
		recorded: anyCondition,
		condition: fc.constantFrom<Condition['condition'][]>(
			'calcaneal-apophysitis',
			'hallux-limitus',
			'first-mtp-osteoarthritis',
			'blister',
		),
	})
	.map(({ recorded, condition }): Condition => ({ ...recorded, condition }))
export const conditions = fc.array(fc.oneof(readByRooms, anyCondition), { maxLength: 3 })
const anyPair = valuesOf(pairSchema, 'footwear', weights) as fc.Arbitrary<Pair>
/** Most pairs are owned: only p4 may be one that is planned. */
const mostlyOwned = anyPair.map(
	({ plannedAs, ...pair }): Pair =>
		pair.id === 'p4' && plannedAs !== undefined ? { ...pair, plannedAs } : pair,
)
export const footwear = fc.uniqueArray(mostlyOwned, { selector: ({ id }) => id, maxLength: 4 })
const everyQuestion = fc.record(
	Object.fromEntries(
		Object.entries(screeningSchema.shape).map(([question, schema]) => [
			question,
			valuesOf(schema, `screening.${question}`, weights),
		]),
	),
	{ requiredKeys: [] },
)
/** A few questions asked, mostly answered no. */
export const screening = everyQuestion.chain((answers) =>
	fc
		.subarray(Object.keys(answers), { maxLength: Math.min(8, Object.keys(answers).length) })
		.map((asked) => Object.fromEntries(asked.map((question) => [question, answers[question]]))),
)
/** A visit with these parts; the schema must accept what was drawn. */
export const validVisit = (
	parts: { player: typeof player } & { [Part in keyof Visit]?: fc.Arbitrary<unknown> },
): fc.Arbitrary<Visit> =>
	fc.record<Record<string, unknown>>(parts, { requiredKeys: ['player'] }).map((drawn) =>
		visitSchema.parse({
			format: 'lastwright-visit',
			version: 1,
			visitDate: '2026-09-01',
			...drawn,
		}),
	)
const { format: _, version: __, visitDate: ___, ...drawnParts } = visitSchema.shape
/** A visit with any part of the file, those added to the schema as well. */
export const wholeVisit = validVisit({
	...Object.fromEntries(
		Object.entries(drawnParts).map(([part, schema]) => [part, valuesOf(schema, part, weights)]),
	),
	player,
	conditions,
	footwear,
	screening,
})
/** Every number inside a value. */
export const numbers = (value: unknown): number[] => {
	if (typeof value === 'number') return [value]
	return value && typeof value === 'object' ? Object.values(value).flatMap(numbers) : []
}
