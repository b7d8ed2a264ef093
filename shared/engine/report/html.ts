/**
 * A document as an accessible page: the same words, tables and figures as the PDF, in elements that
 * carry their meaning.
 */
import { type Speak, speakFrom } from '../words/speak.ts'
import type { Letterhead, LwDocument } from './document.ts'
import { blockHtml } from './html/blocks.ts'
import { element, escaped, listed, worded } from './html/elements.ts'
import { logoUrl } from './logo.ts'

/** Where the style sheet is, or its text (reportCss). */
type Style = { href: string } | { css: string }

/** The whole page. No script stands in it; a logo that cannot be drawn is left out. */
export function toHtml(document: LwDocument, style: Style): string {
	const t = speakFrom(document.furniture)
	const blocks = document.blocks.map((block, index) => blockHtml(block, `block-${index}`))
	return [
		'<!doctype html>',
		`<html lang="${document.language}">${head(document, style)}`,
		`<body class="print-${document.print ?? 'body'}">${letterhead(document.letterhead)}`,
		`<main>${titleAndSubject(document, t)}`,
		blocks.join('\n'),
		`${notes(document, t)}</main>`,
		`${element('footer', worded('p', document.footer))}</body></html>`,
		'',
	].join('\n')
}
function head({ title }: LwDocument, style: Style): string {
	const styled =
		'href' in style
			? `<link rel="stylesheet" href="${escaped(style.href)}">`
			: element('style', style.css.replaceAll('<', ''))
	return element(
		'head',
		'<meta charset="utf-8">' +
			'<meta name="viewport" content="width=device-width, initial-scale=1">' +
			worded('title', title) +
			styled,
	)
}
function letterhead({ clinicName, address, phone, email, logo }: Letterhead): string {
	const url = logoUrl(logo)
	const picture = url ? `<img src="${escaped(url)}" alt="" width="48" height="48">` : ''
	const contact = [address.join(', '), phone, email].flatMap((line) =>
		line ? [worded('p', line, ' class="contact"')] : [],
	)
	return element('header', picture + worded('p', clinicName, ' class="clinic"') + contact.join(''))
}
function titleAndSubject({ title, draft, subject }: LwDocument, t: Speak): string {
	const pairs = subject.map(([label, value]) =>
		element('div', worded('dt', label) + worded('dd', value)),
	)
	return (
		worded('h1', title) +
		(draft ? worded('p', t('page.draftMark'), ' class="draft"') : '') +
		element('dl', pairs.join(''))
	)
}
function notes({ notes: texts, notesApart }: LwDocument, t: Speak): string {
	if (texts.length === 0) return ''
	return element(
		'section',
		worded('h2', t('page.notes'), ' id="notes"') +
			element(notesApart ? 'ul' : 'ol', listed('li', texts)),
		' class="notes" aria-labelledby="notes"',
	)
}
