/** The mail settings as they are typed, and what they say. Pure. */
import type { InputOf, OutputOf } from '../../../shared/contract.ts'
import { present } from '../../../shared/engine/plain/present.ts'

type Settings = OutputOf<'mail.get'>
type Security = NonNullable<Settings['smtp']>['security']
export const securityWords: Record<Security, string> = {
	tls: 'TLS from the first byte',
	starttls: 'STARTTLS, required',
	none: 'no encryption',
}
const securities = Object.keys(securityWords) as Security[]

export interface MailEntries {
	host: string
	port: string
	/** In words, as the list has it. */
	security: string
	inSoManyWords: string
	user: string
	/** Never shown again once it is kept: empty leaves the one that is. */
	password: string
	name: string
	email: string
	certificate: string
	/** Days to assess a sending in error, hours to tell the authority. */
	days: string
	hours: string
}
/** What stands in the form before a server is set. */
const usual = {
	host: '',
	port: '465',
	security: securityWords.tls,
	inSoManyWords: '',
	user: '',
	password: '',
	name: '',
	email: '',
	certificate: '',
}
export function entriesOf({ smtp, clock }: Settings): MailEntries {
	const clocks = {
		days: String(clock.assessWithinDays),
		hours: String(clock.authorityWithinHours),
	}
	if (!smtp) return { ...usual, ...clocks }
	return {
		host: smtp.host,
		port: String(smtp.port),
		security: securityWords[smtp.security],
		inSoManyWords: smtp.inSoManyWords ?? '',
		user: smtp.user ?? '',
		password: '',
		name: smtp.from.name,
		email: smtp.from.email,
		certificate: smtp.certificate ?? '',
		...clocks,
	}
}

function wholeNumber(title: string, text: string): number {
	if (!/^\d+$/.test(text.trim()))
		throw new Error(`${title} "${text}" is not a whole number. Write one such as 30.`)
	return Number(text)
}
const unlessEmpty = (text: string): string | undefined => (text.trim() ? text : undefined)

/** @throws Error in words where an entry cannot be read; without a server there is no `smtp` */
export function readEntries(entries: MailEntries): InputOf<'mail.save'> {
	const security = securities.find((known) => securityWords[known] === entries.security)
	if (!security) throw new Error('Security is not chosen. Choose one from the list.')
	const clock = {
		assessWithinDays: wholeNumber('Days to assess', entries.days),
		authorityWithinHours: wholeNumber('Hours to the authority', entries.hours),
	}
	if (entries.host.trim() === '') return { clock }
	const smtp = present({
		host: entries.host,
		port: wholeNumber('Port', entries.port),
		security,
		from: { name: entries.name, email: entries.email },
		inSoManyWords: security === 'none' ? entries.inSoManyWords : undefined,
		user: unlessEmpty(entries.user),
		password: entries.password || undefined,
		certificate: unlessEmpty(entries.certificate),
	})
	return { clock, smtp }
}
