/** A player's season opened and saved. */

import type { InputOf, OutputOf } from '../../../shared/contract.ts'
import { dayHere } from '../../../shared/desk/workplace/local-day.ts'
import { isAdultOn } from '../../../shared/engine/facts/age.ts'
import { present } from '../../../shared/engine/plain/present.ts'
import { openProtocol, type ProtocolFile } from '../../../shared/engine/protocol/protocol.ts'
import { patternFromPlay } from '../../../shared/engine/season/from-play.ts'
import type { Plan } from '../../../shared/engine/season/plan-file.ts'
import { lettersOf } from '../../../shared/engine/season/problem/letters.ts'
import type { Season } from '../../../shared/engine/visit/visit.ts'
import { fullName } from '../../../shared/engine/words/names.ts'
import { state } from '../../../shared/engine/words/statement.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { Refusal, refusedEntry } from '../records/refusal.ts'
import { type Basis, basisDigest, basisOf, firstDay, stopped } from './basis.ts'
import { type KeptPlan, keepNext, lastPlan, lastRecord, lastSeason } from './records.ts'

type Opened = OutputOf<'season.open'>

/** The pairs of a visit with their letters, those that cannot be planned last. */
function pairsOf({ visit }: Basis, before: Plan | undefined): Opened['pairs'] {
	const all = [...(visit.footwear ?? [])].sort((left, right) => (left.id < right.id ? -1 : 1))
	const letters = lettersOf(all, before?.pairs)
	return [
		...all.filter((pair) => pair.sole !== undefined),
		...all.filter((pair) => pair.sole === undefined),
	].map(({ id, name, sole }) =>
		present({
			id,
			letter: letters.get(id) ?? '?',
			name: name ?? `pair ${letters.get(id)}`,
			sole,
		}),
	)
}
const plannedOf = (
	{ value, at, version }: KeptPlan,
	basis: Basis | undefined,
): Opened['planned'] => ({
	plan: value.plan,
	changes: value.changes,
	at,
	version,
	season: value.season,
	basisChanged: !basis || value.basis !== basisDigest(basis),
})
/** What stops the rotation, without what only the plan's findings need. */
function blockedOf(basis: Basis, protocol: ProtocolFile): Opened['blocked'] {
	const said = stopped(basis, protocol)
	return said && { code: said.code, params: { ...said.params }, says: said.says }
}
/** The weekly pattern that play suggests; undefined where one was entered. */
function offeredOf({ visit }: Basis, season: Season | undefined, file: ProtocolFile) {
	return (season?.pattern ?? []).length > 0 ? undefined : patternFromPlay(visit, openProtocol(file))
}
/** @throws Refusal where the player is not in the records or was merged away */
export function openSeason(
	memory: Pick<Memory, 'clinic' | 'drafts' | 'players' | 'season'>,
	deps: Deps,
	{ playerId }: InputOf<'season.open'>,
): Opened {
	const { clinic, players, season } = memory
	const { player } = players.entry(playerId)
	const basis = basisOf(memory, deps, playerId)
	const saved = lastSeason(players, deps, playerId)
	const planned = lastPlan(players, deps, playerId)
	const day = basis?.visit.visitDate ?? dayHere(deps.now())
	return present({
		name: fullName(player),
		from: firstDay(deps, basis),
		pairs: basis ? pairsOf(basis, planned?.value.plan) : [],
		running: season.isPlanning(playerId),
		young: !isAdultOn(player.birthDate, day, openProtocol(clinic.protocol)),
		season: saved?.season ?? basis?.visit.season,
		savedAs: saved?.record,
		basis: basis && { from: basis.from, visitDate: basis.visit.visitDate },
		fromPlay: basis && offeredOf(basis, saved?.season ?? basis.visit.season, clinic.protocol),
		blocked: basis && blockedOf(basis, clinic.protocol),
		planned: planned && plannedOf(planned, basis),
	})
}

/** @throws Refusal where it ends before it begins */
function checkDays({ from, to }: Season): void {
	if (to >= from) return
	throw new Refusal('season.ends-before-it-begins', state('season.ends-before-it-begins'), [
		refusedEntry('season.to', state('season.day-too-early', { given: to, earliest: from })),
	])
}
/** @throws Refusal where an exception ends before it begins */
function checkExceptions({ exceptions = [] }: Season): void {
	for (const [index, { from, to }] of exceptions.entries())
		if (to !== undefined && to < from)
			throw new Refusal(
				'season.exception-ends-before',
				state('season.exception-ends-before-it-begins'),
				[
					refusedEntry(
						`season.exceptions.${index}.to`,
						state('season.day-too-early', { given: to, earliest: from }),
					),
				],
			)
}
/** @throws Refusal where two rows of the weekly pattern have the same id */
function checkPattern({ pattern = [] }: Season): void {
	const ids = pattern.map((row) => row.id)
	const twice = ids.find((id, index) => ids.indexOf(id) !== index)
	if (twice === undefined) return
	throw new Refusal('season.pattern-twice', state('season.pattern-twice'), [
		refusedEntry('season.pattern', state('season.id-twice', { given: twice })),
	])
}
/**
 * @throws Refusal where the season was saved elsewhere since it was opened, or ends before it
 * begins
 */
export function saveSeason(
	{ players }: Pick<Memory, 'players'>,
	deps: Deps,
	{ playerId, season, follows }: InputOf<'season.save'>,
): OutputOf<'season.save'> {
	players.entry(playerId)
	const last = lastRecord(players, deps, playerId, 'season')
	if (follows !== last)
		throw new Refusal('season.changed-elsewhere', state('season.changed-elsewhere'))
	checkDays(season)
	checkExceptions(season)
	checkPattern(season)
	return {
		savedAs: keepNext(deps, { what: 'season', playerId, season }, last),
	}
}
