/** What a fitter answers to one question about a model, and how the answers are put together. */

import { reading } from '../../findings/finding.ts'
import type { MatchReason, ModelChange } from '../../findings/footwear-result.ts'
import type { Basis, Because } from '../../protocol/basis.ts'
import { rounded } from '../../visit/sides.ts'
import type { Feature } from '../../visit/terms.ts'
import type { Side } from '../../visit/visit.ts'
import type { Statement } from '../../words/statement.ts'

/** The answer to one question; what is left out was not found. */
export interface Answer {
	/** Why the model must not be worn. */
	stops?: readonly MatchReason[]
	for?: readonly MatchReason[]
	/** What costs points. */
	against?: readonly MatchReason[]
	/** Sought features that the shelf does not record. */
	unknown?: readonly Feature[]
	changes?: readonly ModelChange[]
}
/** The answers to all questions. */
export interface Answers {
	stops: MatchReason[]
	for: MatchReason[]
	against: MatchReason[]
	unknown: Feature[]
	changes: ModelChange[]
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
	statement: Statement,
	because: Because[],
	basis: Basis,
): MatchReason => ({ rule, ...statement, because, basis })
/** A reason against a model; points to 0.01. */
export const penalty = (
	rule: string,
	statement: Statement,
	points: number,
	because: Because[],
	basis: Basis,
): MatchReason => ({ rule, ...statement, points: rounded(points, 2), because, basis })
/** A change that can be done to this model. */
export const change = (statement: Statement): ModelChange => ({ ...statement, toThisModel: true })
/** A change to another size or another model. */
export const otherChoice = (statement: Statement): ModelChange => ({
	...statement,
	toThisModel: false,
})
/** A length that a reason rests on, shown to 0.1 mm. @param measure by its key or reading name */
export const mm = (measure: string, valueMm: number, side?: Side): Because =>
	reading(measure, valueMm, 'mm', side)
