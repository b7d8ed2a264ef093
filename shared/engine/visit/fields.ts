/**
 * The building blocks of every recorded number: one place that gives a field its type, its
 * hard limits (refused outside), its soft limits (questioned outside), unit and label.
 * Limits are physical plausibility (common practice, no source), not clinical thresholds.
 */
import { z } from 'zod'
import type { PrivateTopic } from './private-topics.ts'

/** What the screens and the problem texts need to know of a number field. */
type NumberFieldMeta = {
	title: string
	unit: string
	/** Values outside this span are accepted with a question. */
	softMin: number
	softMax: number
	/** Digits after the point when shown. */
	digits: number
}
const numberMeta = (
	title: string,
	unit: string,
	[softMin, softMax]: [number, number],
	digits: number,
): NumberFieldMeta => ({ title, unit, softMin, softMax, digits })

/**
 * A number with hard limits [min, max], soft limits, unit and label, all read back from its meta.
 */
export function measure(
	title: string,
	unit: string,
	hard: [number, number],
	soft: [number, number] = hard,
	digits = 0,
) {
	return z
		.number()
		.min(hard[0])
		.max(hard[1])
		.meta(numberMeta(title, unit, soft, digits))
}

/** A count or score: a whole number inside [min, max]. */
export function count(
	title: string,
	unit: string,
	hard: [number, number],
	soft: [number, number] = hard,
) {
	return z
		.int()
		.min(hard[0])
		.max(hard[1])
		.meta(numberMeta(title, unit, soft, 0))
}

/** A measure that may be taken once or several times: absent means not measured. */
export function repeats<Reading extends z.ZodType<number>>(reading: Reading) {
	return z.union([reading, z.array(reading).min(1).max(6)]).optional()
}

/** A calendar date, YYYY-MM-DD, that exists. */
export const isoDate = (title: string) => z.iso.date().meta({ title })
/** A text of at least one character once the blanks around it are gone. */
export const text = (title: string, max = 200) => z.string().trim().min(1).max(max).meta({ title })
/** A question that may be left unasked; `private` where its answer is nobody else's business. */
export const yesNo = (title: string, more: { private?: PrivateTopic } = {}) =>
	z
		.boolean()
		.optional()
		.meta({ title, ...more })
/** One of a list of kebab-case terms. */
export function choice<const Terms extends readonly [string, ...string[]]>(
	title: string,
	terms: Terms,
) {
	return z.enum(terms).meta({ title })
}

/** Both sides of a measure group: left and right have the same fields. */
export function sides<Shape extends z.ZodRawShape>(shape: Shape) {
	const side = z.strictObject(shape)
	return z.strictObject({ left: side.optional(), right: side.optional() })
}
