/** What is typed about load: whole numbers within their limits, or nothing. Pure. */
import { type LoadFields, loadFieldsSchema } from '../../../../shared/engine/visit/answers.ts'

export const loadNumbers = [
	'sessionsPerWeek',
	'minutesPerSession',
	'daysOffPerWeek',
	'weeks',
] as const
type LoadNumber = (typeof loadNumbers)[number]
/** As they are typed: the steps one a line. */
export type LoadTexts = Readonly<Record<LoadNumber | 'steps', string>>
const mostSteps = 6
const { shape } = loadFieldsSchema
/** The number that a text says; undefined where it says none. `says` what cannot stand, and why. */
function readOne(name: LoadNumber, text: string): { value?: number; says?: string } {
	const typed = text.trim()
	if (typed === '') return {}
	const { minValue, maxValue } = shape[name].unwrap()
	const says = `'${typed}' is not allowed; give a whole number from ${minValue} to ${maxValue}.`
	if (!/^\d+$/.test(typed)) return { says }
	const value = Number(typed)
	return shape[name].safeParse(value).success ? { value } : { says }
}
/** One step a line; empty lines are none. */
function readSteps(text: string): { value?: string[]; says?: string } {
	const lines = text.split('\n').flatMap((line) => (line.trim() === '' ? [] : [line.trim()]))
	if (lines.length === 0) return {}
	return shape.steps.safeParse(lines).success
		? { value: lines }
		: { says: `Give at most ${mostSteps} lines of 200 letters each.` }
}
/** @returns the fields once all of them can be read; `wrong` says by its name what cannot stand */
export function readLoad(texts: LoadTexts): {
	load?: LoadFields
	wrong: Readonly<Partial<LoadTexts>>
} {
	const read = [
		...loadNumbers.map((name) => [name, readOne(name, texts[name])] as const),
		['steps', readSteps(texts.steps)] as const,
	]
	const wrong = Object.fromEntries(
		read.flatMap(([name, { says }]) => (says === undefined ? [] : [[name, says]])),
	)
	if (Object.keys(wrong).length > 0) return { wrong }
	const load = Object.fromEntries(
		read.flatMap(([name, { value }]) => (value === undefined ? [] : [[name, value]])),
	)
	return { load, wrong }
}
