/** A player's complaints over the signed visits, and the insert that is worn, for those who treat. */
import { z } from 'zod'
import type { Course } from '../../engine/course/course.ts'
import type { InsertWorn } from '../../engine/visit/recorded/insert-worn.ts'
import { adjustmentLine } from '../../engine/words/en/insert-adjust.ts'
import { capital } from '../../engine/words/words.ts'

const readingSchema = z.strictObject({
	now: z.number().optional(),
	worst: z.number().optional(),
	missed: z.number().optional(),
	daysOff: z.number().optional(),
})
const stepSchema = z.strictObject({
	of: z.enum(['now', 'worst']),
	from: z.string(),
	to: z.string(),
	was: z.number(),
	is: z.number(),
	verdict: z.enum(['beyond-error', 'within-error']),
})
export const playerCourseSchema = z.strictObject({
	/** oldest first */
	visits: z.array(
		z.strictObject({
			date: z.string(),
			/** absent where nothing was changed */
			mark: z.string().optional(),
			changes: z.array(z.string()),
		}),
	),
	complaints: z.array(
		z.strictObject({
			name: z.string(),
			/** one for each visit; what was not asked is absent */
			readings: z.array(readingSchema),
			steps: z.array(stepSchema),
		}),
	),
	/** the smallest change of pain that is no error, points of 10, and whom it was found in */
	limit: z.strictObject({ points: z.number(), source: z.string(), population: z.string() }),
	/** the insert of ours that is worn; absent where none is */
	insert: z
		.strictObject({
			orderedOn: z.string(),
			adjusted: z.array(z.strictObject({ on: z.string(), lines: z.array(z.string()) })),
		})
		.optional(),
	/** visits that cannot be read, in words */
	troubles: z.array(z.string()),
})
export type PlayerCourse = z.infer<typeof playerCourseSchema>
/** What of a course is told, and the insert in words. */
export const courseTold = (
	{ visits, complaints, limit: { points, basis, population } }: Course,
	worn: InsertWorn | undefined,
): Omit<PlayerCourse, 'troubles'> => ({
	visits,
	complaints,
	limit: { points, source: basis.source, population },
	...(worn && {
		insert: {
			orderedOn: worn.orderedOn,
			adjusted: (worn.adjusted ?? []).map(({ on, lines }) => ({
				on,
				lines: lines.map((line) => capital(adjustmentLine(line))),
			})),
		},
	}),
})
