/**
 * Decision lines by which the clinician marks what to try or do: the id is the mark's name, a
 * point, and what it is about.
 */
import type { FootwearWork, Kept, KeptAssessment, RankedModel } from '../findings/assessment.ts'
import { digestOf } from '../plain/canonical.ts'
import { present } from '../plain/present.ts'
import { type Decision, type Decisions, isOtherContent } from '../visit/decisions.ts'
import { sizeWords } from '../words/en/sizes.ts'
import type { Stated } from '../words/statement.ts'

export type Mark = 'model' | 'work'
/**
 * What a mark puts down: the words to print, and what they are about whatever their wording.
 * @internal
 */
export interface Marked {
	says: string
	of?: string
}
/** In the order they were marked; lines without words are left out. */
export const markedLines = ({ lines }: Decisions, mark: Mark): Decision[] =>
	lines.filter(
		(line) =>
			line.choice === 'accept' && line.findingId.startsWith(`${mark}.`) && line.says !== undefined,
	)
type SizedModel = Pick<RankedModel, 'name' | 'size'>
/** What a report prints of a model to try: '<name>, size <size>'. */
export const modelWords = ({ name, size }: SizedModel): string => `${name}, size ${sizeWords(size)}`
/** A model to try is the same while its name and its size are. @internal */
export const modelMark = (model: SizedModel): Marked => {
	const { system, label, fitting } = model.size
	return { says: modelWords(model), of: digestOf({ name: model.name, system, label, fitting }) }
}
const sideWords = { left: ', left', right: ', right', both: '' } as const
/** The name of a change, with its side where it concerns one. */
export const workTitle = ({ name, side }: Pick<FootwearWork, 'name' | 'side'>): string =>
	`${name}${sideWords[side]}`
/** What a report prints of a change to the boot or a lacing. @internal */
export const workWords = (work: Kept<FootwearWork>): string => `${workTitle(work)}. ${work.says}`
/** What a mark on a change is about: its id and side. */
export const workKey = ({ id, side }: Pick<FootwearWork, 'id' | 'side'>): string => `${id}.${side}`
const workId = /^work\.(?<id>.+)\.(?<side>left|right|both)$/
/** A marked change: its id, its name as a statement, its side; undefined for a mark of another kind. */
export function markedWork({
	findingId,
}: Pick<Decision, 'findingId'>):
	| { id: string; name: Stated; side: FootwearWork['side'] }
	| undefined {
	const { id, side } = workId.exec(findingId)?.groups ?? {}
	if (id === undefined) return undefined
	if (side !== 'left' && side !== 'right' && side !== 'both') return undefined
	return { id, name: { code: `work.${id}.name`, params: {}, says: '' }, side }
}
/** A change is the same while it states the same of the same side. @internal */
export const workMark = (work: Kept<FootwearWork>): Marked => {
	const { id, side, code, params } = work
	const of = code === undefined ? undefined : digestOf({ id, side, code, params: params ?? {} })
	return present({ says: workWords(work), of })
}
/** Whether a mark would print what is no longer so, or holds nothing to print. @internal */
export const isOvertakenMark = (line: Pick<Decision, 'says' | 'of'>, now: Marked): boolean =>
	line.says === undefined || isOtherContent(line, now)
/**
 * Marks that would print what the measures do not give now: a size that changed, a work that says
 * something else. What is not asked for any more may stay marked.
 */
export function overtakenMarks(
	decisions: Decisions,
	{ footwear: { ranked, modifications = [], lacing = [] } }: Pick<KeptAssessment, 'footwear'>,
): Decision[] {
	const now = new Map<string, Marked>([
		...ranked
			.filter((model) => model.verdict !== 'unsuitable')
			.map((model) => [`model.${model.id}`, modelMark(model)] as const),
		...[...modifications, ...lacing].map(
			(work) => [`work.${workKey(work)}`, workMark(work)] as const,
		),
	])
	return [...markedLines(decisions, 'model'), ...markedLines(decisions, 'work')].filter((line) => {
		const marked = now.get(line.findingId)
		return marked !== undefined && isOvertakenMark(line, marked)
	})
}
