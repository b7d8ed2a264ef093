/**
 * Decision lines by which the clinician marks what to try or do: the id is the mark's name, a
 * point, and what it is about.
 */
import type { Assessment, FootwearWork, RankedModel } from '../findings/assessment.ts'
import type { Decision, Decisions } from '../visit/decisions.ts'
import { sizeWords } from '../words/en/sizes.ts'

export type Mark = 'model' | 'work'
/** In the order they were marked; lines without words are left out. */
export const markedLines = ({ lines }: Decisions, mark: Mark): Decision[] =>
	lines.filter(
		(line) =>
			line.choice === 'accept' && line.findingId.startsWith(`${mark}.`) && line.says !== undefined,
	)
/** What a report prints of a model to try: '<name>, size <size>'. */
export const modelWords = ({ name, size }: Pick<RankedModel, 'name' | 'size'>): string =>
	`${name}, size ${sizeWords(size)}`
const sideWords = { left: ', left', right: ', right', both: '' } as const
/** The name of a change, with its side where it concerns one. */
export const workTitle = ({ name, side }: FootwearWork): string => `${name}${sideWords[side]}`
/** What a report prints of a change to the boot or a lacing. */
export const workWords = (work: FootwearWork): string => `${workTitle(work)}. ${work.says}`
/** What a mark on a change is about: its id and side. */
export const workKey = ({ id, side }: FootwearWork): string => `${id}.${side}`
/**
 * Marks that would print other words than the measures give now: a size that changed, a work that
 * reads otherwise. What is not asked for any more may stay marked.
 */
export function overtakenMarks(
	decisions: Decisions,
	{ footwear: { ranked, modifications = [], lacing = [] } }: Pick<Assessment, 'footwear'>,
): Decision[] {
	const now = new Map<string, string>([
		...ranked
			.filter((model) => model.verdict !== 'unsuitable')
			.map((model) => [`model.${model.id}`, modelWords(model)] as const),
		...[...modifications, ...lacing].map(
			(work) => [`work.${workKey(work)}`, workWords(work)] as const,
		),
	])
	return [...markedLines(decisions, 'model'), ...markedLines(decisions, 'work')].filter(
		(line) => (now.get(line.findingId) ?? line.says) !== line.says,
	)
}
