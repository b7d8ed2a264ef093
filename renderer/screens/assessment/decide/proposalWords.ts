/** Proposals in words of the screen. Pure. */
import type {
	Assessment,
	OwnedVerdict,
	RaiseInFoot,
	RolePair,
	Span,
} from '../../../../shared/engine/findings/assessment.ts'
import type { Firm } from '../../../../shared/engine/firmness/firmness.ts'
import type { AskedNow } from '../../../../shared/engine/prescription/in-turn.ts'
import { sizeToBuyBy } from '../../../../shared/engine/prescription/settled-size.ts'
import { strongestReason } from '../../../../shared/engine/prescription/strongest.ts'
import type { Answer } from '../../../../shared/engine/visit/answers.ts'
import { nameOfField } from '../../../../shared/engine/visit/field-names.ts'
import { listed } from '../../../../shared/engine/words/en/format.ts'
import { questionName } from '../../../../shared/engine/words/en/question-names.ts'
import { readingInWords, readingName } from '../../../../shared/engine/words/reading.ts'
import type { QuestionState } from './answering.ts'

const mm = (value: number): string => `${Math.round(value * 10) / 10}`
export const spanWords = ({ min, target, max }: Span): string =>
	`${mm(min)} to ${mm(max)} mm, best ${mm(target)} mm`
export const firmly: Readonly<Record<Firm['firmness'], string>> = {
	steady: 'steady',
	'near-a-limit': 'near a limit',
	'either-way': 'either way',
	'not-worked-out': 'not worked out',
}
/** What the short word means, where there is room to say it. */
const inFull: Readonly<Record<Firm['firmness'], string>> = {
	steady: 'steady within measuring error',
	'near-a-limit': 'near a limit, so that measuring error may change it',
	'either-way': 'within measuring error it may go either way',
	'not-worked-out': '',
}
/**
 * How surely a proposal stands within measuring error, and what to measure again where it matters;
 * empty where no error is published to try it with.
 */
export function firmnessWords(firm: Firm | undefined): string {
	if (!firm || firm.firmness === 'not-worked-out') return ''
	const measures = [...new Set(firm.decidedBy.map(nameOfMeasure))]
	const again = measures.length > 0 ? `; measure ${measures.join('; ')} again` : ''
	return `${inFull[firm.firmness]}${again}`
}
function nameOfMeasure(path: string): string {
	const parts = path.split('.').filter((part) => !/^\d+$/.test(part))
	const side = parts.find((part) => part === 'left' || part === 'right')
	const key = parts.findLast((part) => part !== 'left' && part !== 'right') ?? path
	return `${nameOfField(key) ?? key}${side ? `, ${side}` : ''}`
}
export const verdictWords: Readonly<Record<OwnedVerdict, string>> = {
	keep: 'keep',
	modify: 'keep, with changes',
	'training-only': 'training only',
	replace: 'replace',
	'stop-wearing': 'stop wearing',
}
export const meansWords: Readonly<Record<RolePair['means'], string>> = {
	keep: 'the pair worn now',
	'with-what-you-have': 'a pair the player owns',
	buy: 'a new pair',
}
const madeBy: Readonly<Record<RaiseInFoot['madeBy'], string>> = {
	none: '',
	wedge: 'by a wedge',
	insert: 'by the insert',
	outsole: 'in the outsole',
}
/** '5 mm by a wedge; 6 mm under the heel in all; heel 11 mm above the forefoot'. */
export function raiseWords(foot: RaiseInFoot): string {
	const { addMm, addedUnderHeelMm, heelAboveForefootMm, outsoleMm = 0 } = foot
	const part =
		outsoleMm < addMm && outsoleMm > 0 ? `, ${mm(outsoleMm)} mm of it in the outsole` : ''
	const by = part === '' ? ` ${madeBy[foot.madeBy]}`.trimEnd() : part
	const added = addMm === 0 ? 'none added' : `${mm(addMm)} mm${by}`
	return [
		added,
		...(addedUnderHeelMm > addMm ? [`${mm(addedUnderHeelMm)} mm under the heel in all`] : []),
		...(heelAboveForefootMm === undefined
			? []
			: [`heel ${mm(heelAboveForefootMm)} mm above the forefoot`]),
	].join('; ')
}
const chosen: Readonly<Record<Answer['choice'], string>> = {
	'as-proposed': 'as proposed',
	changed: 'changed',
	'set-aside': 'set aside',
	unchanged: 'unchanged',
}
export const choiceNames: Readonly<Record<Answer['choice'], string>> = {
	'as-proposed': 'As proposed',
	changed: 'Change',
	'set-aside': 'Set aside',
	unchanged: 'Unchanged since last visit',
}
/** What speaks most strongly for a proposal, in a few words; empty where nothing is named. */
export function reasonWords(question: AskedNow, assessment: Assessment): string {
	const { id, because, prescription } = question
	const size = sizeToBuyBy(assessment.sizing)
	const reason = strongestReason(id, because, { ...prescription, size }, assessment)
	if (!reason) return ''
	// what is there now goes without saying
	return reason.value === 'current' ? readingName(reason) : readingInWords(reason)
}
/** Whose answer turned this proposal; empty where none did. */
export const changedByWords = ({ changedBy }: Pick<AskedNow, 'changedBy'>): string =>
	changedBy.length > 0 ? `changed by your answer to ${listed(changedBy.map(questionName))}` : ''
/** The state of a question, and how it was settled. */
export function stateWords(state: QuestionState, answer: Answer | undefined): string {
	if (state === 'settled' && answer) return chosen[answer.choice]
	return state === 'overtaken' ? 'look again' : state
}
