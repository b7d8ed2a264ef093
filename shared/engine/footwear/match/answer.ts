/** What a fitter answers to one question about a model, and how the answers are put together. */
import type { MatchReason } from '../../findings/assessment.ts'
import type { Basis, Because } from '../../protocol/basis.ts'
import { rounded } from '../../visit/sides.ts'

/** What would make a model fit. */
interface Change {
	says: string
	/** Can be done to this model; false: another size or another model is meant. */
	toThisModel: boolean
}
/** The answer to one question; what is left out was not found. */
export interface Answer {
	/** Why the model must not be worn. */
	stops?: readonly MatchReason[]
	for?: readonly MatchReason[]
	/** What costs points. */
	against?: readonly MatchReason[]
	/** Sought features that the shelf does not record, in words. */
	unknown?: readonly string[]
	changes?: readonly Change[]
}
/** The answers to all questions. */
export interface Answers {
	stops: MatchReason[]
	for: MatchReason[]
	against: MatchReason[]
	unknown: string[]
	changes: Change[]
}
/** Lists to be filled. */
export const noAnswers = (): Answers => ({
	stops: [],
	for: [],
	against: [],
	unknown: [],
	changes: [],
})
/** The answers as one, each list in the order of the questions. The lists are new ones. */
export function together(answers: readonly Answer[]): Answers {
	const all = noAnswers()
	for (const answer of answers) {
		if (answer.stops) all.stops.push(...answer.stops)
		if (answer.for) all.for.push(...answer.for)
		if (answer.against) all.against.push(...answer.against)
		if (answer.unknown) all.unknown.push(...answer.unknown)
		if (answer.changes) all.changes.push(...answer.changes)
	}
	return all
}
/** A reason that costs nothing: it speaks for a model, or stops it. */
export const reason = (
	rule: string,
	says: string,
	because: Because[],
	basis: Basis,
): MatchReason => ({ rule, says, because, basis })
/** A reason against a model; points to 0.01. */
export const penalty = (
	rule: string,
	says: string,
	points: number,
	because: Because[],
	basis: Basis,
): MatchReason => ({ rule, says, points: rounded(points, 2), because, basis })
/** A length that a reason rests on, shown to 0.1 mm. */
export const mm = (measure: string, valueMm: number): Because => ({
	measure,
	value: rounded(valueMm, 1),
	unit: 'mm',
})
/** Words in a row: 'a, b and c'. */
export const listed = (words: readonly string[]): string =>
	words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`
