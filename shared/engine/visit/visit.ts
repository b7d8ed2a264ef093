/** Visit file, version 1: the only definition of what a clinician records at a visit. */
import { z } from 'zod'
import { boundedRecord } from '../plain/bounded.ts'
import { choice, isoDate, note, text } from './fields.ts'
import { anklesSchema } from './recorded/ankles.ts'
import { bodySchema } from './recorded/body.ts'
import { conditionSchema } from './recorded/conditions.ts'
import { feetSchema } from './recorded/feet.ts'
import { insertWornSchema } from './recorded/insert-worn.ts'
import { coreSetAsideSchema, outcomeSchema } from './recorded/outcomes.ts'
import { pairSchema } from './recorded/pairs.ts'
import { playSchema } from './recorded/play.ts'
import { playerSchema } from './recorded/player.ts'
import { postureSchema } from './recorded/posture.ts'
import { screeningSchema } from './recorded/screening.ts'
import { seasonSchema } from './recorded/season.ts'
import { sinceSchema } from './recorded/since.ts'
import { purchaseMeans } from './terms.ts'

export type { Outcome } from './recorded/outcomes.ts'
export type { Pair } from './recorded/pairs.ts'
export { type Player, playerSchema } from './recorded/player.ts'
export {
	generalFlagShape,
	type Injury,
	type Screening,
} from './recorded/screening.ts'
export {
	exceptionSchema,
	type Pattern,
	type PatternException,
	patternSchema,
	type Season,
	type Session,
	seasonSchema,
	sessionSchema,
} from './recorded/season.ts'

export type { Since } from './recorded/since.ts'

export const visitSchema = z.strictObject({
	format: z.literal('lastwright-visit'),
	version: z.literal(1),
	player: playerSchema,
	visitDate: isoDate('Visit date'),
	play: playSchema.optional(),
	body: bodySchema.optional(),
	feet: feetSchema.optional(),
	ankles: anklesSchema.optional(),
	posture: postureSchema.optional(),
	conditions: z.array(conditionSchema).max(40).optional(),
	screening: screeningSchema.optional(),
	footwear: z.array(pairSchema).max(20).optional(),
	season: seasonSchema.optional(),
	/** Fields the clinician chose not to measure, by path, with the reason. */
	notMeasured: boundedRecord(200, z.string().max(1000), 500).optional(),
	/** What became of what was held at this visit or an earlier one. */
	outcomes: z.array(outcomeSchema).max(60).optional(),
	/** Core questions of the protocol that were not asked, with why. */
	coreSetAside: z.array(coreSetAsideSchema).max(20).optional(),
	/** How much may be bought; it ranks what is proposed and proposes nothing by itself. */
	means: choice('Pairs that may be bought', purchaseMeans).optional(),
	/** What brought the player. */
	complaint: text('What brought the player', 500).optional(),
	/** Of a re-check: what was asked about the time since the signed visit before. */
	since: sinceSchema.optional(),
	/** The insert of ours that was worn when the player came. */
	insertWorn: insertWornSchema.optional(),
	/** Of the visit as a whole. */
	notes: note('Clinical notes', 10000).optional(),
})
export type Visit = z.infer<typeof visitSchema>
export type Side = 'left' | 'right'
