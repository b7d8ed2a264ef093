/** What the posture room returns. */
import type { Changes } from './compared.ts'
import type { Finding, Working } from './finding.ts'

export interface PostureSide {
	fpi?: number
	fpiBand?: 'highly-supinated' | 'supinated' | 'normal' | 'pronated' | 'highly-pronated'
	firstRay?: 'neutral' | 'plantarflexed' | 'dorsiflexed' | 'hypermobile'
	firstMtp?: 'free' | 'functional-limit' | 'structural-limit' | 'grey'
	navicularDropMm?: number
	heelRises?: number
	ipjEstimateDeg?: number
}
export interface Beighton {
	score: number
	cutOff?: number
	state: 'met' | 'not-met' | 'maturity-unknown'
	askHistory: boolean
}
export interface LegLength {
	differenceMm: number
	shorter?: 'left' | 'right'
	action: 'record-only' | 'only-if-symptomatic' | 'consider' | 'refer'
	correctionMm?: { min: number; max: number }
	startBelowMm?: number
}
export interface PostureResult {
	left: PostureSide
	right: PostureSide
	fpiScheme: string
	beighton?: Beighton
	legLength?: LegLength
	changes: Changes<'fpi' | 'navicularDropMm' | 'heelRises'>
	findings: Finding[]
	workings: Working[]
}
