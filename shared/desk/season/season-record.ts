/** What records hold of a player's season: the season, a plan of it, a calendar given out. */
import { z } from 'zod'
import { planSchema } from '../../engine/season/plan-file.ts'
import { seasonSchema } from '../../engine/visit/visit.ts'
import { saidSchema } from '../../engine/words/stated.ts'

/** What changed against the plan before, in order of time; older records hold the sentence alone. */
export const changesSchema = z.array(
	z.strictObject({ date: z.string(), says: z.string(), ...saidSchema.partial().shape }),
)
const seasonValue = z.strictObject({
	what: z.literal('season'),
	playerId: z.string(),
	season: seasonSchema,
})
const planValue = z.strictObject({
	what: z.literal('plan'),
	playerId: z.string(),
	/** record of the season it was made for */
	season: z.string(),
	/** digest of what of the visit it rests on */
	basis: z.string(),
	plan: planSchema,
	changes: changesSchema,
})
const calendarValue = z.strictObject({
	what: z.literal('calendar'),
	playerId: z.string(),
	text: z.string(),
})
export const seasonRecordSchema = z.discriminatedUnion('what', [
	seasonValue,
	planValue,
	calendarValue,
])
export type SeasonValue = z.infer<typeof seasonRecordSchema>
