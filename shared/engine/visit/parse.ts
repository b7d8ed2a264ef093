/** Reading a visit: the schema, then what no single field can say of itself. */
import { crossProblems } from './cross-problems.ts'
import { type Problem, problemsOf } from './problems.ts'
import { type Visit, visitSchema } from './visit.ts'

export type Parsed<T> = { ok: true; value: T } | { ok: false; problems: Problem[] }

/** Reads a visit from JSON data. Never throws for bad data: each problem is named with its path. */
export function parseVisit(input: unknown): Parsed<Visit> {
	if (input === null || typeof input !== 'object' || Array.isArray(input))
		return {
			ok: false,
			problems: [
				{
					path: '(file)',
					message:
						`not a visit, given ${Array.isArray(input) ? 'a list' : String(input)}, ` +
						'allowed: an object with format "lastwright-visit"',
				},
			],
		}
	const { format, version } = input as { format?: unknown; version?: unknown }
	if (format === 'lastwright-visit' && typeof version === 'number' && version > 1)
		return {
			ok: false,
			problems: [
				{
					path: 'version',
					message:
						`a version of the future, given ${version}, allowed: 1 (open this file with ` +
						'a newer Lastwright)',
				},
			],
		}
	const result = visitSchema.safeParse(input)
	if (!result.success) return { ok: false, problems: problemsOf(result.error, input) }
	const problems = crossProblems(result.data)
	return problems.length > 0 ? { ok: false, problems } : { ok: true, value: result.data }
}
