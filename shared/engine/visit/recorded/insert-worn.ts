/**
 * The insert of ours that the player came in: when it was ordered and adjusted, what it is made of,
 * and where it gives trouble. It stands with the visit, so that the record is read by itself.
 */
import { z } from 'zod'
import { choice, isoDate, measure, text, yesNo } from '../fields.ts'
import { insertActs, insertPlaces } from '../terms.ts'

/** One thing that is done to an insert: how much stays with whoever makes it where none is said. */
export const adjustmentSchema = z.strictObject({
	side: choice('Side', ['left', 'right']),
	place: choice('Where the insert gives trouble', insertPlaces),
	act: choice('What is done to the insert', insertActs),
	element: text('Element of the insert', 60).optional(),
	mm: measure('Adjusted by', 'mm', [0, 30], [0, 10], 1).optional(),
	deg: measure('Adjusted by', 'deg', [0, 15], [0, 6], 1).optional(),
	words: text('In words', 200).optional(),
})
export type Adjustment = z.infer<typeof adjustmentSchema>
/** As many as one insert is given at a time. */
export const mostAdjustments = 20

const wornSideSchema = z.strictObject({
	/** As it was ordered, with what was adjusted since. */
	elements: z
		.array(
			z.strictObject({
				element: text('Element of the insert', 60),
				value: measure('Amount of the element', '', [0, 400], [0, 60], 1).optional(),
				unit: text('Unit', 60).optional(),
			}),
		)
		.max(40)
		.optional(),
	/** With 'none' said, so that no trouble is another thing than not asked. */
	places: z
		.array(choice('Trouble with the insert', ['none', ...insertPlaces]))
		.max(insertPlaces.length)
		.optional(),
})
export const insertWornSchema = z.strictObject({
	/** The day of the signed visit that ordered it. */
	orderedOn: isoDate('Insert ordered on'),
	stillWorn: yesNo('Insert still worn'),
	adjusted: z
		.array(
			z.strictObject({
				on: isoDate('Insert adjusted on'),
				lines: z.array(adjustmentSchema).max(mostAdjustments),
			}),
		)
		.max(20)
		.optional(),
	left: wornSideSchema.optional(),
	right: wornSideSchema.optional(),
})
export type InsertWorn = z.infer<typeof insertWornSchema>
