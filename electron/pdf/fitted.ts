/** How large the letters of a document are and how close its lines, and where its pages end. */
import { need } from '../../shared/engine/plain/need.ts'
import type { LwDocument } from '../../shared/engine/report/document.ts'
import { definitionOf, type Laid, type Protection } from './layout.ts'
import { pageOf, type Setting, settingsOf } from './page.ts'
import { type LaidOut, laidOut } from './print/print.ts'
import { strandedOn } from './tail.ts'

/** A document laid out in one of its settings. */
interface Tried extends LaidOut {
	setting: Setting
	/** What must stand on the first page went on to the next. */
	overflows: boolean
	/** Where too little stands on the last page alone. */
	stranded: ReturnType<typeof strandedOn>
}
type Lay = (setting: Setting, endBefore?: number) => Tried

/** What must stand on page one does, and the next page holds the rest. */
const fewPages = 2
/**
 * In the largest letters in which what must stand on one page does, in the usual setting if in none;
 * in closer lines where that spares a page.
 */
function inLargestLetters(document: LwDocument, lay: Lay): Tried {
	let usual: Tried | undefined
	let fitting: Tried | undefined
	for (const setting of settingsOf(document)) {
		const tried = lay(setting)
		usual ??= tried
		const isCloser = setting.isClose && !tried.overflows
		if (fitting) return isCloser && tried.count < fitting.count ? tried : fitting
		if (tried.overflows) continue
		if (tried.count <= fewPages || setting.isClose) return tried
		fitting = tried
	}
	return need(fitting ?? usual, 'a setting')
}
/**
 * Nothing stands alone on a last page: closer lines take it back to the page before, or else the
 * last part of that page goes over to it, whatever the kind of document.
 */
function withoutStranded(usual: Tried, lay: Lay): Tried {
	if (!usual.stranded) return usual
	const better = (tried: Tried) => !tried.overflows || usual.overflows
	const close = lay({ ...usual.setting, isClose: true })
	if (close.count < usual.count && better(close)) return close
	const { endBefore } = usual.stranded
	if (endBefore === undefined) return usual
	const ended = lay(usual.setting, endBefore)
	return ended.count === usual.count && better(ended) ? ended : usual
}
/** The pages of a document, laid out and not yet drawn. @throws BadLogo */
export function fitted(document: LwDocument, protection?: Protection): LaidOut {
	const page = pageOf(document)
	const lay: Lay = (setting, endBefore) => {
		const laid: Laid = { overflows: false }
		const definition = definitionOf(document, { protection, setting, laid, endBefore })
		const { content } = definition
		const pages = laidOut(definition)
		const stranded = strandedOn(content, pages.stands, page)
		return { ...pages, setting, overflows: laid.overflows, stranded }
	}
	return withoutStranded(inLargestLetters(document, lay), lay)
}
