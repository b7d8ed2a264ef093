/** The parts of a document as they are read back. Keys that are not known are left out. */
import { z } from 'zod'
import {
	type Block,
	type BlockKind,
	type BlockOf,
	type InnerBlock,
	type InnerKind,
	patterns,
} from '../document.ts'
import { foreignBlocks, wordsIn, wordsLost } from './foreign.ts'

const texts = z.array(z.string())
const chartEntry = z.object({
	text: z.string(),
	beside: z.string().optional(),
	below: z.string().optional(),
	pattern: z.enum(patterns).optional(),
	after: z.string().optional(),
	unusual: z.boolean().optional(),
})
const chartCell = chartEntry.extend({ more: z.array(chartEntry).optional() })
/** An own drawing: it holds no script and draws nothing from elsewhere. */
const drawing = z
	.string()
	.regex(/^\s*<svg\b/, 'a drawing in SVG')
	.refine((svg) => !/<script|<foreignObject|\son\w+\s*=|javascript:/i.test(svg))
const figure = { caption: z.string(), alternative: z.string(), svg: drawing }
const positive = z.number().positive()

type Reads<Kinds extends BlockKind> = { [Kind in Kinds]: z.ZodType<BlockOf<Kind>> }
const inner: Reads<InnerKind> = {
	heading: z.object({
		kind: z.literal('heading'),
		text: z.string(),
		level: z.union([z.literal(1), z.literal(2)]).optional(),
		newPage: z.boolean().optional(),
		pageOneEnds: z.boolean().optional(),
		notOnPageOne: z.boolean().optional(),
	}),
	text: z.object({
		kind: z.literal('text'),
		text: z.string(),
		tone: z.enum(['body', 'small', 'strong', 'lead', 'headline']).optional(),
	}),
	list: z.object({ kind: z.literal('list'), ordered: z.boolean().optional(), items: texts }),
	actions: z.object({
		kind: z.literal('actions'),
		items: z.array(z.object({ what: z.string(), when: z.string(), who: z.string() })),
	}),
	alert: z.object({
		kind: z.literal('alert'),
		title: z.string(),
		text: z.string(),
		large: z.boolean().optional(),
	}),
	facts: z.object({
		kind: z.literal('facts'),
		title: z.string().optional(),
		boxed: z.boolean().optional(),
		rows: z.array(z.object({ label: z.string(), text: z.string() })),
	}),
	table: z.object({
		kind: z.literal('table'),
		caption: z.string(),
		head: texts,
		rows: z.array(texts),
		widths: z.array(z.union([z.number(), z.enum(['auto', '*'])])).optional(),
		align: z.array(z.enum(['left', 'right'])).optional(),
	}),
	figure: z.object({
		kind: z.literal('figure'),
		...figure,
		widthPt: positive,
		heightPt: positive,
	}),
	signature: z.object({
		kind: z.literal('signature'),
		name: z.string(),
		registration: z.string(),
		date: z.string(),
		inline: z.boolean().optional(),
	}),
}
const innerBlocks: z.ZodType<InnerBlock[]> = z.array(z.union(Object.values(inner)))
const blocks: Reads<BlockKind> = {
	...inner,
	chart: z.object({
		kind: z.literal('chart'),
		caption: z.string(),
		head: texts,
		rows: z.array(z.array(chartCell)),
		widths: z.array(z.union([z.number(), z.literal('*')])),
		size: z.enum(['large', 'grid']).optional(),
		above: z.number().optional(),
	}),
	'true-size': z.object({
		kind: z.literal('true-size'),
		...figure,
		widthMm: positive,
		heightMm: positive,
	}),
	beside: z.object({
		kind: z.literal('beside'),
		left: innerBlocks,
		right: innerBlocks,
		leftPercent: z.number().min(10).max(90).optional(),
	}),
}
const kindOf = z.object({ kind: z.string() })
const isKnown = (kind: string): kind is BlockKind => Object.hasOwn(blocks, kind)

function readBlock(part: unknown): Block | undefined {
	const kind = kindOf.safeParse(part).data?.kind
	return kind !== undefined && isKnown(kind) ? blocks[kind].safeParse(part).data : undefined
}
/** Blocks as they are drawn; of what is not known the words, under a line that says so. */
export function readBlocks(parts: readonly unknown[]): { blocks: Block[]; foreign: boolean } {
	let foreign = false
	const read = parts.flatMap((part): Block[] => {
		const block = readBlock(part)
		const lost = block ? wordsLost(part, block) : wordsIn(part)
		if (block && lost.length === 0) return [block]
		foreign = true
		return [...(block ? [block] : []), ...foreignBlocks(lost)]
	})
	return { blocks: read, foreign }
}
/** What stands round the blocks. */
export const frameSchema = z.object({
	title: z.string(),
	kind: z.string().catch('document'),
	language: z.literal('en').catch('en'),
	draft: z.boolean().catch(false),
	letterhead: z.object({
		clinicName: z.string(),
		address: texts.catch([]),
		phone: z.string().optional().catch(undefined),
		email: z.string().optional().catch(undefined),
		colour: z
			.string()
			.regex(/^#[0-9a-f]{6}$/i, 'a colour such as #1f5f5b')
			.catch('#1d2726'),
		logo: z.unknown().optional(),
	}),
	subject: z.array(z.tuple([z.string(), z.string()])),
	running: z.string().optional().catch(undefined),
	blocks: z.array(z.unknown()),
	notes: texts,
	notesApart: z.boolean().optional().catch(undefined),
	footer: z.string(),
	createdAt: z.iso.datetime({ offset: true }),
	paper: z.enum(['A4', 'Letter', 'A3']).optional().catch(undefined),
	landscape: z.boolean().optional().catch(undefined),
	slim: z.boolean().optional().catch(undefined),
	print: z.enum(['body', 'reading', 'compact', 'wall']).optional().catch(undefined),
	furniture: z.record(z.string(), z.string()).optional().catch(undefined),
})
