/** Reports of signed visits: their stored bytes, what they amend, and who was given one. */
import type { InputOf, OutputOf, SignedVisit } from '../../../shared/contract.ts'
import type { HandedOver } from '../../../shared/desk/records/amendment.ts'
import { printedChanges } from '../../../shared/desk/records/told.ts'
import type { Deps } from '../records/deps.ts'
import { Refusal } from '../records/refusal.ts'
import { sha256Of } from './drawing.ts'
import { hasNote } from './notes.ts'
import { latest, readVisit, type VisitVersion, versionsOf } from './visits.ts'

/** A report as a record of the kind 'report' holds it. */
export interface ReportValue {
	visitId: string
	base64: string
	sha256: string
	fileName: string
}
/** What a report says of an amendment: its version, and what differs from the version before. */
type Amendment = { version: number; changes: string[] } | Record<string, never>

/** Nothing for a first version. */
export function amendmentOf(
	before: SignedVisit | undefined,
	after: Pick<SignedVisit, 'visit' | 'decisions'>,
): Amendment {
	if (!before) return {}
	return { version: (before.version ?? 1) + 1, changes: printedChanges(before, after) }
}
/** The same of a version that stands in the records. */
export function amendmentThen(deps: Deps, signed: SignedVisit): Amendment {
	const before = versionsOf(deps, signed.visitId).find(
		(version) => version.card.version === (signed.version ?? 1) - 1,
	)
	return amendmentOf(before && readVisit(deps, before.record), signed)
}
/**
 * The stored bytes of a version, the latest unless named, checked against the digest in the signed
 * visit.
 */
export function openReport(
	deps: Deps,
	{ visitId, version }: InputOf<'reports.open'>,
): OutputOf<'reports.open'> {
	const versions = versionsOf(deps, visitId)
	const wanted = versionWanted(versions, version)
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
			'The stored report does not match what was signed. It is not shown. Restore it from a ' +
				'backup.',
		)
	const versioned = fileName.replace(/\.pdf$/, `-version-${wanted.card.version}.pdf`)
	return {
		base64,
		sha256: stored,
		fileName: wanted === versions.at(-1) ? fileName : versioned,
	}
}
function versionWanted(
	versions: readonly VisitVersion[],
	version: number | undefined,
): VisitVersion {
	const wanted =
		version === undefined ? versions.at(-1) : versions.find(({ card }) => card.version === version)
	if (wanted) return wanted
	const kept = versions.map(({ card }) => card.version).join(', ')
	throw new Refusal('This version of the visit is not in the records.', [
		{ path: 'version', message: `not kept, given ${version}, allowed: ${kept}` },
	])
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
	const version = visit.version ?? 1
	if (hasNote(deps, visitId, 'in-error'))
		throw new Refusal('This visit was entered in error. Its report is not to be handed out.')
	if (visit.signer?.role === 'student' && !hasNote(deps, visitId, 'countersign', version))
		throw new Refusal(
			'A student signed this visit. Have it countersigned before its report is handed out.',
		)
	const at = deps.now().toISOString()
	const value: HandedOver = { recipient, channel, version, at }
	deps.keep({
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
