/** Between the flat text of the player form and the player of the visit file. */
import type { z } from 'zod'
import { fieldMeta } from '../../../shared/engine/visit/field-meta.ts'
import { playerSchema } from '../../../shared/engine/visit/visit.ts'
import { issueWords } from '../../parts/form.tsx'

export type Player = z.infer<typeof playerSchema>
export type Form = Record<string, string>
export const personPaths = [
	'givenName',
	'familyName',
	'birthDate',
	'sex',
	'club',
	'email',
	'phone',
] as const
export const guardianPaths = [
	'guardian.name',
	'guardian.relation',
	'guardian.email',
	'guardian.phone',
] as const
export const paths: readonly string[] = [...personPaths, ...guardianPaths]
export const titleOf = (path: string) => fieldMeta(playerSchema, path).title

export function formOf(player: Player): Form {
	const { guardian, ...person } = player
	const flat = [
		...Object.entries(person),
		...Object.entries(guardian ?? {}).map(([key, value]) => [`guardian.${key}`, value] as const),
	]
	return Object.fromEntries(flat.map(([key, value]) => [key, value ?? '']))
}
/**
 * Reads the form; empty fields are left out.
 * @param today YYYY-MM-DD, to refuse a birth date still to come
 */
export function readForm(
	form: Form,
	today: string,
): { player: Player | undefined; problems: Record<string, string> } {
	const filled = (all: readonly string[]) =>
		all.flatMap((path) => {
			const text = form[path]?.trim()
			return text ? [[path.replace('guardian.', ''), text]] : []
		})
	const guardian = filled(guardianPaths)
	const read = playerSchema.safeParse({
		...Object.fromEntries(filled(personPaths)),
		...(guardian.length > 0 ? { guardian: Object.fromEntries(guardian) } : {}),
	})
	const problems: Record<string, string> = {}
	for (const issue of read.error?.issues ?? []) {
		const path = issue.path.join('.')
		problems[path] ??= issueWords(titleOf(path), form[path] ?? '', issue)
	}
	const born = form.birthDate ?? ''
	if (!problems.birthDate && born > today)
		problems.birthDate = `Birth date ${born} is still to come. Check the year.`
	return { player: read.data, problems }
}
