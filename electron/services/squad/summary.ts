/** The two summaries of a screening day: the clinician's and the club's. */
import type { InputOf, OutputOf } from '../../../shared/contract.ts'
import { dayHere } from '../../../shared/desk/workplace/local-day.ts'
import { assess } from '../../../shared/engine/assess.ts'
import { clubFields } from '../../../shared/engine/report/club.ts'
import type { LwDocument } from '../../../shared/engine/report/document.ts'
import { type SquadMember, squadForClinician } from '../../../shared/engine/report/squad.ts'
import { squadForClub } from '../../../shared/engine/report/squad-for-club.ts'
import { noDecisions } from '../../../shared/engine/visit/decisions.ts'
import type { Visit } from '../../../shared/engine/visit/visit.ts'
import { checkConsent } from '../people/consents.ts'
import { assessmentOf } from '../records/assessment.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { pdfOf } from '../visits/drawing.ts'
import { openVisit } from '../visits/visits.ts'
import { type BoardNeeds, openSquad, signedRows } from './board.ts'

type Needs = BoardNeeds & Pick<Memory, 'clinic' | 'outreach'>
type Board = OutputOf<'squad.open'>
/** A summary, and who is not in it, each with the reason. */
interface Summary {
	document: LwDocument
	leftOut: string[]
}

/**
 * The club's version holds only players whose consent to the squad summary is in force now; the
 * clinician's holds all.
 */
export async function squadSummary(
	memory: Needs,
	deps: Deps,
	{ squadId, version }: InputOf<'squad.summary'>,
): Promise<OutputOf<'squad.summary'>> {
	memory.clinic.needLetterhead()
	const board = openSquad(memory, deps, { squadId })
	const { document, leftOut } =
		version === 'club' ? forClub(memory, deps, board) : forClinician(memory, deps, board)
	const bytes = await deps.renderPdf(document)
	return { pdf: pdfOf(bytes, `squad-${board.day}-${version}.pdf`), leftOut }
}
function forClub(memory: Needs, deps: Deps, { squadId, day, team }: Board): Summary {
	const on = dayHere(deps.now())
	const leftOut: string[] = []
	const fields = signedRows(memory, deps, squadId).flatMap((row) => {
		const answer = checkConsent(memory, deps, row.playerId, 'squad-summary', '')
		if (!answer.inForce || answer.consentId === undefined) {
			leftOut.push(`${row.name}: ${answer.because}`)
			return []
		}
		const { visit, decisions } = openVisit(deps, { visitId: row.visitId })
		const consent = {
			id: answer.consentId.slice(0, 8),
			purpose: 'squad-club' as const,
			decision: 'permit' as const,
			given: day < on ? day : on,
			...(answer.expires && { until: answer.expires }),
		}
		return [clubFields(visit, decisions, consent, { on, purpose: 'squad-club' })]
	})
	return { document: squadForClub(fields, memory.clinic.needLetterhead(), on, team), leftOut }
}
function forClinician(memory: Needs, deps: Deps, board: Board): Summary {
	const on = dayHere(deps.now())
	const leftOut: string[] = []
	const members = board.rows.flatMap((row): SquadMember[] => {
		if (row.signedVisitId) return [signedMember(deps, row.signedVisitId)]
		if (row.state === 'absent' || row.state === 'refused')
			return [{ ...unseenMember(memory, board, row.playerId), state: row.state }]
		leftOut.push(`${row.name}: not signed yet.`)
		return []
	})
	const letterhead = memory.clinic.needLetterhead()
	return { document: squadForClinician(members, letterhead, on, board.team), leftOut }
}
function signedMember(deps: Deps, visitId: string): SquadMember {
	const signed = openVisit(deps, { visitId })
	return { visit: signed.visit, assessment: assessmentOf(signed), decisions: signed.decisions }
}
/** A player nobody assessed that day: an empty visit. */
function unseenMember({ players, clinic }: Needs, board: Board, playerId: string): SquadMember {
	const visit: Visit = {
		format: 'lastwright-visit',
		version: 1,
		player: players.entry(playerId).player,
		visitDate: board.day,
		screening: {},
	}
	return { visit, assessment: assess(visit, [], clinic.protocol), decisions: noDecisions }
}
