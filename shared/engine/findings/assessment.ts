/**
 * Assessment file, version 1: what assess() returns. A number that cannot be computed is absent.
 * Each room's part stands in a file of its own; callers take them all from here.
 */

import type { Statement } from '../words/statement.ts'
import type { AnkleResult } from './ankle-result.ts'
import type { PerSide } from './compared.ts'
import type { Finding } from './finding.ts'
import type { FootwearResult } from './footwear-result.ts'
import type { GrowthResult } from './growth-result.ts'
import type { InsertResult } from './insert-result.ts'
import type { LoadingResult } from './loading-result.ts'
import type { PostureResult } from './posture-result.ts'
import type { Prescription } from './prescription-result.ts'
import type { RaiseResult } from './raise-result.ts'
import type { ScreeningResult } from './screening-result.ts'
import type { SizingResult } from './sizing-result.ts'

export type * from './ankle-result.ts'
export type * from './compared.ts'
export type * from './footwear-result.ts'
export type * from './gate.ts'
export type * from './growth-result.ts'
export type * from './insert-result.ts'
export type * from './loading-result.ts'
export type * from './player-facts.ts'
export type * from './posture-result.ts'
export type * from './prescription-result.ts'
export type * from './raise-result.ts'
export * from './screening-result.ts'
export type * from './sizing-result.ts'

/** A value as a record may hold it: earlier versions stated without code and parameters. */
export type Kept<Value> = Value extends Statement
	? Partial<Pick<Value, 'code' | 'params'>> & {
			[Key in keyof Value as Exclude<Key, 'code' | 'params'>]: Kept<Value[Key]>
		}
	: Value extends object
		? { [Key in keyof Value]: Kept<Value[Key]> }
		: Value
/** An assessment as a record may hold it: one of before 0.4 has no prescription. */
export type KeptAssessment = Omit<Kept<Assessment>, 'prescription'> & {
	prescription?: Kept<Prescription>
}

export interface Assessment {
	format: 'lastwright-assessment'
	version: 1
	engine: string
	protocol: { id: string; version: number; digest: string }
	visitDate: string
	ageYears: number
	sizing: SizingResult
	ankle: AnkleResult
	posture: PostureResult
	growth?: GrowthResult
	screening: ScreeningResult
	footwear: FootwearResult
	loading: LoadingResult
	insert: InsertResult
	/** How the figures of `prescription.raise` came about; records before 0.4 have none. */
	raise?: Pick<RaiseResult, 'workings'>
	/** The one plan; records before 0.4 have none. */
	prescription: Prescription
	/** All rooms' findings, most consequential first. */
	findings: Finding[]
	/**
	 * Why tests under load wait on each limb: rules of the gate, or `fresh-injury`; empty where they
	 * may be done. Records before 0.5 have none.
	 */
	testsWait?: PerSide<string[]>
	/** Measures that would add to the picture, by visit path, in plain words. */
	missing: { path: string; says: string }[]
}
