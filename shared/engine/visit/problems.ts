/**
 * Turns a schema's refusals into one line per problem: path, what is wrong, what was given, what is
 * allowed.
 */
import type { z } from 'zod'

export interface Problem {
	path: string
	message: string
}
type Issue = z.core.$ZodIssue

export function problemLine(problem: Problem): string {
	return `${problem.path}: ${problem.message}`
}

function pathText(path: readonly PropertyKey[]): string {
	return path.length === 0 ? '(file)' : path.map(String).join('.')
}

/** The value that stands at a path of the input, undefined where there is none. */
function valueAt(input: unknown, path: readonly PropertyKey[]): unknown {
	let value = input
	for (const key of path) {
		if (value === null || typeof value !== 'object') return undefined
		value = (value as Record<PropertyKey, unknown>)[key]
	}
	return value
}

/** Characters of a text, entries of a list or an object. */
function sizeOf(value: unknown): number {
	if (typeof value === 'string' || Array.isArray(value)) return value.length
	return value !== null && typeof value === 'object' ? Object.keys(value).length : 0
}
function given(value: unknown): string {
	if (value === undefined) return 'given nothing'
	if (typeof value === 'number') return `given ${value}`
	if (value !== null && typeof value === 'object')
		return Array.isArray(value) ? `given a list of ${value.length}` : 'given an object'
	const text = JSON.stringify(value) ?? String(value)
	return `given ${text.length > 60 ? `${text.slice(0, 57)}..."` : text}`
}
const kindWords: Record<string, string> = {
	number: 'a number',
	int: 'a whole number',
	string: 'text',
	boolean: 'true or false',
	array: 'a list',
	object: 'an object',
	record: 'an object',
	null: 'null',
}
const formatWords: Record<string, string> = {
	date: 'a date that exists, YYYY-MM-DD',
	email: 'an e-mail address such as name@example.org',
}

/** Where a value stands that the schema refused. */
interface Place {
	input: unknown
	path: readonly PropertyKey[]
}
type Reader<Code extends Issue['code']> = (
	issue: Extract<Issue, { code: Code }>,
	place: Place,
) => Problem[]

/** A problem of one value: what is wrong, what was given, what is allowed. */
function problem({ input, path }: Place, wrong: string, allowed: string): Problem[] {
	const message = `${wrong}, ${given(valueAt(input, path))}, allowed: ${allowed}`
	return [{ path: pathText(path), message }]
}
const isMissing = ({ input, path }: Place): boolean => valueAt(input, path) === undefined

const unknownKeys: Reader<'unrecognized_keys'> = ({ keys }, { input, path }) =>
	keys.flatMap((key) =>
		problem({ input, path: [...path, key] }, 'unknown key', 'only the keys of the file format'),
	)
/** A measure is one number or a list of repeats: the branch that the input was meant for. */
function branchMeant(branches: readonly (readonly Issue[])[]): readonly Issue[] | undefined {
	const wrong = branches.filter((branch) => branch.length > 0)
	const isOfOtherType = (branch: readonly Issue[]) =>
		branch.some(({ path, code }) => path.length === 0 && code === 'invalid_type')
	return wrong.find((branch) => !isOfOtherType(branch)) ?? wrong[0]
}
const noBranch: Reader<'invalid_union'> = ({ errors }, place) => {
	const meant = branchMeant(errors)
	if (!meant) return problem(place, 'not allowed here', 'see the file format')
	return meant.flatMap((issue) =>
		problemsIn(issue, { input: place.input, path: [...place.path, ...issue.path] }),
	)
}
const wrongType: Reader<'invalid_type'> = ({ expected }, place) =>
	problem(place, isMissing(place) ? 'missing' : 'wrong type', kindWords[expected] ?? expected)

/** What is counted in a value whose length is limited; undefined where the value itself is. */
const counted: Partial<Record<string, string>> = {
	string: 'characters',
	array: 'entries',
	record: 'entries',
}

const tooSmall: Reader<'too_small'> = ({ origin, minimum }, place) => {
	const what = counted[origin]
	return what
		? problem(place, 'too short', `at least ${minimum} ${what}`)
		: problem(place, 'too small', `${minimum} or more`)
}
const tooBig: Reader<'too_big'> = ({ origin, maximum }, place) => {
	const what = counted[origin]
	if (!what) return problem(place, 'too large', `${maximum} or less`)
	const { input, path } = place
	const held = sizeOf(valueAt(input, path))
	const message = `too long, given ${held} ${what}, allowed: at most ${maximum} ${what}`
	return [{ path: pathText(path), message }]
}
const notATerm: Reader<'invalid_value'> = ({ values }, place) =>
	problem(
		place,
		isMissing(place) ? 'missing' : 'not one of the terms',
		values.map(String).join(', '),
	)
const wrongForm: Reader<'invalid_format'> = ({ format, message }, place) => {
	const ownWords = message.startsWith('Invalid') ? format : message
	return problem(place, 'wrong form', formatWords[format] ?? ownWords)
}
/** One refusal as problems; a kind without words of its own keeps those of the schema. */
function problemsIn(issue: Issue, place: Place): Problem[] {
	switch (issue.code) {
		case 'unrecognized_keys':
			return unknownKeys(issue, place)
		case 'invalid_union':
			return noBranch(issue, place)
		case 'invalid_type':
			return wrongType(issue, place)
		case 'too_small':
			return tooSmall(issue, place)
		case 'too_big':
			return tooBig(issue, place)
		case 'invalid_value':
			return notATerm(issue, place)
		case 'invalid_format':
			return wrongForm(issue, place)
		default: {
			// a check of our own that says what was given itself
			const whole = issue.code === 'custom' && issue.params?.whole === true
			const more = whole ? '' : `, ${given(valueAt(place.input, place.path))}`
			return [{ path: pathText(place.path), message: `${issue.message}${more}` }]
		}
	}
}

/** More than anybody reads; what follows is counted. A choice of this program. */
const mostProblems = 200

/** @param input the value that was parsed, to say what was given */
export function problemsOf(error: z.ZodError, input: unknown): Problem[] {
	const told = error.issues
		.slice(0, mostProblems)
		.flatMap((issue) => problemsIn(issue, { input, path: issue.path }))
		.slice(0, mostProblems)
	const untold = error.issues.length - mostProblems
	if (untold <= 0) return told
	return [...told, { path: '(file)', message: `${untold} more of the same kind are not listed` }]
}
