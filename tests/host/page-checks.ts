/** What no page of any kind may do; each fault in words, with its page. */
import { pageOf } from '../../electron/pdf/page.ts'
import { type Block, blocksIn, type LwDocument } from '../../shared/engine/report/document.ts'
import type { Mark, MarkedPage, TextMark } from './page-marks.ts'
import { type Box, shared } from './page-paths.ts'
import { tight as withoutBlanks } from './read-pages.ts'

/** Without blanks, and without hyphens: a line may break anywhere, and a long word is divided. */
const tight = (text: string): string => withoutBlanks(text).replaceAll('-', '')

/** The sentences of a document's prose, which must be read back in order. */
const prose = (document: LwDocument): string[] =>
	blocksIn(document.blocks).flatMap((block) =>
		block.kind === 'heading' || (block.kind === 'text' && block.tone !== 'small')
			? [block.text]
			: [],
	)
const isText = (mark: Mark): mark is TextMark => mark.kind === 'text'
const textsOn = ({ marks }: MarkedPage): TextMark[] => marks.filter(isText)
const wordsOn = (page: MarkedPage): string =>
	textsOn(page)
		.map(({ text }) => text)
		.join('')
const isSheet = (page: MarkedPage): boolean => wordsOn(page).includes('This bar must measure')

/** A hair of room: what touches does not overlap, points. */
const touching = 0.6
const meet = (a: Box, b: Box): boolean =>
	Math.min(a.right, b.right) - Math.max(a.left, b.left) > touching &&
	Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > touching
const isWithin = (inner: Box, outer: Box, room = 1): boolean =>
	inner.left >= outer.left - room &&
	inner.right <= outer.right + room &&
	inner.top >= outer.top - room &&
	inner.bottom <= outer.bottom + room

/** Nothing outside the margins, no run on another or on a pattern, none cut off, none too small. */
function drawingFaults(page: MarkedPage, { edge, leastPt }: { edge: number; leastPt: number }) {
	const texts = textsOn(page)
	const { width, height } = page
	const paper = { left: 0, top: 0, right: width, bottom: height }
	const margins = { left: edge, top: 10, right: width - edge, bottom: height - 10 }
	const patterned = page.marks.filter((mark) => mark.kind === 'area' && mark.pattern !== undefined)
	return [
		...page.marks
			.filter(({ box, clip }) => isWithin(box, clip, 1000) && !isWithin(shared(box, clip), paper))
			.map(({ kind }) => `${kind} beyond the paper`),
		...texts.flatMap((mark, index) => [
			...(isWithin(mark.box, margins, 0.5) ? [] : [`beyond the margins: ${mark.text}`]),
			...(isWithin(mark.box, mark.clip) ? [] : [`cut off: ${mark.text}`]),
			...(mark.size >= leastPt ? [] : [`of ${mark.size.toFixed(1)} pt: ${mark.text}`]),
			...texts
				.slice(index + 1)
				.filter(({ turn, box }) => turn === mark.turn && turn % 90 === 0 && meet(box, mark.box))
				.map(({ text }) => `on each other: ${mark.text} / ${text}`),
			...(patterned.some(({ box }) => meet(box, mark.box)) ? [`on a pattern: ${mark.text}`] : []),
		]),
	]
}
/** The lines of the text of a page, from its head to its foot; a line is what stands on one level. */
function linesOf(page: MarkedPage, document: LwDocument): { words: string; box: Box }[] {
	const [, top, , bottom] = pageOf(document).margins
	const inText = textsOn(page).filter(
		({ box }) => box.bottom > top && box.bottom < page.height - bottom + 1,
	)
	return [...Map.groupBy(inText, ({ box }) => Math.round(box.bottom))]
		.toSorted(([a], [b]) => a - b)
		.map(([, texts]) => ({
			words: tight(texts.map(({ text }) => text).join('')),
			box: texts[0]?.box ?? { left: 0, right: 0, top: 0, bottom: 0 },
		}))
}
/** What heads something, and so never stands last on a page. */
const headsOf = (document: LwDocument): Set<string> =>
	new Set([
		...blocksIn(document.blocks).flatMap((block) => {
			if (block.kind === 'heading') return [tight(block.text)]
			return block.kind === 'table' || block.kind === 'chart' ? [tight(block.caption)] : []
		}),
		'Wherethiscomesfrom',
	])
/** A last page with fewer lines than this holds a signature or a sentence alone. */
const leastLines = 5
function breakFaults(pages: readonly MarkedPage[], document: LwDocument): string[] {
	const heads = headsOf(document)
	const flowing = pages.filter((page) => !isSheet(page))
	const lines = flowing.map((page) => linesOf(page, document))
	const last = lines.at(-1) ?? []
	return [
		...lines.slice(0, -1).flatMap((on) => {
			const { words = '' } = on.at(-1) ?? {}
			return heads.has(words) ? [`last on its page: ${words}`] : []
		}),
		...(lines.length > 1 && last.length < leastLines
			? [`alone on the last page: ${last.map(({ words }) => words).join(' / ')}`]
			: []),
	]
}
/** Head and foot stand whole on every page: what has no room there would be dropped without a word. */
function furnitureFaults(pages: readonly MarkedPage[], { footer, running = '' }: LwDocument) {
	return pages
		.filter((page) => !isSheet(page))
		.flatMap((page, index) => {
			const words = tight(wordsOn(page))
			return [
				...(words.includes(tight(footer)) ? [] : [`page ${index + 1}: the foot is not whole`]),
				...(index === 0 || words.includes(tight(running))
					? []
					: [`page ${index + 1}: the head is not whole`]),
			]
		})
}
/** Lists of a few short lines torn from each other or from their heading. */
function torn(pages: readonly MarkedPage[], document: LwDocument): string[] {
	const texts = pages.map((page) => tight(wordsOn(page)))
	const blocks = blocksIn(document.blocks)
	return blocks.flatMap((block, at) => {
		if (block.kind !== 'list' || block.items.length > 6 || block.items.join('').length >= 600)
			return []
		const together = [...headingOver(blocks, at), ...block.items].map(tight)
		return texts.some((text) => together.every((line) => text.includes(line)))
			? []
			: [`torn: ${block.items.join(' / ')}`]
	})
}
/** The heading that a list belongs to: only short sentences stand between. */
function headingOver(blocks: readonly Block[], list: number): string[] {
	const at = blocks.slice(0, list).findLastIndex((block) => block.kind === 'heading')
	const heading = blocks[at]
	const between = blocks.slice(at + 1, list)
	return heading?.kind === 'heading' &&
		between.every((block) => block.kind === 'text' && block.text.length < 200)
		? [heading.text]
		: []
}
/** Sentences that are not there, or in another order; words that no page prints. */
function readingFaults(pages: readonly MarkedPage[], document: LwDocument): string[] {
	const text = tight(pages.map(wordsOn).join(''))
	const faults: string[] = []
	let from = 0
	for (const sentence of prose(document)) {
		const at = text.indexOf(tight(sentence), from)
		if (at < 0) faults.push(`not read in its place: ${sentence}`)
		else from = at + 1
	}
	const broken = /undefined|NaN|\bnull\b|\[object|\{[a-z]+\}/.exec(pages.map(wordsOn).join(' '))
	return broken ? [...faults, `printed: ${broken[0]}`] : faults
}
interface Limits {
	/** The narrowest margin, points. */
	edge: number
	/** The smallest letters, points. */
	leastPt: number
	/** Pages of text, without sheets of their own. */
	mostPages: number
}
/** Every fault of the pages of a document. */
export function faultsOf(
	pages: readonly MarkedPage[],
	document: LwDocument,
	{ edge, leastPt, mostPages }: Limits,
): string[] {
	const flowing = pages.filter((page) => !isSheet(page)).length
	const { widthPt, heightPt } = pageOf(document)
	const foreign = pages.filter(
		(page) => !isSheet(page) && Math.hypot(page.width - widthPt, page.height - heightPt) > touching,
	)
	return [
		...foreign.map(({ width, height }) => `on paper of ${width} x ${height} pt`),
		...(flowing > mostPages ? [`${flowing} pages, at most ${mostPages}`] : []),
		...pages.flatMap((page, index) =>
			drawingFaults(page, { edge: isSheet(page) ? 28 : edge, leastPt }).map(
				(fault) => `page ${index + 1}: ${fault}`,
			),
		),
		...breakFaults(pages, document),
		...furnitureFaults(pages, document),
		...torn(pages, document),
		...readingFaults(pages, document),
	]
}
