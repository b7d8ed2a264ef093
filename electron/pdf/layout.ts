/** Document to pdfmake definition: the page, its furniture and its content. */
import type { LwDocument } from '../../shared/engine/report/document.ts'
import { type Speak, speakFrom } from '../../shared/engine/words/speak.ts'
import { patternTiles } from './blocks/patterns.ts'
import { breakBefore } from './flow.ts'
import { furnitureOf } from './furniture.ts'
import { ink, type Look } from './look.ts'
import { leadingOf, pageOf, type Setting, scaleOf, usualSetting } from './page.ts'
import type { Definition } from './print/print.ts'
import { contentOf } from './sheets.ts'
import { placeParts } from './tail.ts'

export interface Protection {
	/** Opens the copy. */
	password: string
	/** Changes its permissions; never given away. */
	owner: string
}
/** What is noted while a document is laid out. */
export interface Laid {
	/** What must stand on the first page went on to the next. */
	overflows: boolean
}
interface Options {
	protection?: Protection | undefined
	setting?: Setting
	laid?: Laid
	/** A page ends before that node of the flow (`flowOf`). */
	endBefore?: number | undefined
}
/**
 * A fresh definition each time: pdfmake writes into what it is given. With protection the copy
 * opens by password only (AES-256); printing and reading aloud stay allowed.
 */
export function definitionOf(
	document: LwDocument,
	{ protection, setting = usualSetting, laid = { overflows: false }, endBefore }: Options = {},
): Definition {
	const t = speakFrom(document.furniture)
	const page = pageOf(document)
	const scale = scaleOf(document, setting)
	const look: Look = { colour: document.letterhead.colour, page, scale }
	const furniture = furnitureOf(document, look, t)
	const content = contentOf(document, look, furniture)
	placeParts(content, endBefore)
	return {
		protection,
		title: document.title,
		author: document.letterhead.clinicName,
		createdAt: document.createdAt,
		language: document.language,
		pageSize: page.size,
		pageOrientation: page.orientation,
		pageMargins: page.margins,
		patterns: patternTiles(),
		defaultStyle: {
			font: 'Noto',
			fontSize: scale.body,
			lineHeight: leadingOf(document, setting.isClose),
			color: ink,
		},
		watermark: draftMark(document, t),
		header: furniture.head,
		footer: furniture.foot,
		pageBreakBefore: breakBefore(page, document, laid),
		content,
	}
}
function draftMark({ draft }: LwDocument, t: Speak): object | undefined {
	if (!draft) return undefined
	return {
		text: t('page.draftMark'),
		color: '#8a8a8a',
		opacity: 0.13,
		bold: true,
		angle: -50,
	}
}
