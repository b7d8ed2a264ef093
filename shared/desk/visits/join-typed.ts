/**
 * What two typed into one draft, joined entry by entry against what both began from: what one
 * changed stands; what both changed otherwise is found, and neither is lost.
 */
import {
	contentOf,
	type Entry,
	entriesOf,
	isEntry,
	orderOf,
	type Tree,
} from '../../engine/visit/entries.ts'
import { nodeAt, withNode } from '../../engine/visit/entry-at.ts'
import { type Problem, problemsOf } from '../../engine/visit/problems.ts'
import { heldTogether } from '../../engine/visit/row-lists.table.ts'
import {
	namedLists,
	namesOfThree,
	ownNames,
	type RowNames,
	rowsAt,
} from '../../engine/visit/rows.ts'
import { joinStampedDrafts } from '../outreach/drafts.ts'
import { isEmptyGroup, keysOfPath, leavesOf } from '../outreach/leaves.ts'
import { sameValue } from '../outreach/stamps.ts'
import { type DraftContent, draftContentSchema } from './calls.ts'

/** An entry that both typed otherwise. */
export interface Twice {
	/** where it stands in what was joined */
	keys: string[]
	/** whose does not stand */
	loser: 'mine' | 'theirs'
	/** what does not stand; undefined where it was taken out */
	other: Entry | Tree | undefined
}
export interface Joined {
	content: DraftContent
	twice: Twice[]
}
/** What both began from, and what each made of it. */
export interface Three {
	base: DraftContent
	mine: DraftContent
	theirs: DraftContent
}
type Names = ReturnType<typeof namesOfThree>
type Trees = Record<keyof Three, Tree>
type Side = 'first' | 'second'

const treesOf = (three: Three, names: Names): Trees => ({
	base: entriesOf(three.base, names.base),
	mine: entriesOf(three.mine, names.mine),
	theirs: entriesOf(three.theirs, names.theirs),
})
/** The keys of every path of the trees, and of the groups on the way, by how the path is said. */
function keysBySaid(...trees: readonly Tree[]): Map<string, string[]> {
	const found = new Map<string, string[]>()
	for (const tree of trees)
		for (const path of leavesOf(tree).keys()) {
			const keys = keysOfPath(path)
			for (let end = keys.length; end > 0; end--) {
				const part = keys.slice(0, end)
				const said = part.join('.')
				if (found.has(said)) break
				found.set(said, part)
			}
		}
	return found
}
/** An item of a list, or a group, that one took out while the other typed into it. */
interface AtOdds {
	keys: string[]
	goneFrom: 'mine' | 'theirs'
}
function atOdds(trees: Trees): AtOdds[] {
	const items = namedLists
		.filter(({ inside }) => inside)
		.flatMap(({ path }) => {
			const rows = nodeAt(trees.base, path.split('.'))
			return rows === undefined || isEntry(rows)
				? []
				: Object.keys(rows).map((name) => [...path.split('.'), name])
		})
	return [...items, ...heldTogether.map((path) => path.split('.'))].flatMap((keys): AtOdds[] => {
		const [was, mine, theirs] = [trees.base, trees.mine, trees.theirs].map((tree) =>
			nodeAt(tree, keys),
		)
		if (was === undefined) return []
		if (mine === undefined && theirs !== undefined && !sameValue(theirs, was))
			return [{ keys, goneFrom: 'mine' }]
		if (theirs === undefined && mine !== undefined && !sameValue(mine, was))
			return [{ keys, goneFrom: 'theirs' }]
		return []
	})
}
const underOneOf = (said: string, groups: readonly string[]): boolean =>
	groups.some((group) => group === '' || said === group || said.startsWith(`${group}.`))

/** What only one took out comes back for the join: what was typed into it is not lost. */
const withBack = (trees: Trees, { keys, goneFrom }: AtOdds): Trees => ({
	...trees,
	[goneFrom]: withNode(trees[goneFrom], keys, nodeAt(trees.base, keys) ?? null),
})
/** The keys of an entry in what was joined, its item by the name that it has there. */
function keysThere(keys: readonly string[], content: unknown, order: RowNames): string[] {
	const list = namedLists.find(({ path }) => {
		const head = path.split('.')
		return head.every((key, at) => keys[at] === key) && keys.length > head.length
	})
	if (!list) return [...keys]
	const depth = list.path.split('.').length
	const name = keys[depth] ?? ''
	const at = (order.get(list.path) ?? []).indexOf(name)
	const own = ownNames(rowsAt(content, list.path), list)[at]
	return [...keys.slice(0, depth), own ?? name, ...keys.slice(depth + 1)]
}
/** The names of the items that are still there, in their order. */
function namesIn(tree: Tree, order: RowNames): RowNames {
	return new Map(
		[...order].map(([path, names]) => {
			const rows = nodeAt(tree, path.split('.'))
			const there = rows === undefined || isEntry(rows) ? {} : rows
			return [path, names.filter((name) => Object.hasOwn(there, name))]
		}),
	)
}

function checked(content: unknown): { content: DraftContent } | { problems: Problem[] } {
	const read = draftContentSchema.safeParse(content)
	return read.success ? { content: read.data } : { problems: problemsOf(read.error, content) }
}
/**
 * Where both typed one entry otherwise, mine stands, and theirs is found in `twice`.
 * @param own whether the window of `mine` itself typed last what stands in `theirs` at these keys:
 * then its later word stands
 * @returns what does not go together, where that is so
 */
export function joinTyped(
	three: Three,
	own: (keys: readonly string[]) => boolean = () => false,
): Joined | { problems: Problem[] } {
	const names = namesOfThree(three.base, three.mine, three.theirs)
	const plain = treesOf(three, names)
	const keysSaid = keysBySaid(plain.mine, plain.theirs, plain.base)
	const keysOf = (said: string) => keysSaid.get(said) ?? said.split('.')
	const isOwn = (keys: readonly string[]) => own(keysThere(keys, three.theirs, names.theirs))
	const typedByThem = ({ keys }: AtOdds) =>
		[...leavesOf(nodeAt(plain.theirs, keys)).keys()].some(
			(inner) => !isOwn([...keys, ...keysOfPath(inner)]),
		)
	const odds = atOdds(plain).filter((one) => one.goneFrom === 'theirs' || typedByThem(one))
	const trees = odds.reduce(withBack, plain)
	const back = odds.filter(({ goneFrom }) => goneFrom === 'mine').map(({ keys }) => keys.join('.'))
	const { content: tree, conflicts } = joinStampedDrafts(
		trees.base,
		{ content: trees.mine },
		{ content: trees.theirs },
		(said): Side | undefined =>
			!underOneOf(said, back) && isOwn(keysOf(said)) ? 'first' : undefined,
	)
	const order = namesIn(tree as Tree, orderOf(names.mine, names.theirs))
	const read = checked(draftOf(tree, order, three))
	if ('problems' in read) return read
	const there = (keys: readonly string[]) => keysThere(keys, read.content, order)
	const twice = [
		...odds.map(
			({ keys, goneFrom }): Twice => ({
				keys: there(keys),
				loser: goneFrom,
				other: undefined,
			}),
		),
		...conflicts.map(
			({ path }): Twice => ({
				keys: there(keysOf(path)),
				loser: 'theirs',
				other: nodeAt(trees.theirs, keysOf(path)),
			}),
		),
	]
	return { content: read.content, twice }
}
/** The draft of a tree: the player as the host has it, the step on screen as this window has it. */
const draftOf = (tree: unknown, order: RowNames, { mine, theirs }: Three) => ({
	...contentOf(tree as Tree, theirs.visit.player, order),
	...(mine.step !== undefined && { step: mine.step }),
})

/** What a window goes on with: what it shows, and what it knows the others to have. */
export interface TakenIn {
	content: DraftContent
	base: DraftContent
	/** whether something of the others is not shown yet */
	waits: boolean
}
/**
 * Takes what the others have into a window. What stands under the hand, and what both changed, stays
 * as it is and is known as before: the host finds it when the window saves.
 * @param held paths below which nothing is put, as the tree says them; '' for all
 */
export function takeIn(three: Three, held: readonly string[]): TakenIn {
	const names = namesOfThree(three.base, three.mine, three.theirs)
	const trees = treesOf(three, names)
	const groups = [...held, ...atOdds(trees).map(({ keys }) => keys.join('.'))]
	const kept = new Set<string>()
	const { content, conflicts } = joinStampedDrafts(
		trees.base,
		{ content: trees.mine },
		{ content: trees.theirs },
		(said): Side | undefined => {
			if (!underOneOf(said, groups)) return undefined
			kept.add(said)
			return 'first'
		},
	)
	for (const { path } of conflicts) kept.add(path)
	const { content: known } = joinStampedDrafts(
		trees.mine,
		{ content: trees.theirs },
		{ content: trees.base },
		(said): Side => (kept.has(said) ? 'second' : 'first'),
	)
	const shown = checked(draftOf(content, orderOf(names.mine, names.theirs), three))
	const base = checked(draftOf(known, orderOf(names.theirs, names.base), three))
	// what does not hold together here is joined by the host
	if (!('content' in shown && 'content' in base))
		return { content: three.mine, base: three.base, waits: true }
	return { content: shown.content, base: base.content, waits: kept.size > 0 }
}
/** Whether two drafts have the same entries; which step is on screen is none. */
export function sameEntries(first: DraftContent, second: DraftContent): boolean {
	const { step: _, ...one } = first
	const { step: __, ...other } = second
	return JSON.stringify(one) === JSON.stringify(other) || sameValue(one, other)
}
/** The keys of each entry that is not what it was, as the second has them. */
export function changedEntries(before: DraftContent, now: DraftContent): string[][] {
	const names = namesOfThree(before, now, now)
	const was = leavesOf(entriesOf(before, names.base))
	const is = leavesOf(entriesOf(now, names.mine))
	// a group without anything in it is no entry
	return [...new Set([...was, ...is].flatMap(([path, leaf]) => (isEmptyGroup(leaf) ? [] : [path])))]
		.filter((path) => !sameValue(was.get(path), is.get(path)))
		.map((path) => keysThere(keysOfPath(path), now, names.mine))
}
