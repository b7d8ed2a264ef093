/**
 * The pages of a signed visit as they were kept at signing: bytes and document, bound by digest to
 * the visit. They are read, never made again.
 */
import type { SignedVisit } from '../../../shared/contract.ts'
import type { KeptDocument } from '../../../shared/engine/report/kept/form.ts'
import { keptDigest } from '../../../shared/engine/report/kept/keep.ts'
import type { KindName } from '../../../shared/engine/report/kinds.ts'
import type { Deps } from '../records/deps.ts'
import { Refusal } from '../records/refusal.ts'
import { sha256Of } from './drawing.ts'

export interface SignedPage {
	/** the record it stands in */
	record: string
	bytes: Uint8Array
	sha256: string
	fileName: string
	/** the document it was drawn from; version 0.1.0 kept none */
	document: KeptDocument | undefined
}
/** A version of a visit with its record. */
export interface Signed {
	record: string
	visit: SignedVisit
}

const notAsSigned = (): Refusal =>
	new Refusal(
		'visits.page-differs',
		'The stored page does not match what was signed. It is not shown. Restore it from a backup.',
	)
/** The digest that the visit names of a page; undefined where the page was not kept. */
function digestNamed({ pages, reportSha256 }: SignedVisit, kind: KindName): string | undefined {
	if (kind === 'player') return reportSha256
	return pages?.find((page) => page.kind === kind)?.sha256
}
/**
 * A page of a version of a visit, checked against the digest in the visit; undefined where the kind
 * did not apply when it was signed, or was not kept yet.
 * @throws Refusal where it is damaged, altered or gone
 */
export function signedPage(deps: Deps, signed: Signed, kind: KindName): SignedPage | undefined {
	const sha256 = digestNamed(signed.visit, kind)
	if (sha256 === undefined) return undefined
	const found = find(deps, signed, kind)
	if (!found)
		throw new Refusal(
			'visits.no-page',
			kind === 'player'
				? 'No report is stored for this visit.'
				: 'This page was kept when the visit was signed and is gone. Restore it from a backup.',
		)
	const bytes = Buffer.from(found.base64, 'base64')
	if (found.sha256 !== sha256 || sha256Of(bytes) !== sha256) throw notAsSigned()
	const { record, fileName, document } = found
	return { record, bytes, sha256, fileName, document }
}
/**
 * The document of a page, checked like its bytes; undefined where version 0.1.0 kept none, or a
 * newer one keeps it in a form that is not known here.
 * @throws Refusal where it is not what was signed
 */
export function signedDocument(
	{ visit }: Signed,
	kind: KindName,
	{ document }: SignedPage,
): KeptDocument | undefined {
	const named = visit.pages?.find((page) => page.kind === kind)?.documentSha256
	if (named === undefined || !document) return undefined
	if (keptDigest(document) !== named) throw notAsSigned()
	return document
}
/** @throws Refusal where the pages are there and cannot be read */
function find(deps: Deps, { record: visitRecord, visit }: Signed, kind: KindName) {
	let trouble: Refusal | undefined
	for (const { record } of deps.store.cardsOf('report', visit.visitId).reverse()) {
		try {
			const { value, follows } = deps.openRecord('report', record)
			if (follows !== visitRecord) continue
			const page = kind === 'player' ? value : value.further?.find((one) => one.kind === kind)
			return page && { record, ...page }
		} catch (error) {
			if (!(error instanceof Refusal)) throw error
			trouble = error
		}
	}
	if (trouble)
		throw new Refusal(
			'visits.unreadable-pages',
			`The pages of this visit cannot be read. ${trouble.message}`,
		)
	return undefined
}
