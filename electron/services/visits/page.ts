/** A signed report as one accessible page: from the document that was kept, or the text of its PDF. */

import type { InputOf, OutputOf, SignedVisit } from '../../../shared/contract.ts'
import { need } from '../../../shared/engine/plain/need.ts'
import { letterheadOf } from '../../../shared/engine/report/base.ts'
import type { LwDocument } from '../../../shared/engine/report/document.ts'
import { reportCss } from '../../../shared/engine/report/html/style.ts'
import { toHtml } from '../../../shared/engine/report/html.ts'
import { readDocument } from '../../../shared/engine/report/kept/read.ts'
import { fullPaperName } from '../../../shared/engine/words/names.ts'
import { speakFrom } from '../../../shared/engine/words/speak.ts'
import { dateWords } from '../../../shared/engine/words/words.ts'
import { UnreadablePdf } from '../../pdf/unreadable.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { Refusal } from '../records/refusal.ts'
import { logosOf } from './logos.ts'
import { keepFromReception } from './private-pages.ts'
import { type SignedPage, signedDocument, signedPage } from './signed-pages.ts'
import { latest } from './visits.ts'

/**
 * The latest report of a visit as one accessible page. Nothing is composed anew: the page says what
 * was signed, whatever the program would write today.
 */
export async function accessiblePage(
	memory: Pick<Memory, 'people'>,
	deps: Deps,
	{ visitId }: InputOf<'reports.page'>,
): Promise<OutputOf<'reports.page'>> {
	const signed = latest(deps, visitId)
	const { visit } = signed
	keepFromReception(memory, 'player', visit)
	const report = need(signedPage(deps, signed, 'player'), 'the report')
	const kept = signedDocument(signed, 'player', report)
	const read = kept && readDocument(kept, logosOf(deps, visit.clinic))
	const document =
		read?.state === 'read'
			? read.document
			: await textOf(deps, visit, report, visit.pages ? 'kept.textOfNewer' : 'kept.textOnly')
	deps.store.audit({
		function: 'export',
		objectRef: `report:${report.record}`,
		playerId: visit.playerId,
	})
	return {
		html: toHtml(document, { css: reportCss(document.letterhead.colour) }),
		fileName: `report-${visit.visit.visitDate}.html`,
	}
}
/**
 * The text of the kept pages, page by page, under a sentence that says that it is no more than that.
 * @throws Refusal where the kept bytes have no text that can be read
 */
async function textOf(
	deps: Pick<Deps, 'textOfPdf'>,
	{ visit, clinic, signedAt, signedBy, signedOn }: SignedVisit,
	{ bytes }: SignedPage,
	why: 'kept.textOnly' | 'kept.textOfNewer',
): Promise<LwDocument> {
	const t = speakFrom()
	const pages = await readPages(deps, bytes)
	return {
		title: t('kept.title', { date: dateWords(visit.visitDate) }),
		kind: 'player',
		language: 'en',
		draft: false,
		letterhead: letterheadOf(clinic),
		subject: [
			[t('kept.player'), fullPaperName(visit.player)],
			[t('kept.signed'), `${dateWords(signedOn ?? signedAt.slice(0, 10))}, ${signedBy.name}`],
		],
		blocks: [
			{ kind: 'text', tone: 'strong', text: t(why) },
			...pages.flatMap((paragraphs, index): LwDocument['blocks'] => [
				{ kind: 'heading', text: t('kept.page', { page: index + 1 }) },
				...paragraphs.map((text) => ({ kind: 'text' as const, text })),
			]),
		],
		notes: [],
		footer: clinic.name,
		createdAt: signedAt,
	}
}
async function readPages(deps: Pick<Deps, 'textOfPdf'>, bytes: Uint8Array): Promise<string[][]> {
	try {
		return await deps.textOfPdf(bytes)
	} catch (error) {
		if (!(error instanceof UnreadablePdf)) throw error
		throw new Refusal(
			'visits.no-accessible-page',
			'An accessible page cannot be made: this report was kept as printed pages only, and their ' +
				'text cannot be read. Open the report instead.',
		)
	}
}
