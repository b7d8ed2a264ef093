/** What the player plays, on what, and how much. */
import { z } from 'zod'
import { choice, isoDate, measure, text } from '../fields.ts'
import { playMeasures } from '../measures/play.table.ts'
import { shapeOf } from '../measures/shape.ts'
import { codes, surfaces } from '../terms.ts'

export const playSchema = z.strictObject({
	code: choice('Football code', codes).optional(),
	position: text('Position', 60).optional(),
	standard: text('Standard', 60).optional(),
	kickingFoot: choice('Kicking foot', ['left', 'right', 'both']).optional(),
	surfaces: z.array(choice('Surface', surfaces)).max(8).optional(),
	...shapeOf(playMeasures),
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
