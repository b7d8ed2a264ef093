/** Minutes in each pair, counted on from the recorded ones as a season goes on. */
import { need } from '../../plain/need.ts'
import type { Owned, Use } from './problem.ts'

export class MinutesWorn {
	readonly #minutes: number[]
	constructor(startMinutes: readonly number[]) {
		this.#minutes = [...startMinutes]
	}
	/** As recorded at the visit, nothing of the season counted yet. */
	static recorded(pairs: readonly Owned[]): MinutesWorn {
		return new MinutesWorn(pairs.map((pair) => pair.startMinutes))
	}
	in(pair: number): number {
		return need(this.#minutes[pair], 'the minutes of the pair')
	}
	add({ pair, minutes }: Use): void {
		this.#minutes[pair] = this.in(pair) + minutes
	}
	/** By pair, as they stand now. */
	all(): number[] {
		return [...this.#minutes]
	}
}
