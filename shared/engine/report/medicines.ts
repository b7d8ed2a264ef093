/** What a visit answers about medicines: the questions that are private as such. */
import { nameOfField } from '../visit/field-names.ts'
import { privatePaths } from '../visit/private.ts'
import type { Visit } from '../visit/visit.ts'

const group = 'screening.'
const questions = privatePaths
	.filter(({ path, topic }) => topic === 'medication' && path.startsWith(group))
	.map(({ path }) => path.slice(group.length))

/** Each question about a medicine that was answered, by the name of its field. */
export function medicinesAsked({ screening = {} }: Pick<Visit, 'screening'>): {
	name: string
	taken: boolean
}[] {
	const answers = screening as Readonly<Record<string, unknown>>
	return questions.flatMap((key) => {
		const taken = answers[key]
		return typeof taken === 'boolean' ? [{ name: nameOfField(key) ?? key, taken }] : []
	})
}
