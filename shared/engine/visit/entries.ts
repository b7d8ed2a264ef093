/**
 * A draft as a tree of entries: what one field holds is one leaf, whether it is a value, text that
 * is none yet, or the reason why it was not measured; items of lists stand by their names.
 */
import { type RowNames, rowListAt, rowNames } from './rows.ts'
import { visitSchema } from './visit.ts'

/**
 * What a field holds: its value, its text where that is no value yet, the reason why it was not
 * measured; `null` where there is none of it. An entry that is no field has its value alone.
 */
export type Entry = readonly [value: unknown, text?: string | null, reason?: string | null]
export type Tree = { [key: string]: Tree | Entry }
/** As much of a draft as has entries. */
export interface WithEntries {
	visit: object
	decisions: object
	raw: Readonly<Record<string, string>>
	typedTwice?: readonly unknown[] | undefined
}
type Group = Record<string, unknown>
const isGroup = (value: unknown): value is Group =>
	typeof value === 'object' && value !== null && !Array.isArray(value)
export const isEntry = (node: Tree | Entry | undefined): node is Entry => Array.isArray(node)

/** The names of the items of a list; undefined where they cannot be told apart. */
function namesAt(path: string, list: readonly unknown[], names: RowNames) {
	const { by = [] } = rowListAt(path) ?? {}
	const own = by.length > 0 ? (names.get(path) ?? []) : list.map(String)
	return new Set(own).size === list.length ? own : undefined
}
function folded(value: unknown, path: string, names: RowNames): Tree | Entry {
	const list = rowListAt(path)
	const own = list && Array.isArray(value) ? namesAt(path, value, names) : undefined
	if (list && own && Array.isArray(value))
		return Object.fromEntries(
			value.map((row, at) => [
				own[at] ?? String(at),
				list.inside ? folded(row, `${path}.*`, names) : [row],
			]),
		)
	if (!isGroup(value)) return [value]
	return Object.fromEntries(
		Object.entries(value)
			.filter(([, inner]) => inner !== undefined)
			.map(([key, inner]) => [key, folded(inner, `${path}.${key}`, names)]),
	)
}
/** The keys in the tree of a path of the visit whose items are told by their places. */
export function keysOfField(path: string, names: RowNames): string[] | undefined {
	const [head = '', ...rest] = path.split('.')
	if (!Object.hasOwn(visitSchema.shape, head)) return undefined
	const list = rowListAt(`visit.${head}`)
	if (!list) return ['visit', head, ...rest]
	const [place = '', ...field] = rest
	const name = names.get(list.path)?.[Number(place)]
	return list.inside && name !== undefined && field.length > 0
		? ['visit', head, name, ...field]
		: undefined
}
/** Puts text or reason to the field at the keys. @returns false where no field can stand there */
function putAt(tree: Tree, keys: readonly string[], at: 1 | 2, text: string): boolean {
	let here = tree
	for (const key of keys.slice(0, -1)) {
		const next = Object.hasOwn(here, key) ? here[key] : undefined
		if (isEntry(next)) return false
		const group = next ?? {}
		here[key] = group
		here = group
	}
	const last = keys.at(-1) ?? ''
	const before = Object.hasOwn(here, last) ? here[last] : undefined
	if (before !== undefined && !isEntry(before)) return false
	const [value = null, typed = null, reason = null] = before ?? []
	here[last] = at === 1 ? [value, text, reason] : [value, typed, text]
	return true
}
/** Text that belongs to no field of the visit stands by itself. */
const besides = { 1: 'raw', 2: 'reasons' } as const
function putAll(
	tree: Tree,
	texts: Readonly<Record<string, string>>,
	at: 1 | 2,
	names: RowNames,
): void {
	const alone = Object.entries(texts).filter(([path, text]) => {
		const keys = keysOfField(path, names)
		return !keys || !putAt(tree, keys, at, text)
	})
	if (alone.length > 0)
		tree[besides[at]] = Object.fromEntries(alone.map(([path, text]) => [path, [text]]))
}
/**
 * The entries of a draft. Whose visit it is, and which step is on screen, are none.
 * @param names of the items of its lists; by themselves where they are not given
 */
export function entriesOf(content: WithEntries, names: RowNames = rowNames(content)): Tree {
	const { player: _, notMeasured = {}, ...visit } = content.visit as Group
	const tree: Tree = {
		visit: folded(visit, 'visit', names),
		decisions: folded(content.decisions, 'decisions', names),
		typedTwice: folded(content.typedTwice ?? [], 'typedTwice', names),
	}
	putAll(tree, content.raw, 1, names)
	putAll(tree, notMeasured as Record<string, string>, 2, names)
	return tree
}

/** What is gathered while a tree becomes a draft again. */
interface Unfolding {
	order: RowNames
	raw: Record<string, string>
	reasons: Record<string, string>
}
/** Names of the items that are there, in the order asked for, others after them. */
function inOrder(node: Tree, path: string, { order }: Unfolding): string[] {
	const asked = order.get(path) ?? []
	const there = Object.keys(node)
	return [
		...asked.filter((name) => there.includes(name)),
		...there.filter((name) => !asked.includes(name)),
	]
}
/** @param place the path as the draft has it, items of lists by their places */
function unfolded(node: Tree | Entry, path: string, place: string, to: Unfolding): unknown {
	if (isEntry(node)) {
		const [value, text, reason] = node
		const field = place.replace(/^visit\./, '')
		if (typeof text === 'string') to.raw[field] = text
		if (typeof reason === 'string') to.reasons[field] = reason
		return value ?? undefined
	}
	const list = rowListAt(path)
	if (list)
		return inOrder(node, path, to).flatMap((name, at) => {
			const row = node[name]
			if (row === undefined) return []
			// an item that is its own name
			if (list.by.length === 0) return [name]
			return [list.inside ? unfolded(row, `${path}.*`, `${place}.${at}`, to) : (row as Entry)[0]]
		})
	const entries = Object.entries(node)
	const within = entries.flatMap(([key, inner]): [string, unknown][] => {
		const value = unfolded(inner, `${path}.${key}`, `${place}.${key}`, to)
		return value === undefined ? [] : [[key, value]]
	})
	return entries.length > 0 && within.length === 0 ? undefined : Object.fromEntries(within)
}
const textsOf = (node: Tree | Entry | undefined): Record<string, string> =>
	node === undefined || isEntry(node)
		? {}
		: Object.fromEntries(
				Object.entries(node).flatMap(([path, entry]) =>
					isEntry(entry) && typeof entry[0] === 'string' ? [[path, entry[0]]] : [],
				),
			)
/** The order in which names stand: those of the first, then what others have beside. */
export function orderOf(first: RowNames, second: RowNames): RowNames {
	const order = new Map(first)
	for (const [path, names] of second)
		order.set(path, [...new Set([...(first.get(path) ?? []), ...names])])
	return order
}
/**
 * The draft of which these are the entries.
 * @param player whose visit it is
 * @param order of the items of its lists
 */
export function contentOf(tree: Tree, player: unknown, order: RowNames) {
	const to: Unfolding = { order, raw: textsOf(tree.raw), reasons: textsOf(tree.reasons) }
	const part = (key: string): Group => {
		const value = unfolded(tree[key] ?? {}, key, key, to)
		return isGroup(value) ? value : {}
	}
	const visit = part('visit')
	const decisions = { lines: [], actions: [], ...part('decisions') }
	const twice = unfolded(tree.typedTwice ?? {}, 'typedTwice', 'typedTwice', to)
	const { reasons } = to
	return {
		visit: {
			...visit,
			player,
			...(Object.keys(reasons).length > 0 && { notMeasured: reasons }),
		},
		raw: to.raw,
		decisions,
		...(Array.isArray(twice) && twice.length > 0 && { typedTwice: twice }),
	}
}
