/** What each player is due for, and referrals that nobody has heard from, after the answers. */

import { duesOfSeason } from '../../../shared/desk/recall/due.ts'
import { keyOf } from '../../../shared/desk/recall/item.ts'
import type { DueLine } from '../../../shared/desk/recall/lines.ts'
import { type FollowUp, type NotHeard, notHeard } from '../../../shared/desk/recall/referral.ts'
import { standingOf } from '../../../shared/desk/recall/standing.ts'
import { dayHere } from '../../../shared/desk/workplace/local-day.ts'
import { ageYears } from '../../../shared/engine/visit/age.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { Refusal } from '../records/refusal.ts'
import { lastRecord } from '../season/records.ts'
import { type VisitLine, visitsOf } from '../visits/visits.ts'
import { planAsks, type VisitAsks, visitAsks } from './reading.ts'

export type RecallNeeds = Pick<
	Memory,
	'clinic' | 'outbox' | 'outreach' | 'people' | 'players' | 'recall'
>

/** A player with what the records say, before anybody's rights are looked at. */
export interface Gathered extends DueLine {
	newest: { line: VisitLine; asks: VisitAsks } | undefined
	referral: NotHeard | undefined
	/** in words, naming the player */
	troubles: string[]
}
/** What a look at one player asks for besides the records. */
interface Looking {
	today: string
	answers: ReturnType<RecallNeeds['recall']['answersByPlayer']>
	followUps: ReturnType<RecallNeeds['recall']['followUpsByPlayer']>
}
const lookingOf = ({ recall }: RecallNeeds, deps: Deps): Looking => ({
	today: dayHere(deps.now()),
	answers: recall.answersByPlayer(),
	followUps: recall.followUpsByPlayer(),
})
function gather(memory: RecallNeeds, deps: Deps, playerId: string, looking: Looking): Gathered {
	const { players, clinic } = memory
	const { player } = players.entry(playerId)
	const ids = players.idsOf(playerId)
	// visits entered in error ask for nothing; newest first
	const lines = visitsOf(players, deps, playerId).filter(({ inError }) => !inError)
	const read = lines.map((line) => ({ line, asks: visitAsks(memory, deps, line) }))
	const named = (says: string): string => `${players.nameOf(playerId)}: ${says}`
	const troubles = read.flatMap(({ asks }) => (typeof asks === 'string' ? [named(asks)] : []))
	const [first] = read
	// where the newest cannot be read, what an older one asked for may be over
	const newest =
		first && typeof first.asks !== 'string' ? { line: first.line, asks: first.asks } : undefined
	const season = seasonDues(memory, deps, playerId, newest)
	if (typeof season === 'string') troubles.push(named(season))
	const answers = new Map(
		ids
			.flatMap((id) => looking.answers.get(id) ?? [])
			.map((record) => [keyOf(record.item), record] as const),
	)
	const dues = [...(newest?.asks.dues ?? []), ...(typeof season === 'string' ? [] : season)]
	return {
		playerId,
		club: player.club,
		isMinor: ageYears(player.birthDate, looking.today) < clinic.settings.ages.adultYears,
		clinician: newest?.asks.signedBy ?? '',
		items: standingOf(dues, answers, looking.today),
		newest,
		referral: notHeard(
			read.flatMap(({ asks }) => (typeof asks === 'string' ? [] : [asks.referred])).reverse(),
			writtenAbout(ids, looking),
			looking.today,
		),
		troubles,
	}
}
/** Of a player with several ids, in order of writing. */
const writtenAbout = (ids: readonly string[], { followUps }: Looking): FollowUp[] =>
	ids
		.flatMap((id) => followUps.get(id) ?? [])
		.toSorted((one, other) => one.at.localeCompare(other.at))

/** What the season asks for, or why its plan cannot be read. */
function seasonDues(
	memory: RecallNeeds,
	deps: Deps,
	playerId: string,
	newest: Gathered['newest'],
): ReturnType<typeof duesOfSeason> | string {
	const record = lastRecord(memory.players, deps, playerId, 'plan')
	if (record === undefined) return []
	const plan = planAsks(memory, deps, record)
	if (typeof plan === 'string') return plan
	const asks = newest?.asks
	return duesOfSeason(
		{
			record,
			to: plan.to,
			isUpToDate: asks === undefined || plan.at >= asks.signedAt || plan.basis === asks.basis,
			isHeld: asks?.holdsSeason ?? false,
		},
		newest?.line.card.visitDate,
	)
}
/** How long one look may keep other calls waiting, ms: a choice of this program. */
const lookMs = 25
const rest = (): Promise<void> => new Promise((done) => setImmediate(done))

/** @throws Refusal where the records were locked meanwhile, or another person took over */
export async function gatherAll(memory: RecallNeeds, deps: Deps): Promise<Gathered[]> {
	const { players, people } = memory
	const looking = lookingOf(memory, deps)
	const person = people.acts()
	const found: Gathered[] = []
	let since = performance.now()
	for (const { card } of players.ordered()) {
		found.push(gather(memory, deps, card.playerId, looking))
		if (performance.now() - since < lookMs) continue
		await rest()
		since = performance.now()
		if (!deps.store.isOpen || people.atWork !== person)
			throw new Refusal('people.locked', 'The records are locked. Unlock them first.')
	}
	return found
}
/** One player. @throws Refusal where there is none */
export const gatherOne = (memory: RecallNeeds, deps: Deps, playerId: string): Gathered =>
	gather(memory, deps, memory.players.rootOf(playerId), lookingOf(memory, deps))
