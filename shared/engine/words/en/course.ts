/** The course of a player's complaints in words: what was changed, and each change of pain. */
import type { Adjustment } from '../../visit/recorded/insert-worn.ts'
import type { PairRole } from '../../visit/terms.ts'
import { sentence } from '../sentence.ts'
import { amount, day, listed } from './format.ts'
import { adjustmentLine } from './insert-adjust.ts'
import { type LoadParams, loadActs } from './question-lines.ts'
import { pairFor } from './question-names.ts'

interface Raised extends Readonly<Record<string, unknown>> {
	leftMm: number
	rightMm: number
}
const raised = ({ leftMm, rightMm }: Raised): string =>
	`left ${amount(leftMm, 'mm')}, right ${amount(rightMm, 'mm')} at most`
const endings = {
	'weaned-as-planned': 'left off step by step',
	'stopped-early': 'stopped early',
	'never-worn': 'never worn',
	'no-longer-asked': 'no longer asked for',
} as const
export const courseSentences = {
	'course.raise-begun': sentence<Raised>({
		clinician: (heights) => `Heel raise asked for: ${raised(heights)}.`,
	}),
	'course.raise-changed': sentence<Raised>({
		clinician: (heights) => `Heel raise changed: ${raised(heights)}.`,
	}),
	'course.raise-ended': sentence<{ how: keyof typeof endings }>({
		clinician: ({ how }) => `Heel raise ${endings[how]}.`,
	}),
	'course.insert-ordered': sentence({ clinician: () => 'Insert asked for.' }),
	'course.insert-adjusted': sentence<{ lines: readonly Adjustment[] }>({
		clinician: ({ lines }) => `Insert to be adjusted: ${lines.map(adjustmentLine).join('; ')}.`,
	}),
	'course.insert-left-off': sentence({ clinician: () => 'Insert worn no more.' }),
	'course.pair-bought': sentence<{ role: PairRole }>({
		clinician: ({ role }) => `Bought since the visit before: ${pairFor(role)}.`,
	}),
	'course.pair-left-off': sentence<{ pairs: readonly string[] }>({
		clinician: ({ pairs }) => `Not to be worn any more: ${listed(pairs)}.`,
	}),
	'course.load': sentence<{ load: LoadParams }>({
		clinician: ({ load }) => `Load: ${loadActs(load).join('; ')}.`,
	}),
}
interface Step {
	of: 'now' | 'worst'
	from: string
	to: string
	was: number
	is: number
	verdict: 'beyond-error' | 'within-error'
}
const painNames = { now: 'Pain now', worst: 'Worst pain' } as const
export const verdictNames = {
	'beyond-error': 'beyond error',
	'within-error': 'within error',
} as const
/** 'Worst pain 6 on 1 March 2027, 3 on 2 April 2027: beyond error'. */
export const stepWords = ({ of, from, to, was, is, verdict }: Step): string =>
	`${painNames[of]} ${was} on ${day(from)}, ${is} on ${day(to)}: ${verdictNames[verdict]}`
