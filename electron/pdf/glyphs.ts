/** pdfmake drops characters its font lacks without a word: they are named before anything is rendered. */
import { type Font, openSync } from 'fontkit'
import type { Block, LwDocument } from '../../shared/report/document.ts'
import { fontFiles } from './fonts.ts'

export class UnprintableText extends Error {
	override readonly name = 'UnprintableText'
}
let font: Font | undefined
function textsOf(block: Block): string[] {
	switch (block.kind) {
		case 'heading': case 'text': return [block.text]
		case 'list': return block.items
		case 'actions': return block.items.flatMap((item) => [item.what, item.when, item.who])
		case 'alert': return [block.title, block.text]
		case 'table': return [block.caption, ...block.head, ...block.rows.flat()]
		case 'figure': return [block.caption, ...[...block.svg.matchAll(/>([^<]+)</g)].map((found) => found[1] ?? '')]
		case 'signature': return [block.name, block.registration, block.date]
	}
}
/** Every text a document prints. */
export function textsOfDocument(document: LwDocument): string[] {
	const { letterhead } = document
	return [document.title, document.footer, letterhead.clinicName, ...letterhead.address, letterhead.phone ?? '', letterhead.email ?? '', ...document.subject.flat(), ...document.blocks.flatMap(textsOf), ...document.notes]
}
/** @throws UnprintableText naming the first character the font lacks and the text it stands in */
export function checkGlyphs(document: LwDocument): void {
	font ??= openSync(fontFiles.normal) as Font
	for (const text of textsOfDocument(document))
		for (const character of text.normalize('NFC')) {
			const code = character.codePointAt(0) ?? 0
			if (code !== 10 && !font.hasGlyphForCodePoint(code)) throw new UnprintableText(`The character ${character} (U+${code.toString(16).toUpperCase().padStart(4, '0')}) in "${text.length > 60 ? `${text.slice(0, 57)}...` : text}" cannot be printed: no font of the report has it. Write it another way.`)
		}
}
