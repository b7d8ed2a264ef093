/** What the player plays, on what, and how much. */
import { z } from 'zod'
import { choice, isoDate, measure, text } from '../fields.ts'
import { codes, surfaces } from '../terms.ts'

export const playSchema = z.strictObject({
	code: choice('Code', codes).optional(),
	position: text('Position', 60).optional(),
	standard: text('Standard', 60).optional(),
	kickingFoot: choice('Kicking foot', ['left', 'right', 'both']).optional(),
	surfaces: z.array(choice('Surface', surfaces)).max(8).optional(),
	matchesPerWeek: measure('Matches a week', 'count', [0, 14], [0, 4], 1).optional(),
	trainingsPerWeek: measure('Trainings a week', 'count', [0, 21], [0, 10], 1).optional(),
	organisedHoursPerWeek: measure('Organised sport', 'h/week', [0, 60], [0, 25], 1).optional(),
	freePlayHoursPerWeek: measure('Free play', 'h/week', [0, 80], [0, 40], 1).optional(),
	monthsPerYearInOneSport: measure(
		'Months a year in this one sport',
		'months',
		[0, 12],
		[0, 12],
	).optional(),
	daysOffPerWeek: measure('Days a week without sport', 'days', [0, 7], [0, 7]).optional(),
	/** Session load a day (effort 0 to 10 times minutes), seven days a week from the date on. */
	weeks: z
		.array(
			z.strictObject({
				from: isoDate('Week from'),
				days: z.array(measure('Session load', 'effort x min', [0, 6000], [0, 2000])).length(7),
			}),
		)
		.max(60)
		.optional(),
})
