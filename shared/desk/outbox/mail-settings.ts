/**
 * How mail leaves this PC. Encrypted connections are required unless the clinic writes otherwise in
 * so many words.
 */
import { z } from 'zod'
import { emailAddress } from '../../engine/plain/bounded.ts'
import { breachClockSchema, defaultBreachClock } from './breach.ts'

/** What must be typed, letter by letter, to do without TLS. */
export const plainWords = 'send without encryption'
const smtpBase = {
	host: z
		.string()
		.trim()
		.min(1)
		.max(253)
		.regex(/^[A-Za-z0-9.:[\]-]+$/, 'a server name such as mail.example.org'),
	port: z.int().min(1).max(65_535),
	/**
	 * tls: from the first byte; starttls: refused where the server cannot; none: only with the words.
	 */
	security: z.enum(['tls', 'starttls', 'none']),
	inSoManyWords: z.string().max(60).optional(),
	user: z.string().trim().max(200).optional(),
	from: z.strictObject({ name: z.string().trim().min(1).max(120), email: emailAddress() }),
	/** PEM of a server with a certificate of its own. */
	certificate: z.string().max(20_000).optional(),
}
export const smtpSchema = z.strictObject({ ...smtpBase, password: z.string().max(500).optional() })
export type Smtp = z.infer<typeof smtpSchema>
/** As the screens see it: the password never leaves the host. */
export const smtpShownSchema = z.strictObject({ ...smtpBase, hasPassword: z.boolean() })
export const mailSettingsSchema = z.strictObject({
	smtp: smtpSchema.optional(),
	clock: breachClockSchema,
})
export type MailSettings = z.infer<typeof mailSettingsSchema>
export const defaultMailSettings: MailSettings = { clock: defaultBreachClock }
/** What cannot stand, by field; empty where all is well. */
export function smtpProblems({
	security,
	inSoManyWords,
	user,
	password,
}: Smtp): { path: string; message: string }[] {
	const problems: { path: string; message: string }[] = []
	if (security === 'none' && inSoManyWords !== plainWords)
		problems.push({
			path: 'smtp.inSoManyWords',
			message:
				`not the words, given "${inSoManyWords ?? ''}", allowed: "${plainWords}", or a ` +
				'connection with TLS',
		})
	if (user && !password)
		problems.push({
			path: 'smtp.password',
			message: `missing, given nothing for the user "${user}", allowed: the password, or no user`,
		})
	return problems
}
