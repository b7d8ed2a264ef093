/** A copy of a value that parts can be cut off, which knows where each part stood. */

/** A part that was cut off. */
export interface CutPart {
	/** where it stood, dots between keys */
	path: string
	value: unknown
	/** the way to what it stood in, in the value as it is read */
	parent: readonly PropertyKey[]
	/** its own key, or its place in a list, as it stood */
	key: PropertyKey
}
type Path = readonly PropertyKey[]

export const isObject = (value: unknown): value is Record<PropertyKey, unknown> =>
	typeof value === 'object' && value !== null
/** A copy of data, down to its leaves. */
export function copyOf(value: unknown): unknown {
	if (Array.isArray(value)) return value.map(copyOf)
	if (!isObject(value)) return value
	return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, copyOf(inner)]))
}
/** What stands at a path; undefined where nothing does. */
export function valueAt(value: unknown, path: Path): unknown {
	let here = value
	for (const key of path) {
		if (!isObject(here) || !Object.hasOwn(here, key)) return undefined
		here = here[key]
	}
	return here
}
/** Puts a value at a path. @returns whether there is such a place */
function putAt(whole: unknown, path: Path, value: unknown): boolean {
	const parent = valueAt(whole, path.slice(0, -1))
	const key = path.at(-1)
	if (!isObject(parent) || key === undefined) return false
	parent[key] = value
	return true
}
/** A text, list or group of at most so many characters or entries. */
function cutTo(value: unknown, most: number): unknown {
	if (typeof value === 'string' || Array.isArray(value)) return value.slice(0, most)
	return isObject(value) ? Object.fromEntries(Object.entries(value).slice(0, most)) : value
}
const beginsWith = (path: Path, start: Path): boolean =>
	start.length <= path.length && start.every((key, index) => path[index] === key)
/** In the order of a book: what stands first comes first, a group before what is in it. */
function compare(left: Path, right: Path): number {
	for (const [index, key] of left.entries()) {
		const other = right[index]
		if (other === undefined) return 1
		if (key === other) continue
		if (typeof key === 'number' && typeof other === 'number') return key - other
		return String(key) < String(other) ? -1 : 1
	}
	return left.length - right.length
}

export class Cutting {
	readonly #whole: unknown
	/** what is left */
	readonly standing: unknown
	/** of each list that lost an entry: where each that is left stood */
	readonly #places = new Map<unknown, number[]>()
	#cut: Path[] = []
	/** what was longer than is taken today, whole, by where it stands */
	readonly #long: { path: Path; value: unknown }[] = []
	constructor(value: unknown) {
		this.#whole = value
		this.standing = copyOf(value)
	}
	/** Cuts off what stands at these paths of what is left; a path inside another one goes with it. */
	cut(paths: readonly Path[]): void {
		const outer = paths.filter(
			(path) => !paths.some((other) => other.length < path.length && beginsWith(path, other)),
		)
		// from the end on: a list closes up behind an entry that goes
		for (const path of [...outer].sort(compare).reverse()) this.#cutOne(path)
	}
	/** Shortens what is longer than is taken today; restore() gives it back its length. */
	shorten(path: Path, most: number): void {
		const value = valueAt(this.standing, path)
		if (putAt(this.standing, path, cutTo(value, most))) this.#long.push({ path, value })
	}
	/** Puts what was shortened back, whole, into what was read of the rest. */
	restore<Value>(read: Value): Value {
		for (const { path, value } of this.#long) putAt(read, path, value)
		return read
	}
	#cutOne(path: Path): void {
		const parent = valueAt(this.standing, path.slice(0, -1))
		const key = path.at(-1)
		if (!isObject(parent) || key === undefined || !Object.hasOwn(parent, key)) return
		const stood = this.#stood(path)
		this.#cut = [...this.#cut.filter((other) => !beginsWith(other, stood)), stood]
		if (Array.isArray(parent)) {
			this.#placesOf(parent).splice(Number(key), 1)
			parent.splice(Number(key), 1)
		} else delete parent[key]
	}
	#placesOf(list: readonly unknown[]): number[] {
		const known = this.#places.get(list) ?? list.map((_, index) => index)
		this.#places.set(list, known)
		return known
	}
	/** The path in the whole value of what stands at a path now. */
	#stood(path: Path): Path {
		let here = this.standing
		return path.map((key) => {
			const places = this.#places.get(here)
			here = valueAt(here, [key])
			return places?.[Number(key)] ?? key
		})
	}
	/** The path now of what stood at a path of the whole value; undefined where it is gone. */
	#stands(path: Path): Path | undefined {
		let here = this.standing
		const now: PropertyKey[] = []
		for (const key of path) {
			const places = this.#places.get(here)
			const at = places ? places.indexOf(Number(key)) : key
			if (at === -1) return undefined
			now.push(at)
			here = valueAt(here, [at])
		}
		return now
	}
	/** All that was cut off, in the order in which it stood. */
	parts(): CutPart[] {
		return [...this.#cut].sort(compare).flatMap((path) => {
			const parent = this.#stands(path.slice(0, -1))
			const key = path.at(-1)
			if (parent === undefined || key === undefined) return []
			const value = valueAt(this.#whole, path)
			return [{ path: path.map(String).join('.'), value, parent, key }]
		})
	}
}
