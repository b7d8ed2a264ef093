/** What is open before the signature, each with the way to where it is mended. Pure. */
import type { DraftContent } from '../../../../shared/contract.ts'
import type { Assessment } from '../../../../shared/engine/findings/assessment.ts'
import { agreementPath } from '../../../../shared/engine/report/agreement-blocks.ts'
import type { signingBlocks } from '../../../../shared/engine/report/signing.ts'
import type { ParamsOf } from '../../../../shared/engine/words/statement.ts'
import { rawWords } from '../decide/decisions.ts'
import { questionOfPath, titleOfQuestion } from '../decide/questionTitles.ts'
import { nameOfTyped } from '../flagsTyped.ts'
import { asksOf, type Step } from '../steps.ts'

export type Block = ReturnType<typeof signingBlocks>[number]
interface Place {
	title: string
	step: string
	question?: string
}
export interface OpenThing {
	key: string
	says: string
	places: readonly Place[]
}
const atStep = (step: string): Place => ({ title: `Go to ${step}`, step })
const atQuestion = (question: string): Place => ({
	title: `Go to ${titleOfQuestion(question)}`,
	step: 'Decide',
	question,
})
/** Where what is written about one question by itself stands. */
const questionAt: Readonly<Record<string, string>> = {
	'decisions.referralDone': 'gate',
	'decisions.heelRaiseWhy': 'raise',
	'decisions.insert': 'insert',
}
const isAskedBy = (step: Step, path: string): boolean =>
	asksOf(step).some((asked) => path === asked || path.startsWith(`${asked}.`))
/** The step that asks for a field of the visit; lists of conditions, pairs and the like are Play's. */
function stepOf(path: string, steps: readonly Step[]): string {
	if (nameOfTyped(path) !== undefined) return 'Flags'
	return steps.find((step) => isAskedBy(step, path))?.name ?? 'Play'
}
/** Where a path is mended. */
function placesAt(path: string, steps: readonly Step[]): Place[] {
	const question = questionAt[path] ?? questionOfPath(path)
	if (question !== undefined) return [atQuestion(question)]
	if (path.startsWith('decisions.')) return [atStep('Decide')]
	return path === 'visit' ? [] : [atStep(stepOf(path.replace(/^visit\./, ''), steps))]
}
/** Fields that are no value are named one by one, open questions by the ways to them. */
function openThingsOf(block: Block, { raw }: DraftContent, steps: readonly Step[]): OpenThing[] {
	const { code, path, params, says } = block
	switch (code) {
		case 'signing.not-yet-values':
			return Object.entries(raw).map(([field, text]) => ({
				key: field,
				says: `Not a value yet: ${rawWords(field, text)}`,
				places: placesAt(field, steps),
			}))
		case 'signing.open-questions':
			return [
				{
					key: code,
					says: 'Questions without an answer:',
					places: (params as ParamsOf<typeof code>).questions.map((question) => ({
						...atQuestion(question),
						title: titleOfQuestion(question),
					})),
				},
			]
		default:
			return [{ key: `${path} ${code}`, says, places: placesAt(path, steps) }]
	}
}
export const isOfAgreement = ({ path }: Block): boolean => path.startsWith(`${agreementPath}.`)
/** What keeps the visit from being signed and is mended on another step. */
export const keptByOthers = (
	blocks: readonly Block[],
	draft: DraftContent,
	steps: readonly Step[],
): OpenThing[] =>
	blocks
		.filter((block) => !isOfAgreement(block))
		.flatMap((block) => openThingsOf(block, draft, steps))
/** What would add to the picture, by the step that asks for it. */
export function notMeasured(
	{ missing }: Pick<Assessment, 'missing'>,
	steps: readonly Step[],
): OpenThing[] {
	return steps.flatMap(({ name }) => {
		const here = missing.filter(({ path }) => stepOf(path, steps) === name)
		if (here.length === 0) return []
		return [{ key: name, says: here.map(({ says }) => says).join('; '), places: [atStep(name)] }]
	})
}
