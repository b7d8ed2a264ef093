/** What became of what was held, and which core questions were set aside. */
import { z } from 'zod'
import { choice, isoDate, text, yesNo } from '../fields.ts'
import { holdables } from '../holdables.ts'

/** What was found or excluded about a sign: it alone ends the holds that it names. */
export const outcomeSchema = z.strictObject({
	/** The rule of the hold (`protocol/holds.table.ts`). */
	rule: text('Sign', 80),
	side: choice('Side', ['left', 'right', 'both', 'none']),
	result: choice('Result', ['excluded', 'confirmed', 'recovered']),
	found: text('What was found', 500),
	how: text('How', 200),
	by: text('By whom', 120),
	on: isoDate('On'),
	/** The treating doctor allows sport and matches again. */
	treatingDoctorClears: yesNo('Treating doctor allows sport'),
	lifts: z.array(choice('No longer held', holdables)).max(holdables.length),
})
export type Outcome = z.infer<typeof outcomeSchema>
/** A core question that was not asked, with why: by its id. */
export const coreSetAsideSchema = z.strictObject({
	question: text('Question', 80),
	why: text('Why not asked', 300),
})
