/** The two summaries of a screening day: the clinician's and the club's. */
import type { InputOf, OutputOf, SignedVisit } from '../../../shared/contract.ts'
import { dayHere } from '../../../shared/desk/workplace/local-day.ts'
import { assess } from '../../../shared/engine/assess.ts'
import { present } from '../../../shared/engine/plain/present.ts'
import { clubFields } from '../../../shared/engine/report/club.ts'
import type { LwDocument } from '../../../shared/engine/report/document.ts'
import { keptDigest, keptForm } from '../../../shared/engine/report/kept/keep.ts'
import type { SquadMember } from '../../../shared/engine/report/squad/member.ts'
import { squadForClinician } from '../../../shared/engine/report/squad.ts'
import { squadForClub } from '../../../shared/engine/report/squad-for-club.ts'
import { noDecisions } from '../../../shared/engine/visit/decisions.ts'
import type { Visit } from '../../../shared/engine/visit/visit.ts'
import { clubConsentOf } from '../people/club-consent.ts'
import { checkConsent, listConsents } from '../people/consents.ts'
import { assessmentOf } from '../records/assessment.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { Refusal } from '../records/refusal.ts'
import { planThen } from '../season/standing.ts'
import { signedInput } from '../visits/composing.ts'
import { draw, pdfOf } from '../visits/drawing.ts'
import { givenOfSquad, keepGiven } from '../visits/given.ts'
import { pageOf } from '../visits/page.ts'
import { letterheadFor } from '../visits/signing.ts'
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
function forClub(memory: Needs, deps: Deps, { squadId, team }: Board): Summary {
	const on = dayHere(deps.now())
	const signers = new Set<string>()
	const leftOut: string[] = []
	const fields = signedRows(memory, deps, squadId).flatMap((row) => {
		const answer = checkConsent(memory, deps, row.playerId, 'squad-summary', '')
		if (!answer.inForce || answer.consentId === undefined) {
			leftOut.push(`${row.name}: ${answer.because}`)
			return []
		}
		const read = orTrouble(() => forClubOf(memory, deps, row.visitId))
		if ('trouble' in read) {
			leftOut.push(`${row.name}: ${read.trouble}`)
			return []
		}
		const { consents } = listConsents(memory, deps, { playerId: row.playerId })
		const given = consents.find(({ consentId }) => consentId === answer.consentId)
		signers.add(read.value.signer)
		const adds = present({ on, purpose: 'squad-club' as const, plan: read.value.plan })
		return [clubFields(read.value.member, clubConsentOf(given, 'squad-club'), adds)]
	})
	const frame = { clinic: letterheadFor(memory), on, team, draft: false }
	return { document: squadForClub(fields, frame, [...signers]), leftOut }
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
	const frame = { clinic: letterheadFor(memory), on, team: board.team, draft: false }
	return { document: squadForClinician(members, frame), leftOut }
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
/** A signed visit for the sheet of the club: who signed it, and the plan of the season that stands. */
function forClubOf(memory: Needs, deps: Deps, visitId: string) {
	const signed = openVisit(deps, { visitId })
	const member = memberOf(signed)
	const input = signedInput(memory, deps, signed)
	return {
		member,
		signer: signed.signedBy.name,
		plan: planThen(memory, deps, signed.playerId, input)?.plan,
	}
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
