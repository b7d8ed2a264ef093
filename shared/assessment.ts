/** Assessment file, version 1: what assess() returns. A number that cannot be computed is absent. */
import type { Because, Basis, Finding } from './finding.ts'
import type { Feature } from './visit/terms.ts'

export interface PerSide<T> { left: T; right: T }
export interface SizeLabel { exact: number; label: number; fitting: number; scale: 'child' | 'adult' | 'youth' }
export interface Sizes { mondopoint: { lengthMm: number; widthMm?: number }; jpCm: SizeLabel; eu: SizeLabel; uk: SizeLabel; usMen: SizeLabel; usWomen: SizeLabel; usChild: SizeLabel; au: SizeLabel }
export interface FootSizing { lengthMm?: number; ballLengthMm?: number; archLengthMm?: number; widthMm?: number; girthMm?: number; widthForLengthZ?: number; fitting: { jis?: string; us?: string } }
export interface Span { min: number; target: number; max: number }
export interface SizingResult {
	fitLengthMm?: number
	longerFoot?: 'left' | 'right' | 'equal'
	left: FootSizing
	right: FootSizing
	sizes?: Sizes
	toeRoomMm?: Span
	insideLengthMm?: Span
	/** Probability (0 to 1) that the label size is right, from measurement error. */
	sizeConfidence?: number
	findings: Finding[]
}
export interface AnkleSide { lungeCm?: number; lungeDeg?: number; kneeStraightDeg?: number; kneeBentDeg?: number; band: 'restricted' | 'adequate' | 'unknown'; limitedBy: 'gastrocnemius' | 'soleus-or-capsule' | 'anterior-block' | 'none' | 'unknown' }
export interface AnkleResult { left: AnkleSide; right: AnkleSide; asymmetryCm?: number; asymmetryDeg?: number; asymmetry: 'none' | 'flag' | 'act' | 'unknown'; offsetMm?: { min: number; max: number }; heelRaiseMm?: PerSide<number>; findings: Finding[] }
export interface PostureSide { fpi?: number; fpiBand?: 'highly-supinated' | 'supinated' | 'normal' | 'pronated' | 'highly-pronated'; firstRay?: string; firstMtp?: 'free' | 'functional-limit' | 'structural-limit' | 'grey'; navicularDropMm?: number; heelRises?: number }
export interface PostureResult { left: PostureSide; right: PostureSide; fpiScheme: string; findings: Finding[] }
export interface ByMethod { mirwald?: number; moore?: number; mooreSitting?: number; fransen?: number }
export interface Centile { z: number; percentile: number }
export interface GrowthResult {
	decimalAgeYears: number
	maturityOffsetYears: ByMethod
	ageAtPeakHeightVelocityYears: ByMethod
	predictedAdultStatureCm?: number
	percentAdultStature?: number
	band: 'before' | 'around' | 'after' | 'uncertain'
	centiles: { stature?: Centile; mass?: Centile; bmi?: Centile }
	footForecast?: { date: string; lengthMm: number; lowMm: number; highMm: number }[]
	measureAgainBy?: string
	findings: Finding[]
}
export const actions = ['proceed', 'letter', 'imaging', 'same-day', 'emergency'] as const
export type Action = (typeof actions)[number]
export type OttawaState = 'met' | 'not-met' | 'incomplete' | 'not-applicable'
export interface ScreeningItem { id: string; side: 'left' | 'right' | 'both' | 'none'; state: 'yes' | 'no' | 'not-asked'; action: Action; says: string; basis: Basis }
export interface ScreeningResult { action: Action; items: ScreeningItem[]; ottawa: Partial<PerSide<{ ankle: OttawaState; foot: OttawaState }>>; wells?: { score?: number; band: 'likely' | 'unlikely' | 'not-applicable' }; findings: Finding[] }
export interface FeatureWish { feature: Feature; because: Because[]; basis: Basis; says: string; rule: string }
export interface FootwearResult { target: { seek: FeatureWish[]; avoid: FeatureWish[] }; contradictions: { feature: Feature; says: string }[]; current: { id: string; toeRoomMm?: number; verdict: 'keep' | 'change' | 'replace' | 'unknown'; says: string }[]; ranked: never[]; findings: Finding[] }
export interface LoadingResult { peakForceN?: { task: string; lowN: number; highN: number }; organisedHoursPerWeek?: number; organisedToFreeRatio?: number; findings: Finding[] }
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
	/** All rooms' findings, most consequential first. */
	findings: Finding[]
	/** Measures that would add to the picture, by visit path, in plain words. */
	missing: { path: string; says: string }[]
}
