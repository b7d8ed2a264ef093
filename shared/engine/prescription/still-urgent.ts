/** What is to be done first, after the answers: a priority goes with what it spoke of. */
import type { SettledPlan } from './settled.ts'

type Stands = (plan: SettledPlan) => boolean
const hasVerdict =
	(verdict: string): Stands =>
	({ owned }) =>
		owned.some((pair) => pair.verdict === verdict)
/** By the code of the priority; one that is not named always stands. */
const stands: Readonly<Record<string, Stands>> = {
	'priority.stop-wearing': hasVerdict('stop-wearing'),
	'priority.mend-first': hasVerdict('modify'),
	'priority.replace': hasVerdict('replace'),
	'priority.modify': hasVerdict('modify'),
	'priority.raise': ({ raise }) =>
		raise.pairs.some(({ left, right }) => left.addMm > 0 || right.addMm > 0),
	'priority.insert': ({ insert }) =>
		insert.left.state === 'proposed' || insert.right.state === 'proposed',
	'priority.adjust-insert': ({ insertKept }) =>
		insertKept !== undefined && insertKept.anew !== true && insertKept.lines.length > 0,
	'priority.buy': ({ pairs }) => pairs.some(({ means }) => means === 'buy'),
	'priority.review': ({ review }) => review !== undefined,
}
/** The plan with the priorities that are left, ranked anew. */
export function stillUrgent(plan: SettledPlan): SettledPlan {
	const left = plan.priorities.filter(({ code = '' }) => stands[code]?.(plan) ?? true)
	return { ...plan, priorities: left.map((priority, index) => ({ ...priority, rank: index + 1 })) }
}
