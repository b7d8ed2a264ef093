/** The sheet for the appointment as it was kept at signing: shown in short, opened and printed. */
import type { InputOf, OutputOf } from '../../../shared/contract.ts'
import { present } from '../../../shared/engine/plain/present.ts'
import type { LwDocument } from '../../../shared/engine/report/document.ts'
import { readDocument } from '../../../shared/engine/report/kept/read.ts'
import type { Deps } from '../records/deps.ts'
import { pdfOf } from './drawing.ts'
import { logosOf } from './logos.ts'
import { signedDocument, signedPage } from './signed-pages.ts'
import { latest } from './visits.ts'

/** Of the latest version; none where it was signed before sheets were kept. Nothing is made anew. */
export function openSheet(
	deps: Deps,
	{ visitId }: InputOf<'reports.sheet'>,
): OutputOf<'reports.sheet'> {
	const signed = latest(deps, visitId)
	const page = signedPage(deps, signed, 'appointment')
	if (!page) return {}
	const kept = signedDocument(signed, 'appointment', page)
	const read = kept && readDocument(kept, logosOf(deps, signed.visit.clinic))
	const pdf = pdfOf(page.bytes, page.fileName)
	return { sheet: { pdf, ...inShort(read?.state === 'read' ? read.document.blocks : []) } }
}
/** What it says first: what is held, and the plan in a few facts. */
function inShort(blocks: LwDocument['blocks']) {
	const alert = blocks.find((block) => block.kind === 'alert')
	const facts = blocks.find((block) => block.kind === 'facts')
	return present({ held: alert?.title, facts: facts?.rows ?? [] })
}
