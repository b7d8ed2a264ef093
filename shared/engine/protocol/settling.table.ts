/**
 * The order in which wishes that pull apart are settled: what stands first is never given up for what
 * stands later. Common practice, no source (a senior clinician's order of thinking); the place of
 * each is an own choice. Within one: the more painful injury, then the stronger evidence.
 */
import type { Strength } from './basis.ts'

export const settlingOrder = [
	/** Never traded. */
	'gate',
	'length',
	'ground',
	/** Skin that may be lost unnoticed, a joint that no stud should press on. */
	'skin-and-joints',
	'injury-now',
	'recurrent-injury',
	'shape',
	'growth',
	'grip',
	'body-and-position',
	'preference',
] as const
export type SettlingRank = (typeof settlingOrder)[number]
/** Strongest first. */
export const strengthOrder: readonly Strength[] = ['standard', 'guideline', 'trial', 'cohort', 'cross-sectional', 'expert', 'practice', 'clinic']
