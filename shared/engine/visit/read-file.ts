/** Reading a file of this program from JSON data: its kind, its version, its schema, its checks. */
import type { z } from 'zod'
import { type Problem, problemOf, problemsOf } from './problems.ts'

export type Parsed<Value> = { ok: true; value: Value } | { ok: false; problems: Problem[] }

/** A kind of file: 'visit' is the word for 'lastwright-visit'. */
interface FileKind<Value> {
	word: string
	schema: z.ZodType<Value>
	/** What no single field can say of itself. */
	checks: (value: Value) => Problem[]
}
const refused = (problem: Problem): { ok: false; problems: Problem[] } => ({
	ok: false,
	problems: [problem],
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
		return refused(problemOf('(file)', 'not-this-file', input, { word, format }))
	const given = input as { format?: unknown; version?: unknown }
	if (given.format === format && typeof given.version === 'number' && given.version > 1)
		return refused(problemOf('version', 'newer-version', given.version, {}))
	const result = schema.safeParse(input)
	if (!result.success) return { ok: false, problems: problemsOf(result.error, input) }
	const problems = checks(result.data)
	return problems.length > 0 ? { ok: false, problems } : { ok: true, value: result.data }
}
