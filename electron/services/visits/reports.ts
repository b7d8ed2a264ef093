/** Reports of signed visits: their stored bytes, what they amend, and who was given one. */
import type { InputOf, OutputOf, SignedVisit } from '../../../shared/contract.ts'
import type { HandedOver } from '../../../shared/desk/records/amendment.ts'
import { printedChanges } from '../../../shared/desk/records/told.ts'
import { need } from '../../../shared/engine/plain/need.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { Refusal } from '../records/refusal.ts'
import { hasNote } from './notes.ts'
import { keepFromReception } from './private-pages.ts'
import { readVisit, type VisitVersion } from './reading.ts'
import { type Signed, signedPage } from './signed-pages.ts'
import { latest, versionsOf } from './visits.ts'

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
	return amendmentOf(before && readVisit(deps, before), signed)
}
/**
 * The stored bytes of a version, the latest unless named, checked against the digest in the signed
 * visit.
 */
export function openReport(
	memory: Pick<Memory, 'people'>,
	deps: Deps,
	{ visitId, version }: InputOf<'reports.open'>,
): OutputOf<'reports.open'> {
	const { signed, suffix } = versionAsked(deps, visitId, version)
	keepFromReception(memory, 'player', signed.visit)
	const { bytes, sha256, fileName } = need(signedPage(deps, signed, 'player'), 'the report')
	return {
		base64: Buffer.from(bytes).toString('base64'),
		sha256,
		fileName: fileName.replace(/\.pdf$/, `${suffix}.pdf`),
	}
}
/** A version of a visit, the latest unless named, and what names it in a file's name. */
export function versionAsked(
	deps: Deps,
	visitId: string,
	version: number | undefined,
): { signed: Signed; suffix: string } {
	const versions = versionsOf(deps, visitId)
	const wanted = versionWanted(versions, version)
	return {
		signed: { record: wanted.record, visit: readVisit(deps, wanted) },
		suffix: wanted === versions.at(-1) ? '' : `-version-${wanted.card.version}`,
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
	throw new Refusal('visits.version-unknown', 'This version of the visit is not in the records.', [
		{ path: 'version', message: `not kept, given ${version}, allowed: ${kept}` },
	])
}
/**
 * Notes that a report left: refused before a student's visit is countersigned, or where it was
 * entered in error.
 */
export function handedOver(
	{ people }: Pick<Memory, 'people'>,
	deps: Deps,
	{ visitId, recipient, channel }: InputOf<'reports.handedOver'>,
): OutputOf<'reports.handedOver'> {
	const { record, visit } = latest(deps, visitId)
	const version = visit.version ?? 1
	if (hasNote(deps, visitId, 'in-error'))
		throw new Refusal(
			'visits.in-error',
			'This visit was entered in error. Its report is not to be handed out.',
		)
	if (visit.signer?.role === 'student' && !hasNote(deps, visitId, 'countersign', version))
		throw new Refusal(
			'visits.not-countersigned',
			'A student signed this visit. Have it countersigned before its report is handed out.',
		)
	const at = deps.now().toISOString()
	const value: HandedOver = { recipient, channel, version, at }
	deps.keep({
		kind: 'sending',
		at,
		follows: record,
		value: { ...value, visitId, reportSha256: visit.reportSha256, by: people.acts().name },
		about: visit.playerId,
		thing: visitId,
		card: value,
		does: channel === 'by-hand' ? 'export' : channel,
	})
	return {}
}
