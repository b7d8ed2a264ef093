/**
 * Shelf file, version 1: the clinic's own catalogue of footwear that can be bought locally, as
 * measured in the clinic.
 */
import { z } from 'zod'
import { choice, isoDate, measure, text, yesNo } from './fields.ts'
import { type Problem, problemOf } from './problems.ts'
import { type Parsed, readFile } from './read-file.ts'
import { codes, sizeSystems, soles } from './terms.ts'

/** How firm the heel counter is. @internal */
export const counterStiffnesses = ['none', 'soft', 'medium', 'firm'] as const
const counterHeights = ['low', 'usual', 'high'] as const
/** How high the collar stands at the heel. @internal */
export const collars = ['notched', 'low', 'usual', 'high'] as const
/** How the sole bends at the forefoot. @internal */
export const stiffnesses = ['flexible', 'medium', 'stiff'] as const
/** How soft the upper is. @internal */
export const softnesses = ['soft', 'medium', 'firm'] as const
/** Where seams run over the forefoot. @internal */
export const seamPlaces = ['none', 'away-from-joints', 'over-joints'] as const
/** How much of the sole is cushioned. @internal */
export const cushionings = ['none', 'heel', 'full'] as const
const insteps = ['low', 'usual', 'deep'] as const
/** How wide the sole stands. @internal */
export const bases = ['narrow', 'usual', 'wide'] as const
/** The shape of a stud on the ground. @internal */
export const studShapes = ['round', 'blade', 'oval'] as const

/**
 * A stud's centre on the normalised sole: x along the inside length from the heel, y across half
 * the ball width of the sole.
 */
const studSchema = z.strictObject({
	xFraction: measure(
		'Stud, from heel (0) to toe (1) of the inside length',
		'fraction',
		[0, 1],
		[0, 1],
		3,
	),
	yFraction: measure(
		'Stud, from inner edge (-1) to outer edge (1)',
		'fraction',
		[-1, 1],
		[-1, 1],
		3,
	),
	shape: choice('Stud shape', studShapes),
	heightMm: measure('Stud height', 'mm', [0.5, 25], [3, 19], 1),
	removable: z.boolean().meta({ title: 'Stud comes out' }),
})
/** A pair of a size that was measured on the foot at a visit, told from others by a digest. */
const measuredSchema = z.strictObject({
	of: z.string().regex(/^[0-9a-f]{64}$/, '64 hex digits'),
	on: isoDate('Measured on'),
	insideLengthMm: measure('Inside length', 'mm', [90, 420], [150, 350], 1),
	ballWidthMm: measure('Inside width at the ball', 'mm', [35, 180], [60, 130], 1).optional(),
	/** Left out by a person, it stays known and does not count. */
	counts: z.boolean().meta({ title: 'Counts' }),
})
const shelfSizeSchema = z.strictObject({
	system: choice('Size system', sizeSystems),
	label: measure('Size', 'label', [0, 420], [0, 60], 1),
	insideLengthMm: measure('Inside length', 'mm', [90, 420], [150, 350], 1),
	ballWidthMm: measure('Inside width at the ball', 'mm', [35, 180], [60, 130], 1),
	fitting: text('Fitting', 12).optional(),
	/** What was listed before any pair of it was measured. */
	listed: z
		.strictObject({
			insideLengthMm: measure('Inside length', 'mm', [90, 420], [150, 350], 1),
			ballWidthMm: measure('Inside width at the ball', 'mm', [35, 180], [60, 130], 1),
		})
		.optional(),
	measured: z.array(measuredSchema).max(200).optional(),
})
export const modelSchema = z.strictObject({
	id: z
		.string()
		.trim()
		.regex(/^[a-z0-9][a-z0-9-]{0,39}$/, 'small letters, digits and hyphens, at most 40')
		.meta({ title: 'Model id' }),
	name: text('Name', 80),
	sole: choice('Sole', soles),
	codes: z.array(choice('Code', codes)).max(8).optional(),
	sizes: z.array(shelfSizeSchema).min(1).max(80),
	toeBoxDepthMm: measure('Toe-box depth, liner in', 'mm', [8, 70], [16, 45], 1).optional(),
	heelStackMm: measure('Heel stack', 'mm', [0, 70], [4, 45], 1).optional(),
	forefootStackMm: measure('Forefoot stack', 'mm', [0, 60], [3, 35], 1).optional(),
	counterStiffness: choice('Heel counter stiffness', counterStiffnesses).optional(),
	counterHeight: choice('Heel counter height', counterHeights).optional(),
	collar: choice('Collar at the heel', collars).optional(),
	paddedCollar: yesNo('Padded collar'),
	instep: choice('Instep volume', insteps).optional(),
	torsion: choice('Midfoot twist', stiffnesses).optional(),
	forefootStiffness: choice('Forefoot bend', stiffnesses).optional(),
	upperSoftness: choice('Upper', softnesses).optional(),
	forefootSeams: choice('Forefoot seams', seamPlaces).optional(),
	cushioning: choice('Cushioning', cushionings).optional(),
	base: choice('Base', bases).optional(),
	massG: measure('Mass of one shoe', 'g', [60, 1200], [130, 500]).optional(),
	removableLiner: yesNo('Liner comes out'),
	linerThicknessMm: measure('Liner thickness', 'mm', [0, 15], [1, 8], 1).optional(),
	/** Absent: not recorded. Empty: a sole without studs. */
	studs: z.array(studSchema).max(120).optional(),
	price: measure('Price', 'local currency', [0, 10000], [10, 600], 2).optional(),
	retired: yesNo('No longer sold'),
	note: text('Note', 500).optional(),
})
export const shelfSchema = z.strictObject({
	format: z.literal('lastwright-shelf'),
	version: z.literal(1),
	note: text('Note', 500).optional(),
	models: z.array(modelSchema).max(2000),
})
/** The joints of a foot that the studs of a model are looked at against. */
export type JointName = 'first metatarsal head' | 'fifth metatarsal head' | 'heel centre'
export type Stud = z.infer<typeof studSchema>
export type ShelfSize = z.infer<typeof shelfSizeSchema>
export type MeasuredOfSize = z.infer<typeof measuredSchema>
export type Model = z.infer<typeof modelSchema>
export type Shelf = z.infer<typeof shelfSchema>

/**
 * Offset of a model, heel stack less forefoot stack, mm; undefined where either is not recorded.
 */
export function offsetOf(model: Model): number | undefined {
	return model.heelStackMm === undefined || model.forefootStackMm === undefined
		? undefined
		: Math.round((model.heelStackMm - model.forefootStackMm) * 10) / 10
}
function sizeProblems({ sizes }: Model, modelIndex: number): Problem[] {
	const seen = new Set<string>()
	return sizes.flatMap(({ system, label, fitting }, index) => {
		const key = `${system} ${label} ${fitting ?? ''}`.trim()
		const twice = seen.has(key)
		seen.add(key)
		if (!twice) return []
		return [problemOf(`models.${modelIndex}.sizes.${index}.label`, 'listed-twice', key, {})]
	})
}
/** What no single field can say of itself: an id used twice, a size listed twice. */
export function shelfProblems({ models }: Shelf): Problem[] {
	const ids = new Set<string>()
	return models.flatMap((model, index) => {
		const twice = ids.has(model.id)
		ids.add(model.id)
		const idProblem = problemOf(`models.${index}.id`, 'used-twice', model.id, { of: 'model' })
		return [...(twice ? [idProblem] : []), ...sizeProblems(model, index)]
	})
}
/** Reads a shelf from JSON data. Never throws for bad data: each problem is named with its path. */
export const parseShelf = (input: unknown): Parsed<Shelf> =>
	readFile({ word: 'shelf', schema: shelfSchema, checks: shelfProblems }, input)
