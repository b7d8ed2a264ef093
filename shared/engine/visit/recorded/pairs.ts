/** A pair that the player owns. */
import { z } from 'zod'
import { choice, count, isoDate, measure, note, text, yesNo } from '../fields.ts'
import { damages, pairRoles, sizeSystems, soles } from '../terms.ts'
import { onFootSchema } from './on-foot.ts'

export const pairSchema = z.strictObject({
	id: text('Pair', 40),
	name: text('Name', 80).optional(),
	sole: choice('Sole', soles).optional(),
	sizeSystem: choice('Size system', sizeSystems).optional(),
	size: measure('Size', 'label', [0, 420], [0, 60], 1).optional(),
	insideLengthMm: measure('Inside length', 'mm', [90, 420], [150, 350], 1).optional(),
	heelToForefootOffsetMm: measure(
		'Offset, heel to forefoot',
		'mm',
		[-10, 30],
		[0, 15],
		1,
	).optional(),
	heelLiftMm: measure('Heel raise inside', 'mm', [0, 25], [0, 12], 1).optional(),
	damage: z.array(choice('Damage', damages)).max(8).optional(),
	brokenIn: yesNo('Broken in'),
	/** What it is worn for; where absent, by its sole. */
	roles: z.array(choice('Worn for', pairRoles)).max(4).optional(),
	/** Told by the player: 0 worst to 10 best, and whether it hurts. */
	comfort: count('Comfort', '/10', [0, 10]).optional(),
	hurts: yesNo('Hurts'),
	insertInside: yesNo('Insert worn inside'),
	minutesWorn: measure('Minutes worn', 'min', [0, 200000], [0, 20000]).optional(),
	acquired: isoDate('Acquired').optional(),
	lifeMinutes: measure('Expected life', 'min', [60, 100000], [3000, 12000]).optional(),
	dryingHours: measure('Drying time', 'h', [0, 168], [4, 96]).optional(),
	/** One letter by which the wall chart and the calendar name the pair. */
	letter: z
		.string()
		.regex(/^[A-Z]$/, 'one capital letter A to Z')
		.optional()
		.meta({ title: 'Letter' }),
	/** A new pair, to be broken in from this day on; not worn before it. */
	newFrom: isoDate('New, worn from').optional(),
	/** Not owned yet: the pair of the prescription that it is planned as, and the model chosen for it. */
	plannedAs: text('Planned as', 40).optional(),
	model: text('Model', 80).optional(),
	/** In the clinic's own currency. */
	price: measure('Price', 'currency', [0, 100000], [10, 600]).optional(),
	weeklyMinutesMax: measure('Minutes a week, at most', 'min', [0, 5000], [0, 600]).optional(),
	/** Of the training time ahead: what the pair should be worn at least and at most. */
	shareMinPercent: measure('Share of training, at least', '%', [0, 100], [0, 100]).optional(),
	shareMaxPercent: measure('Share of training, at most', '%', [0, 100], [0, 100]).optional(),
	studHeightMm: measure('Longest stud', 'mm', [0, 40], [3, 21], 1).optional(),
	/** Days on which the pair is lent, lost or at the mender; the last day included. */
	unavailable: z
		.array(z.strictObject({ from: isoDate('From'), to: isoDate('To') }))
		.max(20)
		.optional(),
	onFoot: onFootSchema.optional(),
	note: note('Note', 500).optional(),
})
export type Pair = z.infer<typeof pairSchema>
