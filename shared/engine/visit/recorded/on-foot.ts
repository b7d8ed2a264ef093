/**
 * A pair as it was seen on the foot: what was looked at stands here, what was not is absent. `none`
 * and `clear` say that it was looked for and not found.
 */
import { z } from 'zod'
import { choice, count, isoDate, measure, sides, text } from '../fields.ts'
import type { JointName } from '../shelf.ts'
import {
	bendsOnFoot,
	heelHolds,
	insideLengthWays,
	pairRoles,
	pressurePlaces,
	type StudJoint,
	studJoints,
	widthsOnFoot,
} from '../terms.ts'

const feetSchema = sides({
	roomMm: measure('Room standing', 'mm', [0, 60], [0, 25], 1).optional(),
	width: choice('Width', widthsOnFoot).optional(),
	heel: choice('Heel', heelHolds).optional(),
	pressure: z
		.array(choice('Presses', ['none', ...pressurePlaces]))
		.max(pressurePlaces.length)
		.optional(),
	studs: z
		.array(choice('Stud under', ['clear', ...studJoints]))
		.max(studJoints.length)
		.optional(),
	bends: choice('Bends', bendsOnFoot).optional(),
})
export const onFootSchema = feetSchema.extend({
	tried: isoDate('Tried on').optional(),
	/** The pair of the prescription that it was got for. */
	role: choice('Got as', pairRoles).optional(),
	/** The model of the clinic's shelf, by its id, and the fitting where a size is made in several. */
	model: text('Model of the shelf', 40).optional(),
	fitting: text('Fitting', 20).optional(),
	lengthBy: choice('Inside length by', insideLengthWays).optional(),
	insideWidthMm: measure('Inside width', 'mm', [35, 180], [60, 130], 1).optional(),
	/** Told by the player: 0 worst to 10 best. */
	comfortFirst: count('Comfort at first wear', '/10', [0, 10]).optional(),
	comfortLater: count('Comfort after two sessions', '/10', [0, 10]).optional(),
})
export type OnFoot = z.infer<typeof onFootSchema>
/** What was seen of one foot in it. */
export type OnOneFoot = NonNullable<OnFoot['left']>
/** The joints as the studs of a model are looked at against them. */
export const studJointNames = {
	'first-joint': 'first metatarsal head',
	'fifth-joint': 'fifth metatarsal head',
	'heel-centre': 'heel centre',
} as const satisfies Record<StudJoint, JointName>
