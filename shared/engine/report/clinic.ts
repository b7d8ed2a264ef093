/** The clinic file: letterhead and the signing clinician. */
import { z } from 'zod'
import { boundedRecord, emailAddress } from '../plain/bounded.ts'
import { textProblems } from '../words/speak.ts'

const letterhead = {
	format: z.literal('lastwright-clinic'),
	version: z.literal(1),
	name: z.string().trim().min(1).max(120).meta({ title: 'Clinic name' }),
	address: z.array(z.string().max(120)).max(6).meta({ title: 'Address' }),
	phone: z.string().max(40).optional().meta({ title: 'Phone' }),
	email: emailAddress().optional().meta({ title: 'E-mail' }),
	colour: z
		.string()
		.regex(/^#[0-9a-fA-F]{6}$/, 'a colour such as #1f5f5b')
		.meta({ title: 'Clinic colour' }),
	logo: z
		.strictObject({
			mediaType: z.enum(['image/png', 'image/jpeg', 'image/svg+xml']),
			base64: z.string().max(2_000_000),
		})
		.optional(),
	clinician: z.strictObject({
		name: z.string().trim().min(1).max(120).meta({ title: 'Clinician name' }),
		registration: z.string().trim().min(1).max(60).meta({ title: 'Registration number' }),
	}),
	sizeSystems: z
		.array(z.enum(['jpCm', 'eu', 'uk', 'usMen', 'usWomen', 'usChild', 'au']))
		.max(7)
		.optional(),
	/** The paper of every document; A4 where absent. */
	paper: z.enum(['A4', 'Letter']).optional().meta({ title: 'Paper' }),
}
const ownTexts = boundedRecord(120, z.string().max(600), 2000)
/** The format of the clinic file, version 1. */
export const clinicSchema = z.strictObject({
	...letterhead,
	/**
	 * The clinic's own words for sentences of the documents, by key of the catalogue; the
	 * placeholders must stay.
	 */
	texts: ownTexts
		.superRefine((own, context) => {
			for (const problem of textProblems(own))
				context.addIssue({ code: 'custom', message: problem })
		})
		.optional(),
})
/**
 * The same as a record holds it: words for a sentence that this version of the catalogue has not, or
 * fills in otherwise, count as unknown keys and stop nothing.
 */
export const clinicRecordSchema = z.strictObject({
	...letterhead,
	texts: ownTexts
		.superRefine((own, context) => {
			const keys = Object.keys(own).filter(
				(key) => textProblems({ [key]: own[key] ?? '' }).length > 0,
			)
			if (keys.length > 0) context.addIssue({ code: 'unrecognized_keys', keys, input: own })
		})
		.optional(),
})
export type Clinic = z.infer<typeof clinicSchema>
