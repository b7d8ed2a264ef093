/**
 * Which questions stand open on the Flags step beside those asked of everyone: opened by what is
 * recorded, by a chosen complaint, or since they hold an answer. Pure.
 */
import { questionsOf } from '../../../shared/engine/conditions/registry.ts'
import {
	askedAlways,
	askedInPrivate,
	complaints,
} from '../../../shared/engine/screening/complaints.table.ts'
import { bothSides } from '../../../shared/engine/visit/sides.ts'
import type { Visit } from '../../../shared/engine/visit/visit.ts'
import { conditionInWords } from '../../../shared/engine/words/words.ts'
import { readPath } from '../../parts/draft-path.ts'

type Recorded = NonNullable<Visit['conditions']>[number]
type OpenedSide = 'left' | 'right' | 'both'
export interface Opened {
	/** Path of a question or of a group of them. */
	path: string
	/** The conditions that opened it, by name and side; empty where none did. */
	by: readonly string[]
	/** The side that those conditions are on; absent where they have none. */
	side?: OpenedSide
}
/** In the order in which they are asked, each once. */
const inOrder = [...new Set(complaints.flatMap(({ opens }) => opens))]

const current = ({ conditions = [] }: Visit): Recorded[] =>
	conditions.filter(({ status }) => status !== 'past')
function sideOf(recorded: readonly Recorded[]): OpenedSide | undefined {
	const on = bothSides.filter((side) =>
		recorded.some((condition) => condition.side === side || condition.side === 'both'),
	)
	return on.length === 2 ? 'both' : on[0]
}
const nameOf = (recorded: Recorded): string => {
	const name = conditionInWords(recorded, 'clinician')
	return recorded.side === 'none' ? name : `${name}, ${recorded.side}`
}
/**
 * @param chosen ids of complaints; @param above paths that stand among the core questions
 * @returns what a condition opened first
 */
export function openedQuestions(
	visit: Visit,
	chosen: readonly string[],
	above: readonly string[],
): { byConditions: Opened[]; byComplaint: Opened[] } {
	const wanted = complaints.filter(({ id }) => chosen.includes(id)).flatMap(({ opens }) => opens)
	const elsewhere = [...askedAlways, ...askedInPrivate, ...above]
	const opened = inOrder
		.filter((path) => !elsewhere.includes(path))
		.map((path): Opened => {
			const recorded = current(visit).filter(({ condition }) =>
				questionsOf(condition).includes(path),
			)
			const side = sideOf(recorded)
			return { path, by: recorded.map(nameOf), ...(side === undefined ? {} : { side }) }
		})
	return {
		byConditions: opened.filter(({ by }) => by.length > 0),
		// what already holds an answer stays open, whatever is chosen
		byComplaint: opened.filter(
			({ by, path }) =>
				by.length === 0 && (wanted.includes(path) || readPath(visit, path) !== undefined),
		),
	}
}
