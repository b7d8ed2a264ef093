/**
 * What is wrong with an entry of a file: a code to go by with what its words are filled in with,
 * and the words: what is wrong, what was given, what is allowed.
 */
import type { z } from 'zod'
import {
	type Given,
	givenWords,
	moreWords,
	type ProblemWords,
	problemWords,
} from '../words/en/problems.ts'

type Codes = typeof problemWords
export type ProblemCode = keyof Codes
type FillingOf<Code extends ProblemCode> =
	Codes[Code] extends ProblemWords<infer Filling> ? Filling : never
export interface Problem {
	path: string
	/** 'own-check' where a schema has words of its own; 'more' where problems are counted only. */
	code: ProblemCode | 'own-check' | 'more'
	/** JSON only; what was given stands under `given`, left out where nothing was. */
	params: Readonly<Record<string, unknown>>
	message: string
}
type Issue = z.core.$ZodIssue

export const problemLine = ({ path, message }: Pick<Problem, 'path' | 'message'>): string =>
	`${path}: ${message}`

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
/** What was given, as JSON may hold it. */
function givenOf(value: unknown): Given | undefined {
	if (Array.isArray(value)) return { list: value.length }
	if (value === null || value === undefined) return value
	if (typeof value === 'object') return { object: sizeOf(value) }
	return typeof value === 'number' || typeof value === 'boolean' ? value : String(value)
}
/**
 * A problem of one entry. @param path of the entry, its keys joined by points
 * @param value what stands there, undefined where nothing does
 */
export function problemOf<Code extends ProblemCode>(
	path: string,
	code: Code,
	value: unknown,
	params: FillingOf<Code>,
): Problem {
	const { wrong, allowed, given: counted } = problemWords[code] as ProblemWords<FillingOf<Code>>
	const given = givenOf(value)
	const held = counted?.(params) ?? givenWords(given)
	const message = `${wrong(params)}, ${held}, allowed: ${allowed(params)}`
	return { path, code, params: { ...params, ...(given !== undefined && { given }) }, message }
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

const problem = <Code extends ProblemCode>(
	{ input, path }: Place,
	code: Code,
	params: FillingOf<Code>,
): Problem[] => [problemOf(pathText(path), code, valueAt(input, path), params)]
const isMissing = ({ input, path }: Place): boolean => valueAt(input, path) === undefined

const unknownKeys: Reader<'unrecognized_keys'> = ({ keys }, { input, path }) =>
	keys.flatMap((key) => problem({ input, path: [...path, key] }, 'unknown-key', {}))
/** A measure is one number or a list of repeats: the branch that the input was meant for. */
function branchMeant(branches: readonly (readonly Issue[])[]): readonly Issue[] | undefined {
	const wrong = branches.filter((branch) => branch.length > 0)
	const isOfOtherType = (branch: readonly Issue[]) =>
		branch.some(({ path, code }) => path.length === 0 && code === 'invalid_type')
	return wrong.find((branch) => !isOfOtherType(branch)) ?? wrong[0]
}
const noBranch: Reader<'invalid_union'> = ({ errors }, place) => {
	const meant = branchMeant(errors)
	if (!meant) return problem(place, 'not-allowed-here', {})
	return meant.flatMap((issue) =>
		problemsIn(issue, { input: place.input, path: [...place.path, ...issue.path] }),
	)
}
const wrongType: Reader<'invalid_type'> = ({ expected }, place) =>
	problem(place, isMissing(place) ? 'missing' : 'wrong-type', { expected })

/** What is counted in a value whose length is limited; undefined where the value itself is. */
const countedIn: Partial<Record<string, 'characters' | 'entries'>> = {
	string: 'characters',
	array: 'entries',
	record: 'entries',
}

const tooSmall: Reader<'too_small'> = ({ origin, minimum }, place) => {
	const of = countedIn[origin]
	const least = Number(minimum)
	return of ? problem(place, 'too-short', { least, of }) : problem(place, 'too-small', { least })
}
const tooBig: Reader<'too_big'> = ({ origin, maximum }, place) => {
	const of = countedIn[origin]
	const most = Number(maximum)
	if (!of) return problem(place, 'too-large', { most })
	const held = sizeOf(valueAt(place.input, place.path))
	return problem(place, 'too-long', { held, most, of })
}
const notATerm: Reader<'invalid_value'> = ({ values }, place) =>
	problem(place, isMissing(place) ? 'missing' : 'not-a-term', { terms: values.map(String) })
const forms: Partial<Record<string, 'not-a-date' | 'not-a-moment' | 'not-an-email'>> = {
	date: 'not-a-date',
	datetime: 'not-a-moment',
	email: 'not-an-email',
}
/** A pattern of a schema has words of its own for what it takes. */
const wrongForm: Reader<'invalid_format'> = ({ format, message: form }, place) => {
	const code = forms[format]
	return code ? problem(place, code, {}) : problem(place, 'wrong-form', { form })
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
		default:
			return ownCheck(issue, place)
	}
}
/**
 * What a check of the schema's own says. Its words stand alone where they say what was given
 * (`whole`), and it may name its code (`stated`).
 */
function ownCheck(issue: Issue, { input, path }: Place): Problem[] {
	const { whole, stated } = ((issue.code === 'custom' && issue.params) || {}) as {
		whole?: boolean
		stated?: Pick<Problem, 'code' | 'params'>
	}
	const given = givenOf(valueAt(input, path))
	const message = whole ? issue.message : `${issue.message}, ${givenWords(given)}`
	const said = stated ?? { code: 'own-check', params: given === undefined ? {} : { given } }
	return [{ path: pathText(path), ...said, message }]
}

/** More than anybody reads; what follows is counted. A choice of this program. */
const mostProblems = 200

/** @param input the value that was parsed, to say what was given */
export function problemsOf(error: z.ZodError, input: unknown): Problem[] {
	const told = error.issues
		.slice(0, mostProblems)
		.flatMap((issue) => problemsIn(issue, { input, path: issue.path }))
		.slice(0, mostProblems)
	const more = error.issues.length - mostProblems
	if (more <= 0) return told
	return [...told, { path: '(file)', code: 'more', params: { more }, message: moreWords(more) }]
}
