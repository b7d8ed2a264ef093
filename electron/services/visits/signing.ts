/** Signing: what is frozen, with the bytes and documents of its pages, in one transaction. */
import { randomUUID } from 'node:crypto'
import type { DraftContent, InputOf, OutputOf, SignedVisit } from '../../../shared/contract.ts'
import { dayHere } from '../../../shared/desk/workplace/local-day.ts'
import { assess } from '../../../shared/engine/assess.ts'
import type { Assessment } from '../../../shared/engine/findings/assessment.ts'
import { digestOf } from '../../../shared/engine/plain/canonical.ts'
import { need } from '../../../shared/engine/plain/need.ts'
import { openProtocol } from '../../../shared/engine/protocol/protocol.ts'
import type { Clinic } from '../../../shared/engine/report/clinic.ts'
import type { KindInput } from '../../../shared/engine/report/kinds.ts'
import { playerReport } from '../../../shared/engine/report/player.ts'
import { signingBlocks } from '../../../shared/engine/report/signing.ts'
import { nameProblems } from '../../../shared/engine/visit/names.ts'
import { parseVisit } from '../../../shared/engine/visit/parse.ts'
import type { Visit } from '../../../shared/engine/visit/visit.ts'
import type { PersonEntry } from '../people/memory.ts'
import { visitCard } from '../records/cards.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { Refusal } from '../records/refusal.ts'
import { planThen } from '../season/standing.ts'
import { draftToSign, knownDraft, needDraft } from './drafts.ts'
import { draw, pdfOf } from './drawing.ts'
import {
	type DrawnPage,
	drawAll,
	fileNameOf,
	furtherPages,
	reportCard,
	reportOf,
} from './freezing.ts'
import type { Amends } from './memory.ts'
import { revisionOf } from './put-draft.ts'
import { amendmentOf } from './reports.ts'
import { earlierVisits, latest } from './visits.ts'

/** What composing and signing a report look at. */
type Needs = Pick<Memory, 'clinic' | 'drafts' | 'people' | 'players' | 'shelf'>
/** Moment and day of signing. */
interface Moment {
	signedAt: string
	signedOn: string
}
/** A draft with all that its report is made of. */
interface Composed {
	playerId: string
	content: DraftContent
	clinic: Clinic
	visit: Visit
	assessment: Assessment
	/** what every page is composed from */
	input: KindInput
	amends: Amends | undefined
	/** the signed version that is amended */
	before: { record: string; visit: SignedVisit } | undefined
}

/** The letterhead with the name of whoever acts; the owner signs as the letterhead says. */
export function letterheadFor({ clinic, people }: Pick<Memory, 'clinic' | 'people'>): Clinic {
	const letterhead = clinic.needLetterhead()
	const person = people.acts()
	if (person.role === 'owner') return letterhead
	const unregistered = person.role === 'student' ? 'student, under supervision' : 'none'
	return {
		...letterhead,
		clinician: { name: person.name, registration: person.registration || unregistered },
	}
}
function compose(
	memory: Needs,
	deps: Deps,
	draftId: string,
	signing: Moment | undefined,
): Composed {
	const { players, shelf } = memory
	const { playerId, amends } = knownDraft(memory, draftId)
	const { content } = signing ? draftToSign(deps, draftId) : needDraft(deps, draftId)
	const clinic = letterheadFor(memory)
	const parsed = parseVisit({ ...content.visit, player: players.entry(playerId).player })
	if (!parsed.ok)
		throw new Refusal(
			'visits.entries-cannot-stand',
			'The visit has entries that cannot stand. Correct them first.',
			parsed.problems,
		)
	const visit = parsed.value
	const unprintable = nameProblems(visit.player)
	if (unprintable.length > 0)
		throw new Refusal(
			'visits.name-cannot-be-printed',
			'A name of this player cannot be printed. Put it right in the details of the player.',
			unprintable,
		)
	const { decisions } = content
	const { protocol } = memory.clinic
	const earlier = earlierVisits(players, deps, playerId, amends?.visitId)
	const assessment = assess(visit, earlier.visits, protocol, shelf.shelf)
	const before = amends && latest(deps, amends.visitId)
	const input: KindInput = {
		visit,
		assessment,
		decisions,
		clinic,
		...amendmentOf(before?.visit, { visit, decisions }),
		signedAt: signing?.signedAt,
		signedOn: signing?.signedOn,
		draft: signing === undefined,
		earlier: earlier.visits,
		lacking: earlier.lacking.length,
		protocol: openProtocol(protocol),
		on: signing?.signedOn ?? visit.visitDate,
	}
	return { playerId, content, clinic, visit, assessment, input, amends, before }
}
export async function previewDraft(
	memory: Needs,
	deps: Deps,
	{ draftId }: InputOf<'drafts.preview'>,
): Promise<OutputOf<'drafts.preview'>> {
	const { input, visit } = compose(memory, deps, draftId, undefined)
	return pdfOf(await draw(deps, playerReport(input)), `draft-${fileNameOf(visit)}`)
}
/**
 * Freezes visit, assessment, decisions and protocol, with bytes and document of every page that now
 * applies, in one transaction.
 */
export async function signVisit(
	memory: Needs,
	deps: Deps,
	{ draftId, revision }: InputOf<'visits.sign'>,
): Promise<OutputOf<'visits.sign'>> {
	const at = deps.now()
	const moment: Moment = { signedAt: at.toISOString(), signedOn: dayHere(at) }
	const composed = compose(memory, deps, draftId, moment)
	refuseUnseen(deps, draftId, revision)
	const person = memory.people.acts()
	refuseUnready(memory, composed)
	const pages = await drawWhileUnchanged(memory, deps, draftId, composed)
	const signed = freeze(composed, moment, person, pages)
	keepSigned(deps, composed, signed, pages, draftId)
	memory.drafts.drop(draftId, { how: 'signed', at: signed.signedAt, by: person.name })
	memory.players.visitsChanged(composed.playerId)
	return { visitId: signed.visitId }
}
/** @throws Refusal where others typed something that whoever signs was not shown */
function refuseUnseen(deps: Deps, draftId: string, revision: string | undefined): void {
	if (revision === undefined || revision === revisionOf(needDraft(deps, draftId))) return
	throw new Refusal(
		'visits.changed-meanwhile',
		'Something was typed into this visit in another window meanwhile. Nothing was signed: look it ' +
			'over and sign again.',
	)
}
/** @throws Refusal where entries are no values yet, or something stands undecided */
function refuseUnready(
	{ clinic }: Pick<Memory, 'clinic'>,
	{ content, assessment }: Composed,
): void {
	// every entry that is none is named by its field; the screen only counts them
	const unread = Object.entries(content.raw)
	if (unread.length > 0)
		throw new Refusal(
			'visits.not-yet-values',
			'Some fields hold text that is not a value yet. Correct or empty them before signing.',
			unread.map(([path, text]) => ({
				path,
				message: `not a value, given "${text}", allowed: a value, or nothing for not measured`,
			})),
		)
	const blocks = signingBlocks(content, assessment, openProtocol(clinic.protocol))
	if (blocks.length > 0)
		throw new Refusal(
			'visits.cannot-be-signed',
			'The visit cannot be signed yet.',
			blocks.map(({ path, says }) => ({ path, message: says })),
		)
}
/**
 * Draws the pages. While that goes on a second click may sign the draft, an entry may be saved
 * that these pages lack, or the person may change.
 * @throws Refusal where any of that happened
 */
async function drawWhileUnchanged(
	memory: Needs,
	deps: Deps,
	draftId: string,
	{ playerId, visit, input }: Composed,
): Promise<DrawnPage[]> {
	const asRead = knownDraft(memory, draftId)
	const person = memory.people.acts()
	const season = planThen(memory, deps, playerId, input)
	const report = { kind: 'player' as const, document: playerReport(input) }
	const pages = await drawAll(deps, visit, [report, ...furtherPages(input, season)])
	if (knownDraft(memory, draftId) !== asRead)
		throw new Refusal(
			'visits.changed-meanwhile',
			'The visit changed while its report was being drawn. Nothing was signed: look it over and ' +
				'sign again.',
		)
	if (memory.people.atWork !== person)
		throw new Refusal(
			'visits.taken-over',
			'Another person took over while the report was being drawn. Nothing was signed.',
		)
	return pages
}
function freeze(
	{ playerId, content, clinic, visit, assessment, amends, before }: Composed,
	{ signedAt, signedOn }: Moment,
	{ personId, role }: PersonEntry,
	pages: readonly DrawnPage[],
): SignedVisit {
	const frozen = {
		visitId: amends?.visitId ?? randomUUID(),
		playerId,
		signedAt,
		signedOn,
		signedBy: clinic.clinician,
		visit,
		assessment,
		decisions: content.decisions,
		protocol: assessment.protocol,
		clinic,
		signer: { personId, role },
		pages: pages.map(({ named }) => named),
		...(before &&
			amends && {
				version: (before.visit.version ?? 1) + 1,
				amends: { reason: amends.reason, digest: before.visit.digest },
			}),
	}
	const reportSha256 = need(pages[0], "the player's report").named.sha256
	return { ...frozen, digest: digestOf({ ...frozen, reportSha256 }), reportSha256 }
}
function keepSigned(
	{ store, keep }: Deps,
	{ playerId, amends, before }: Composed,
	signed: SignedVisit,
	pages: readonly DrawnPage[],
	draftId: string,
): void {
	const { visitId, signedAt } = signed
	store.together(() => {
		const visitRecord = keep({
			kind: 'visit',
			at: signedAt,
			follows: before?.record,
			value: signed,
			about: playerId,
			thing: visitId,
			card: visitCard(signed),
			does: amends ? 'amend' : 'sign',
		})
		const report = reportOf(visitId, pages)
		keep({
			kind: 'report',
			at: signedAt,
			follows: visitRecord,
			value: report,
			about: playerId,
			thing: visitId,
			card: reportCard(report),
			does: 'create',
		})
		store.dropDraft(draftId)
	})
}
