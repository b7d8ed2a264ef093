/** What stands round the blocks: letterhead, title, subject lines, basis notes, head and foot. */
import type { LwDocument } from '../../shared/engine/report/document.ts'
import type { Speak } from '../../shared/engine/words/speak.ts'
import { type LogoRoom, logoNode } from './logo-room.ts'
import { type Look, type Node, quiet, words } from './look.ts'

export interface PageFurniture {
	before: Node[]
	after: Node[]
	/** Of every page but the first. */
	head(page: number): Node | ''
	foot(page: number, pages: number): Node
}
/** @throws BadLogo where the clinic's logo cannot be drawn */
export const furnitureOf = (document: LwDocument, look: Look, t: Speak): PageFurniture => ({
	before: headOf(document, look),
	after: basisNotes(document, look, t),
	head: (page) => (page === 1 ? '' : runningHead(document, look)),
	foot: (page, pages) => foot(document, look, t, t('page.number', { page, pages })),
})

/** A square logo has the side; others about as much room, within these bounds; all points. */
const rooms = {
	letterhead: { side: 38, leastHigh: 18, mostHigh: 60, mostWide: 190 },
	slim: { side: 26, leastHigh: 13, mostHigh: 48, mostWide: 112 },
	wall: { side: 16, leastHigh: 12, mostHigh: 32, mostWide: 130 },
} as const satisfies Record<string, LogoRoom>
/** @throws BadLogo as above */
function headOf(document: LwDocument, look: Look): Node[] {
	if (document.print === 'wall') return wallHead(document, look)
	if (document.slim) return slimHead(document, look)
	return [letterhead(document, look), title(document, look), subject(document, look)]
}
/** @throws BadLogo where the clinic's logo cannot be drawn */
function letterhead(document: LwDocument, { page, scale }: Look): Node {
	const { clinicName, address, phone, email, colour } = document.letterhead
	const contact = [address.filter(Boolean).join(', '), [phone, email].filter(Boolean).join('   ')]
		.filter(Boolean)
		.join('\n')
	const { above, beside } = logoNode(document, rooms.letterhead, page.bodyPt)
	return {
		stack: [
			...above,
			{
				columns: [
					...beside,
					{
						stack: [
							words(clinicName, { bold: true, fontSize: Math.max(14, scale.body), color: colour }),
							words(contact, { fontSize: scale.label, color: quiet, margin: [0, 2, 0, 0] }),
						],
					},
				],
				columnGap: 8,
			},
			{
				canvas: [
					{ type: 'rect', x: 0, y: 6 + 2 * scale.gap, w: page.bodyPt, h: 2.2, color: colour },
				],
				margin: [0, 0, 0, 12 * scale.gap],
			},
		],
	}
}
/** A value as short as this goes to the next line whole: no figure stands there alone. */
const shortValue = 44
const wholeIfShort = (value: string): string =>
	value.length <= shortValue ? value.replaceAll(' ', '\u00a0') : value
/** Label and value one after the other; the first value in bold. */
const runningSubject = ({ subject: told }: LwDocument, between: string): Node[] =>
	told.flatMap(([label, value], index) => [
		{ text: `${index === 0 ? '' : between}${label}\u00a0`, color: quiet },
		{ text: wholeIfShort(value), bold: index === 0 },
	])
/** The page belongs to what is to be done: clinic, title and a player take a line each. */
function slimHead(document: LwDocument, look: Look): Node[] {
	const { page, scale } = look
	const { clinicName, address, phone, email, colour } = document.letterhead
	const contact = [
		address.filter(Boolean).join(', '),
		[phone, email].filter(Boolean).join('   '),
	].filter(Boolean)
	const { above, beside } = logoNode(document, rooms.slim, page.bodyPt)
	return [
		...above,
		{
			columns: [
				...beside,
				words(clinicName, { bold: true, fontSize: 13, color: colour, width: '*' }),
				words(contact.join('\n'), {
					fontSize: scale.label,
					color: quiet,
					alignment: 'right',
					width: 'auto',
				}),
			],
			columnGap: 8,
		},
		{ canvas: [{ type: 'rect', x: 0, y: 4, w: page.bodyPt, h: 1.8, color: colour }] },
		{ ...title(document, look), margin: [0, 8, 0, 1] },
		document.print === 'reading'
			? { text: runningSubject(document, '     '), fontSize: scale.cell, margin: [0, 0, 0, 5] }
			: subject(document, look),
	]
}
/** Two slim lines: on a wall the room belongs to the weeks. @throws BadLogo as above */
function wallHead(document: LwDocument, { page, scale }: Look): Node[] {
	const { clinicName, phone = '', colour } = document.letterhead
	const { above, beside } = logoNode(document, rooms.wall, page.bodyPt)
	return [
		...above,
		{
			columns: [
				...beside,
				words(clinicName, { bold: true, fontSize: scale.body, color: colour, width: '*' }),
				{ text: phone, fontSize: scale.label, color: quiet, width: 'auto' },
			],
			columnGap: 8,
		},
		{ canvas: [{ type: 'rect', x: 0, y: 2, w: page.bodyPt, h: 1.4, color: colour }] },
		{
			columns: [
				{ ...title(document, { scale, page, colour }), width: 'auto', noWrap: true },
				{
					text: runningSubject(document, '    '),
					fontSize: scale.label,
					alignment: 'right',
					margin: [0, 0.55 * scale.label, 0, 0],
				},
			],
			columnGap: 12,
			margin: [0, 4, 0, 0],
		},
	]
}
const title = (document: LwDocument, { scale }: Look): Node =>
	words(document.title, {
		is: 'title',
		fontSize: scale.title,
		bold: true,
		margin: [0, 0, 0, 6 * scale.gap],
		id: 'title',
		outline: true,
		outlineExpanded: true,
	})
/** Label and value pairs in two columns. */
function subject(document: LwDocument, { scale }: Look): Node {
	const rows = document.subject.map(([label, value], index) => [
		{ text: label, fontSize: scale.label, color: quiet },
		words(value, { fontSize: scale.cell, bold: index === 0 }),
	])
	const half = Math.ceil(rows.length / 2)
	const column = (shown: Node[][]) => ({
		is: 'facts',
		layout: 'noBorders',
		table: { widths: [scale.label * 8.6, '*'], body: shown.length > 0 ? shown : [['', '']] },
	})
	return {
		columns: [column(rows.slice(0, half)), column(rows.slice(half))],
		columnGap: 18,
		margin: [0, 0, 0, 4 * scale.gap],
	}
}
function basisNotes({ notes, notesApart }: LwDocument, { colour, scale }: Look, t: Speak): Node[] {
	if (notes.length === 0 || notesApart) return []
	return [
		words(t('page.notes'), {
			fontSize: scale.body,
			bold: true,
			color: colour,
			margin: [0, 12 * scale.gap, 0, 3],
			is: 'heading',
			headlineLevel: 1,
			outline: true,
			outlineParentId: 'title',
			closes: true,
		}),
		...notes.map((note, index) =>
			words(`${index + 1}  ${note}`, {
				fontSize: scale.note,
				color: quiet,
				margin: [0, 0, 0, 1.5],
			}),
		),
	]
}
/** What pdfmake has no room for over or under a page it leaves out without a word: lines stand close. */
const closeLines = 1
function runningHead(document: LwDocument, { page, scale }: Look): Node {
	const [side] = page.margins
	const aside = { fontSize: scale.label, lineHeight: closeLines, color: quiet }
	return {
		columns: [
			words(document.running ?? '', { ...aside, width: '*' }),
			{ text: document.title, ...aside, alignment: 'right', width: 'auto' },
		],
		columnGap: 16,
		margin: [side, document.print === 'wall' ? 12 : 20, side, 0],
	}
}
function foot(document: LwDocument, { page }: Look, t: Speak, pageNumber: string): Node {
	const [side] = page.margins
	const size = document.print === 'wall' ? 9 : 7.2
	const asks = document.notesApart && document.notes.length > 0
	const said = asks ? `${document.footer} ${t('page.notesApart')}` : document.footer
	return {
		columns: [
			words(said, { fontSize: size, lineHeight: closeLines, color: quiet, width: '*' }),
			{
				text: pageNumber,
				fontSize: Math.max(8.2, size),
				color: quiet,
				alignment: 'right',
				width: size * 9.2,
			},
		],
		columnGap: 16,
		margin: [side, 14, side, 0],
	}
}
