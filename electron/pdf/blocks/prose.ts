/** Headings, paragraphs, lists and the signature. */
import { present } from '../../../shared/engine/plain/present.ts'
import type { BlockOf } from '../../../shared/engine/report/document.ts'
import { bare, ink, type Look, type Node, quiet, words } from '../look.ts'

/** A paragraph shorter than this is not torn over two pages. */
const shortParagraph = 500

/** Of a heading that never stands on the first page, by which it is known as the page is laid out. */
export const notOnPageOneLevel = 0
/** Of what marks the end of page one. */
export const pageOneEndLevel = -1
/** Nothing to be seen: where it comes to stand tells whether page one holds what it must. */
export const pageOneEnd = (): Node => ({
	is: 'decoration',
	text: ' ',
	fontSize: 0.1,
	headlineLevel: pageOneEndLevel,
})
/** A bookmark of the file under its title; level 1 in the colour of the clinic. */
export function heading(
	{ text, level = 1, newPage, notOnPageOne }: BlockOf<'heading'>,
	{ colour, scale }: Look,
): Node {
	const firstLevel = level === 1
	return words(text, {
		fontSize: firstLevel ? scale.heading : scale.sub,
		bold: true,
		color: firstLevel ? colour : ink,
		margin: [0, (firstLevel ? 11 : 7) * scale.gap, 0, 5 * scale.gap],
		is: firstLevel ? 'heading' : 'sub',
		headlineLevel: notOnPageOne ? notOnPageOneLevel : level,
		outline: true,
		outlineParentId: 'title',
		...present({ pageBreak: newPage ? 'before' : undefined }),
	})
}
/** A text in its tone; a short one stays whole. */
export function paragraph({ text, tone = 'body' }: BlockOf<'text'>, { scale }: Look): Node {
	const node = words(text, {
		fontSize: scale[tone],
		bold: tone === 'strong' || tone === 'lead' || tone === 'headline',
		color: tone === 'small' ? quiet : ink,
		...(tone === 'headline' && { lineHeight: 1.05 }),
		margin: [0, tone === 'headline' ? 6 * scale.gap : 0, 0, 5 * scale.gap],
	})
	return text.length < shortParagraph ? { unbreakable: true, stack: [node] } : node
}
/** Bullets, or numbers where the order counts. */
export function list({ ordered, items }: BlockOf<'list'>, look: Look): Node {
	const { scale } = look
	const margin = [0, 0, 0, 4 * scale.gap]
	const said = items.map((text) => words(text, { margin: [0, 0, 0, 3 * scale.gap] }))
	return ordered ? { ...numbered(said, look), margin } : { ul: said, margin }
}
/** A row an item, so that its number is read with it. */
const numbered = (said: readonly Node[], { scale }: Look): Node => ({
	is: 'items',
	layout: bare(4),
	table: {
		dontBreakRows: true,
		widths: [1.4 * scale.body, '*'],
		body: said.map((item, index) => [{ text: `${index + 1}.` }, item]),
	},
})
/** Name, registration and date, together on one page. */
export function signature(
	{ name, registration, date, inline }: BlockOf<'signature'>,
	{ scale }: Look,
): Node {
	const aside = { color: quiet, fontSize: scale.cell }
	const signed = { bold: true, fontSize: scale.body + 1 }
	const lines = inline
		? [
				{
					text: [
						{ text: `${name}   `, ...signed },
						{ text: registration, ...aside },
					],
				},
			]
		: [words(name, signed), words(registration, aside)]
	return {
		unbreakable: true,
		// what is last asks for no room below it: that room could begin a page of its own
		margin: inline ? [0, 8 * scale.gap, 0, 0] : [0, 12 * scale.gap, 0, 6 * scale.gap],
		stack: [...lines, words(date, aside)],
	}
}
