/** What a step still lacks, in short names. Pure. */
import { measureAt } from '../../../shared/engine/visit/measures/catalogue.ts'
import { capital } from '../../../shared/engine/words/words.ts'
import { nameOf, sideOf } from '../../parts/measure/fieldState.ts'

export interface Lack {
	path: string
	/** 'Ball width, left'. */
	name: string
	/** Something stands in the field that is no value yet. */
	unread: boolean
}
/** What is no single field of the visit. */
const otherNames: Readonly<Record<string, string>> = {
	'play.surfaces': 'Surfaces',
	screening: 'Warning signs',
	footwear: 'Pairs owned',
}
/** Of a field in a row of a list the engine says which row is meant. */
const nameAt = (path: string, says = ''): string =>
	otherNames[path] ?? (/^(conditions|since)\./.test(path) && says ? capital(says) : nameOf(path))
const isOf = (path: string, asked: readonly string[]): boolean =>
	asked.some((one) => path === one || path.startsWith(`${one}.`))

/**
 * What cannot be read stands first, then what is missing, in the order of the walk.
 * @param asked paths of the step, @param raw what stands typed and is no value
 */
export function lacksOf(
	asked: readonly string[],
	raw: Readonly<Record<string, string>>,
	missing: readonly { path: string; says: string }[],
): Lack[] {
	const unread = [
		...asked.filter((path) => raw[path] !== undefined),
		...Object.keys(raw).filter((path) => !asked.includes(path) && isOf(path, asked)),
	]
	const rest = missing.filter(({ path }) => !unread.includes(path))
	return [
		...unread.map((path) => ({ path, name: nameAt(path), unread: true })),
		...rest.map(({ path, says }) => ({ path, name: nameAt(path, says), unread: false })),
	]
}
/** Left and right of one measure are one name: 'Ball width, both'. */
export function shortNames(lacks: readonly Lack[]): string[] {
	const names = lacks.map(({ path, name }) => {
		const placed = sideOf(path) && measureAt(path)
		if (!placed) return { one: name, name }
		const sides = lacks.filter((other) => measureAt(other.path)?.key === placed.key)
		return { one: placed.key, name: sides.length === 2 ? `${placed.measure.label}, both` : name }
	})
	return [...new Map(names.map(({ one, name }) => [one, name])).values()]
}
