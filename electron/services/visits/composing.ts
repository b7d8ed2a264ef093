/** Documents of a signed visit, composed for one recipient from what was signed. */
import { randomUUID } from 'node:crypto'
import type { InputOf, OutputOf, SignedVisit } from '../../../shared/contract.ts'
import { kindWords, type OutboxKind, type Recipient } from '../../../shared/desk/outbox/item.ts'
import type { Consent } from '../../../shared/desk/records/consent.ts'
import { dayHere, dayOfMoment } from '../../../shared/desk/workplace/local-day.ts'
import type { Assessment } from '../../../shared/engine/findings/assessment.ts'
import { addDays } from '../../../shared/engine/plain/days.ts'
import type { ClubConsent } from '../../../shared/engine/report/club.ts'
import type { LwDocument } from '../../../shared/engine/report/document.ts'
import { reportCss } from '../../../shared/engine/report/html/style.ts'
import { toHtml } from '../../../shared/engine/report/html.ts'
import type { ReportInput } from '../../../shared/engine/report/inputs.ts'
import { type KindInput, kinds } from '../../../shared/engine/report/kinds.ts'
import { playerReport } from '../../../shared/engine/report/player.ts'
import { protocolOfDigest } from '../clinic/protocol.ts'
import { checkConsent, listConsents } from '../people/consents.ts'
import type { PlayerIds } from '../players/memory.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { Refusal } from '../records/refusal.ts'
import type { DocumentValue } from './documents.ts'
import { draw, sha256Of } from './drawing.ts'
import { amendmentThen, openReport } from './reports.ts'
import { earlierVisits, openVisit, visitsOf } from './visits.ts'

/** What the documents of a visit look at. */
type Needs = Pick<Memory, 'clinic' | 'outbox' | 'outreach' | 'people' | 'players'>
interface Pages {
	/** the pages as data; undefined where they cannot be drawn again byte by byte */
	layout: LwDocument | undefined
	bytes: Uint8Array
}

/**
 * Refuses a visit whose documents must not leave: entered in error, or a student's without
 * countersignature. @returns its latest version
 */
export function mayLeave(players: PlayerIds, deps: Deps, visitId: string): SignedVisit {
	const visit = openVisit(deps, { visitId })
	const line = visitsOf(players, deps, visit.playerId).find(({ card }) => card.visitId === visitId)
	if (line?.inError)
		throw new Refusal('This visit was entered in error. Its documents are not to be handed out.')
	if (line?.awaits)
		throw new Refusal(
			'A student signed this visit. Have it countersigned before its documents are handed out.',
		)
	return visit
}
/** The visits that stood when this one was signed. */
function earlierThen(players: PlayerIds, deps: Deps, signed: SignedVisit) {
	const later = new Set(
		visitsOf(players, deps, signed.playerId)
			.filter(({ card }) => card.signedAt >= signed.signedAt)
			.map(({ card }) => card.visitDate),
	)
	return earlierVisits(players, deps, signed.playerId, signed.visitId).filter(
		(visit) => !later.has(visit.visitDate),
	)
}
/** What every document of a signed visit is made of, as at signing. */
const signedInput = (
	{ clinic, players }: Pick<Memory, 'clinic' | 'players'>,
	deps: Deps,
	signed: SignedVisit,
): ReportInput => ({
	visit: signed.visit,
	assessment: signed.assessment as Assessment,
	decisions: signed.decisions,
	clinic: signed.clinic,
	signedAt: signed.signedAt,
	signedOn: signed.signedOn,
	draft: false,
	earlier: earlierThen(players, deps, signed),
	...amendmentThen(deps, signed),
	protocol: protocolOfDigest(clinic, signed.protocol.digest),
})
/**
 * The stored bytes of the player's report, and its description where it gives the very bytes that
 * were signed.
 */
async function playerPages(
	memory: Pick<Memory, 'clinic' | 'players'>,
	deps: Deps,
	signed: SignedVisit,
): Promise<Pages> {
	const { base64, sha256 } = openReport(deps, { visitId: signed.visitId })
	// the same call as at signing
	const layout = playerReport(signedInput(memory, deps, signed))
	return {
		layout: sha256Of(await draw(deps, layout)) === sha256 ? layout : undefined,
		bytes: Buffer.from(base64, 'base64'),
	}
}
/**
 * The latest report of a visit as one accessible page. @throws Refusal where it would not say the
 * same as what was signed
 */
export async function accessiblePage(
	memory: Pick<Memory, 'clinic' | 'players'>,
	deps: Deps,
	{ visitId }: InputOf<'reports.page'>,
): Promise<OutputOf<'reports.page'>> {
	const signed = openVisit(deps, { visitId })
	const { layout } = await playerPages(memory, deps, signed)
	if (!layout)
		throw new Refusal(
			'An accessible page cannot be made: this report was drawn by an earlier version of the ' +
				'program and would not say the same. Open the report instead.',
		)
	return {
		html: toHtml(layout, { css: reportCss(layout.letterhead.colour) }),
		fileName: `report-${signed.visit.visitDate}.html`,
	}
}
/** What a kind of document says besides the visit itself. */
function addedBy(
	kind: OutboxKind,
	memory: Needs,
	deps: Deps,
	{ visitId, playerId, clinic }: SignedVisit,
	recipient: Recipient,
): Partial<KindInput> {
	switch (kind) {
		case 'referral':
			return { letter: letterTo(memory, deps, playerId, recipient) }
		case 'coach':
			return { consents: [coachConsent(memory, deps, playerId, recipient)] }
		case 'insert-order':
			return { order: { shipTo: clinic.name } }
		case 'guardian': {
			const told = toldToClub(memory, visitId)
			return told.length > 0 ? { sharedWithClub: told } : {}
		}
		case 'player':
			return {}
	}
}
/** A doctor's letter names the consent that it rests on. */
function letterTo(memory: Needs, deps: Deps, playerId: string, recipient: Recipient) {
	if (recipient.role !== 'doctor') return { recipient: recipient.name }
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
			return clubConsentOf(toCoaches.find((consent) => consent.consentId === answer.consentId))
	}
	return undefined
}
/**
 * A consent to share with the coach, as the club documents read it: their last day is included, the
 * record's is not.
 */
function clubConsentOf(consent: Consent | undefined): ClubConsent | undefined {
	return (
		consent && {
			id: consent.consentId,
			purpose: 'coach',
			decision: consent.decision,
			given: consent.given,
			...(consent.expires && { until: addDays(consent.expires, -1) }),
			...(consent.withdrawn && { withdrawn: consent.withdrawn }),
		}
	)
}
async function compose(
	memory: Needs,
	deps: Deps,
	signed: SignedVisit,
	kind: OutboxKind,
	recipient: Recipient,
): Promise<Pages> {
	if (kind === 'player') return playerPages(memory, deps, signed)
	const input: KindInput = {
		...signedInput(memory, deps, signed),
		on: dayHere(deps.now()),
		...addedBy(kind, memory, deps, signed, recipient),
	}
	const problems = kinds[kind].problems(input)
	if (problems.length > 0)
		throw new Refusal(
			`${kindWords[kind]} cannot be written for this visit.`,
			problems.map((line) => {
				const cut = line.indexOf(': ')
				return { path: line.slice(0, cut), message: line.slice(cut + 2) }
			}),
		)
	const layout = kinds[kind].compose(input)
	return { layout, bytes: await draw(deps, layout) }
}
/** Composes a document of the latest version of a visit. The caller keeps it with keepDocument. */
export async function makeDocument(
	memory: Needs,
	deps: Deps,
	{ visitId, kind, recipient }: { visitId: string; kind: OutboxKind; recipient: Recipient },
): Promise<DocumentValue> {
	const signed = mayLeave(memory.players, deps, visitId)
	const { layout, bytes } = await compose(memory, deps, signed, kind, recipient)
	return {
		documentId: randomUUID(),
		visitId,
		playerId: signed.playerId,
		kind,
		version: signed.version ?? 1,
		sha256: sha256Of(bytes),
		base64: Buffer.from(bytes).toString('base64'),
		layout,
		recipientId: recipient.recipientId,
		at: deps.now().toISOString(),
		by: memory.people.acts().name,
	}
}
