/** What the loading room returns. */
import type { Basis } from '../protocol/basis.ts'
import type { Finding, Working } from './finding.ts'

export interface TaskForce {
	task: string
	lowN: number
	highN: number
	basis: Basis
}
/**
 * One week of session load (effort 0 to 10 times minutes). Monotony is mean over sample standard
 * deviation; strain is sum times monotony.
 */
export interface LoadWeek {
	from: string
	sum: number
	monotony?: number
	strain?: number
	changePercent?: number
}
export interface ReturnStep {
	week: number
	percentOfUsual: number
	kind: 'start' | 'step' | 'easier' | 'usual'
}
export interface LoadingResult {
	peakForceN?: { task: string; lowN: number; highN: number }
	peakForces?: TaskForce[]
	weeks?: LoadWeek[]
	returnSteps?: ReturnStep[]
	organisedHoursPerWeek?: number
	organisedToFreeRatio?: number
	findings: Finding[]
	workings: Working[]
}
