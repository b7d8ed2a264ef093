/** When to stop and whom to call, and when to come again. */
import { capital, dateWords, defaultWarningSigns } from '../../words/words.ts'
import { heading, say, small } from '../base.ts'
import type { ReportInput } from '../inputs.ts'
import { isOpen, planOf } from '../plan-of.ts'
import { waits } from '../waits.ts'
import type { Part } from './part.ts'
import { saysReview } from './to-do.ts'

/** Signs that stand on page one; what the clinician wrote beyond them stands on the next. */
const mostSigns = 6
const signsOf = ({ decisions }: ReportInput): string[] =>
	(decisions.warningSigns ?? defaultWarningSigns).map(capital)
export const furtherSigns = (input: ReportInput): string[] => signsOf(input).slice(mostSigns)

export const firstSigns = (input: ReportInput): string[] => signsOf(input).slice(0, mostSigns)
export const call: Part = (input, _reader, t) => {
	const { phone } = input.clinic
	const isStopped = waits(planOf(input).gate, 'sport')
	const title = () => {
		if (!phone) return isStopped ? t('pageOne.callIf') : t('pageOne.stopIf')
		return isStopped ? t('pageOne.callUsIf', { phone }) : t('pageOne.stopIfUs', { phone })
	}
	return [heading(title()), { kind: 'list', items: firstSigns(input) }, say(t('player.emergency'))]
}
/** The day of the review, unless the things to do say it; a held page has it among its facts. */
export const again: Part = (input, reader, t) => {
	const plan = planOf(input)
	if (waits(plan.gate, 'sport')) return []
	const earlier = waits(plan.gate, 'purchase') ? t('player.reviewPain') : t('player.reviewEarlier')
	if (saysReview(reader, input)) return [say(earlier)]
	const date = plan.review && dateWords(plan.review.date)
	const dated = (day: string) =>
		isOpen(plan, 'review')
			? t('pageOne.againSuggested', { date: day })
			: t('player.reviewOn', { date: day })
	return [say(`${date === undefined ? t('player.reviewNone') : dated(date)} ${earlier}`)]
}
/** An amended report says that something changed; what it is stands first on the next page. */
export const amendedNote: Part = ({ draft, version = 1 }, _reader, t) =>
	draft || version <= 1 ? [] : [small(t('pageOne.amended', { before: version - 1 }))]
