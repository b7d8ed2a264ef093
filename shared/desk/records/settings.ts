/** Settings of the records: kept sealed, like everything else. */
import { z } from 'zod'
import { agesSchema, defaultAges } from './consent.ts'
import { retentionRuleSchema, retentionRules } from './retention.ts'

export const recordSettingsSchema = z.strictObject({
	/** minutes without a key or a click until the records lock; 5 is common practice, no source */
	idleMinutes: z.int().min(1).max(120),
	/**
	 * days after which a missing backup is called out in red; 7 from the practice standard 1.1 R[7]
	 */
	backupWarnDays: z.int().min(1).max(60),
	retention: retentionRuleSchema,
	ages: agesSchema,
})
export type RecordSettings = z.infer<typeof recordSettingsSchema>
export const defaultRecordSettings: RecordSettings = {
	idleMinutes: 5,
	backupWarnDays: 7,
	retention: retentionRules['australia-7-25'],
	ages: defaultAges,
}
const minuteMs = 60_000
/** Milliseconds without a key or a click until the records lock. */
export const idleMs = (minutes: number): number => minutes * minuteMs
