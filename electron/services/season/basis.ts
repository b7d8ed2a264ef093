/** What a plan rests on: pairs and findings of the open draft, else of the latest signed visit. */
import { dayHere } from '../../../shared/desk/workplace/local-day.ts'
import { assess } from '../../../shared/engine/assess.ts'
import { stillBlocked } from '../../../shared/engine/insert/decided.ts'
import { digestOf } from '../../../shared/engine/plain/canonical.ts'
import type { ProtocolFile } from '../../../shared/engine/protocol/protocol.ts'
import { insertDecided } from '../../../shared/engine/report/decided.ts'
import { stopOf } from '../../../shared/engine/season/problem/limits.ts'
import type { Decisions } from '../../../shared/engine/visit/decisions.ts'
import type { Visit } from '../../../shared/engine/visit/visit.ts'
import { type Statement, state } from '../../../shared/engine/words/statement.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { Refusal } from '../records/refusal.ts'
import { openKeptDraft } from '../visits/kept-draft.ts'
import { readVisit } from '../visits/reading.ts'
import { earlierVisits, visitsOf } from '../visits/visits.ts'

type Needs = Pick<Memory, 'players' | 'drafts'>

export interface Basis {
	from: 'draft' | 'visit'
	visit: Visit
	decisions: Decisions
	earlier: Visit[]
}
function openDraft({ players, drafts }: Needs, deps: Deps, playerId: string): Basis | undefined {
	const [open] = drafts.of(players.idsOf(playerId))
	if (!open) return undefined
	const [draftId, { amends }] = open
	const draft = openKeptDraft(deps, draftId)
	if (!draft) return undefined
	const { visit, decisions } = draft.content
	return {
		from: 'draft',
		visit: { ...visit, player: players.entry(playerId).player },
		decisions,
		earlier: earlierVisits(players, deps, playerId, amends?.visitId).visits,
	}
}
function latestSigned(
	{ players }: Pick<Needs, 'players'>,
	deps: Deps,
	playerId: string,
): Basis | undefined {
	const latest = visitsOf(players, deps, playerId).find((line) => !line.inError)
	if (!latest) return undefined
	const { visit, decisions } = readVisit(deps, latest)
	return {
		from: 'visit',
		visit: { ...visit, player: players.entry(playerId).player },
		decisions,
		earlier: earlierVisits(players, deps, playerId, latest.card.visitId).visits,
	}
}
/**
 * Undefined where the player has no assessment yet.
 * @throws Refusal where the player is not in the records or was merged away
 */
export function basisOf(memory: Needs, deps: Deps, playerId: string): Basis | undefined {
	memory.players.entry(playerId)
	if (memory.players.mergedAway(playerId))
		throw new Refusal('players.merged-into-another', state('season.merged-away'))
	return openDraft(memory, deps, playerId) ?? latestSigned(memory, deps, playerId)
}
/** @throws Refusal where the player has no assessment yet, is unknown or was merged away */
export function needBasis(memory: Needs, deps: Deps, playerId: string): Basis {
	const basis = basisOf(memory, deps, playerId)
	if (!basis) throw new Refusal('season.no-assessment', state('season.no-assessment'))
	return basis
}
/** What of a visit a plan rests on: when it changes, the plan is out of date. */
export const basisDigest = ({ visit, decisions }: Pick<Basis, 'visit' | 'decisions'>): string =>
	digestOf(
		JSON.parse(
			JSON.stringify({
				footwear: visit.footwear ?? [],
				feet: visit.feet ?? {},
				conditions: visit.conditions ?? [],
				body: visit.body ?? {},
				insert: insertDecided(decisions),
			}),
		),
	)
/** Why no rotation may be given out, or undefined where one may. */
export function stopped(
	{ visit, decisions, earlier, from }: Basis,
	protocol: ProtocolFile,
): Statement | undefined {
	const assessment = assess(visit, earlier, protocol)
	const { screening } = assessment
	const sides = stillBlocked(assessment, decisions)
	if (sides.length === 0) return stopOf(visit)
	const ids = new Set(sides.flatMap((side) => screening.blockedBy[side]))
	const signs = screening.items.filter((item) => ids.has(item.id))
	return state('season.stopped-by-sign', {
		sides,
		items: signs.map(({ id }) => id),
		signs: signs.map(({ says }) => says),
		isSigned: from === 'visit',
	})
}
/**
 * Sessions before this day are the past unless the person says otherwise: today, or the visit where
 * it lies ahead.
 */
export function firstDay(deps: Deps, basis: Basis | undefined): string {
	const today = dayHere(deps.now())
	return basis && basis.visit.visitDate > today ? basis.visit.visitDate : today
}
