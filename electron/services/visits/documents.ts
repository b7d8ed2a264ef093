/**
 * Documents of a signed visit: composed for one recipient, kept with their bytes and digest, opened
 * by digest only.
 */
import { randomUUID } from 'node:crypto'
import type { InputOf, OutputOf, SignedVisit } from '../../../shared/contract.ts'
import { kindWords, type OutboxKind, type Recipient } from '../../../shared/desk/outbox/item.ts'
import type { Consent } from '../../../shared/desk/records/consent.ts'
import { dayHere, dayOfMoment } from '../../../shared/desk/workplace/local-day.ts'
import type { Assessment } from '../../../shared/engine/findings/assessment.ts'
import type { ClubConsent } from '../../../shared/engine/report/club.ts'
import type { LwDocument } from '../../../shared/engine/report/document.ts'
import { reportCss } from '../../../shared/engine/report/html/style.ts'
import { toHtml } from '../../../shared/engine/report/html.ts'
import { type KindInput, kinds } from '../../../shared/engine/report/kinds.ts'
import { playerReport } from '../../../shared/engine/report/player.ts'
import { addDays } from '../../../shared/engine/visit/age.ts'
import { protocolOfDigest } from '../clinic/protocol.ts'
import { checkConsent, listConsents } from '../people/consents.ts'
import { type Deps, Refusal, type State } from '../records/state.ts'
import { draw, sha256Of } from './drawing.ts'
import { amendmentThen, earlierVisits, openReport, openVisit, visitsOf } from './visits.ts'

export interface DocumentValue {
	documentId: string
	visitId: string
	playerId: string
	kind: OutboxKind
	version: number
	sha256: string
	/**
	 * the pages as data, for a copy under a password; absent where they cannot be drawn again byte by
	 * byte
	 */
	base64: string
	layout?: LwDocument
	recipientId: string
	at: string
	by: string
}
interface Composed {
	layout: LwDocument | undefined
	bytes: Uint8Array
	version: number
	playerId: string
}

/**
 * A consent to share with the coach, as the club documents read it: their last day is included, the
 * record's is not.
 */
export function clubConsentOf(
	consents: readonly Consent[],
	consentId: string | undefined,
): ClubConsent | undefined {
	const found = consents.find(
		(consent) => consent.consentId === consentId && consent.purpose === 'share-with-coach',
	)
	return (
		found && {
			id: found.consentId,
			purpose: 'coach',
			decision: found.decision,
			given: found.given,
			...(found.expires ? { until: addDays(found.expires, -1) } : {}),
			...(found.withdrawn ? { withdrawn: found.withdrawn } : {}),
		}
	)
}
/**
 * Refuses a visit whose documents must not leave: entered in error, or a student's without
 * countersignature. @returns its latest version
 */
export function mayLeave(state: State, deps: Deps, visitId: string): SignedVisit {
	const visit = openVisit(deps, { visitId })
	const line = visitsOf(state, deps, visit.playerId).find((one) => one.card.visitId === visitId)
	if (line?.inError)
		throw new Refusal('This visit was entered in error. Its documents are not to be handed out.')
	if (line?.awaits)
		throw new Refusal(
			'A student signed this visit. Have it countersigned before its documents are handed out.',
		)
	return visit
}
/** The visits that stood when this one was signed. */
function earlierThen(state: State, deps: Deps, signed: SignedVisit) {
	const later = new Set(
		visitsOf(state, deps, signed.playerId)
			.filter((line) => line.card.signedAt >= signed.signedAt)
			.map((line) => `${line.card.visitDate}`),
	)
	return earlierVisits(state, deps, signed.playerId, signed.visitId).filter(
		(one) => !later.has(one.visitDate),
	)
}
/**
 * The stored bytes of the player's report, and its description where it gives the very bytes that
 * were signed.
 */
async function playerPages(
	state: State,
	deps: Deps,
	signed: SignedVisit,
): Promise<Pick<Composed, 'layout' | 'bytes'>> {
	const { base64, sha256 } = openReport(deps, { visitId: signed.visitId })
	const protocol = protocolOfDigest(state, signed.protocol.digest)
	// the same call as at signing
	const layout = playerReport({
		visit: signed.visit,
		assessment: signed.assessment as Assessment,
		decisions: signed.decisions,
		clinic: signed.clinic,
		signedAt: signed.signedAt,
		signedOn: signed.signedOn,
		draft: false,
		earlier: earlierThen(state, deps, signed),
		...amendmentThen(deps, signed),
		...(protocol ? { protocol } : {}),
	})
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
	state: State,
	deps: Deps,
	{ visitId }: InputOf<'reports.page'>,
): Promise<OutputOf<'reports.page'>> {
	const signed = openVisit(deps, { visitId })
	const { layout } = await playerPages(state, deps, signed)
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
async function compose(
	state: State,
	deps: Deps,
	signed: SignedVisit,
	kind: OutboxKind,
	recipient: Recipient,
): Promise<Composed> {
	const { visitId, playerId } = signed
	const version = signed.version ?? 1
	const assessment = signed.assessment as Assessment
	const earlier = earlierThen(state, deps, signed)
	const protocol = protocolOfDigest(state, signed.protocol.digest)
	if (kind === 'player') return { ...(await playerPages(state, deps, signed)), version, playerId }
	const on = dayHere(deps.now())
	const { consents } = listConsents(state, deps, { playerId })
	const consentFor = (purpose: 'share-with-coach' | 'share-with-care') =>
		checkConsent(state, deps, playerId, purpose, recipient.name)
	const told = [...state.outbox.values()]
		.filter(
			({ item }) => item.visitId === visitId && item.kind === 'coach' && item.sentAt !== undefined,
		)
		.map(
			({ item }) =>
				`${kindWords.coach} to ${item.recipient.name}, ${dayOfMoment(item.sentAt ?? '')}.`,
		)
	const input: KindInput = {
		visit: signed.visit,
		assessment,
		decisions: signed.decisions,
		clinic: signed.clinic,
		signedAt: signed.signedAt,
		signedOn: signed.signedOn,
		draft: false,
		earlier,
		...amendmentThen(deps, signed),
		on,
		...(protocol ? { protocol } : {}),
		...(kind === 'referral'
			? {
					letter: {
						recipient: recipient.name,
						...(recipient.role === 'doctor'
							? { consent: consentFor('share-with-care').because }
							: {}),
					},
				}
			: {}),
		...(kind === 'coach'
			? { consents: [clubConsentOf(consents, coachConsent(state, deps, playerId, recipient))] }
			: {}),
		...(kind === 'insert-order' ? { order: { shipTo: signed.clinic.name } } : {}),
		...(kind === 'guardian' && told.length > 0 ? { sharedWithClub: told } : {}),
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
	return { layout, bytes: await draw(deps, layout), version, playerId }
}
/**
 * The consent a letter for the club rests on: the recipient's own where it goes to the club, else
 * any coach's that is in force.
 */
function coachConsent(
	state: State,
	deps: Deps,
	playerId: string,
	recipient: Recipient,
): string | undefined {
	const names =
		recipient.role === 'coach'
			? [recipient.name]
			: [
					...new Set(
						listConsents(state, deps, { playerId })
							.consents.filter((consent) => consent.purpose === 'share-with-coach')
							.map((consent) => consent.recipient),
					),
				]
	for (const name of names) {
		const answer = checkConsent(state, deps, playerId, 'share-with-coach', name)
		if (answer.inForce) return answer.consentId
	}
	return undefined
}
/** Composes a document of the latest version of a visit. The caller keeps it with keepDocument. */
export async function makeDocument(
	state: State,
	deps: Deps,
	{ visitId, kind, recipient }: { visitId: string; kind: OutboxKind; recipient: Recipient },
): Promise<DocumentValue> {
	const signed = mayLeave(state, deps, visitId)
	const { layout, bytes, version, playerId } = await compose(state, deps, signed, kind, recipient)
	return {
		documentId: randomUUID(),
		visitId,
		playerId,
		kind,
		version,
		sha256: sha256Of(bytes),
		base64: Buffer.from(bytes).toString('base64'),
		...(layout ? { layout } : {}),
		recipientId: recipient.recipientId,
		at: deps.now().toISOString(),
		by: state.acts().name,
	}
}
export function keepDocument({ store }: Deps, value: DocumentValue): void {
	const { documentId, visitId, playerId, kind, version, sha256, at } = value
	store.append({
		kind: 'document',
		at,
		value,
		about: playerId,
		thing: documentId,
		card: { documentId, visitId, kind, version, sha256, at },
	})
}
/** The stored bytes, checked against the digest the outbox knows. */
export function storedDocument(
	{ store }: Deps,
	documentId: string,
	sha256: string,
): { value: DocumentValue; bytes: Uint8Array } {
	const record = store.cardsOf('document', documentId).at(-1)?.record
	if (record === undefined)
		throw new Refusal(
			'The document is not in the records. Restore it from a backup, or prepare it anew.',
		)
	const value = store.read(record).value as DocumentValue
	const bytes = Buffer.from(value.base64, 'base64')
	if (value.sha256 !== sha256 || sha256Of(bytes) !== sha256)
		throw new Refusal(
			'The stored document does not match what was checked. It is not sent. Restore it from a ' +
				'backup, or prepare it anew.',
		)
	return { value, bytes }
}
/** A copy of the same pages that opens by the password only. */
export async function protectedCopy(
	deps: Deps,
	{ layout }: DocumentValue,
	password: string,
): Promise<Uint8Array> {
	if (!layout)
		throw new Refusal(
			'A copy with a password cannot be made: this report was drawn by an earlier version of ' +
				'the program and would not look the same. Print it or hand it over.',
		)
	return draw(deps, layout, password)
}
