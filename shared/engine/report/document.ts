/** A document as data: words, tables and figures, before any renderer. */
export type Tone = 'body' | 'small' | 'strong' | 'lead' | 'headline'
/** Patterns that tell cells apart without colour, also on a grey printer. */
export const patterns = [
	'plain',
	'rising',
	'falling',
	'dots',
	'bars',
	'grid',
	'lines',
	'crosses',
	'checks',
	'dark',
	'dashes',
	'half',
] as const
export type Pattern = (typeof patterns)[number]
/**
 * The pattern of a pair goes with its letter: A is plain, B rises to the right, C falls; the same
 * on paper and on the screen. Twelve differ; from the thirteenth pair on the letter alone tells.
 */
export const patternOfLetter = (letter: string): Pattern =>
	patterns[Math.max(0, letter.charCodeAt(0) - 65) % patterns.length] ?? 'plain'
/** What stands in a cell of a wall chart: what is worn in large print, when in ordinary print. */
export interface ChartEntry {
	text: string
	/** In ordinary print on the same line. */
	beside?: string
	below?: string
	pattern?: Pattern
	/** What is worn after it, behind its pattern. */
	after?: string
	/** Otherwise than usual: stands out, never by colour alone. */
	unusual?: boolean
}
export interface ChartCell extends ChartEntry {
	/** Further entries under it, in the same cell. */
	more?: ChartEntry[]
}
/** The entries of a cell from the first on. */
export const entriesOf = (cell: ChartCell): ChartEntry[] => [cell, ...(cell.more ?? [])]
/** Every text of a cell. */
export const cellTexts = (cell: ChartCell): string[] =>
	entriesOf(cell).flatMap(({ text, after = '', beside = '', below = '' }) =>
		[text, after, beside, below].filter(Boolean),
	)
/** What a block of each kind holds. */
interface BlockFields {
	/**
	 * `newPage`: begins one. `pageOneEnds`: what must stand on the first page ends before it; from
	 * there on the page goes on where there is room. `notOnPageOne`: whatever room there is.
	 */
	heading: {
		text: string
		level?: 1 | 2
		newPage?: boolean
		pageOneEnds?: boolean
		notOnPageOne?: boolean
	}
	text: { text: string; tone?: Tone }
	list: { ordered?: boolean; items: string[] }
	actions: { items: { what: string; when: string; who: string }[] }
	/** `large`: the one thing that the page is about. */
	alert: { title: string; text: string; large?: boolean }
	/** Named facts one under the other; `boxed`: a card to cut out or to hold up. */
	facts: { title?: string; boxed?: boolean; rows: { label: string; text: string }[] }
	table: {
		caption: string
		head: string[]
		rows: string[][]
		widths?: (number | 'auto' | '*')[]
		/** Of each column; absent: all to the left. */
		align?: ('left' | 'right')[]
	}
	/**
	 * `size` of the letters: large; or as large as lets all rows stand on one page (grid), under the
	 * so many lines of the charts `above`. Absent: as large as the page prints charts.
	 */
	chart: {
		caption: string
		head: string[]
		rows: ChartCell[][]
		widths: (number | '*')[]
		size?: 'large' | 'grid'
		above?: number
	}
	figure: { caption: string; alternative: string; svg: string; widthPt: number; heightPt: number }
	/** On a page of its own, never scaled: one millimetre drawn is one millimetre on paper. */
	'true-size': {
		caption: string
		alternative: string
		svg: string
		widthMm: number
		heightMm: number
	}
	/** `inline`: in two lines. */
	signature: { name: string; registration: string; date: string; inline?: boolean }
	/**
	 * Two runs of blocks side by side, the left one read first; one under the other where there is no
	 * room. `leftPercent` of the width, half of it where absent.
	 */
	beside: { left: InnerBlock[]; right: InnerBlock[]; leftPercent?: number }
}
export type BlockKind = keyof BlockFields
export type BlockOf<Kind extends BlockKind> = {
	[Name in Kind]: { kind: Name } & BlockFields[Name]
}[Kind]
export type Block = BlockOf<BlockKind>
/** What can stand beside something else: a part of a page. */
export type InnerKind = Exclude<BlockKind, 'beside' | 'true-size' | 'chart'>
export type InnerBlock = BlockOf<InnerKind>
/** Where what must stand on the first page ends; -1 where all of a document does. */
export const endOfPageOne = (blocks: readonly Block[]): number =>
	blocks.findIndex(
		(block) =>
			block.kind === 'heading' && (block.pageOneEnds || block.notOnPageOne || block.newPage),
	)
/** Every block in the order in which they are read, those that stand side by side too. */
export const blocksIn = (blocks: readonly Block[]): BlockOf<Exclude<BlockKind, 'beside'>>[] =>
	blocks.flatMap((block) => (block.kind === 'beside' ? [...block.left, ...block.right] : [block]))
/**
 * What a place that draws or reads documents does with each kind of block. A new kind is a type
 * error in every such place until it has a line there.
 */
export type ForEachKind<Kind extends BlockKind, Given extends unknown[], Result> = {
	[Name in Kind]: (block: BlockOf<Name>, ...given: Given) => Result
}
/** Does with a block what the table says of its kind. */
export const byKind = <All extends BlockKind, Kind extends All, Given extends unknown[], Result>(
	table: ForEachKind<All, Given, Result>,
	block: BlockOf<Kind>,
	...given: Given
): Result => table[block.kind](block, ...given)

export interface Letterhead {
	clinicName: string
	address: string[]
	phone?: string
	email?: string
	colour: string
	logo?: { mediaType: 'image/png' | 'image/jpeg' | 'image/svg+xml'; base64: string }
}
type Paper = 'A4' | 'Letter' | 'A3'
export interface LwDocument {
	title: string
	kind: string
	language: 'en'
	draft: boolean
	letterhead: Letterhead
	/** Label and value pairs under the title. */
	subject: [string, string][]
	/** Who or what the pages are about, repeated at the head of every further page. */
	running?: string
	blocks: Block[]
	/** Numbered basis notes, printed small at the end. */
	notes: string[]
	/**
	 * The notes have no numbers, and stand in the record and on the accessible page alone: what is
	 * printed says that they can be asked for.
	 */
	notesApart?: boolean
	footer: string
	/** ISO date-time for the PDF metadata, so that the same input gives the same bytes. */
	createdAt: string
	/** Absent: A4, upright. */
	paper?: Paper
	landscape?: boolean
	/** The clinic takes a line; in print that is read, so does the subject. */
	slim?: boolean
	/**
	 * body: a report; reading: one in the hands of a player; compact: a letter that must hold on one
	 * page; wall: nothing under 14 pt, read from a bench.
	 */
	print?: 'body' | 'reading' | 'compact' | 'wall'
	/**
	 * The words of head, foot and notes, by key of the catalogue, as they were when it was kept;
	 * absent: those of the catalogue.
	 */
	furniture?: Readonly<Record<string, string>>
}
