/** The wall chart: a box a day, its letter large with its pattern beside it. */
import {
	type BlockOf,
	type ChartCell,
	type ChartEntry,
	entriesOf,
} from '../../../shared/engine/report/document.ts'
import { hair, type Look, type Node, quiet, words } from '../look.ts'
import { patternField } from './patterns.ts'

/** Behind what is not as usual: light enough for any printer. */
const ground = '#e6e9e7'
/** Letters of the usual week, against those of the pairs. */
const largerLetters = 1.35
/** How high a line of Noto Sans is, against its size. */
const lineHigh = 1.362
/** Over and under the words of a cell of the grid, with its rule, points. */
const padding = 1.8
/** Left and right of them, with the gaps between, points. */
const sides = 13
/** How wide a letter, a pattern and a sign of ordinary print are, against their size. */
const letterWide = 0.7
const patternWide = 0.9
const smallWide = 0.58
/** How large ordinary print may be against the letters that it stands beside. */
const smallShare = 0.8
/** The column of dates, against ordinary print. */
const dateColumn = 5.4
/** What is longer than this is a date: it stands smaller than the letters of pairs. */
const longText = 3
/** Share of a line that ordinary print under a letter takes in the grid. */
const smallLine = 0.7
/** What of a page the grid has not: heads, captions, a line of each chart above it, points. */
const taken = { page: 204, line: 24 }
/** Letters of the grid, against those of the pairs: no smaller and no larger than this. */
const gridLetters = { least: 0.68, most: 1.4 }

export function chart(block: BlockOf<'chart'>, look: Look): Node {
	const { caption, head, widths, size } = block
	const { colour, scale } = look
	const { rows, letters } = fitted(block, look)
	const isGrid = size === 'grid'
	const body = rows.map((row) =>
		widths.map((_, column) => cell(row[column] ?? { text: '' }, letters, look, isGrid)),
	)
	const heads = head.map((text) => words(text, { bold: true, fontSize: scale.head, color: colour }))
	const hasHead = head.some(Boolean)
	return {
		is: 'captioned',
		unbreakable: !isGrid,
		stack: [
			words(caption, {
				is: 'caption',
				fontSize: scale.caption,
				color: quiet,
				margin: [0, 0, 0, 1],
				headlineLevel: 3,
			}),
			{
				is: 'data',
				layout: {
					hLineWidth: () => 0.6,
					vLineWidth: () => 0.6,
					hLineColor: () => hair,
					vLineColor: () => hair,
					paddingLeft: () => 3,
					paddingRight: () => 2,
					paddingTop: () => (isGrid ? 0.4 : 1.5),
					paddingBottom: () => (isGrid ? 0.8 : 2.4),
				},
				table: {
					headerRows: hasHead ? 1 : 0,
					dontBreakRows: true,
					widths,
					body: hasHead ? [heads, ...body] : body,
				},
			},
		],
		margin: [0, 0, 0, isGrid ? 0 : 4],
	}
}

/** The block with the size of its letters, points: the grid as large as its page has room for. */
function fitted(block: BlockOf<'chart'>, look: Look): { rows: ChartCell[][]; letters: number } {
	const { size, rows } = block
	const { chart: letters } = look.scale
	if (size === 'large') return { rows, letters: letters * largerLetters }
	if (size !== 'grid') return { rows, letters }
	// where rows are many, what stands under a letter goes beside it
	const [under, beside] = [rows, rows.map((row) => row.map(onOneLine))].map((arranged) => ({
		rows: arranged,
		letters: gridLettersOf({ ...block, rows: arranged }, look),
	}))
	return under && beside && beside.letters >= under.letters ? beside : (under ?? { rows, letters })
}
function onOneLine({ more, ...first }: ChartCell): ChartCell {
	const joined = (entry: ChartEntry): ChartEntry => {
		const { below, ...rest } = entry
		return entry.text && below ? { ...rest, beside: [entry.beside, below].join(' ').trim() } : entry
	}
	return { ...joined(first), ...(more ? { more: more.map(joined) } : {}) }
}
function gridLettersOf({ rows, above = 0 }: BlockOf<'chart'>, { page, scale }: Look): number {
	const larger = scale.cell / 10
	const [, top, , bottom] = page.margins
	const room = page.heightPt - top - bottom - larger * (taken.page + above * taken.line)
	const lines = rows.reduce((sum, row) => sum + Math.max(1, ...row.map(linesOf)), 0)
	const high = (room / Math.max(1, lines) - padding) / lineHigh
	const wide = widestFit(rows, page.bodyPt, scale.cell)
	const { least, most } = gridLetters
	return Math.max(least * scale.chart, Math.min(most * scale.chart, high, wide))
}
/** The largest letters with which every cell keeps within its column, points. */
function widestFit(rows: BlockOf<'chart'>['rows'], bodyPt: number, small: number): number {
	const columns = Math.max(1, (rows[0]?.length ?? 0) - 1)
	const room = (bodyPt - small * dateColumn) / columns - sides
	const entries = rows.flatMap(([, ...days]) => days.flatMap(entriesOf))
	return Math.min(
		...entries.map(({ text, after = '', beside: words = '', pattern }) => {
			const letters = (text.length + after.length) * letterWide + (pattern ? patternWide : 0)
			const longest = words.length
			return letters === 0
				? Number.POSITIVE_INFINITY
				: (room - longest * smallWide * small) / letters
		}),
	)
}
const linesOf = (entries: ChartCell): number =>
	entriesOf(entries).reduce(
		(sum, { text, beside: words, below }) =>
			sum + (text || words ? 1 : 0) + (below ? smallLine : 0),
		0,
	)

function cell(entries: ChartCell, letters: number, look: Look, isGrid: boolean): Node {
	const drawn = entriesOf(entries).map((entry) => entryNodes(entry, letters, look, isGrid))
	const unusual = entriesOf(entries).some((entry) => entry.unusual)
	return { stack: drawn.flat(), ...(unusual ? { fillColor: ground } : {}) }
}
function entryNodes(entry: ChartEntry, letters: number, look: Look, isGrid: boolean): Node[] {
	const { scale } = look
	const { text, below, beside } = entry
	const small = isGrid ? 0.9 * scale.cell : scale.cell
	return [
		...(text || beside ? [wornLine(entry, letters, look, isGrid)] : []),
		...(below ? [words(below, { fontSize: small, lineHeight: 1 })] : []),
	]
}
/** A letter, its pattern beside it and never over it, what is worn after it, words. */
function wornLine(
	{ text, pattern, after, beside, unusual }: ChartEntry,
	letters: number,
	{ scale }: Look,
	isGrid: boolean,
): Node {
	const isDate = isGrid && text.length > longText
	const large = {
		fontSize: isDate ? Math.min(letters, 1.2 * scale.cell) : letters,
		bold: !isGrid || isDate || unusual === true,
		lineHeight: 1,
		width: 'auto',
		noWrap: true,
	}
	const fontSize = isGrid ? Math.min(scale.cell, smallShare * letters) : scale.cell
	// in the grid they stand on the line of the letter, else they may take several
	const down = isGrid ? Math.max(0, 0.5 * (letters - scale.cell) * lineHigh) : 3
	return {
		columns: [
			...(text ? [words(text, large)] : []),
			...patternField(pattern, 0.72 * letters),
			...(after ? [words(after, large)] : []),
			...(beside
				? [words(beside, { fontSize, lineHeight: 1, width: '*', margin: [0, down, 0, 0] })]
				: []),
		],
		columnGap: isGrid ? 2.5 : 5,
	}
}
