/**
 * pdfmake drops characters its font lacks without a word: they are named before anything is
 * rendered.
 */
import { type Font, openSync } from 'fontkit'
import type { Block, LwDocument } from '../../shared/engine/report/document.ts'
import { sentences } from '../../shared/engine/words/en.table.ts'
import { fontFiles } from './fonts.ts'
import { UnprintableText } from './unprintable.ts'

let fonts: Font[] | undefined
const plain = (text: string) =>
	text
		.replaceAll('&lt;', '<')
		.replaceAll('&gt;', '>')
		.replaceAll('&quot;', '"')
		.replaceAll('&#39;', "'")
		.replaceAll('&amp;', '&')
const drawn = (svg: string) => [...svg.matchAll(/>([^<]+)</g)].map((found) => plain(found[1] ?? ''))
function textsOf(block: Block): string[] {
	switch (block.kind) {
		case 'heading':
		case 'text':
			return [block.text]
		case 'list':
			return block.items
		case 'actions':
			return block.items.flatMap((item) => [item.what, item.when, item.who])
		case 'alert':
			return [block.title, block.text]
		case 'table':
			return [block.caption, ...block.head, ...block.rows.flat()]
		case 'chart':
			return [
				block.caption,
				...block.head,
				...block.rows.flat().flatMap((cell) => [cell.text, cell.below ?? '']),
			]
		case 'figure':
		case 'true-size':
			return [block.caption, ...drawn(block.svg)]
		case 'signature':
			return [block.name, block.registration, block.date]
	}
}
/** Every text a document prints. */
export function textsOfDocument(document: LwDocument): string[] {
	const { letterhead } = document
	return [
		document.title,
		document.footer,
		document.running ?? '',
		sentences['page.draftMark'],
		sentences['page.notes'],
		sentences['page.number'],
		letterhead.clinicName,
		...letterhead.address,
		letterhead.phone ?? '',
		letterhead.email ?? '',
		...document.subject.flat(),
		...document.blocks.flatMap(textsOf),
		...document.notes,
	]
}
/**
 * @throws UnprintableText naming the first character that a font of the pages lacks, and the text
 * it stands in
 */
export function checkGlyphs(document: LwDocument): void {
	fonts ??= [fontFiles.normal, fontFiles.bold].map((file) => openSync(file) as Font)
	for (const text of textsOfDocument(document))
		for (const character of text.normalize('NFC')) {
			const code = character.codePointAt(0) ?? 0
			if (code !== 10 && !fonts.every((font) => font.hasGlyphForCodePoint(code)))
				throw new UnprintableText(
					`The character ${character} (U+${code.toString(16).toUpperCase().padStart(4, '0')}) ` +
						`in "${text.length > 60 ? `${text.slice(0, 57)}...` : text}" cannot be printed: no ` +
						'font of the report has it. Write it another way.',
				)
		}
}
