/**
 * Documents as one accessible page each: from the document that was kept, or the text of its PDF.
 * Nothing is composed anew: a page says what was signed or given out, whatever the program would
 * write today.
 */

import type { InputOf, OutputOf, SignedVisit } from '../../../shared/contract.ts'
import { need } from '../../../shared/engine/plain/need.ts'
import { letterheadOf } from '../../../shared/engine/report/base.ts'
import type { Clinic } from '../../../shared/engine/report/clinic.ts'
import type { LwDocument } from '../../../shared/engine/report/document.ts'
import { reportCss } from '../../../shared/engine/report/html/style.ts'
import { toHtml } from '../../../shared/engine/report/html.ts'
import type { KeptDocument } from '../../../shared/engine/report/kept/form.ts'
import { readDocument } from '../../../shared/engine/report/kept/read.ts'
import type { KindName } from '../../../shared/engine/report/kinds.ts'
import { fullPaperName } from '../../../shared/engine/words/names.ts'
import { speakFrom } from '../../../shared/engine/words/speak.ts'
import { dateWords } from '../../../shared/engine/words/words.ts'
import { UnreadablePdf } from '../../pdf/unreadable.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { Refusal } from '../records/refusal.ts'
import { logosOf } from './logos.ts'
import { keepFromReception } from './private-pages.ts'
import { versionAsked } from './reports.ts'
import { type Signed, signedDocument, signedPage } from './signed-pages.ts'
import { latest } from './visits.ts'

type Page = OutputOf<'reports.page'>

/** @param fileName of the PDF that says the same */
export const pageOf = (document: LwDocument, fileName: string): Page => ({
	html: toHtml(document, { css: reportCss(document.letterhead.colour) }),
	fileName: fileName.replace(/\.pdf$/, '.html'),
})
/** The report of a visit, the latest version unless another is asked for. */
export async function accessiblePage(
	memory: Pick<Memory, 'people'>,
	deps: Deps,
	{ visitId, version }: InputOf<'reports.page'>,
): Promise<Page> {
	const { signed, suffix } = versionAsked(deps, visitId, version)
	keepFromReception(memory, 'player', signed.visit)
	return signedAsPage(deps, signed, 'player', suffix)
}
/** The sheet for the appointment. @throws Refusal where none was kept */
export async function sheetPage(
	deps: Deps,
	{ visitId }: InputOf<'reports.sheetPage'>,
): Promise<Page> {
	const signed = latest(deps, visitId)
	if (!signedPage(deps, signed, 'appointment'))
		throw new Refusal(
			'visits.no-page',
			'No sheet was kept: this visit was signed before sheets were. Open its report instead.',
		)
	return signedAsPage(deps, signed, 'appointment', '')
}
async function signedAsPage(
	deps: Deps,
	signed: Signed,
	kind: KindName,
	suffix: string,
): Promise<Page> {
	const { visit } = signed
	const page = need(signedPage(deps, signed, kind), 'the page')
	const document = await keptOrText(
		deps,
		{ bytes: page.bytes, document: signedDocument(signed, kind, page) },
		{ ...frameOf(visit), isNewer: visit.pages !== undefined },
	)
	deps.store.audit({
		function: 'export',
		objectRef: `report:${page.record}`,
		playerId: visit.playerId,
	})
	return pageOf(document, page.fileName.replace(/\.pdf$/, `${suffix}.pdf`))
}
/** What stands over the text of a page where its document cannot be read. */
export interface Frame {
	title: string
	clinic: Clinic
	subject: LwDocument['subject']
	/** ISO moment */
	madeAt: string
	/** a document was kept, in a form of a newer version */
	isNewer: boolean
}
export function frameOf({
	visit,
	clinic,
	signedAt,
	signedBy,
	signedOn,
}: SignedVisit): Omit<Frame, 'isNewer'> {
	const t = speakFrom()
	return {
		title: t('kept.title', { date: dateWords(visit.visitDate) }),
		clinic,
		subject: [
			[t('kept.player'), fullPaperName(visit.player)],
			[t('kept.signed'), `${dateWords(signedOn ?? signedAt.slice(0, 10))}, ${signedBy.name}`],
		],
		madeAt: signedAt,
	}
}
/** The document as it was kept; where it cannot be read, the text of its pages. */
export async function keptOrText(
	deps: Deps,
	{ bytes, document }: { bytes: Uint8Array; document: KeptDocument | undefined },
	frame: Frame,
): Promise<LwDocument> {
	const read = document && readDocument(document, logosOf(deps, frame.clinic))
	return read?.state === 'read' ? read.document : textOf(deps, bytes, frame)
}
/**
 * The text of the kept pages, page by page, under a sentence that says that it is no more than that.
 * @throws Refusal where the kept bytes have no text that can be read
 */
async function textOf(
	deps: Pick<Deps, 'textOfPdf'>,
	bytes: Uint8Array,
	{ title, clinic, subject, madeAt, isNewer }: Frame,
): Promise<LwDocument> {
	const t = speakFrom()
	const pages = await readPages(deps, bytes)
	return {
		title,
		kind: 'player',
		language: 'en',
		draft: false,
		letterhead: letterheadOf(clinic),
		subject,
		blocks: [
			{ kind: 'text', tone: 'strong', text: t(isNewer ? 'kept.textOfNewer' : 'kept.textOnly') },
			...pages.flatMap((paragraphs, index): LwDocument['blocks'] => [
				{ kind: 'heading', text: t('kept.page', { page: index + 1 }) },
				...paragraphs.map((text) => ({ kind: 'text' as const, text })),
			]),
		],
		notes: [],
		footer: clinic.name,
		createdAt: madeAt,
	}
}
async function readPages(deps: Pick<Deps, 'textOfPdf'>, bytes: Uint8Array): Promise<string[][]> {
	try {
		return await deps.textOfPdf(bytes)
	} catch (error) {
		if (!(error instanceof UnreadablePdf)) throw error
		throw new Refusal(
			'visits.no-accessible-page',
			'An accessible page cannot be made: this was kept as printed pages only, and their text ' +
				'cannot be read. Open the PDF instead.',
		)
	}
}
