/** A player's details and what stands on the player's page. */
import { randomUUID } from 'node:crypto'
import type { InputOf, OutputOf } from '../../../shared/contract.ts'
import type { PlayerValue } from '../../../shared/desk/players/player-record.ts'
import { clinicians } from '../../../shared/desk/workplace/call.ts'
import { dayHere } from '../../../shared/desk/workplace/local-day.ts'
import { ageYears } from '../../../shared/engine/visit/age.ts'
import { birthProblems } from '../../../shared/engine/visit/birth.ts'
import { nameProblems, tidyPlayer } from '../../../shared/engine/visit/names.ts'
import type { Player } from '../../../shared/engine/visit/visit.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { Refusal } from '../records/refusal.ts'
import { type VisitLine, visitsOf } from '../visits/visits.ts'
import type { PlayersMemory } from './memory.ts'
import { likeness } from './names.ts'
import { cardOf } from './search.ts'
import { forgetTyped } from './typed.ts'

/** Players that are pointed out as similar at once: a choice of this program. */
const mostSimilar = 20

/**
 * A save is a new record that follows the last one. Likely duplicates and twins are pointed out,
 * never merged.
 */
export function savePlayer(
	memory: Pick<Memory, 'clinic' | 'players' | 'drafts' | 'people'>,
	deps: Deps,
	{ playerId, player }: InputOf<'players.save'>,
): OutputOf<'players.save'> {
	const { players } = memory
	const known = playerId === undefined ? undefined : players.entry(playerId)
	const tidy = tidyPlayer(player)
	refuseImpossible(tidy, dayHere(deps.now()))
	if (known) refuseOtherAge(memory, deps, known.player, tidy)
	const savedId = deps.store.together(() => {
		const id = keepPlayer(deps, { playerId, player: tidy, follows: known?.recordId })
		forgetTyped(memory, deps, playerId)
		return id
	})
	const own = players.entry(savedId).card
	const similar = players
		.ordered()
		.filter(({ card }) => card.playerId !== own.playerId && likeness(card, own) !== undefined)
		.slice(0, mostSimilar)
	return {
		playerId: savedId,
		similar: similar.map((entry) => cardOf(memory, deps, entry)),
	}
}
/** @throws Refusal naming each entry that cannot be, or that no page can print */
function refuseImpossible(player: Player, today: string): void {
	const problems = [
		...birthProblems(player.birthDate, today, 'player.birthDate'),
		...nameProblems(player),
	]
	if (problems.length > 0)
		throw new Refusal(
			'players.details-cannot-stand',
			'Some entries cannot stand. Nothing was changed.',
			problems,
		)
}
/**
 * The rules that protect a minor hang on the birth date: that of somebody who is a minor before or
 * after is changed by those who answer for the clinic. @throws Refusal for anybody else
 */
function refuseOtherAge(
	{ clinic, people }: Pick<Memory, 'clinic' | 'people'>,
	{ now }: Deps,
	before: Player,
	after: Player,
): void {
	if (before.birthDate === after.birthDate || clinicians.includes(people.acts().role)) return
	const { adultYears } = clinic.settings.ages
	const isMinor = ({ birthDate }: Player) => ageYears(birthDate, dayHere(now())) < adultYears
	if (!isMinor(before) && !isMinor(after)) return
	throw new Refusal(
		'players.birth-date-by-clinician',
		'The birth date of a minor is changed by a clinician. Nothing was changed.',
		[
			{
				path: 'player.birthDate',
				message:
					`given ${after.birthDate}, allowed: ${before.birthDate}, as it is on record; ask a ` +
					'clinician to correct it',
			},
		],
	)
}
/** Keeps the details of a player, of somebody new without an id. @returns the player's id */
export function keepPlayer(
	{ keep }: Deps,
	{ playerId = randomUUID(), player, follows }: Saved,
): string {
	const value: PlayerValue = { playerId, player }
	keep({ kind: 'player', follows, value, about: playerId })
	return playerId
}
interface Saved {
	playerId?: string | undefined
	player: Player
	/** the record of the details so far */
	follows?: string | undefined
}
export function openPlayer(
	{ players, drafts }: Pick<Memory, 'players' | 'drafts'>,
	deps: Deps,
	{ playerId }: InputOf<'players.open'>,
): OutputOf<'players.open'> {
	const { player } = players.entry(playerId)
	const merged = mergedInto(players, playerId)
	const visits = visitsOf(players, deps, playerId)
	return {
		player,
		visits: visits.map(({ card, inError, awaits }) => ({
			visitId: card.visitId,
			visitDate: card.visitDate,
			signedAt: card.signedAt,
			...(card.version > 1 && { version: card.version }),
			...(inError && { inError }),
			...(awaits && { awaitsCountersign: true }),
		})),
		drafts: drafts.of(players.idsOf(playerId)).map(([draftId, { visitDate, savedAt, amends }]) => ({
			draftId,
			visitDate,
			savedAt,
			...amendedVisit(visits, amends?.visitId),
		})),
		...(merged.length > 0 && { merged }),
	}
}
function mergedInto(players: PlayersMemory, playerId: string) {
	return [...players.merges.values()]
		.filter((merge) => merge.into === playerId)
		.map(({ mergeId, from }) => ({
			mergeId,
			playerId: from,
			name: players.byId.has(from) ? players.nameOf(from) : 'a record that cannot be read',
		}))
}
/** Which visit a draft amends. Its reason may be clinical: it stays with those who treat. */
function amendedVisit(visits: readonly VisitLine[], visitId: string | undefined) {
	const card = visits.find((visit) => visit.card.visitId === visitId)?.card
	if (!card) return {}
	return { amends: { visitId: card.visitId, visitDate: card.visitDate, version: card.version } }
}
