/** One entry of a draft by its keys: read, or put in place of what stands. */
import {
	contentOf,
	type Entry,
	entriesOf,
	isEntry,
	type Tree,
	type WithEntries,
} from './entries.ts'
import { rowNames } from './rows.ts'
import type { TypedTwice } from './typed-twice.ts'
import type { Visit } from './visit.ts'

/** What stands at the keys of a tree; undefined where nothing does. */
export const nodeAt = (
	tree: Tree | Entry | undefined,
	keys: readonly string[],
): Tree | Entry | undefined =>
	keys.reduce<Tree | Entry | undefined>(
		(here, key) =>
			here === undefined || isEntry(here) || !Object.hasOwn(here, key) ? undefined : here[key],
		tree,
	)
/** The tree with something else at the keys; null takes it out. */
export function withNode(
	tree: Tree,
	[key = '', ...rest]: readonly string[],
	node: Entry | Tree | null,
): Tree {
	const { [key]: here, ...others } = tree
	if (rest.length === 0) return node === null ? others : { ...tree, [key]: node }
	return { ...tree, [key]: withNode(here === undefined || isEntry(here) ? {} : here, rest, node) }
}
/** What stands at the keys of a draft; undefined where nothing does. */
export const entryAt = (content: WithEntries, keys: readonly string[]): Entry | Tree | undefined =>
	nodeAt(entriesOf(content), keys)
/** What does not stand of an entry that was typed twice; null where it was taken out. */
const otherOf = ({ is }: Pick<TypedTwice, 'is'>): Entry | Tree | null =>
	JSON.parse(is) as Entry | Tree | null

const isSame = (one: TypedTwice, other: TypedTwice): boolean =>
	one.path === other.path && one.at === other.at && one.is === other.is
/** A draft of which some entries were typed twice. */
interface Draft extends WithEntries {
	visit: { player: unknown }
	step?: string | undefined
	typedTwice?: TypedTwice[] | undefined
}
/** Keeps what stands: the other is let go. */
export function keepStanding<D extends Draft>(draft: D, line: TypedTwice): D {
	const { typedTwice = [], ...rest } = draft
	const left = typedTwice.filter((one) => !isSame(one, line))
	return { ...rest, ...(left.length > 0 && { typedTwice: left }) } as D
}
/** Puts the other in place of what stands. */
export function takeOther<D extends Draft>(draft: D, line: TypedTwice): D {
	const kept = keepStanding(draft, line)
	const tree = withNode(entriesOf(kept), line.keys, otherOf(line))
	const { step } = draft
	return {
		...contentOf(tree, draft.visit.player, rowNames(kept)),
		...(step !== undefined && { step }),
	} as D
}

/** Both entries of a field that was typed twice, and what the pair is called that it is of. */
export function twoOf(content: WithEntries & { visit: Visit }, line: TypedTwice) {
	const [, list, id] = line.keys
	const pair = content.visit.footwear?.find((owned) => list === 'footwear' && owned.id === id)
	return {
		keys: line.keys,
		pair: pair?.name,
		stands: entryAt(content, line.keys) ?? null,
		other: otherOf(line),
	}
}
