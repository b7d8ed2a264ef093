/** What stands first on a player's page, made from the records as far as who works here may read. */
import type { InputOf, OutputOf } from '../../../shared/contract.ts'
import {
	pairsInFew,
	planInFew,
	reviewInFew,
	sizesInFew,
} from '../../../shared/desk/players/plan-in-few.ts'
import type { PlayerSummary } from '../../../shared/desk/players/summary.ts'
import { type Role, treating } from '../../../shared/desk/workplace/call.ts'
import { dayHere } from '../../../shared/desk/workplace/local-day.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { visitsOf } from '../visits/visits.ts'
import { type ReadPlan, readPlan } from './read-plan.ts'
import { sentOf } from './sent.ts'

type Needs = Pick<Memory, 'outbox' | 'people' | 'players'>
/** Visits whose lengths stand beside one another: a choice of this program. */
const mostVisits = 6

const seesPlans = (role: Role): boolean => treating.includes(role)

export function summaryOf(
	memory: Needs,
	deps: Deps,
	{ playerId }: InputOf<'players.summary'>,
): OutputOf<'players.summary'> {
	const { players, people } = memory
	players.entry(playerId)
	const plans = visitsOf(players, deps, playerId)
		.filter(({ inError }) => !inError)
		.slice(0, mostVisits)
		.map((line) => readPlan(deps, line))
	const sent = sentOf(memory, deps, playerId)
	const due = dueOf(plans[0], dayHere(deps.now()))
	// when to come again, and nothing of why: that is for those who treat
	if (!seesPlans(people.acts().role)) {
		const { date, isOverdue } = due ?? {}
		const day = date !== undefined && isOverdue !== undefined && { due: { date, isOverdue } }
		return { ...day, sent, sizes: [], troubles: [] }
	}
	return {
		...planPart(plans[0]),
		...(due && { due }),
		sent,
		sizes: plans.flatMap((read) => ('signed' in read ? (sizesInFew(read.signed) ?? []) : [])),
		troubles: plans.flatMap((read) => ('trouble' in read ? [read.trouble] : [])),
	}
}
function planPart(last: ReadPlan | undefined): Pick<PlayerSummary, 'plan'> {
	if (!last || 'trouble' in last) return {}
	const { visitId, signed } = last
	const { visitDate } = signed.visit
	return { plan: { visitId, visitDate, ...planInFew(signed), pairs: pairsInFew(signed) } }
}
function dueOf(last: ReadPlan | undefined, today: string): PlayerSummary['due'] {
	const review = last && 'signed' in last ? reviewInFew(last.signed) : undefined
	return review && { ...review, isOverdue: review.date < today }
}
