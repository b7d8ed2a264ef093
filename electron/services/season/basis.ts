/** What a plan rests on: pairs and findings of the open draft, else of the latest signed visit. */
import { dayHere } from '../../../shared/desk/workplace/local-day.ts'
import { assess } from '../../../shared/engine/assess.ts'
import type { KeptAssessment } from '../../../shared/engine/findings/assessment.ts'
import { digestOf } from '../../../shared/engine/plain/canonical.ts'
import { insertDecided } from '../../../shared/engine/prescription/insert-before.ts'
import { settledPlan } from '../../../shared/engine/prescription/settled.ts'
import type { ProtocolFile } from '../../../shared/engine/protocol/protocol.ts'
import { stopBefore } from '../../../shared/engine/season/problem/before.ts'
import { heldSeason } from '../../../shared/engine/season/problem/prescribed.ts'
import type { Decisions } from '../../../shared/engine/visit/decisions.ts'
import { bothSides } from '../../../shared/engine/visit/sides.ts'
import type { Side, Visit } from '../../../shared/engine/visit/visit.ts'
import { type Statement, state } from '../../../shared/engine/words/statement.ts'
import { assessmentOf } from '../records/assessment.ts'
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
	/** As the record of a signed visit keeps it; an open draft has none yet. */
	kept?: KeptAssessment
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
	const signed = readVisit(deps, latest)
	const { visit, decisions } = signed
	return {
		from: 'visit',
		visit: { ...visit, player: players.entry(playerId).player },
		decisions,
		earlier: earlierVisits(players, deps, playerId, latest.card.visitId).visits,
		kept: assessmentOf(signed),
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
/** Questions whose answers a plan of the season reads. */
const readQuestions: readonly string[] = ['gate', 'owned', 'insert', 'raise']
/** Records of before 0.4 have no prescription: what they decide is read as it was then. */
const isOfBefore = ({ kept }: Pick<Basis, 'kept'>): boolean =>
	kept !== undefined && kept.prescription === undefined
/** What of a visit a plan rests on: when it changes, the plan is out of date. */
export function basisDigest(basis: Pick<Basis, 'visit' | 'decisions' | 'kept'>): string {
	const { visit, decisions } = basis
	const planned = {
		screening: visit.screening ?? {},
		outcomes: visit.outcomes ?? [],
		answers: (decisions.answers ?? []).filter(({ question }) => readQuestions.includes(question)),
	}
	return digestOf(
		JSON.parse(
			JSON.stringify({
				footwear: visit.footwear ?? [],
				feet: visit.feet ?? {},
				conditions: visit.conditions ?? [],
				body: visit.body ?? {},
				insert: insertDecided(decisions),
				...(isOfBefore(basis) ? {} : planned),
			}),
		),
	)
}
/** The assessment of a basis: as it is kept, else worked out from the draft. */
export const assessmentAsKept = (
	{ visit, earlier, kept }: Basis,
	protocol: ProtocolFile,
): KeptAssessment => kept ?? assess(visit, earlier, protocol)
/** Limbs of a record of before 0.4 for which no act was recorded about a sign that stopped them. */
const waitingBefore = ({ screening }: KeptAssessment, { screeningDone = [] }: Decisions): Side[] =>
	bothSides.filter((side) => {
		const done = screeningDone.filter((one) => one.side === side).flatMap(({ items }) => items)
		return screening.blockedBy[side].some((id) => !done.includes(id))
	})
/** Why no rotation may be given out, or undefined where one may. */
export function stopped(basis: Basis, protocol: ProtocolFile): Statement | undefined {
	const assessment = assessmentAsKept(basis, protocol)
	const { visit, decisions } = basis
	if (assessment.prescription) return heldSeason(settledPlan(assessment, decisions))
	const { screening } = assessment
	const sides = waitingBefore(assessment, decisions)
	if (sides.length === 0) return stopBefore(visit)
	const ids = new Set(sides.flatMap((side) => screening.blockedBy[side]))
	const signs = screening.items.filter((item) => ids.has(item.id))
	return state('season.stopped-by-sign', {
		sides,
		items: signs.map(({ id }) => id),
		signs: signs.map(({ says }) => says),
		isSigned: true,
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
