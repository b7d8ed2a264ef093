import { randomUUID } from 'node:crypto'
import {
	type DraftContent,
	draftContentSchema,
	type InputOf,
	type OutputOf,
	type SignedVisit,
	signedVisitSchema,
	type VisitNote,
} from '../../../shared/contract.ts'
import { differences, type HandedOver, mustBeTold } from '../../../shared/desk/records/amendment.ts'
import { printedChanges } from '../../../shared/desk/records/told.ts'
import { dayHere } from '../../../shared/desk/workplace/local-day.ts'
import { assess } from '../../../shared/engine/assess.ts'
import { digestOf } from '../../../shared/engine/plain/canonical.ts'
import { openProtocol } from '../../../shared/engine/protocol/protocol.ts'
import type { Clinic } from '../../../shared/engine/report/clinic.ts'
import { playerReport } from '../../../shared/engine/report/player.ts'
import { signingBlocks } from '../../../shared/engine/report/signing.ts'
import { noDecisions } from '../../../shared/engine/visit/decisions.ts'
import { parseVisit } from '../../../shared/engine/visit/parse.ts'
import type { Visit } from '../../../shared/engine/visit/visit.ts'
import { type ReportValue, type VisitCard, visitCard } from '../records/load.ts'
import { type Deps, type DraftValue, Refusal, type State } from '../records/state.ts'
import { draw, pdfOf, sha256Of } from './drawing.ts'

/**
 * A draft is saved every second: its changes stand in the audit trail once per person and this
 * long.
 */
const draftLogMs = 10 * 60_000

interface VisitLine {
	card: VisitCard
	record: string
	inError: boolean
	awaits: boolean
}
/** The latest version of each visit of a player, newest visit first. */
export function visitsOf(state: State, { store }: Deps, playerId: string): VisitLine[] {
	const lines = new Map<string, VisitLine>()
	for (const id of state.idsOf(playerId)) {
		const notes = store
			.cardsAbout('visit-note', id)
			.map((card) => card.card as { visitId: string; what: VisitNote['what']; version: number })
		for (const { record, card } of store.cardsAbout('visit', id)) {
			const visit = card as VisitCard
			const known = lines.get(visit.visitId)
			if (known && known.card.version > visit.version) continue
			const own = notes.filter((note) => note.visitId === visit.visitId)
			lines.set(visit.visitId, {
				card: visit,
				record,
				inError: own.some((note) => note.what === 'in-error'),
				awaits:
					visit.student &&
					!own.some((note) => note.what === 'countersign' && note.version === visit.version),
			})
		}
	}
	return [...lines.values()].sort((a, b) =>
		a.card.visitDate < b.card.visitDate
			? 1
			: a.card.visitDate > b.card.visitDate
				? -1
				: a.card.signedAt < b.card.signedAt
					? 1
					: -1,
	)
}
function versionsOf({ store }: Deps, visitId: string): { record: string; card: VisitCard }[] {
	const versions = store
		.cardsOf('visit', visitId)
		.map(({ record, card }) => ({ record, card: card as VisitCard }))
	if (versions.length === 0) throw new Refusal('This visit is not in the records.')
	return versions.sort((a, b) => a.card.version - b.card.version)
}
const readVisit = ({ store }: Deps, record: string): SignedVisit =>
	signedVisitSchema.parse(store.read(record).value)
function latest(deps: Deps, visitId: string): { record: string; visit: SignedVisit } {
	const { record } = versionsOf(deps, visitId).at(-1) as { record: string }
	return { record, visit: readVisit(deps, record) }
}
/**
 * What a report says of an amendment: its version, and what differs from the version before;
 * nothing for a first version.
 */
const amendmentOf = (
	before: SignedVisit | undefined,
	after: Pick<SignedVisit, 'visit' | 'decisions'>,
) => (before ? { version: (before.version ?? 1) + 1, changes: printedChanges(before, after) } : {})
/** The same of a version that stands in the records. */
export function amendmentThen(deps: Deps, signed: SignedVisit): ReturnType<typeof amendmentOf> {
	const before = versionsOf(deps, signed.visitId).find(
		(one) => one.card.version === (signed.version ?? 1) - 1,
	)
	return amendmentOf(before && readVisit(deps, before.record), signed)
}
/**
 * Earlier visits that count: latest versions, none entered in error, not the one that is being
 * amended.
 */
export function earlierVisits(
	state: State,
	deps: Deps,
	playerId: string,
	butNot?: string,
): Visit[] {
	return visitsOf(state, deps, playerId)
		.filter((line) => !line.inError && line.card.visitId !== butNot)
		.reverse()
		.map((line) => readVisit(deps, line.record).visit)
}
export function openDraft(
	state: State,
	deps: Deps,
	{ playerId, visitDate }: InputOf<'drafts.open'>,
): OutputOf<'drafts.open'> {
	const { player } = state.entry(playerId)
	if (state.mergedAway(playerId))
		throw new Refusal('This record was merged into another player. Open that player.')
	const open = state.draftsOf(playerId)[0]
	const earlier = earlierVisits(state, deps, playerId, open?.[1].amends?.visitId)
	if (open) {
		const draft = deps.store.draft(open[0])
		if (!draft) throw new Refusal('The draft is gone from the disk. Restore it from a backup.')
		const content = draftContentSchema.parse((draft.value as DraftValue).content)
		// a corrected birth date counts at once, as it does when the visit is signed
		return {
			draft: {
				draftId: open[0],
				playerId,
				savedAt: draft.at,
				content: { ...content, visit: { ...content.visit, player } },
			},
			earlier,
		}
	}
	if (player.birthDate >= visitDate)
		throw new Refusal(
			`The birth date ${player.birthDate} is not before the visit date ${visitDate}. Correct ` +
				`the player's details first.`,
		)
	const content: DraftContent = {
		visit: { format: 'lastwright-visit', version: 1, player, visitDate, screening: {} },
		raw: {},
		decisions: noDecisions,
	}
	const { draftId, savedAt } = putDraft(state, deps, { playerId, content })
	return { draft: { draftId, playerId, savedAt, content }, earlier }
}
function putDraft(
	state: State,
	{ store, now }: Deps,
	value: DraftValue & { content: DraftContent },
	draftId: string = randomUUID(),
): { draftId: string; savedAt: string } {
	const savedAt = now().toISOString()
	const logKey = `${draftId} ${state.person?.personId}`
	const loggedAt = state.draftLogged.get(logKey)
	store.together(() => {
		store.saveDraft(draftId, savedAt, value)
		if (loggedAt === undefined || Math.abs(now().getTime() - loggedAt) > draftLogMs)
			store.audit({
				function: loggedAt === undefined && !state.drafts.has(draftId) ? 'create' : 'update',
				objectRef: `draft:${draftId}`,
				playerId: value.playerId,
			})
	})
	if (loggedAt === undefined || Math.abs(now().getTime() - loggedAt) > draftLogMs)
		state.draftLogged.set(logKey, now().getTime())
	state.drafts.set(draftId, {
		playerId: value.playerId,
		visitDate: value.content.visit.visitDate,
		savedAt,
		amends: value.amends,
	})
	return { draftId, savedAt }
}
function knownDraft(state: State, draftId: string) {
	const draft = state.drafts.get(draftId)
	if (!draft)
		throw new Refusal(
			'This draft is not open any more: the visit was signed, or opened elsewhere. Go back to ' +
				'the player.',
		)
	return draft
}
export function saveDraft(
	state: State,
	deps: Deps,
	{ draftId, content }: InputOf<'drafts.save'>,
): OutputOf<'drafts.save'> {
	const { playerId, amends } = knownDraft(state, draftId)
	return {
		savedAt: putDraft(
			state,
			deps,
			{ playerId, content: content as DraftContent, ...(amends ? { amends } : {}) },
			draftId,
		).savedAt,
	}
}
/** A file name without clinical words: date and the first letters, never a diagnosis. */
const fileNameOf = (visit: Visit) => `report-${visit.visitDate}.pdf`

/** The letterhead with the name of whoever signs; the owner signs as the letterhead says. */
function letterhead(state: State): Clinic {
	const { clinic } = state
	if (!clinic) throw new Refusal('The clinic is not set up. Fill in the letterhead first.')
	const person = state.acts()
	if (person.role === 'owner') return clinic
	return {
		...clinic,
		clinician: {
			name: person.name,
			registration:
				person.registration || (person.role === 'student' ? 'student, under supervision' : 'none'),
		},
	}
}
function compose(
	state: State,
	deps: Deps,
	draftId: string,
	signing: { signedAt: string; signedOn: string } | undefined,
) {
	const { playerId, amends } = knownDraft(state, draftId)
	const stored = deps.store.draft(draftId)
	if (!stored) throw new Refusal('The draft is gone from the disk. Restore it from a backup.')
	const content = draftContentSchema.parse((stored.value as DraftValue).content)
	const clinic = letterhead(state)
	const visit = { ...content.visit, player: state.entry(playerId).player }
	const parsed = parseVisit(visit)
	if (!parsed.ok)
		throw new Refusal(
			'The visit has entries that cannot stand. Correct them first.',
			parsed.problems,
		)
	const earlier = earlierVisits(state, deps, playerId, amends?.visitId)
	const assessment = assess(parsed.value, earlier, state.protocol, state.shelf)
	const before = amends ? latest(deps, amends.visitId) : undefined
	const document = playerReport({
		visit: parsed.value,
		assessment,
		decisions: content.decisions,
		clinic,
		...amendmentOf(before?.visit, { visit: parsed.value, decisions: content.decisions }),
		signedAt: signing?.signedAt,
		signedOn: signing?.signedOn,
		draft: signing === undefined,
		earlier,
		protocol: openProtocol(state.protocol),
	})
	return { playerId, content, clinic, visit: parsed.value, assessment, document, amends, before }
}
export async function previewDraft(
	state: State,
	deps: Deps,
	{ draftId }: InputOf<'drafts.preview'>,
): Promise<OutputOf<'drafts.preview'>> {
	const { document, visit } = compose(state, deps, draftId, undefined)
	return pdfOf(await draw(deps, document), `draft-${fileNameOf(visit)}`)
}
/**
 * Freezes visit, assessment, decisions and protocol, with the report's bytes, in one transaction.
 */
export async function signVisit(
	state: State,
	deps: Deps,
	{ draftId }: InputOf<'visits.sign'>,
): Promise<OutputOf<'visits.sign'>> {
	const at = deps.now()
	const [signedAt, signedOn] = [at.toISOString(), dayHere(at)]
	const { playerId, content, clinic, visit, assessment, document, amends, before } = compose(
		state,
		deps,
		draftId,
		{ signedAt, signedOn },
	)
	const person = state.acts()
	// every entry that is none is named by its field; the screen only counts them
	const unread = Object.entries(content.raw)
	if (unread.length > 0)
		throw new Refusal(
			'Some fields hold text that is not a value yet. Correct or empty them before signing.',
			unread.map(([path, text]) => ({
				path,
				message: `not a value, given "${text}", allowed: a value, or nothing for not measured`,
			})),
		)
	const blocks = signingBlocks(content, assessment, openProtocol(state.protocol))
	if (blocks.length > 0)
		throw new Refusal(
			'The visit cannot be signed yet.',
			blocks.map(({ path, says }) => ({ path, message: says })),
		)
	const asRead = knownDraft(state, draftId)
	const bytes = await draw(deps, document)
	// while the page was being drawn a second click may have signed the draft, an entry may have been
	// saved that this report lacks, or the person may have changed
	if (knownDraft(state, draftId) !== asRead)
		throw new Refusal(
			'The visit changed while its report was being drawn. Nothing was signed: look it over and ' +
				'sign again.',
		)
	if (state.person !== person)
		throw new Refusal(
			'Another person took over while the report was being drawn. Nothing was signed.',
		)
	const visitId = amends?.visitId ?? randomUUID()
	const frozen = {
		visitId,
		playerId,
		signedAt,
		signedOn,
		signedBy: clinic.clinician,
		visit,
		assessment,
		decisions: content.decisions,
		protocol: assessment.protocol,
		clinic,
		signer: { personId: person.personId, role: person.role },
		...(before && amends
			? {
					version: (before.visit.version ?? 1) + 1,
					amends: { reason: amends.reason, digest: before.visit.digest },
				}
			: {}),
	}
	const reportSha256 = sha256Of(bytes)
	const signed: SignedVisit = {
		...frozen,
		digest: digestOf({ ...frozen, reportSha256 }),
		reportSha256,
	}
	const report: ReportValue = {
		visitId,
		base64: Buffer.from(bytes).toString('base64'),
		sha256: reportSha256,
		fileName: fileNameOf(visit),
	}
	deps.store.together(() => {
		const visitRecord = deps.store.append({
			kind: 'visit',
			at: signedAt,
			...(before ? { follows: before.record } : {}),
			value: signed,
			about: playerId,
			thing: visitId,
			card: visitCard(signed),
			does: amends ? 'amend' : 'sign',
		})
		deps.store.append({
			kind: 'report',
			at: signedAt,
			follows: visitRecord,
			value: report,
			about: playerId,
			thing: visitId,
			does: 'create',
		})
		deps.store.dropDraft(draftId)
	})
	state.drafts.delete(draftId)
	state.entry(playerId).lastVisitKnown = false
	return { visitId }
}
export const openVisit = (
	deps: Deps,
	{ visitId }: InputOf<'visits.open'>,
): OutputOf<'visits.open'> => latest(deps, visitId).visit

/**
 * The stored bytes of a version, the latest unless named, checked against the digest in the signed
 * visit.
 */
export function openReport(
	deps: Deps,
	{ visitId, version }: InputOf<'reports.open'>,
): OutputOf<'reports.open'> {
	const versions = versionsOf(deps, visitId)
	const wanted =
		version === undefined ? versions.at(-1) : versions.find((one) => one.card.version === version)
	if (!wanted)
		throw new Refusal('This version of the visit is not in the records.', [
			{
				path: 'version',
				message:
					`not kept, given ${version}, allowed: ` +
					`${versions.map((one) => one.card.version).join(', ')}`,
			},
		])
	const report = deps.store
		.cardsOf('report', visitId)
		.map(({ record }) => record)
		.reverse()
		.map((record) => deps.store.read(record))
		.find((record) => record.follows === wanted.record)
	if (report === undefined) throw new Refusal('No report is stored for this visit.')
	const { base64, sha256: stored, fileName } = report.value as ReportValue
	const { reportSha256 } = readVisit(deps, wanted.record)
	if (sha256Of(Buffer.from(base64, 'base64')) !== stored || stored !== reportSha256)
		throw new Refusal(
			'The stored report does not match what was signed. It is not shown. Restore it from a backup.',
		)
	return {
		base64,
		sha256: stored,
		fileName:
			wanted === versions.at(-1)
				? fileName
				: fileName.replace(/\.pdf$/, `-version-${wanted.card.version}.pdf`),
	}
}
const notesOf = ({ store }: Deps, visitId: string): VisitNote[] =>
	store.cardsOf('visit-note', visitId).map(({ record }) => {
		const { what, text, by, at, occurredOn, version } = store.read(record).value as VisitNote
		return { what, text, by, at, version, ...(occurredOn === undefined ? {} : { occurredOn }) }
	})

/** A draft that becomes the next version. The signed one is untouched. */
export function amendVisit(
	state: State,
	deps: Deps,
	{ visitId, reason }: InputOf<'visits.amend'>,
): OutputOf<'visits.amend'> {
	const { visit } = latest(deps, visitId)
	if (notesOf(deps, visitId).some((note) => note.what === 'in-error'))
		throw new Refusal(
			'This visit was entered in error and cannot be amended. Start a new assessment instead.',
		)
	if (state.draftsOf(visit.playerId).length > 0)
		throw new Refusal('A draft of this player is open. Sign it first: one draft is open at a time.')
	const content: DraftContent = {
		visit: visit.visit,
		raw: {},
		decisions: { ...visit.decisions, consentNoted: undefined },
	}
	return {
		draftId: putDraft(state, deps, {
			playerId: visit.playerId,
			content,
			amends: { visitId, reason },
		}).draftId,
	}
}
export function visitHistory(
	deps: Deps,
	{ visitId }: InputOf<'visits.history'>,
): OutputOf<'visits.history'> {
	const versions = versionsOf(deps, visitId).map(({ record }) => readVisit(deps, record))
	const core = ({ visit, assessment, decisions }: SignedVisit) => ({ visit, assessment, decisions })
	const handedOver = deps.store.cardsOf('sending', visitId).map((card) => card.card as HandedOver)
	return {
		versions: versions.map((version, index) => ({
			version: version.version ?? 1,
			signedAt: version.signedAt,
			by: `${version.signedBy.name}, ${version.signedBy.registration}`,
			...(version.amends ? { reason: version.amends.reason } : {}),
			differences:
				index === 0 ? [] : differences(core(versions[index - 1] as SignedVisit), core(version)),
		})),
		notes: notesOf(deps, visitId),
		handedOver,
		tell: mustBeTold(handedOver, versions.at(-1)?.version ?? 1),
	}
}
function addNoteRecord(
	state: State,
	deps: Deps,
	visitId: string,
	what: VisitNote['what'],
	text: string,
	occurredOn?: string,
): void {
	const { record, visit } = latest(deps, visitId)
	const at = deps.now().toISOString()
	const version = visit.version ?? 1
	const { name, registration } = state.acts()
	deps.store.append({
		kind: 'visit-note',
		at,
		follows: record,
		value: {
			visitId,
			what,
			text,
			by: [name, registration].filter(Boolean).join(', '),
			at,
			version,
			...(occurredOn === undefined ? {} : { occurredOn }),
		},
		about: visit.playerId,
		thing: visitId,
		card: { visitId, what, version },
		does: what === 'countersign' ? 'sign' : 'amend',
	})
	for (const id of [visit.playerId, ...[...state.merges.values()].map((merge) => merge.into)]) {
		const entry = state.players.get(id)
		if (entry) entry.lastVisitKnown = false
	}
}
export function markInError(
	state: State,
	deps: Deps,
	{ visitId, reason }: InputOf<'visits.markInError'>,
): OutputOf<'visits.markInError'> {
	if (notesOf(deps, visitId).some((note) => note.what === 'in-error'))
		throw new Refusal('This visit is marked as entered in error already.')
	addNoteRecord(state, deps, visitId, 'in-error', reason)
	return {}
}
/**
 * Words added afterwards stand beside the visit with their own time; dating them into the future is
 * refused.
 */
export function addNote(
	state: State,
	deps: Deps,
	{ visitId, what, text, occurredOn }: InputOf<'visits.addNote'>,
): OutputOf<'visits.addNote'> {
	const today = dayHere(deps.now())
	if (occurredOn > today)
		throw new Refusal('The day it happened lies in the future.', [
			{
				path: 'occurredOn',
				message: `in the future, given ${occurredOn}, allowed: ${today} or earlier`,
			},
		])
	addNoteRecord(state, deps, visitId, what, text, occurredOn)
	return {}
}
export function countersign(
	state: State,
	deps: Deps,
	{ visitId, text }: InputOf<'visits.countersign'>,
): OutputOf<'visits.countersign'> {
	const { visit } = latest(deps, visitId)
	if (visit.signer?.role !== 'student')
		throw new Refusal('This visit was not signed by a student: it needs no countersignature.')
	if (
		notesOf(deps, visitId).some(
			(note) => note.what === 'countersign' && note.version === (visit.version ?? 1),
		)
	)
		throw new Refusal('This version is countersigned already.')
	addNoteRecord(state, deps, visitId, 'countersign', text)
	return {}
}
/**
 * Notes that a report left: refused before a student's visit is countersigned, or where it was
 * entered in error.
 */
export function handedOver(
	deps: Deps,
	{ visitId, recipient, channel }: InputOf<'reports.handedOver'>,
): OutputOf<'reports.handedOver'> {
	const { record, visit } = latest(deps, visitId)
	const notes = notesOf(deps, visitId)
	if (notes.some((note) => note.what === 'in-error'))
		throw new Refusal('This visit was entered in error. Its report is not to be handed out.')
	if (
		visit.signer?.role === 'student' &&
		!notes.some((note) => note.what === 'countersign' && note.version === (visit.version ?? 1))
	)
		throw new Refusal(
			'A student signed this visit. Have it countersigned before its report is handed out.',
		)
	const at = deps.now().toISOString()
	const value: HandedOver = { recipient, channel, version: visit.version ?? 1, at }
	deps.store.append({
		kind: 'sending',
		at,
		follows: record,
		value: { ...value, visitId, reportSha256: visit.reportSha256 },
		about: visit.playerId,
		thing: visitId,
		card: value,
		does: channel === 'by-hand' ? 'export' : channel,
	})
	return {}
}
