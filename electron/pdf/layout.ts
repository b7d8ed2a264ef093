/** Document to pdfmake definition: the type scale, the grid, the page furniture. */

import type { Block, ChartCell, LwDocument, Pattern } from '../../shared/engine/report/document.ts'
import { safeLogo } from '../../shared/engine/report/logo.ts'
import { speakFrom } from '../../shared/engine/words/speak.ts'
import { type Page, pageOf, ptPerMm, type Scale, scales, trueSizePage } from './page.ts'

type Node = Record<string, unknown>
type FlowBlock = Exclude<Block, { kind: 'true-size' }>
interface Look {
	colour: string
	page: Page
	scale: Scale
}
export interface Protection {
	/** Opens the copy. */
	password: string
	/** Changes its permissions; never given away. */
	owner: string
}
const ink = '#1d2726'
const quiet = '#56625f'
const hair = '#cfd6d2'
const wash = '#f3f1ea'
/** The field beside a letter that shows its pattern, in points. */
const swatch = { w: 30, h: 16 }
/** Tiles of the patterns, in points. */
const tiles: Record<Exclude<Pattern, 'plain'>, object> = {
	// the page has its second axis downwards: a line to a larger y falls to the right
	rising: {
		boundingBox: [0, 0, 8, 8],
		xStep: 8,
		yStep: 8,
		pattern: '1.6 w -1 9 m 9 -1 l s -1 1 m 1 -1 l s 7 9 m 9 7 l s',
	},
	falling: {
		boundingBox: [0, 0, 8, 8],
		xStep: 8,
		yStep: 8,
		pattern: '1.6 w -1 -1 m 9 9 l s -1 7 m 1 9 l s 7 -1 m 9 1 l s',
	},
	dots: { boundingBox: [0, 0, 8, 8], xStep: 8, yStep: 8, pattern: '2.5 2.5 3 3 re f' },
	bars: { boundingBox: [0, 0, 8, 8], xStep: 8, yStep: 8, pattern: '3 0 2 8 re f' },
	grid: { boundingBox: [0, 0, 8, 8], xStep: 8, yStep: 8, pattern: '0 3 8 1.4 re f 3 0 1.4 8 re f' },
}
/** A word longer than this may be broken anywhere rather than leave its column. */
const longestWord = 24
const words = (text: string, more: Node = {}): Node => ({
	text,
	...(text.split(/[\s-]/).some((word) => word.length > longestWord)
		? { wordBreak: 'break-all' }
		: {}),
	...more,
})
/** More than this is let break across pages: it could be taller than one. */
const keepTogether = 1400
const lengthOf = (texts: readonly string[]): number =>
	texts.reduce((sum, text) => sum + text.length, 0)
const lines = (last: (row: number, rows: number) => number, colour: string, pad = 3.5) => ({
	hLineWidth: (row: number, node: { table: { body: unknown[] } }) =>
		last(row, node.table.body.length),
	vLineWidth: () => 0,
	hLineColor: () => colour,
	paddingLeft: () => 6,
	paddingRight: () => 6,
	paddingTop: () => pad,
	paddingBottom: () => pad,
})

const chartCell = ({ text, below, pattern, after }: ChartCell, scale: Scale): Node => ({
	stack: [
		// the pattern stands beside the letter, never over it
		...(text
			? [
					{
						columns: [
							words(text, { fontSize: scale.chart, bold: true, lineHeight: 1, width: 'auto' }),
							...(pattern && pattern !== 'plain'
								? [
										{
											width: swatch.w + 4,
											canvas: [
												{ type: 'rect', x: 0, y: 5, ...swatch, color: [pattern, ink] },
												{ type: 'rect', x: 0, y: 5, ...swatch, lineWidth: 0.6, lineColor: ink },
											],
										},
									]
								: []),
							...(after
								? [
										words(after, {
											fontSize: scale.chart,
											bold: true,
											lineHeight: 1,
											width: 'auto',
										}),
									]
								: []),
						],
						columnGap: 6,
					},
				]
			: []),
		...(below ? [words(below, { fontSize: scale.cell, lineHeight: 1.05 })] : []),
	],
})
/**
 * The control bar and the outline must not be scaled: units of the drawing become points of the
 * page.
 */
const atTrueSize = (svg: string, widthMm: number, heightMm: number): string =>
	svg
		.replace(/(<svg\b[^>]*?)\swidth="[^"]*"/, '$1')
		.replace(/(<svg\b[^>]*?)\sheight="[^"]*"/, '$1')
		.replace(/<svg\b/, `<svg width="${widthMm * ptPerMm}" height="${heightMm * ptPerMm}"`)

const together = (short: boolean, node: Node): Node =>
	short ? { unbreakable: true, stack: [node] } : node

const draw: { [K in FlowBlock['kind']]: (block: Extract<Block, { kind: K }>, look: Look) => Node } =
	{
		heading: ({ text, level = 1, newPage }, { colour, scale }) =>
			words(text, {
				fontSize: level === 1 ? scale.heading : scale.sub,
				bold: true,
				color: level === 1 ? colour : ink,
				margin: [0, (level === 1 ? 11 : 7) * scale.gap, 0, 5 * scale.gap],
				headlineLevel: level,
				outline: true,
				outlineParentId: 'title',
				...(newPage ? { pageBreak: 'before' } : {}),
			}),
		// a short paragraph is not torn over two pages
		text: ({ text, tone = 'body' }, { scale }) =>
			together(
				text.length < 500,
				words(text, {
					fontSize: scale[tone],
					bold: tone === 'strong' || tone === 'lead',
					color: tone === 'small' ? quiet : ink,
					margin: [0, 0, 0, 5 * scale.gap],
				}),
			),
		list: ({ ordered, items }, { scale }) => ({
			[ordered ? 'ol' : 'ul']: items.map((text) =>
				words(text, { margin: [0, 0, 0, 3 * scale.gap] }),
			),
			margin: [0, 0, 0, 4 * scale.gap],
		}),
		actions: ({ items }, { colour, scale }) => ({
			unbreakable: lengthOf(items.map((item) => item.what)) < keepTogether,
			margin: [0, 0, 0, 4],
			layout: lines((row, rows) => (row === 0 || row === rows ? 0 : 0.6), hair),
			table: {
				widths: [16, '*', 96, 92],
				body: items.map((item, index) =>
					[
						{
							text: String(index + 1),
							bold: true,
							fontSize: scale.body + 3,
							color: colour,
							lineHeight: 1,
						},
						words(item.what, { bold: true }),
						words(item.when, { color: quiet, fontSize: scale.cell }),
						words(item.who, { color: quiet, fontSize: scale.cell }),
					].map((cell) => ({ ...cell, fillColor: wash })),
				),
			},
		}),
		alert: ({ title, text }, { scale }) => ({
			unbreakable: text.length < keepTogether,
			margin: [0, 6, 0, 8],
			layout: {
				hLineWidth: () => 0,
				vLineWidth: (column: number) => (column === 0 ? 4 : 0),
				vLineColor: () => '#a3262a',
				paddingLeft: () => 10,
				paddingRight: () => 8,
				paddingTop: () => 7,
				paddingBottom: () => 7,
			},
			table: {
				widths: ['*'],
				body: [
					[
						{
							fillColor: '#fbeeec',
							stack: [
								words(title, {
									bold: true,
									fontSize: scale.body + 1.5,
									color: '#8d1f23',
									margin: [0, 0, 0, 3],
								}),
								words(text),
							],
						},
					],
				],
			},
		}),
		table: ({ caption, head, rows, widths }, { colour, scale }) => {
			const short = rows.length <= 6 && lengthOf(rows.flat()) < keepTogether
			return {
				// a short table stays whole, with its caption; a long one breaks between rows under a
				// repeated head
				unbreakable: short,
				stack: [
					words(caption, {
						fontSize: scale.caption,
						color: quiet,
						margin: [0, 3 * scale.gap, 0, 2 * scale.gap],
						headlineLevel: 3,
					}),
					{
						layout: lines(
							(row, count) => (row === 0 ? 0 : row === 1 ? 1.2 : row === count ? 0.6 : 0.4),
							hair,
							scale.gap < 0.7 ? 1.2 : 2.6,
						),
						table: {
							headerRows: 1,
							dontBreakRows: rows.every((row) => lengthOf(row) < keepTogether),
							keepWithHeaderRows: 1,
							widths: widths ?? head.map((_, index) => (index === 0 ? '*' : 'auto')),
							body: [
								head.map((text) =>
									words(text, { bold: true, fontSize: scale.head, color: colour }),
								),
								...rows.map((row) =>
									head.map((_, index) => words(row[index] ?? '', { fontSize: scale.cell })),
								),
							],
						},
					},
				],
				margin: [0, 0, 0, 7 * scale.gap],
			}
		},
		chart: ({ caption, head, rows, widths }, { colour, scale }) => ({
			unbreakable: rows.length <= 6,
			stack: [
				words(caption, {
					fontSize: scale.caption,
					color: quiet,
					margin: [0, 0, 0, 3],
					headlineLevel: 3,
				}),
				{
					layout: {
						hLineWidth: () => 0.8,
						vLineWidth: () => 0.8,
						hLineColor: () => hair,
						vLineColor: () => hair,
						paddingLeft: () => 5,
						paddingRight: () => 3,
						paddingTop: () => 2,
						paddingBottom: () => 3,
					},
					table: {
						headerRows: 1,
						dontBreakRows: true,
						keepWithHeaderRows: 1,
						widths,
						body: [
							head.map((text) => words(text, { bold: true, fontSize: scale.head, color: colour })),
							...rows.map((row) => head.map((_, at) => chartCell(row[at] ?? { text: '' }, scale))),
						],
					},
				},
			],
			margin: [0, 0, 0, 7],
		}),
		figure: ({ caption, svg, widthPt, heightPt }, { page, scale }) => ({
			unbreakable: true,
			stack: [
				{ svg, width: Math.min(widthPt, page.bodyPt), height: heightPt, alignment: 'center' },
				words(caption, {
					fontSize: scale.caption,
					color: quiet,
					alignment: 'center',
					margin: [0, 2, 0, 6],
				}),
			],
		}),
		signature: ({ name, registration, date }, { scale }) => ({
			unbreakable: true,
			margin: [0, 12 * scale.gap, 0, 6 * scale.gap],
			stack: [
				words(name, { bold: true, fontSize: scale.body + 1 }),
				words(registration, { color: quiet, fontSize: scale.cell }),
				words(date, { color: quiet, fontSize: scale.cell }),
			],
		}),
	}

function letterhead(
	{ letterhead: { clinicName, address, phone, email, colour, logo } }: LwDocument,
	{ page, scale }: Look,
): Node {
	const contact = [address.filter(Boolean).join(', '), [phone, email].filter(Boolean).join('   ')]
		.filter(Boolean)
		.join('\n')
	const safe = logo && safeLogo(logo)
	const picture = !safe
		? []
		: [
				safe.kind === 'svg'
					? { svg: safe.svg, fit: [38, 38], width: 44 }
					: { image: safe.dataUrl, fit: [38, 38], width: 44 },
			]
	return {
		stack: [
			{
				columns: [
					...picture,
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
/**
 * Keeps a heading with what follows it: the page ends before a heading that would stand alone at
 * its foot.
 */
const breakBefore =
	(page: Page) =>
	(
		node: { headlineLevel?: number; startPosition?: { top: number } },
		container?: { getFollowingNodesOnPage?: () => unknown[] },
	): boolean => {
		if (node.headlineLevel === undefined) return false
		const following = container?.getFollowingNodesOnPage?.() ?? []
		return (
			following.length === 0 ||
			(node.headlineLevel <= 2 &&
				(node.startPosition?.top ?? 0) > page.heightPt - page.margins[3] - 11 * page.lineRoom)
		)
	}
const keepsWhole = (block: Block | undefined): boolean =>
	(block?.kind === 'table' &&
		block.rows.length <= 6 &&
		lengthOf(block.rows.flat()) < keepTogether) ||
	(block?.kind === 'list' && block.items.length <= 6 && lengthOf(block.items) < 600)
/**
 * Headings, and a sentence that leads on, go with the short table or list they stand over: warning
 * signs are read at one look. Within what must not break nothing else may ask for a break or for
 * wholeness: pdfmake then drops content without a word.
 */
function flow(blocks: readonly FlowBlock[], look: Look): Node[] {
	const drawBlock = (block: FlowBlock) =>
		(draw[block.kind] as (block: FlowBlock, look: Look) => Node)(block, look)
	const nodes: Node[] = []
	let at = 0
	while (at < blocks.length) {
		let end = at
		for (let one = blocks[end]; one?.kind === 'heading' && !one.newPage; one = blocks[end]) end++
		const leading = blocks[end]
		if (leading?.kind === 'text' && leading.text.length < 200 && blocks[end + 1]?.kind === 'list')
			end++
		if (end > at && keepsWhole(blocks[end])) {
			const whole = blocks.slice(at, end + 1).map((block) => {
				const { headlineLevel: _, unbreakable: __, ...node } = drawBlock(block)
				return node
			})
			nodes.push({ unbreakable: true, stack: whole })
			at = end + 1
		} else nodes.push(drawBlock(blocks[at++]!))
	}
	return nodes
}
/** The parts between figures at true size: pdfmake gives each part its own paper. */
function parts(
	document: LwDocument,
	before: Node[],
	after: Node[],
	look: Look,
	head: unknown,
	foot: unknown,
): Node[] {
	if (!document.blocks.some((block) => block.kind === 'true-size'))
		return [...before, ...flow(document.blocks as FlowBlock[], look), ...after]
	const { page } = look
	const sections: Node[] = []
	let open: Node[] = before
	let waiting: FlowBlock[] = []
	const own = {
		pageSize: page.size,
		pageOrientation: page.orientation,
		pageMargins: page.margins,
		header: head,
		footer: foot,
	}
	const settle = () => {
		open.push(...flow(waiting, look))
		waiting = []
	}
	const close = () => {
		settle()
		if (open.length > 0) sections.push({ section: open, ...own })
		open = []
	}
	for (const block of document.blocks) {
		if (block.kind !== 'true-size') {
			waiting.push(block)
			continue
		}
		close()
		const sheet = trueSizePage(document, block.widthMm, block.heightMm)
		sections.push({
			section: [
				{
					svg: atTrueSize(block.svg, block.widthMm, block.heightMm),
					width: block.widthMm * ptPerMm,
					height: block.heightMm * ptPerMm,
				},
			],
			pageSize: sheet.pageSize,
			pageOrientation: 'portrait',
			pageMargins: sheet.margins,
			header: () =>
				words(block.caption, { fontSize: 8.4, color: quiet, margin: [28.35, 12, 28.35, 0] }),
			footer: () => '',
		})
	}
	settle()
	open.push(...after)
	close()
	return sections
}

/**
 * A fresh definition each time: pdfmake writes into what it is given. With protection the copy
 * opens by password only (AES-256); printing and reading aloud stay allowed.
 */
export function definitionOf(document: LwDocument, protection?: Protection): object {
	const { colour } = document.letterhead
	const t = speakFrom()
	const page = pageOf(document)
	const scale = scales[document.print ?? 'body']
	const look: Look = { colour, page, scale }
	const subject = document.subject.map(([label, value], index) => [
		{ text: label, fontSize: scale.label, color: quiet },
		words(value, { fontSize: scale.cell, bold: index === 0 }),
	])
	const half = Math.ceil(subject.length / 2)
	const column = (rows: Node[][]) => ({
		layout: 'noBorders',
		table: { widths: [scale.label * 8.6, '*'], body: rows.length > 0 ? rows : [['', '']] },
	})
	const notes =
		document.notes.length === 0
			? []
			: [
					words(t('page.notes'), {
						fontSize: scale.body,
						bold: true,
						color: colour,
						margin: [0, 12 * scale.gap, 0, 3],
						headlineLevel: 1,
						outline: true,
						outlineParentId: 'title',
					}),
					...document.notes.map((note, index) =>
						words(`${index + 1}  ${note}`, {
							fontSize: scale.note,
							color: quiet,
							margin: [0, 0, 0, 1.5],
						}),
					),
				]
	const side = page.margins[0]
	const head = (number: number) =>
		number === 1
			? ''
			: {
					columns: [
						words(document.running ?? '', { fontSize: scale.label, color: quiet }),
						{ text: document.title, fontSize: scale.label, color: quiet, alignment: 'right' },
					],
					margin: [side, 24, side, 0],
				}
	const footSize = document.print === 'wall' ? 14 : 7.2
	const foot = (number: number, count: number) => ({
		columns: [
			words(document.footer, { fontSize: footSize, color: quiet, width: '*' }),
			{
				text: t('page.number', { page: number, pages: count }),
				fontSize: Math.max(8.2, footSize),
				color: quiet,
				alignment: 'right',
				width: footSize * 9.2,
			},
		],
		columnGap: 16,
		margin: [side, 14, side, 0],
	})
	const before: Node[] = [
		letterhead(document, look),
		words(document.title, {
			fontSize: scale.title,
			bold: true,
			margin: [0, 0, 0, 6 * scale.gap],
			id: 'title',
			outline: true,
			outlineExpanded: true,
		}),
		{
			columns: [column(subject.slice(0, half)), column(subject.slice(half))],
			columnGap: 18,
			margin: [0, 0, 0, 4 * scale.gap],
		},
	]
	return {
		version: protection ? '1.7ext3' : '1.7',
		...(protection
			? {
					userPassword: protection.password,
					ownerPassword: protection.owner,
					permissions: {
						printing: 'highResolution',
						contentAccessibility: true,
						copying: false,
						modifying: false,
						annotating: false,
						fillingForms: false,
						documentAssembly: false,
					},
				}
			: {}),
		language: document.language,
		displayTitle: true,
		compress: true,
		pageSize: page.size,
		pageOrientation: page.orientation,
		pageMargins: page.margins,
		patterns: structuredClone(tiles),
		info: {
			title: document.title,
			author: document.letterhead.clinicName,
			creator: 'Lastwright',
			producer: 'Lastwright',
			creationDate: new Date(document.createdAt),
			modDate: new Date(document.createdAt),
		},
		defaultStyle: { font: 'Noto', fontSize: scale.body, lineHeight: 1.16, color: ink },
		...(document.draft
			? {
					watermark: {
						text: t('page.draftMark'),
						color: '#8a8a8a',
						opacity: 0.13,
						bold: true,
						angle: -50,
					},
				}
			: {}),
		header: head,
		footer: foot,
		pageBreakBefore: breakBefore(page),
		content: parts(document, before, notes, look, head, foot),
	}
}
