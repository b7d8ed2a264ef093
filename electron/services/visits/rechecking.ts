/** What a re-check begins with: what the last signed visit of the player makes worth asking. */
import type { SignedVisit } from '../../../shared/contract.ts'
import type { KeptAssessment } from '../../../shared/engine/findings/assessment.ts'
import { openProtocol } from '../../../shared/engine/protocol/protocol.ts'
import type { LastVisit } from '../../../shared/engine/recheck/asked.ts'
import { beginRecheck } from '../../../shared/engine/recheck/begin.ts'
import { insertAfter } from '../../../shared/engine/recheck/insert-worn.ts'
import type { Visit } from '../../../shared/engine/visit/visit.ts'
import { dateWords } from '../../../shared/engine/words/words.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { Refusal } from '../records/refusal.ts'
import { readVisit, tryVisit } from './reading.ts'
import { visitsOf } from './visits.ts'

/**
 * @throws Refusal where no signed visit stands before the day, or the last one cannot be read: an
 * older one would ask about another plan
 */
export function recheckParts(
	{ clinic, players }: Pick<Memory, 'clinic' | 'players'>,
	deps: Deps,
	{ playerId, visitDate }: { playerId: string; visitDate: string },
): Pick<Visit, 'since' | 'conditions' | 'footwear' | 'insertWorn'> {
	const last = visitsOf(players, deps, playerId).find(({ inError }) => !inError)
	if (!last)
		throw new Refusal(
			'visits.nothing-to-recheck',
			'A re-check looks back to a signed visit, and none of this player is signed. Start an ' +
				'assessment instead.',
		)
	if (last.card.visitDate >= visitDate)
		throw new Refusal(
			'visits.nothing-to-recheck',
			`A re-check of ${dateWords(visitDate)} looks back to a visit before that day, and the last ` +
				`signed visit is of ${dateWords(last.card.visitDate)}. Amend that visit instead.`,
		)
	return beginRecheck(signedPlan(readVisit(deps, last)), visitDate, openProtocol(clinic.protocol))
}
/** The engine's own output, kept as data. */
const signedPlan = ({ visit, assessment, decisions }: SignedVisit): LastVisit => ({
	visit,
	assessment: assessment as KeptAssessment,
	decisions,
})
/**
 * The insert of ours that a player comes with to an assessment; none where the last signed visit
 * cannot be read or is not before the day.
 */
export function insertParts(
	{ clinic, players }: Pick<Memory, 'clinic' | 'players'>,
	deps: Deps,
	{ playerId, visitDate }: { playerId: string; visitDate: string },
): Pick<Visit, 'insertWorn'> {
	const last = visitsOf(players, deps, playerId).find(({ inError }) => !inError)
	const read = last && last.card.visitDate < visitDate ? tryVisit(deps, last) : undefined
	if (!read || 'trouble' in read) return {}
	const insertWorn = insertAfter(signedPlan(read.visit), openProtocol(clinic.protocol))
	return insertWorn ? { insertWorn } : {}
}
