/** The clinician's answers to the questions of a prescription: fields, never prose to be read. */
import { z } from 'zod'
import { adjustmentSchema, mostAdjustments } from './recorded/insert-worn.ts'
import { features, ownedVerdicts, soles } from './terms.ts'

const heightMm = z.number().min(0).max(25)
const lengthMm = z.number().min(90).max(420)
/** What is done about load, as the clinician sets it. */
export const loadFieldsSchema = z.strictObject({
	sessionsPerWeek: z.int().min(0).max(21).optional(),
	minutesPerSession: z.int().min(1).max(300).optional(),
	daysOffPerWeek: z.int().min(0).max(7).optional(),
	weeks: z.int().min(1).max(52).optional(),
	/** The steps back, in the clinician's own words, one after another. */
	steps: z.array(z.string().trim().min(1).max(200)).max(6).optional(),
})
export type LoadFields = z.infer<typeof loadFieldsSchema>
/** What may stand otherwise than proposed; each field belongs to the question it is named for. */
export const answerFieldsSchema = z.strictObject({
	/** complaint */
	load: loadFieldsSchema.optional(),
	/** size */
	insideLengthMm: z.strictObject({ min: lengthMm, target: lengthMm, max: lengthMm }).optional(),
	/** raise: what is added in each pair and foot, mm */
	raise: z
		.array(z.strictObject({ pair: z.string().max(60), left: heightMm, right: heightMm }))
		.max(30)
		.optional(),
	/** pair.ROLE */
	sole: z.enum(soles).optional(),
	seek: z.array(z.enum(features)).max(40).optional(),
	avoid: z.array(z.enum(features)).max(40).optional(),
	models: z.array(z.string().max(80)).max(3).optional(),
	buy: z.boolean().optional(),
	/** owned */
	verdicts: z
		.array(
			z.strictObject({
				id: z.string().max(60),
				verdict: z.enum(ownedVerdicts),
				by: z.iso.date().optional(),
			}),
		)
		.max(20)
		.optional(),
	/** changes, lacing: `ID.SIDE` that stand; insert: elements that stand, as `left.heel-cup` */
	keep: z.array(z.string().max(80)).max(40).optional(),
	/** insert: what is done to the one that is worn; a new one is ordered in its place */
	adjust: z.array(adjustmentSchema).max(mostAdjustments).optional(),
	anew: z.boolean().optional(),
	/** review */
	reviewDate: z.iso.date().optional(),
})
export const answerSchema = z
	.strictObject({
		question: z.string().min(1).max(80),
		choice: z.enum(['as-proposed', 'changed', 'set-aside', 'unchanged']),
		fields: answerFieldsSchema.optional(),
		why: z.string().max(500).optional(),
		/** The content of the proposal that was answered (`Question.of`). */
		of: z.string().regex(/^[0-9a-f]{64}$/, '64 hex digits'),
		/** The findings that stood inside it and were read. */
		read: z.array(z.string().max(120)).max(200).optional(),
	})
	.refine(({ choice, why }) => choice !== 'set-aside' || !!why?.trim(), {
		path: ['why'],
		message: 'a reason is needed to set a question aside',
	})
	.refine(({ choice, fields }) => (choice === 'changed') === (fields !== undefined), {
		path: ['fields'],
		message: 'fields stand with what is changed, and only there',
	})
export type Answer = z.infer<typeof answerSchema>
export type AnswerFields = z.infer<typeof answerFieldsSchema>
