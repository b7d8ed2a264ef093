/** Between the fields of the letterhead and the clinic of the documents. */
import { type Clinic, clinicSchema } from '../../../shared/engine/report/clinic.ts'
import { fieldMeta } from '../../../shared/engine/visit/field-meta.ts'
import { issueWords } from '../../parts/form.tsx'

export const paths = [
	'name',
	'phone',
	'address',
	'email',
	'colour',
	'clinician.name',
	'clinician.registration',
] as const
export type Path = (typeof paths)[number]
export type Form = Readonly<Record<Path, string>>
/** What is chosen rather than typed. */
export type Choices = Pick<Clinic, 'logo' | 'paper' | 'sizeSystems' | 'texts'>
export const titleOf = (path: string) => fieldMeta(clinicSchema, path).title
export const formOf = (clinic: Clinic): Form => ({
	name: clinic.name,
	phone: clinic.phone ?? '',
	address: clinic.address.join('\n'),
	email: clinic.email ?? '',
	colour: clinic.colour,
	'clinician.name': clinic.clinician.name,
	'clinician.registration': clinic.clinician.registration,
})
export const choicesOf = ({ logo, paper, sizeSystems, texts }: Clinic): Choices => ({
	logo,
	paper,
	sizeSystems,
	texts,
})
/** The clinic as typed, or what is wrong with it; choices left open are absent. */
export const readClinic = (form: Form, choices: Choices) =>
	clinicSchema.safeParse({
		format: 'lastwright-clinic',
		version: 1,
		name: form.name,
		address: form.address
			.split('\n')
			.map((line) => line.trim())
			.filter(Boolean),
		phone: form.phone.trim() || undefined,
		email: form.email.trim() || undefined,
		colour: form.colour,
		clinician: { name: form['clinician.name'], registration: form['clinician.registration'] },
		...Object.fromEntries(Object.entries(choices).filter(([, value]) => value !== undefined)),
	})
const isPath = (path: string): path is Path => paths.some((known) => known === path)

/** What is wrong, in words by the path of its field. */
export function problemsOf(
	form: Form,
	{ error }: ReturnType<typeof readClinic>,
): Record<string, string> {
	const problems: Record<string, string> = {}
	for (const issue of error?.issues ?? []) {
		const path = issue.path[0] === 'address' ? 'address' : issue.path.join('.')
		problems[path] ??= path.startsWith('texts')
			? issue.message
			: issueWords(titleOf(path), isPath(path) ? form[path] : '', issue)
	}
	return problems
}
