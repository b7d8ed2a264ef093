/** What a check of a rotation finds. */
import type { Breach } from '../../words/en/season/refusals.ts'
import type { Level } from '../problem/levels.ts'
import type { Slot, Use } from '../problem/problem.ts'

/** A pair in a session, by their places. */
export interface Cell {
	slot: number
	pair: number
}
export interface Checked {
	/** broken hard rules; a sound plan has none */
	problems: Breach[]
	noPair: number[]
	pinMissed: number[]
	/** sessions not worn in the pair that the plan before told */
	toldMissed: number[]
	notDry: Cell[]
	unfamiliar: Cell[]
	changes: number
	/** training minutes of a pair above (positive) or below (negative) the share asked for */
	share: {
		pair: number
		minutes: number
	}[]
	/** hours times suitability points */
	suitability: number
	/** what is reached on each level, in their order */
	reached: Record<Level, number>
	/** minutes of each pair at the end, recorded ones included */
	minutes: number[]
}
/** A session with what was settled in it before, and what the rotation says. */
export interface PlannedSession {
	index: number
	slot: Slot
	/** how problems name it */
	at: { date: string; start: string }
	uses: readonly Use[]
	settled: readonly Use[]
	/** worn by choice, not settled before */
	chosen: readonly Use[]
	/** minutes that were not settled before */
	freeMinutes: number
}
