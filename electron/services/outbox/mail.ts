/** Mail settings, sealed like everything else. */
import type { InputOf, OutputOf } from '../../../shared/contract.ts'
import { type MailSettings, smtpProblems } from '../../../shared/desk/outbox/mail-settings.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { Refusal } from '../records/refusal.ts'
import type { Post } from './post.ts'

/** The password is never given out: only whether there is one. */
export function getMail({ outbox }: Pick<Memory, 'outbox'>): OutputOf<'mail.get'> {
	const { smtp, clock } = outbox.mail
	if (!smtp) return { clock }
	const { password, ...shown } = smtp
	return { clock, smtp: { ...shown, hasPassword: password !== undefined } }
}
/**
 * Without a password the one before is kept, unless server or user changed: it never goes to
 * another server.
 */
export function saveMail(
	{ outbox }: Pick<Memory, 'outbox'>,
	{ keep }: Deps,
	post: Post,
	{ smtp, clock }: InputOf<'mail.save'>,
): OutputOf<'mail.save'> {
	const before = outbox.mail.smtp
	const keeps =
		smtp?.user &&
		smtp.password === undefined &&
		before?.password !== undefined &&
		before.host === smtp.host &&
		before.user === smtp.user
	const whole = smtp && { ...smtp, ...(keeps && { password: before.password }) }
	const problems = whole ? smtpProblems(whole) : []
	if (problems.length > 0)
		throw new Refusal(
			'outbox.mail-settings',
			'The mail settings cannot stand as they are. Nothing was changed.',
			problems,
		)
	const value: MailSettings = { clock, ...(whole && { smtp: whole }) }
	keep({ kind: 'mail', follows: outbox.mailRecordId, value })
	post.freshStart()
	return {}
}
