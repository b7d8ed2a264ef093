/** When to stop and call, when to come again, and what the club knows. */
import { isConsentNoted } from '../../visit/agreement.ts'
import { paperName } from '../../words/names.ts'
import { dateWords } from '../../words/words.ts'
import { heading, say } from '../base.ts'
import { firstSigns } from '../page-one/call.ts'
import { saysReview } from '../page-one/to-do.ts'
import { isOpen, planOf } from '../plan-of.ts'
import { isKeptFrom } from '../reader.ts'
import { buyingWaits, waits } from '../waits.ts'
import type { Part } from './part.ts'

export const call: Part = (input, _reader, t) => {
	const { clinic, visit } = input
	const { phone } = clinic
	const { givenName: name } = paperName(visit.player)
	const isStopped = waits(planOf(input).gate, 'sport')
	const title = () => {
		if (!phone) return t(isStopped ? 'guardian.callIf' : 'guardian.stopIf', { name })
		return t(isStopped ? 'guardian.callUsIf' : 'guardian.stopIfUs', { name, phone })
	}
	return [
		heading(title()),
		{ kind: 'list', items: firstSigns(input) },
		say(t('guardian.emergency', { name })),
	]
}
/**
 * The day of the plan, unless it stands among what to do or the facts of a held page; one that rests
 * on growth alone is not told where growth is not shown.
 */
export const again: Part = (input, reader, t) => {
	const plan = planOf(input)
	const { review, gate } = plan
	if (waits(gate, 'sport')) return []
	const isBuying = !buyingWaits(gate)
	const sooner = t(isBuying ? 'guardian.sooner' : 'guardian.soonerPain')
	const topics = new Map(input.assessment.findings.map(({ id, topic }) => [id, topic]))
	const byGrowthAlone =
		!!review?.because.length && review.because.every((id) => topics.get(id) === 'growth')
	const isTold = review && !(byGrowthAlone && isKeptFrom(reader, input, 'growth'))
	const day = () => {
		if (!isTold) return t('player.reviewNone')
		const date = dateWords(review.date)
		return isOpen(plan, 'review')
			? t('pageOne.againSuggested', { date })
			: t('guardian.againOn', { date })
	}
	const growing = isBuying && input.assessment.growth && !isKeptFrom(reader, input, 'growth')
	return [
		heading(t('guardian.again')),
		say(
			[
				...(saysReview(reader, input) ? [] : [day()]),
				sooner,
				...(growing ? [t('guardian.growFast')] : []),
			].join(' '),
		),
	]
}
export const shared: Part = ({ decisions, sharedWithClub = [] }, _reader, t) => [
	heading(t('guardian.shared')),
	say(
		[
			sharedWithClub.length > 0
				? t('guardian.sharedWhat', { what: sharedWithClub.join(', ') })
				: t('guardian.sharedNothing'),
			...(isConsentNoted(decisions)
				? []
				: [t('guardian.outstanding', { what: t('guardian.consentOpen') })]),
		].join(' '),
	),
]
