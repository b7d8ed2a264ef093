/** Documents of a signed visit, composed for one recipient from what was signed. */
import { randomUUID } from 'node:crypto'
import type { SignedVisit } from '../../../shared/contract.ts'
import { kindWords, type PageKind, type Recipient } from '../../../shared/desk/outbox/item.ts'
import { nameOnPaper } from '../../../shared/desk/outbox/recipients.ts'
import type { DocumentValue } from '../../../shared/desk/visits/kept-pages.ts'
import { clockHere, dayHere, dayOfMoment } from '../../../shared/desk/workplace/local-day.ts'
import { digestOf } from '../../../shared/engine/plain/canonical.ts'
import { present } from '../../../shared/engine/plain/present.ts'
import type { ClubConsent } from '../../../shared/engine/report/club.ts'
import type { LwDocument } from '../../../shared/engine/report/document.ts'
import type { KeptDocument } from '../../../shared/engine/report/kept/form.ts'
import { keptForm } from '../../../shared/engine/report/kept/keep.ts'
import { type KindInput, kinds } from '../../../shared/engine/report/kinds.ts'
import { protocolOfDigest } from '../clinic/protocol.ts'
import { clubConsentOf } from '../people/club-consent.ts'
import { checkConsent, listConsents } from '../people/consents.ts'
import type { PlayerIds } from '../players/memory.ts'
import { assessmentOf } from '../records/assessment.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { Refusal } from '../records/refusal.ts'
import { planThen } from '../season/standing.ts'
import { draw, sha256Of } from './drawing.ts'
import { documentBefore } from './given.ts'
import { amendmentThen } from './reports.ts'
import { type Signed, signedDocument, signedPage } from './signed-pages.ts'
import { earlierVisits, latest, visitsOf } from './visits.ts'

/** What the documents of a visit look at. */
type Needs = Pick<Memory, 'clinic' | 'outbox' | 'outreach' | 'people' | 'players'>
/**
 * Refuses a visit whose documents must not leave: entered in error, or a student's without
 * countersignature. @returns its latest version
 */
export const mayLeave = (players: PlayerIds, deps: Deps, visitId: string): SignedVisit =>
	signedToLeave(players, deps, visitId).visit

function signedToLeave(players: PlayerIds, deps: Deps, visitId: string): Signed {
	const signed = latest(deps, visitId)
	const { visit } = signed
	const line = visitsOf(players, deps, visit.playerId).find(({ card }) => card.visitId === visitId)
	if (line?.inError)
		throw new Refusal(
			'visits.in-error',
			'This visit was entered in error. Its documents are not to be handed out.',
		)
	if (line?.awaits)
		throw new Refusal(
			'visits.not-countersigned',
			'A student signed this visit. Have it countersigned before its documents are handed out.',
		)
	return signed
}
/** The visits that stood when this one was signed. */
function earlierThen(players: PlayerIds, deps: Deps, signed: SignedVisit) {
	const { visits, lacking } = earlierVisits(players, deps, signed.playerId, signed.visitId)
	const later = new Set(
		visitsOf(players, deps, signed.playerId)
			.filter(({ card }) => card.signedAt >= signed.signedAt)
			.map(({ card }) => card.visitDate),
	)
	return {
		earlier: visits.filter((visit) => !later.has(visit.visitDate)),
		lacking: lacking.length,
	}
}
/** What every document of a signed visit is made of, as at signing. */
export const signedInput = (
	{ clinic, players }: Pick<Memory, 'clinic' | 'players'>,
	deps: Deps,
	signed: SignedVisit,
): KindInput => ({
	visit: signed.visit,
	assessment: assessmentOf(signed),
	decisions: signed.decisions,
	clinic: signed.clinic,
	signedAt: signed.signedAt,
	signedOn: signed.signedOn,
	signedTime: clockHere(new Date(signed.signedAt)),
	draft: false,
	...earlierThen(players, deps, signed),
	...amendmentThen(deps, signed),
	protocol: protocolOfDigest(clinic, signed.protocol.digest),
	on: dayHere(deps.now()),
})
/** What a kind of document says besides the visit itself. */
function addedBy(
	kind: PageKind,
	memory: Needs,
	deps: Deps,
	signed: SignedVisit,
	recipient: Recipient,
): Partial<KindInput> {
	const { visitId, playerId } = signed
	switch (kind) {
		case 'referral':
			return { letter: letterTo(memory, deps, signed, recipient) }
		case 'coach': {
			const season = planThen(memory, deps, playerId, signedInput(memory, deps, signed))
			return present({
				consents: [coachConsent(memory, deps, playerId, recipient)],
				plan: season?.plan,
			})
		}
		case 'guardian': {
			const told = toldToClub(memory, visitId)
			return told.length > 0 ? { sharedWithClub: told } : {}
		}
		case 'insert-order':
		case 'player':
			return {}
	}
}
/**
 * A doctor's letter names the consent that it rests on; one that player or guardian takes along says
 * nothing that they may not read.
 */
function letterTo(memory: Needs, deps: Deps, signed: SignedVisit, recipient: Recipient) {
	const { playerId, visit } = signed
	if (recipient.role === 'player' || recipient.role === 'guardian')
		return { recipient: nameOnPaper(recipient, visit.player), handedTo: recipient.role }
	const consent = checkConsent(memory, deps, playerId, 'share-with-care', recipient.name)
	return { recipient: recipient.name, consent: consent.because }
}
/** What was sent to the club of this visit, in words. */
const toldToClub = ({ outbox }: Pick<Memory, 'outbox'>, visitId: string): string[] =>
	outbox.items
		.all()
		.filter((item) => item.visitId === visitId && item.kind === 'coach' && item.sentAt)
		.map(
			(item) => `${kindWords.coach} to ${item.recipient.name}, ${dayOfMoment(item.sentAt ?? '')}.`,
		)
/**
 * The consent a letter for the club rests on: the recipient's own where it goes to the club, else
 * any coach's that is in force.
 */
function coachConsent(
	memory: Needs,
	deps: Deps,
	playerId: string,
	recipient: Recipient,
): ClubConsent | undefined {
	const { consents } = listConsents(memory, deps, { playerId })
	const toCoaches = consents.filter((consent) => consent.purpose === 'share-with-coach')
	const names =
		recipient.role === 'coach'
			? [recipient.name]
			: new Set(toCoaches.map((consent) => consent.recipient))
	for (const name of names) {
		const answer = checkConsent(memory, deps, playerId, 'share-with-coach', name)
		if (answer.inForce)
			return clubConsentOf(
				toCoaches.find((consent) => consent.consentId === answer.consentId),
				'coach',
			)
	}
	return undefined
}
/** @throws Refusal naming what is missing */
function composed(kind: PageKind, input: KindInput): LwDocument {
	const problems = kinds[kind].problems(input)
	if (problems.length > 0)
		throw new Refusal(
			'visits.document-not-possible',
			`${kindWords[kind]} cannot be written for this visit.`,
			problems.map((line) => {
				const cut = line.indexOf(': ')
				return { path: line.slice(0, cut), message: line.slice(cut + 2) }
			}),
		)
	return kinds[kind].compose(input)
}
/** A page for somebody: what was kept of it, or what is new and still to be kept. */
type Page = Pick<DocumentValue, 'sha256' | 'base64' | 'document'>
const pageOf = (bytes: Uint8Array, document: KeptDocument | undefined): Page => ({
	sha256: sha256Of(bytes),
	base64: Buffer.from(bytes).toString('base64'),
	document,
})
/**
 * The page as it was kept at signing, where it says nothing besides the visit; else composed once
 * for its recipient from what was signed.
 */
async function makePage(
	memory: Needs,
	deps: Deps,
	signed: Signed,
	kind: PageKind,
	added: Partial<KindInput>,
): Promise<Page> {
	if (kind === 'player' || Object.keys(added).length === 0) {
		const kept = signedPage(deps, signed, kind)
		if (kept) return pageOf(kept.bytes, signedDocument(signed, kind, kept))
	}
	const document = composed(kind, { ...signedInput(memory, deps, signed.visit), ...added })
	return pageOf(await draw(deps, document), keptForm(document))
}
/** What a document is made from: the same is not made a second time. */
const madeFrom = (
	{ visitId, version = 1 }: SignedVisit,
	kind: PageKind,
	{ recipientId }: Recipient,
	added: Partial<KindInput>,
): string => digestOf(JSON.parse(JSON.stringify({ visitId, version, kind, recipientId, added })))

/** A document of a visit, and whether it stands in the records already. */
export interface MadeDocument {
	document: DocumentValue
	isKept: boolean
}
/** What a document is wanted for. */
interface Wish {
	visitId: string
	kind: PageKind
	recipient: Recipient
}
/**
 * A document of the latest version of a visit that may leave. The caller keeps a new one with
 * keepDocument.
 * @throws Refusal where it must not leave, or cannot be written
 */
export function makeDocument(memory: Needs, deps: Deps, wish: Wish): Promise<MadeDocument> {
	signedToLeave(memory.players, deps, wish.visitId)
	return documentFor(memory, deps, wish)
}
/** The same without asking whether it may leave: what was kept of it, or what is made now. */
export async function documentFor(
	memory: Needs,
	deps: Deps,
	{ visitId, kind, recipient }: Wish,
): Promise<MadeDocument> {
	const signed = latest(deps, visitId)
	const { playerId, version = 1 } = signed.visit
	const added = addedBy(kind, memory, deps, signed.visit, recipient)
	const from = madeFrom(signed.visit, kind, recipient, added)
	const before = documentBefore(memory.players, deps, playerId, { kind, from })
	if (before) return { document: before, isKept: true }
	const page = await makePage(memory, deps, signed, kind, added)
	return {
		isKept: false,
		document: {
			documentId: randomUUID(),
			visitId,
			playerId,
			kind,
			version,
			...page,
			from,
			recipientId: recipient.recipientId,
			at: deps.now().toISOString(),
			by: memory.people.acts().name,
		},
	}
}
