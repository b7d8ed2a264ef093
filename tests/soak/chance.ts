/** Chance that can be had again: everything drawn follows from one number, which is printed. */
export interface Chance {
	/** from 0 to less than 1 */
	next: () => number
	/** a whole number from 0 to less than `limit` */
	below: (limit: number) => number
	pick: <T>(from: readonly T[]) => T
}
/** @param seeds the printed number, and whatever tells one round from another */
export function chance(...seeds: readonly number[]): Chance {
	let state = seeds.reduce((mixed, seed) => Math.imul(mixed ^ (seed + 0x9e3779b9), 0x85ebca6b), 1)
	const next = (): number => {
		state = (state + 0x6d2b79f5) | 0
		let mixed = Math.imul(state ^ (state >>> 15), 1 | state)
		mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed
		return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296
	}
	const below = (limit: number): number => Math.floor(next() * limit)
	return { next, below, pick: (from) => from[below(from.length)] as (typeof from)[number] }
}
