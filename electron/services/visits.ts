import { createHash, randomUUID } from 'node:crypto'
import { assess } from '../../shared/assess.ts'
import { digestOf } from '../../shared/canonical.ts'
import { type DraftContent, draftContentSchema, type InputOf, type OutputOf, type SignedVisit, signedVisitSchema } from '../../shared/contract.ts'
import { noDecisions } from '../../shared/decisions.ts'
import { playerReport } from '../../shared/report/player.ts'
import { parseVisit } from '../../shared/visit/parse.ts'
import type { Visit } from '../../shared/visit/visit.ts'
import { putVisit, type ReportValue } from './load.ts'
import { type Deps, type DraftValue, Refusal, type State } from './state.ts'

function signedVisit(state: State, { store }: Deps, visitId: string): SignedVisit {
	const recordId = state.visitRecord.get(visitId)
	if (recordId === undefined) throw new Refusal('This visit is not in the records.')
	return signedVisitSchema.parse(store.read(recordId).value)
}
export function earlierVisits(state: State, deps: Deps, playerId: string): Visit[] {
	return state.entry(playerId).visits.map(({ visitId }) => signedVisit(state, deps, visitId).visit)
}
export function openDraft(state: State, deps: Deps, { playerId, visitDate }: InputOf<'drafts.open'>): OutputOf<'drafts.open'> {
	const { player, card } = state.entry(playerId)
	const earlier = earlierVisits(state, deps, playerId)
	const open = [...state.drafts].find(([, draft]) => draft.playerId === playerId)
	if (open) {
		const draft = deps.store.draft(open[0])
		if (!draft) throw new Refusal('The draft is gone from the disk. Restore it from a backup.')
		return { draft: { draftId: open[0], playerId, savedAt: draft.at, content: draftContentSchema.parse((draft.value as DraftValue).content) }, earlier }
	}
	if (player.birthDate >= visitDate) throw new Refusal(`The birth date ${player.birthDate} is not before the visit date ${visitDate}. Correct the player's details first.`)
	const draftId = randomUUID()
	const content: DraftContent = { visit: { format: 'lastwright-visit', version: 1, player, visitDate, screening: {} }, raw: {}, decisions: noDecisions }
	const savedAt = deps.now().toISOString()
	deps.store.saveDraft(draftId, savedAt, { playerId, content })
	state.drafts.set(draftId, { playerId, visitDate, savedAt })
	card.openDraft = true
	return { draft: { draftId, playerId, savedAt, content }, earlier }
}
function knownDraft(state: State, draftId: string) {
	const draft = state.drafts.get(draftId)
	if (!draft) throw new Refusal('This draft is not open any more: the visit was signed, or opened elsewhere. Go back to the player.')
	return draft
}
export function saveDraft(state: State, { store, now }: Deps, { draftId, content }: InputOf<'drafts.save'>): OutputOf<'drafts.save'> {
	const { playerId } = knownDraft(state, draftId)
	const savedAt = now().toISOString()
	store.saveDraft(draftId, savedAt, { playerId, content })
	state.drafts.set(draftId, { playerId, visitDate: content.visit.visitDate, savedAt })
	return { savedAt }
}
/** A file name without clinical words: date and the first letters, never a diagnosis. */
const fileNameOf = (visit: Visit) => `report-${visit.visitDate}.pdf`
const sha256 = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest('hex')

function compose(state: State, deps: Deps, draftId: string, signedAt: string | undefined) {
	const { playerId } = knownDraft(state, draftId)
	const stored = deps.store.draft(draftId)
	if (!stored) throw new Refusal('The draft is gone from the disk. Restore it from a backup.')
	const content = draftContentSchema.parse((stored.value as DraftValue).content)
	const { clinic } = state
	if (!clinic) throw new Refusal('The clinic is not set up. Fill in the letterhead first.')
	const visit = { ...content.visit, player: state.entry(playerId).player }
	const parsed = parseVisit(visit)
	if (!parsed.ok) throw new Refusal('The visit has entries that cannot stand. Correct them first.', parsed.problems)
	const assessment = assess(parsed.value, earlierVisits(state, deps, playerId))
	const document = playerReport({ visit: parsed.value, assessment, decisions: content.decisions, clinic, signedAt, draft: signedAt === undefined })
	return { playerId, content, clinic, visit: parsed.value, assessment, document }
}
export async function previewDraft(state: State, deps: Deps, { draftId }: InputOf<'drafts.preview'>): Promise<OutputOf<'drafts.preview'>> {
	const { document, visit } = compose(state, deps, draftId, undefined)
	const bytes = await render(deps, document)
	return { base64: Buffer.from(bytes).toString('base64'), sha256: sha256(bytes), fileName: `draft-${fileNameOf(visit)}` }
}
async function render(deps: Deps, document: Parameters<Deps['renderPdf']>[0]): Promise<Uint8Array> {
	try {
		return await deps.renderPdf(document)
	} catch (error) {
		if (error instanceof Error && error.name === 'UnprintableText') throw new Refusal(error.message)
		throw error
	}
}
/** Freezes visit, assessment, decisions and protocol, with the report's bytes, in one transaction. */
export async function signVisit(state: State, deps: Deps, { draftId }: InputOf<'visits.sign'>): Promise<OutputOf<'visits.sign'>> {
	const signedAt = deps.now().toISOString()
	const { playerId, content, clinic, visit, assessment, document } = compose(state, deps, draftId, signedAt)
	const unread = Object.entries(content.raw)
	if (unread.length > 0) throw new Refusal('Some fields hold text that is not a value yet. Correct or empty them before signing.', unread.map(([path, text]) => ({ path, message: `not a value, given "${text}", allowed: a value, or nothing for not measured` })))
	if (content.decisions.consentNoted !== true) throw new Refusal('Consent is not noted. Tick it before signing.', [{ path: 'decisions.consentNoted', message: 'missing, given nothing, allowed: true once consent to assessment and record was given' }])
	const { action } = assessment.screening
	if (action !== 'proceed' && action !== 'letter' && !content.decisions.referralDone?.trim()) throw new Refusal('A warning sign asks for more than a letter. Write in Decide what was done about it before signing.', [{ path: 'decisions.referralDone', message: 'missing, given nothing, allowed: what was done and when' }])
	const asRead = knownDraft(state, draftId)
	const bytes = await render(deps, document)
	// while the page was being drawn a second click may have signed the draft, or an entry may have been saved that this report lacks
	if (knownDraft(state, draftId) !== asRead) throw new Refusal('The visit changed while its report was being drawn. Nothing was signed: look it over and sign again.')
	const visitId = randomUUID()
	const frozen = { visitId, playerId, signedAt, signedBy: clinic.clinician, visit, assessment, decisions: content.decisions, protocol: assessment.protocol, clinic }
	const reportSha256 = sha256(bytes)
	const signed: SignedVisit = { ...frozen, digest: digestOf({ ...frozen, reportSha256 }), reportSha256 }
	const report: ReportValue = { visitId, base64: Buffer.from(bytes).toString('base64'), sha256: reportSha256, fileName: fileNameOf(visit) }
	const ids = deps.store.together(() => {
		const visitRecord = deps.store.append({ kind: 'visit', at: signedAt, value: signed })
		const reportRecord = deps.store.append({ kind: 'report', at: signedAt, follows: visitRecord, value: report })
		deps.store.dropDraft(draftId)
		return { visitRecord, reportRecord }
	})
	state.drafts.delete(draftId)
	const { card } = state.entry(playerId)
	card.openDraft = [...state.drafts.values()].some((draft) => draft.playerId === playerId)
	putVisit(state, signed, ids.visitRecord)
	state.reportRecord.set(visitId, ids.reportRecord)
	return { visitId }
}
export const openVisit = (state: State, deps: Deps, { visitId }: InputOf<'visits.open'>): OutputOf<'visits.open'> => signedVisit(state, deps, visitId)

/** The stored bytes, checked against the digest in the signed visit. */
export function openReport(state: State, deps: Deps, { visitId }: InputOf<'reports.open'>): OutputOf<'reports.open'> {
	const recordId = state.reportRecord.get(visitId)
	if (recordId === undefined) throw new Refusal('No report is stored for this visit.')
	const { base64, sha256: stored, fileName } = deps.store.read(recordId).value as ReportValue
	const { reportSha256 } = signedVisit(state, deps, visitId)
	if (sha256(Buffer.from(base64, 'base64')) !== stored || stored !== reportSha256) throw new Refusal('The stored report does not match what was signed. It is not shown. Restore it from a backup.')
	return { base64, sha256: stored, fileName }
}
