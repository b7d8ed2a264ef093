/** What a re-check asks and was not answered yet, in the order in which it is asked. */
import type { Since, Visit } from '../visit/visit.ts'
import { pairFor } from '../words/en/question-names.ts'
import { toDoName, wornNames } from '../words/en/recheck.ts'

interface Unanswered {
	path: string
	says: string
}
type Single = 'wearingIn' | 'season' | 'letter'
const singles: readonly (readonly [asks: keyof Since, path: Single, says: string])[] = [
	['asksLetter', 'letter', 'what came of the letter'],
	['asksWearingIn', 'wearingIn', 'the wearing in'],
	['asksSeason', 'season', 'the plan of the season'],
]
const row = (
	list: string,
	place: number,
	fields: Readonly<Record<string, unknown>>,
	says: string,
): Unanswered[] =>
	Object.entries(fields).flatMap(([key, value]) =>
		value === undefined ? [{ path: `since.${list}.${place}.${key}`, says }] : [],
	)
/** What was not got has no trouble. */
const rows = ({ done = [], bought = [], worn = [] }: Since): Unanswered[] => [
	...done.flatMap((one, place) => row('done', place, { answer: one.answer }, toDoName(one))),
	...bought.flatMap(({ role, answer, trouble }, place) => {
		const asked = answer === 'bought' ? { answer, trouble } : { answer }
		return row('bought', place, asked, `the new ${pairFor(role)}`)
	}),
	...worn.flatMap(({ what, now, trouble }, place) =>
		row('worn', place, now === 'never-worn' ? { now } : { now, trouble }, `the ${wornNames[what]}`),
	),
]
/** None where the visit is no re-check. */
export function unansweredSince({ since }: Visit): Unanswered[] {
	if (!since) return []
	return [
		...rows(since),
		...singles.flatMap(([asks, path, says]) =>
			since[asks] && since[path] === undefined ? [{ path: `since.${path}`, says }] : [],
		),
	]
}
