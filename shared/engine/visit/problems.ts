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

export function pathText(path: readonly PropertyKey[]): string {
	return path.length === 0 ? '(file)' : path.map(String).join('.')
}

/** The value that stands at a path of the input, undefined where there is none. */
export function valueAt(input: unknown, path: readonly PropertyKey[]): unknown {
	let value = input
	for (const key of path) {
		if (value === null || typeof value !== 'object') return undefined
		value = (value as Record<PropertyKey, unknown>)[key]
	}
	return value
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

function one(issue: Issue, input: unknown, path: readonly PropertyKey[]): Problem[] {
	const value = valueAt(input, path)
	const at = pathText(path)
	const is = given(value)
	switch (issue.code) {
		case 'unrecognized_keys':
			return issue.keys.map((key) => ({
				path: pathText([...path, key]),
				message:
					`unknown key, ${given(valueAt(input, [...path, key]))}, allowed: only the keys ` +
					'of the file format',
			}))
		case 'invalid_union': {
			// a measure is one number or a list of repeats: report the branch the input was meant for
			const branches = issue.errors.filter((branch) => branch.length > 0)
			const inArray = (branch: readonly Issue[]) =>
				!branch.some((each) => each.path.length === 0 && each.code === 'invalid_type')
			const chosen = branches.find(inArray) ?? branches[0]
			return chosen
				? chosen.flatMap((each) => one(each as Issue, input, [...path, ...each.path]))
				: [{ path: at, message: `not allowed here, ${is}, allowed: see the file format` }]
		}
		case 'invalid_type': {
			const allowed = kindWords[issue.expected] ?? issue.expected
			return [
				{
					path: at,
					message:
						value === undefined
							? `missing, ${is}, allowed: ${allowed}`
							: `wrong type, ${is}, allowed: ${allowed}`,
				},
			]
		}
		case 'too_small':
			return [
				{
					path: at,
					message:
						issue.origin === 'string' || issue.origin === 'array'
							? `too short, ${is}, allowed: at least ${issue.minimum} ` +
								`${issue.origin === 'string' ? 'characters' : 'entries'}`
							: `too small, ${is}, allowed: ${issue.minimum} or more`,
				},
			]
		case 'too_big':
			return [
				{
					path: at,
					message:
						issue.origin === 'string' || issue.origin === 'array'
							? `too long, ${is}, allowed: at most ${issue.maximum} ` +
								`${issue.origin === 'string' ? 'characters' : 'entries'}`
							: `too large, ${is}, allowed: ${issue.maximum} or less`,
				},
			]
		case 'invalid_value':
			return [
				{
					path: at,
					message:
						`${value === undefined ? 'missing' : 'not one of the terms'}, ${is}, ` +
						`allowed: ${issue.values.map(String).join(', ')}`,
				},
			]
		case 'invalid_format':
			return [
				{
					path: at,
					message:
						`wrong form, ${is}, allowed: ` +
						`${formatWords[issue.format] ?? (issue.message.startsWith('Invalid') ? issue.format : issue.message)}`,
				},
			]
		default:
			return [{ path: at, message: `${issue.message}, ${is}` }]
	}
}

/** @param input the value that was parsed, to say what was given */
export function problemsOf(error: z.ZodError, input: unknown): Problem[] {
	return error.issues.flatMap((issue) => one(issue, input, issue.path))
}
