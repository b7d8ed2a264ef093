/** What is remembered of recall: answers of the desk, notes on referrals, and what records ask for. */
import type { RecallRecord } from '../../../shared/desk/recall/answer.ts'
import { keyOf } from '../../../shared/desk/recall/item.ts'
import type { FollowUp } from '../../../shared/desk/recall/referral.ts'
import { Newest, type Taken } from '../records/newest.ts'
import type { PlanAsks, VisitAsks } from './reading.ts'

export class RecallMemory {
	readonly #answers = new Newest<RecallRecord>()
	readonly #followUps = new Newest<FollowUp>()
	/** by the record of a version of a visit, which never changes; a sentence where it cannot be read */
	readonly visits = new Map<string, VisitAsks | string>()
	/** by the record of a plan */
	readonly plans = new Map<string, PlanAsks | string>()

	takeAnswer(taken: Taken<RecallRecord>): void {
		this.#answers.take(keyOf(taken.value.item), taken)
	}
	takeFollowUp(taken: Taken<FollowUp>): void {
		this.#followUps.take(taken.value.followUpId, taken)
	}
	/** The newest answer about each item, by player. */
	answersByPlayer(): Map<string, RecallRecord[]> {
		return Map.groupBy(this.#answers.all(), ({ playerId }) => playerId)
	}
	/** The notes on referrals in the common order, by player. */
	followUpsByPlayer(): Map<string, FollowUp[]> {
		const inOrder = this.#followUps.inOrder().map(({ value }) => value)
		return Map.groupBy(inOrder, ({ playerId }) => playerId)
	}
	forget(records: ReadonlySet<string>): void {
		this.#answers.forget(records)
		this.#followUps.forget(records)
		for (const record of records) {
			this.visits.delete(record)
			this.plans.delete(record)
		}
	}
	clear(): void {
		this.#answers.clear()
		this.#followUps.clear()
		this.visits.clear()
		this.plans.clear()
	}
}
