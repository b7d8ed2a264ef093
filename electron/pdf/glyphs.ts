/**
 * pdfmake drops characters its font lacks without a word: they are named before anything is
 * rendered.
 */
import { unprintableIn } from '../../shared/engine/plain/printable.ts'
import {
	type BlockKind,
	type BlockOf,
	blocksIn,
	byKind,
	cellTexts,
	type ForEachKind,
	type LwDocument,
} from '../../shared/engine/report/document.ts'
import { documentSentences } from '../../shared/engine/words/speak.ts'
import { UnprintableText } from './unprintable.ts'

/** What the drawing's own text says, without the escapes of the file. */
const plain = (text: string) =>
	text
		.replaceAll('&lt;', '<')
		.replaceAll('&gt;', '>')
		.replaceAll('&quot;', '"')
		.replaceAll('&#39;', "'")
		.replaceAll('&amp;', '&')
const drawn = (svg: string) => [...svg.matchAll(/>([^<]+)</g)].map((found) => plain(found[1] ?? ''))
const drawing = ({ caption, svg }: BlockOf<'figure' | 'true-size'>) => [caption, ...drawn(svg)]
const textsOf: ForEachKind<Exclude<BlockKind, 'beside'>, [], string[]> = {
	heading: ({ text }) => [text],
	text: ({ text }) => [text],
	list: ({ items }) => items,
	actions: ({ items }) => items.flatMap(({ what, when, who }) => [what, when, who]),
	alert: ({ title, text }) => [title, text],
	facts: ({ title = '', rows }) => [title, ...rows.flatMap(({ label, text }) => [label, text])],
	table: ({ caption, head, rows }) => [caption, ...head, ...rows.flat()],
	chart: ({ caption, head, rows }) => [caption, ...head, ...rows.flat().flatMap(cellTexts)],
	figure: drawing,
	'true-size': drawing,
	signature: ({ name, registration, date }) => [name, registration, date],
}
/** Every text a document prints. @internal */
export function textsOfDocument(document: LwDocument): string[] {
	const { letterhead } = document
	return [
		document.title,
		document.footer,
		document.running ?? '',
		documentSentences['page.draftMark'],
		documentSentences['page.notes'],
		documentSentences['page.notesApart'],
		documentSentences['page.number'],
		letterhead.clinicName,
		...letterhead.address,
		letterhead.phone ?? '',
		letterhead.email ?? '',
		...document.subject.flat(),
		...blocksIn(document.blocks).flatMap((block) => byKind(textsOf, block)),
		...document.notes,
	]
}
/**
 * @throws UnprintableText naming the first character that a font of the pages lacks, and the text
 * it stands in
 */
export function checkGlyphs(document: LwDocument): void {
	for (const text of textsOfDocument(document)) {
		const [character] = unprintableIn(text)
		if (character !== undefined) throw new UnprintableText(unprintableWords(character, text))
	}
}
function unprintableWords(character: string, text: string): string {
	const hexadecimal = (character.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0')
	const quoted = text.length > 60 ? `${text.slice(0, 57)}...` : text
	return (
		`The character ${character} (U+${hexadecimal}) in "${quoted}" cannot be printed: no ` +
		'font of the report has it. Write it another way.'
	)
}
