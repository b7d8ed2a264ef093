/** The calls about who is due, and about referrals that nobody has heard from. */
import type { Handlers } from '../../calls/handlers.ts'
import type { OutboxNeeds } from '../outbox/needs.ts'
import type { Deps } from '../records/deps.ts'
import { answerDue } from './answering.ts'
import type { RecallNeeds } from './gather.ts'
import { listDue } from './list.ts'
import { followUp, listReferrals } from './referrals.ts'
import { remind } from './reminding.ts'

export const recallCalls = (memory: RecallNeeds & OutboxNeeds, deps: Deps) =>
	({
		'recall.list': (input) => listDue(memory, deps, input),
		'recall.answer': (input) => answerDue(memory, deps, input),
		'recall.referrals': () => listReferrals(memory, deps),
		'recall.followUp': (input) => followUp(memory, deps, input),
		'recall.remind': (input) => remind(memory, deps, input),
	}) satisfies Partial<Handlers>
