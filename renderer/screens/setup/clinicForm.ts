/** Between the fields of the set-up and the clinic they describe. */

import { present } from '../../../shared/engine/plain/present.ts'
import { type Clinic, clinicSchema } from '../../../shared/engine/report/clinic.ts'
import { fieldMeta } from '../../../shared/engine/visit/field-meta.ts'
import { issueWords } from '../../parts/form.tsx'
import { passphraseProblems } from '../../parts/secrets.ts'

/** What was typed, by the path of its field. */
export type Form = Readonly<Record<string, string>>
export const clinicPaths = [
	'name',
	'address',
	'phone',
	'email',
	'colour',
	'clinician.name',
	'clinician.registration',
] as const
export const mostLines = 4
export const titleOf = (path: string) => fieldMeta(clinicSchema, path).title
export const typedIn = (form: Form, path: string): string => form[path]?.trim() ?? ''

const linesOf = (address: string): string[] =>
	address
		.split('\n')
		.map((line) => line.trim())
		.filter(Boolean)

/** The issues of the schema in words, by the path of their field. */
function readClinic(form: Form, logo: Clinic['logo']) {
	const of = (path: string) => typedIn(form, path)
	const address = linesOf(of('address'))
	const read = clinicSchema.safeParse({
		format: 'lastwright-clinic',
		version: 1,
		name: of('name'),
		address,
		phone: of('phone') || undefined,
		email: of('email') || undefined,
		colour: of('colour'),
		logo,
		clinician: { name: of('clinician.name'), registration: of('clinician.registration') },
	})
	const problems: Record<string, string> = {}
	for (const issue of read.error?.issues ?? []) {
		const path = issue.path[0] === 'address' ? 'address' : issue.path.join('.')
		problems[path] ??=
			path === 'address' && address.length > 0
				? 'Address has a line of more than 120 characters. Shorten that line.'
				: issueWords(titleOf(path), of(path), issue)
	}
	if (address.length > mostLines)
		problems.address =
			`Address has ${address.length} lines. ` + `Write it in ${mostLines} lines or fewer.`
	return { clinic: read.data, problems }
}
/** What was filled in, and what is wrong with it by the path of each field. */
export function checkForm(
	form: Form,
	logo: Clinic['logo'],
): { clinic: Clinic | undefined; problems: Record<string, string> } {
	const { clinic, problems } = readClinic(form, logo)
	const { passphrase = '', again = '' } = form
	const secret = passphraseProblems('Passphrase', { once: passphrase, again })
	return {
		clinic,
		problems: {
			...problems,
			...present({ passphrase: secret.once, again: secret.again }),
		},
	}
}
