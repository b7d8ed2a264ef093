/** Reading a file of this program from JSON data: its kind, its version, its schema, its checks. */
import type { z } from 'zod'
import { type Problem, problemsOf } from './problems.ts'

export type Parsed<Value> = { ok: true; value: Value } | { ok: false; problems: Problem[] }

/** A kind of file: 'visit' is the word for 'lastwright-visit'. */
interface FileKind<Value> {
	word: string
	schema: z.ZodType<Value>
	/** What no single field can say of itself. */
	checks: (value: Value) => Problem[]
}
const refused = (path: string, message: string): { ok: false; problems: Problem[] } => ({
	ok: false,
	problems: [{ path, message }],
})
/**
 * @param input the data of the file, version 1. Never throws for bad data: each problem is named
 * with its path.
 */
export function readFile<Value>(
	{ word, schema, checks }: FileKind<Value>,
	input: unknown,
): Parsed<Value> {
	const format = `lastwright-${word}`
	if (input === null || typeof input !== 'object' || Array.isArray(input))
		return refused(
			'(file)',
			`not a ${word}, given ${Array.isArray(input) ? 'a list' : String(input)}, ` +
				`allowed: an object with format "${format}"`,
		)
	const given = input as { format?: unknown; version?: unknown }
	if (given.format === format && typeof given.version === 'number' && given.version > 1)
		return refused(
			'version',
			`a version of the future, given ${given.version}, allowed: 1 (open this file with ` +
				'a newer Lastwright)',
		)
	const result = schema.safeParse(input)
	if (!result.success) return { ok: false, problems: problemsOf(result.error, input) }
	const problems = checks(result.data)
	return problems.length > 0 ? { ok: false, problems } : { ok: true, value: result.data }
}
