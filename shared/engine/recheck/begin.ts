/** A re-check as it begins: what is asked, unanswered, and what is carried over to be asked again. */
import { present } from '../plain/present.ts'
import type { Protocol } from '../protocol/protocol.ts'
import type { Since, Visit } from '../visit/visit.ts'
import { askedSince, type LastVisit } from './asked.ts'
import { insertAfter } from './insert-worn.ts'
import { carriedLists } from './take-over.ts'

const mostRows = { done: 10, plan: 40 }
function sinceOf(last: LastVisit, on: string, protocol: Protocol): Since {
	const since: Since = { visitDate: last.visit.visitDate }
	for (const { opens } of askedSince(last, on, protocol)) {
		const { done, bought, worn, measure, ...rest } = opens
		Object.assign(since, rest)
		if (done) since.done = [...(since.done ?? []), ...done].slice(0, mostRows.done)
		if (bought) since.bought = [...(since.bought ?? []), ...bought]
		if (worn) since.worn = [...(since.worn ?? []), ...worn]
		if (measure) since.measure = [...(since.measure ?? []), ...measure]
	}
	const plan = (last.decisions.answers ?? []).map(({ question, of, choice }) => ({
		question,
		of,
		choice,
	}))
	return plan.length > 0 ? { ...since, plan: plan.slice(-mostRows.plan) } : since
}
/** The parts of a visit that a re-check begins with. @param on its day (ISO date) */
export const beginRecheck = (
	last: LastVisit,
	on: string,
	protocol: Protocol,
): Pick<Visit, 'since' | 'conditions' | 'footwear' | 'insertWorn'> => ({
	...carriedLists(last.visit),
	...present({ insertWorn: insertAfter(last, protocol) }),
	since: sinceOf(last, on, protocol),
})
