/**
 * How long a record is kept. The years are the clinic's own setting: local law decides, this only
 * counts.
 */
import { z } from 'zod'
import { addYears } from '../../engine/plain/days.ts'
import { ageYears } from '../../engine/visit/age.ts'

export const retentionRuleSchema = z.strictObject({
	name: z.string().max(80),
	/** years after the last entry */
	adultYears: z.int().min(1).max(100),
	/** a minor's record is kept to this birthday */
	minorUntilAgeYears: z.int().min(0).max(100),
	/** where the player was 17 at the last entry, to this birthday */
	seventeenUntilAgeYears: z.int().min(0).max(100),
	adultAgeYears: z.int().min(14).max(25),
	source: z.string().max(300),
})
type RetentionRule = z.infer<typeof retentionRuleSchema>
/** Rules to start from (practice standard 1.3, R[3] R[4]); not legal advice. */
export const retentionRules = {
	'australia-7-25': {
		name: '7 years, minors to 25',
		adultYears: 7,
		minorUntilAgeYears: 25,
		seventeenUntilAgeYears: 25,
		adultAgeYears: 18,
		source:
			'NSW, Victoria and ACT private practice: 7 years after the last entry, minors until 25 ' +
			'(practice standard of this place, read)',
	},
	'england-8-25': {
		name: '8 years, minors to 25 or 26',
		adultYears: 8,
		minorUntilAgeYears: 25,
		seventeenUntilAgeYears: 26,
		adultAgeYears: 18,
		source:
			'NHS Code: 8 years, to the 25th birthday, the 26th where 17 when treatment ended ' +
			'(practice standard of this place, read)',
	},
} as const satisfies Record<string, RetentionRule>

/**
 * The first day on which the record need not be kept any longer: the later of the two clocks (max,
 * the safe reading).
 */
export function keepUntil(birthDate: string, lastEntry: string, rule: RetentionRule): string {
	const age = ageYears(birthDate, lastEntry)
	const byEntry = addYears(lastEntry, rule.adultYears)
	if (age >= rule.adultAgeYears) return byEntry
	const byAge = addYears(
		birthDate,
		age === 17 ? rule.seventeenUntilAgeYears : rule.minorUntilAgeYears,
	)
	return [byAge, byEntry].sort().at(-1) ?? byEntry
}
export const holdSchema = z.strictObject({
	playerId: z.string(),
	reason: z.string().trim().min(1).max(500),
	on: z.boolean(),
})
/**
 * What stays after a destruction: name, period covered, day destroyed (practice standard 1.3,
 * R[5]).
 */
export const registerLineSchema = z.strictObject({
	playerId: z.string(),
	name: z.string(),
	from: z.string(),
	to: z.string(),
	destroyedOn: z.string(),
	by: z.string(),
	rule: z.string(),
	reason: z.string(),
	recordIds: z.array(z.string()),
})
export type RegisterLine = z.infer<typeof registerLineSchema>
