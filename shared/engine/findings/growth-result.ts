/** What the growth room returns for a player under 18. */
import type { Finding, Working } from './finding.ts'

export interface ByMethod {
	mirwald?: number
	moore?: number
	mooreSitting?: number
	fransen?: number
}
export interface Centile {
	z: number
	percentile: number
}
/**
 * The method that the growth stage rests on: the same one at every visit of a player where that can
 * be.
 */
export type StageMethod = 'percentAdultStature' | 'mirwald' | 'moore'
export interface Range {
	low: number
	high: number
}
/** When the toe room of a pair falls below its limit, by the foot forecast. */
export interface ToeRoomForecast {
	id: string
	toeRoomMm: number
	leastMm: number
	state: 'lasts' | 'runs-out' | 'already-short'
	runsOutOn?: string
	earliest?: string
	latest?: string
}
export interface GrowthResult {
	decimalAgeYears: number
	maturityOffsetYears: ByMethod
	ageAtPeakHeightVelocityYears: ByMethod
	predictedAdultStatureCm?: number
	percentAdultStature?: number
	band: 'before' | 'around' | 'after' | 'uncertain'
	/** Whether anything told of the stage: an uncertain one is unknown, or two measures disagree. */
	stageKnown?: boolean
	/** Whether the player is to be treated as around the growth spurt; absent: nothing says so. */
	aroundSpurt?: true
	centiles: { stature?: Centile; mass?: Centile; bmi?: Centile }
	footForecast?: { date: string; lengthMm: number; lowMm: number; highMm: number }[]
	measureAgainBy?: string
	method?: StageMethod
	/** Nine predictions in ten lie within this range. */
	predictedAdultStatureRangeCm?: Range
	percentAdultStatureRange?: Range
	/** Growth of stature since an earlier visit, with its 95 % error. */
	velocity?: {
		since: string
		days: number
		/** Growth over those days. */
		changeCm: number
		cmPerYear: number
		errorCmPerYear: number
		trendOnly: boolean
	}
	toeRoom: ToeRoomForecast[]
	findings: Finding[]
	workings: Working[]
}
