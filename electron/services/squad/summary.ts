/** The two summaries of a screening day: the clinician's and the club's. */
import type { InputOf, OutputOf, SignedVisit } from '../../../shared/contract.ts'
import { dayHere } from '../../../shared/desk/workplace/local-day.ts'
import { assess } from '../../../shared/engine/assess.ts'
import { clubFields } from '../../../shared/engine/report/club.ts'
import type { LwDocument } from '../../../shared/engine/report/document.ts'
import { keptDigest, keptForm } from '../../../shared/engine/report/kept/keep.ts'
import { type SquadMember, squadForClinician } from '../../../shared/engine/report/squad.ts'
import { squadForClub } from '../../../shared/engine/report/squad-for-club.ts'
import { noDecisions } from '../../../shared/engine/visit/decisions.ts'
import type { Visit } from '../../../shared/engine/visit/visit.ts'
import { checkConsent } from '../people/consents.ts'
import { assessmentOf } from '../records/assessment.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { Refusal } from '../records/refusal.ts'
import { draw, pdfOf } from '../visits/drawing.ts'
import { givenOfSquad, keepGiven } from '../visits/given.ts'
import { pageOf } from '../visits/page.ts'
import { openVisit } from '../visits/visits.ts'
import { type BoardNeeds, openSquad, signedRows } from './board.ts'

type Needs = BoardNeeds & Pick<Memory, 'clinic' | 'outreach' | 'people'>
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
	const { document, leftOut, fileName } = summaryOf(memory, deps, { squadId, version })
	const bytes = await pagesOf(memory, deps, squadId, document)
	return { pdf: pdfOf(bytes, fileName), leftOut }
}
/** The same as one accessible page; what was given out is kept with its bytes, as its PDF is. */
export async function summaryPage(
	memory: Needs,
	deps: Deps,
	{ squadId, version }: InputOf<'squad.summaryPage'>,
): Promise<OutputOf<'squad.summaryPage'>> {
	const { document, leftOut, fileName } = summaryOf(memory, deps, { squadId, version })
	await pagesOf(memory, deps, squadId, document)
	return { page: pageOf(document, fileName), leftOut }
}
function summaryOf(
	memory: Needs,
	deps: Deps,
	{ squadId, version }: InputOf<'squad.summary'>,
): Summary & { fileName: string } {
	memory.clinic.needLetterhead()
	const board = openSquad(memory, deps, { squadId })
	const summary =
		version === 'club' ? forClub(memory, deps, board) : forClinician(memory, deps, board)
	return { ...summary, fileName: `squad-${board.day}-${version}.pdf` }
}
/** A summary that says the same as one that was given out is that one; a new one is kept. */
async function pagesOf(
	memory: Pick<Memory, 'people'>,
	deps: Deps,
	squadId: string,
	document: LwDocument,
): Promise<Uint8Array> {
	const wanted = { kind: 'squad' as const, from: keptDigest(keptForm(document)) }
	const before = givenOfSquad(deps, squadId, wanted)
	if (before) return before.bytes
	const bytes = await draw(deps, document)
	keepGiven(memory, deps, { ...wanted, squadId, version: 1, document, bytes })
	return bytes
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
		const read = orTrouble(() => memberOf(openVisit(deps, { visitId: row.visitId })))
		if ('trouble' in read) {
			leftOut.push(`${row.name}: ${read.trouble}`)
			return []
		}
		const consent = {
			id: answer.consentId.slice(0, 8),
			purpose: 'squad-club' as const,
			decision: 'permit' as const,
			given: day < on ? day : on,
			...(answer.expires && { until: answer.expires }),
		}
		return [clubFields(read.value, consent, { on, purpose: 'squad-club' })]
	})
	return { document: squadForClub(fields, memory.clinic.needLetterhead(), on, team), leftOut }
}
function forClinician(memory: Needs, deps: Deps, board: Board): Summary {
	const on = dayHere(deps.now())
	const leftOut: string[] = []
	const members = board.rows.flatMap((row): SquadMember[] => {
		const { signedVisitId: visitId } = row
		if (visitId) {
			const read = orTrouble(() => memberOf(openVisit(deps, { visitId })))
			if ('value' in read) return [read.value]
			leftOut.push(`${row.name}: ${read.trouble}`)
			return []
		}
		if (row.state === 'absent' || row.state === 'refused')
			return [{ ...unseenMember(memory, board, row.playerId), state: row.state }]
		leftOut.push(`${row.name}: not signed yet.`)
		return []
	})
	const letterhead = memory.clinic.needLetterhead()
	return { document: squadForClinician(members, letterhead, on, board.team), leftOut }
}
/** What is read of one player, or why it cannot be: the others stand in the summary all the same. */
function orTrouble<Value>(read: () => Value): { value: Value } | { trouble: string } {
	try {
		return { value: read() }
	} catch (error) {
		if (error instanceof Refusal) return { trouble: error.message }
		throw error
	}
}
const memberOf = (signed: SignedVisit): SquadMember => ({
	visit: signed.visit,
	assessment: assessmentOf(signed),
	decisions: signed.decisions,
})
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
