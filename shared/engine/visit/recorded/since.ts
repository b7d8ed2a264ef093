/**
 * The time since the signed visit before, as a re-check asks about it. What is asked stands with its
 * answer, so that the record is read without the visit before; an answer left out was not asked.
 */
import { z } from 'zod'
import { choice, isoDate, measure, text, yesNo } from '../fields.ts'
import {
	doneAnswers,
	features,
	pairRoles,
	soles,
	takenGroups,
	toDoKinds,
	troubles,
	whyNotDone,
} from '../terms.ts'

/** With 'none' said, so that no trouble is another thing than not asked. */
const troubleList = z.array(choice('Trouble', ['none', ...troubles])).max(troubles.length)
const sideOf = choice('Side', ['left', 'right', 'both'])

const doneSchema = z.strictObject({
	what: choice('To be done', toDoKinds),
	/** The names of the pairs, the role or the sides that it was about; of an own line its words. */
	pairs: z.array(text('Pair', 80)).max(20).optional(),
	role: choice('Worn for', pairRoles).optional(),
	side: sideOf.optional(),
	words: text('To be done, in words', 300).optional(),
	answer: choice('Done', doneAnswers).optional(),
	/** Where it was not done, or in part. */
	why: choice('Why not', whyNotDone).optional(),
})
/** Worked out and not measured: beside the longest feet that can be recorded it is longer still. */
const lengthMm = (title: string) => measure(title, 'mm', [50, 600], [150, 350], 1)
const askedSchema = z.strictObject({
	insideLengthMm: z
		.strictObject({
			min: lengthMm('Least inside length'),
			target: lengthMm('Best inside length'),
			max: lengthMm('Most inside length'),
		})
		.optional(),
	sole: choice('Sole', soles).optional(),
	seek: z.array(choice('Look for', features)).max(features.length),
	avoid: z.array(choice('Avoid', features)).max(features.length),
})
const boughtSchema = z.strictObject({
	role: choice('Worn for', pairRoles),
	answer: choice('Bought', ['bought', 'not-bought', 'not-wanted']).optional(),
	why: choice('Why not', whyNotDone).optional(),
	/** The pair of the visit that it is, by its id. */
	pair: text('Which pair', 40).optional(),
	trouble: troubleList.optional(),
	/** What the plan asked of it, so that what was got is held against that. */
	asked: askedSchema.optional(),
})
const wornSchema = z.strictObject({
	what: choice('Worn inside', ['insert', 'raise']),
	side: sideOf,
	weeks: measure('Worn for', 'weeks', [0, 260], [0, 52], 1).optional(),
	hoursPerDay: measure('Worn a day', 'h', [0, 24], [0, 16], 1).optional(),
	now: choice('How it goes on', [
		'still-worn',
		'weaned-as-planned',
		'stopped-early',
		'never-worn',
	]).optional(),
	/** Where it was stopped early or never worn. */
	why: choice('Why not', whyNotDone).optional(),
	trouble: troubleList.optional(),
})
export const sinceSchema = z.strictObject({
	/** The day of the signed visit that this one looks back to. */
	visitDate: isoDate('Seen before on'),
	done: z.array(doneSchema).max(10).optional(),
	bought: z.array(boughtSchema).max(pairRoles.length).optional(),
	worn: z.array(wornSchema).max(4).optional(),
	/** Asked where a pair, an insert or a raise was to be worn in step by step. */
	asksWearingIn: yesNo('Wearing in was planned'),
	wearingIn: choice('Wearing in', ['kept', 'in-part', 'not-kept']).optional(),
	/** Asked where a season was planned. */
	asksSeason: yesNo('A season was planned'),
	season: choice('Season plan', ['kept', 'changed', 'not-used']).optional(),
	/** Asked where a doctor was written to or asked for more. */
	asksLetter: yesNo('A doctor was asked'),
	letter: choice('What came of it', ['answered', 'no-answer-yet', 'not-seen']).optional(),
	/** What is measured anew, and why. */
	measure: z
		.array(
			z.strictObject({
				what: choice('Measured anew', ['feet', 'body']),
				why: choice('Why', ['growing', 'swollen']),
			}),
		)
		.max(4)
		.optional(),
	/** What was not measured again: its figures are those of the visit before. */
	unchanged: z.array(choice('Unchanged', takenGroups)).max(takenGroups.length).optional(),
	/** How each question was answered then, by the digest of its proposal. */
	plan: z
		.array(
			z.strictObject({
				question: text('Question', 80),
				of: z.string().regex(/^[0-9a-f]{64}$/, '64 hex digits'),
				choice: choice('Answer', ['as-proposed', 'changed', 'set-aside', 'unchanged']),
			}),
		)
		.max(40)
		.optional(),
})
export type Since = z.infer<typeof sinceSchema>
