/** What was done about signs, as it was typed: not told to whoever may not read of all of them. */
import { present } from '../plain/present.ts'
import type { Decisions } from '../visit/decisions.ts'
import { isOpenTo } from '../words/statement.ts'
import type { ReportInput } from './inputs.ts'
import type { Reader } from './reader.ts'

/** @param told private topics that the reader may be told of */
export function doneTold(
	told: Reader['told'],
	{ decisions, assessment }: Pick<ReportInput, 'decisions' | 'assessment'>,
): Pick<Decisions, 'referralDone'> & Required<Pick<Decisions, 'screeningDone'>> {
	const hidden = new Set(
		assessment.screening.items
			.filter((item) => item.state === 'yes' && !isOpenTo(told, item))
			.map(({ id }) => id),
	)
	const { referralDone, screeningDone = [] } = decisions
	return {
		...present({ referralDone: hidden.size === 0 ? referralDone?.trim() || undefined : undefined }),
		screeningDone: screeningDone.filter(({ items }) => !items.some((id) => hidden.has(id))),
	}
}
/** The same as sentences, one after another. */
export function doneWords(...given: Parameters<typeof doneTold>): string[] {
	const { referralDone, screeningDone } = doneTold(...given)
	return [...(referralDone ? [referralDone] : []), ...screeningDone.map(({ done }) => done)]
}
