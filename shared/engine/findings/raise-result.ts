/** What the raise room returns: one figure for each foot in each pair. All heights mm. */
import type { Basis, Because } from '../protocol/basis.ts'
import type { Statement } from '../words/statement.ts'
import type { PerSide } from './compared.ts'
import type { Finding, Working } from './finding.ts'

export type RaiseKind = 'range' | 'pain' | 'leg-length' | 'none'
export interface RaiseAim {
	kind: RaiseKind
	/** Heel above forefoot aimed at (range), or what is added to the shoes worn (pain, leg length). */
	mm?: PerSide<number>
	because: Because[]
	basis?: Basis
	/** What of it corrects the leg length: left less right is the correction, in every pair. */
	legLengthMm?: PerSide<number>
}
export interface RaiseInFoot {
	/** Added under the heel in this pair, whatever makes it; 0 is none. */
	addMm: number
	madeBy: 'none' | 'wedge' | 'insert' | 'outsole'
	/** Of what is added, on the outsole; the rest goes inside. Absent where nothing is built on it. */
	outsoleMm?: number
	/** All material under the heel inside the shoe: raise, shell and cover together. */
	addedUnderHeelMm: number
	/** Offset of the pair and what is added; absent where the offset is not known. */
	heelAboveForefootMm?: number
}
export interface RaiseInPair extends PerSide<RaiseInFoot> {
	/** Id of an owned pair, or `role.<role>` for one to be chosen. */
	pair: string
	offsetMm?: number
	/** measured: of this pair; stated: what its kind usually has; unknown: no figure to a range aim. */
	offsetFrom: 'measured' | 'stated' | 'unknown'
	/** Limits that were reached, and why no figure is given. */
	limits: Statement[]
	/** What lies inside today, mm under each heel, and what becomes of it. */
	worn?: { raiseMm: number; insert: boolean; verdict: WornVerdict }
}
/** What becomes of a raise that is worn today: it stays, or it comes out (for the one given). */
export type WornVerdict = 'leave' | 'take-out'
export interface RaiseStep extends Statement {
	/** The earliest, from the day of fitting on: an ISO 8601 duration, such as P7D. */
	from: string
	/** What it is for or waits for. */
	when: RaiseStepWhen
	/** The most in any pair from then on, mm. */
	addMm: PerSide<number>
}
export type RaiseStepWhen =
	| 'everyday'
	| 'training'
	| 'match'
	| 'stop'
	| 're-check'
	| 'free-of-pain'
	| 'range-regained'
export interface RaisePlan {
	aim: RaiseAim
	pairs: RaiseInPair[]
	/** Wearing-in, then weaning and when to stop. */
	steps: RaiseStep[]
}
export interface RaiseResult extends RaisePlan {
	findings: Finding[]
	workings: Working[]
}
