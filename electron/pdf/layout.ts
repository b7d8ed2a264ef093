/** Document to pdfmake definition: the type scale, the grid, the page furniture. */
import type { Block, LwDocument } from '../../shared/report/document.ts'

type Node = Record<string, unknown>
const ink = '#1d2726'
const quiet = '#56625f'
const hair = '#cfd6d2'
const wash = '#f3f1ea'
const width = 595.28 - 2 * 54

const lines = (last: (row: number, rows: number) => number, colour: string) => ({ hLineWidth: (row: number, node: { table: { body: unknown[] } }) => last(row, node.table.body.length), vLineWidth: () => 0, hLineColor: () => colour, paddingLeft: () => 6, paddingRight: () => 6, paddingTop: () => 3.5, paddingBottom: () => 3.5 })

const draw: { [K in Block['kind']]: (block: Extract<Block, { kind: K }>, colour: string) => Node } = {
	heading: ({ text }, colour) => ({ text, fontSize: 13.5, bold: true, color: colour, margin: [0, 14, 0, 5], headlineLevel: 1 }),
	text: ({ text, tone = 'body' }) => ({ text, fontSize: tone === 'small' ? 8.2 : 10, bold: tone === 'strong', color: tone === 'small' ? quiet : ink, margin: [0, 0, 0, 5] }),
	list: ({ ordered, items }) => ({ [ordered ? 'ol' : 'ul']: items.map((text) => ({ text, margin: [0, 0, 0, 3] })), margin: [0, 0, 0, 4] }),
	actions: ({ items }, colour) => ({
		unbreakable: true,
		margin: [0, 0, 0, 4],
		layout: lines((row, rows) => (row === 0 || row === rows ? 0 : 0.6), hair),
		table: { widths: [16, '*', 96, 92], body: items.map((item, index) => [{ text: String(index + 1), bold: true, fontSize: 14, color: colour }, { text: item.what, bold: true }, { text: item.when, color: quiet, fontSize: 9 }, { text: item.who, color: quiet, fontSize: 9 }].map((cell) => ({ ...cell, fillColor: wash }))) },
	}),
	alert: ({ title, text }) => ({
		unbreakable: true,
		margin: [0, 6, 0, 8],
		layout: { hLineWidth: () => 0, vLineWidth: (column: number) => (column === 0 ? 4 : 0), vLineColor: () => '#a3262a', paddingLeft: () => 10, paddingRight: () => 8, paddingTop: () => 7, paddingBottom: () => 7 },
		table: { widths: ['*'], body: [[{ fillColor: '#fbeeec', stack: [{ text: title, bold: true, fontSize: 11.5, color: '#8d1f23', margin: [0, 0, 0, 3] }, { text }] }]] },
	}),
	table: ({ caption, head, rows, widths }, colour) => ({
		// a short table stays whole, with its caption; a long one breaks between rows under a repeated head
		unbreakable: rows.length <= 6,
		stack: [
			{ text: caption, fontSize: 8.6, color: quiet, margin: [0, 3, 0, 2], headlineLevel: 2 },
			{
				layout: lines((row, count) => (row === 0 ? 0 : row === 1 ? 1.2 : row === count ? 0.6 : 0.4), hair),
				table: { headerRows: 1, dontBreakRows: true, keepWithHeaderRows: 1, widths: widths ?? head.map((_, index) => (index === 0 ? '*' : 'auto')), body: [head.map((text) => ({ text, bold: true, fontSize: 8.8, color: colour })), ...rows.map((row) => head.map((_, index) => ({ text: row[index] ?? '', fontSize: 9.2 })))] },
			},
		],
		margin: [0, 0, 0, 7],
	}),
	figure: ({ caption, svg, widthPt, heightPt }) => ({ unbreakable: true, stack: [{ svg, width: Math.min(widthPt, width), height: heightPt, alignment: 'center' }, { text: caption, fontSize: 8.6, color: quiet, alignment: 'center', margin: [0, 2, 0, 6] }] }),
	signature: ({ name, registration, date }) => ({ unbreakable: true, margin: [0, 12, 0, 6], stack: [{ text: name, bold: true, fontSize: 11 }, { text: registration, color: quiet, fontSize: 9 }, { text: date, color: quiet, fontSize: 9 }] }),
}

function letterhead({ letterhead: { clinicName, address, phone, email, colour, logo } }: LwDocument): Node {
	const contact = [address.filter(Boolean).join(', '), [phone, email].filter(Boolean).join('   ')].filter(Boolean).join('\n')
	const picture = logo ? [logo.mediaType === 'image/svg+xml' ? { svg: Buffer.from(logo.base64, 'base64').toString('utf8'), fit: [38, 38], width: 44 } : { image: `data:${logo.mediaType};base64,${logo.base64}`, fit: [38, 38], width: 44 }] : []
	return {
		stack: [
			{ columns: [...picture, { stack: [{ text: clinicName, bold: true, fontSize: 14, color: colour }, { text: contact, fontSize: 8.4, color: quiet, margin: [0, 2, 0, 0] }] }], columnGap: 8 },
			{ canvas: [{ type: 'rect', x: 0, y: 8, w: width, h: 2.2, color: colour }], margin: [0, 0, 0, 12] },
		],
	}
}
/** Keeps a heading with what follows it: the page ends before a heading that would stand alone at its foot. */
function breakBefore(node: { headlineLevel?: number; startPosition?: { top: number; verticalRatio?: number } }, container?: { getFollowingNodesOnPage?: () => unknown[] }): boolean {
	if (node.headlineLevel === undefined) return false
	const following = container?.getFollowingNodesOnPage?.() ?? []
	return following.length === 0 || (node.headlineLevel === 1 && (node.startPosition?.top ?? 0) > 620)
}

/** A fresh definition each time: pdfmake writes into what it is given. */
export function definitionOf(document: LwDocument): object {
	const { colour } = document.letterhead
	const blocks = document.blocks.map((block) => (draw[block.kind] as (block: Block, colour: string) => Node)(block, colour))
	const subject = document.subject.map(([label, value]) => [{ text: label, fontSize: 8.4, color: quiet }, { text: value, fontSize: 9.6, bold: label === 'Player' }])
	const half = Math.ceil(subject.length / 2)
	const column = (rows: Node[][]) => ({ layout: 'noBorders', table: { widths: [72, '*'], body: rows.length > 0 ? rows : [['', '']] } })
	const notes = document.notes.length === 0 ? [] : [{ text: 'Where this comes from', fontSize: 10, bold: true, color: colour, margin: [0, 12, 0, 3], headlineLevel: 1 }, ...document.notes.map((note, index) => ({ text: `${index + 1}  ${note}`, fontSize: 7.4, color: quiet, margin: [0, 0, 0, 1.5] }))]
	const running = document.subject.find(([label]) => label === 'Player')?.[1] ?? ''
	return {
		version: '1.7',
		language: document.language,
		displayTitle: true,
		compress: true,
		pageSize: 'A4',
		pageMargins: [54, 46, 54, 62],
		info: { title: document.title, author: document.letterhead.clinicName, creator: 'Lastwright', producer: 'Lastwright', creationDate: new Date(document.createdAt), modDate: new Date(document.createdAt) },
		defaultStyle: { font: 'Noto', fontSize: 10, lineHeight: 1.16, color: ink },
		...(document.draft ? { watermark: { text: 'DRAFT', color: '#8a8a8a', opacity: 0.13, bold: true, angle: -50 } } : {}),
		header: (page: number) => (page === 1 ? '' : { columns: [{ text: running, fontSize: 8.4, color: quiet }, { text: document.title, fontSize: 8.4, color: quiet, alignment: 'right' }], margin: [54, 24, 54, 0] }),
		footer: (page: number, pages: number) => ({ columns: [{ text: document.footer, fontSize: 7.2, color: quiet, width: '*' }, { text: `page ${page} of ${pages}`, fontSize: 8.2, color: quiet, alignment: 'right', width: 66 }], columnGap: 16, margin: [54, 14, 54, 0] }),
		pageBreakBefore: breakBefore,
		content: [letterhead(document), { text: document.title, fontSize: 20, bold: true, margin: [0, 0, 0, 6] }, { columns: [column(subject.slice(0, half)), column(subject.slice(half))], columnGap: 18, margin: [0, 0, 0, 4] }, ...blocks, ...notes],
	}
}
