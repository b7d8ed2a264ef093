/**
 * Answers about what is due, and notes on referrals, that come home: they may end what somebody is
 * waited for, so only who may write them does, about the player's own visits.
 */
import { contract } from '../../../shared/contract.ts'
import type { Carried } from '../../../shared/desk/outreach/carried.ts'
import { mayAnswer, recallRecordSchema } from '../../../shared/desk/recall/answer.ts'
import { followUpSchema } from '../../../shared/desk/recall/referral.ts'
import type { StaffRole } from '../../../shared/desk/records/people.ts'
import type { Role } from '../../../shared/desk/workplace/call.ts'
import type { Arrival } from './arrival.ts'
import type { Trouble } from './check-record.ts'

const refused = (because: string): Trouble => ({ outcome: 'refused', because })

/** Whether what stands here under this name is a record of the player; what is not here is nobody's. */
function isTheirs(
	{ memory: { players }, deps: { store } }: Arrival,
	about: string,
	kind: 'visit' | 'season',
	records: readonly string[],
): boolean {
	const own = players.byId.has(about) ? players.idsOf(players.rootOf(about)) : [about]
	const theirs = new Set(own.flatMap((id) => store.cardsAbout(kind, id).map((card) => card.record)))
	return records.every((id) => theirs.has(id))
}
const versions = ({ deps: { store } }: Arrival, visitId: string): string[] =>
	store.cardsOf('visit', visitId).map(({ record }) => record)
const isBy = (
	{ memory: { people } }: Arrival,
	by: string,
	may: (role: StaffRole) => boolean,
): boolean => people.all().some(({ active, name, role }) => active && name === by && may(role))

export function recallTrouble(arrival: Arrival, { value, about = '' }: Carried) {
	const recall = recallRecordSchema.safeParse(value).data
	if (!recall) return refused('is no answer about what is due')
	const { item, answer, by } = recall
	const isSeason = item.kind === 'season'
	const records = isSeason ? [item.from] : versions(arrival, item.from)
	if (!isTheirs(arrival, about, isSeason ? 'season' : 'visit', records))
		return refused('is about what another player is due for')
	return isBy(arrival, by, (role) => mayAnswer(role, item, answer))
		? undefined
		: refused(`was written by ${by}, who is not here one who may answer so`)
}
export function followUpTrouble(arrival: Arrival, { value, about = '' }: Carried) {
	const note = followUpSchema.safeParse(value).data
	if (!note) return refused('is no note on a referral')
	const records = note.visitIds.flatMap((id) => versions(arrival, id))
	if (!isTheirs(arrival, about, 'visit', records))
		return refused('is about visits of another player')
	const who: readonly Role[] = contract['recall.followUp'].who
	return isBy(arrival, note.by, (role) => who.includes(role))
		? undefined
		: refused(`was written by ${note.by}, who is not here one who may write it`)
}
