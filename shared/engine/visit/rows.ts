/** Items of a list by names of their own, so that an entry keeps its name when others come and go. */
import { canonicalJson } from '../plain/canonical.ts'
import { type RowList, rowLists } from './row-lists.table.ts'

const listsByPath = new Map(rowLists.map((list) => [list.path, list]))
/** The list at a path, `*` for each item on the way; undefined where it is one value. */
export const rowListAt = (path: string): RowList | undefined => listsByPath.get(path)
/** Lists whose items have names from the content, and are nobody's part. */
export const namedLists = rowLists.filter(({ path, by }) => by.length > 0 && !path.includes('*'))
/** For each list by its path the names of its items, in their order. */
export type RowNames = ReadonlyMap<string, readonly string[]>

type Row = Readonly<Record<string, unknown>>
const isRow = (value: unknown): value is Row =>
	typeof value === 'object' && value !== null && !Array.isArray(value)
/** The items of a list of the content; none where it is not there. */
export function rowsAt(content: unknown, path: string): Row[] {
	const found = path
		.split('.')
		.reduce<unknown>((here, key) => (isRow(here) ? here[key] : undefined), content)
	return Array.isArray(found) ? found.filter(isRow) : []
}
const valueWords = (value: unknown): string =>
	typeof value === 'string' ? value : canonicalJson(value ?? null)
const told = (row: Row, keys: readonly string[]): string =>
	keys.map((key) => valueWords(row[key])).join(' ')
/** A name that none has yet: the second of one name is told by its number. */
function freeName(name: string, taken: ReadonlySet<string>): string {
	let free = name
	for (let number = 2; taken.has(free); number++) free = `${name} ${number}`
	return free
}
/** By what an item is named: the loosest of what tells it, which changes least. */
const nameOf = (row: Row, { by }: RowList): string => told(row, by.at(-1) ?? []).slice(0, 180)

/** The names of items by themselves. */
export function ownNames(rows: readonly Row[], list: RowList): string[] {
	const taken = new Set<string>()
	return rows.map((row) => {
		const name = freeName(nameOf(row, list), taken)
		taken.add(name)
		return name
	})
}
/** The names of all lists of a content. */
export const rowNames = (content: unknown): RowNames =>
	new Map(namedLists.map((list) => [list.path, ownNames(rowsAt(content, list.path), list)]))

interface Named {
	name: string
	row: Row
}
/**
 * The names of items that are those of `known` as far as they can be told: first those that are the
 * same, then by what tells an item, the surest first. The others get names that nobody has.
 */
function namesLike(known: readonly Named[], rows: readonly Row[], list: RowList): string[] {
	const names: (string | undefined)[] = rows.map(() => undefined)
	const left = new Set(known)
	const ways = [canonicalJson, ...list.by.map((keys) => (row: Row) => told(row, keys))]
	for (const way of ways)
		for (const [at, row] of rows.entries()) {
			if (names[at] !== undefined) continue
			const same = [...left].find((one) => way(one.row) === way(row))
			if (!same) continue
			names[at] = same.name
			left.delete(same)
		}
	const taken = new Set([
		...known.map(({ name }) => name),
		...names.filter((name) => name !== undefined),
	])
	return rows.map((row, at) => {
		const name = names[at] ?? freeName(nameOf(row, list), taken)
		taken.add(name)
		return name
	})
}
/** The same item has one name in what both began from, and in what each made of it. */
export function namesOfThree(base: unknown, mine: unknown, theirs: unknown) {
	const names = { base: new Map(), mine: new Map(), theirs: new Map() } satisfies Record<
		string,
		Map<string, string[]>
	>
	for (const list of namedLists) {
		const { path } = list
		const rows = {
			base: rowsAt(base, path),
			mine: rowsAt(mine, path),
			theirs: rowsAt(theirs, path),
		}
		const ofBase = ownNames(rows.base, list)
		const known = rows.base.map((row, at) => ({ name: ofBase[at] ?? '', row }))
		const ofMine = namesLike(known, rows.mine, list)
		const added = rows.mine
			.map((row, at) => ({ name: ofMine[at] ?? '', row }))
			.filter(({ name }) => !ofBase.includes(name))
		names.base.set(path, ofBase)
		names.mine.set(path, ofMine)
		names.theirs.set(path, namesLike([...known, ...added], rows.theirs, list))
	}
	return names as { base: RowNames; mine: RowNames; theirs: RowNames }
}
