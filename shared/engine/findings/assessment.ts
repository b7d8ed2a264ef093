/**
 * Assessment file, version 1: what assess() returns. A number that cannot be computed is absent.
 */
import type { Basis, Because } from '../protocol/basis.ts'
import type { Feature } from '../visit/terms.ts'
import type { Finding, Working } from './finding.ts'

export interface PerSide<T> {
	left: T
	right: T
}
export interface SizeLabel {
	exact: number
	label: number
	fitting: number
	scale: 'child' | 'adult' | 'youth'
}
/**
 * A change since the last visit that has the measure; real only from the published smallest real
 * change.
 */
export interface Change {
	since: string
	was: number
	now: number
	change: number
	unit: string
	examiners: 'same' | 'different' | 'unknown'
	/** The smallest change called real, where one is published. */
	smallestReal?: number
	verdict: 'real' | 'within-error' | 'cannot-compare'
	/** Why the two cannot be compared. */
	why?: string
}
export type Changes<K extends string> = PerSide<Partial<Record<K, Change>>>
export interface Sizes {
	mondopoint: { lengthMm: number; widthMm?: number }
	jpCm: SizeLabel
	eu: SizeLabel
	uk: SizeLabel
	usMen: SizeLabel
	usWomen: SizeLabel
	usChild: SizeLabel
	au: SizeLabel
}
export interface FootSizing {
	lengthMm?: number
	/** Foot length among adults of the same sex; none for minors. */
	lengthZ?: number
	lengthPercentile?: number
	ballLengthMm?: number
	archLengthMm?: number
	widthMm?: number
	girthMm?: number
	widthForLengthZ?: number
	girthForLengthZ?: number
	fitting: { jis?: string; us?: string }
}
export interface Span {
	min: number
	target: number
	max: number
}
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
	/** The next most likely UK half size and its probability (0 to 1), by the same error. */
	nextSize?: { system: 'uk'; label: number; scale: 'child' | 'adult'; probability: number }
	/** Letters of the wider foot at the length to fit, adults only. */
	fitting?: { jis?: string; us?: string }
	/**
	 * Toe room and inside length to look for in trainers; `toeRoomMm` and `insideLengthMm` above are
	 * for boots.
	 */
	trainers?: { toeRoomMm: Span; insideLengthMm: Span }
	changes: Changes<'lengthMm' | 'widthMm' | 'girthMm'>
	findings: Finding[]
	workings: Working[]
}
export interface AnkleSide {
	lungeCm?: number
	lungeDeg?: number
	kneeStraightDeg?: number
	kneeBentDeg?: number
	band: 'restricted' | 'adequate' | 'unknown'
	limitedBy: 'gastrocnemius' | 'soleus-or-capsule' | 'anterior-block' | 'none' | 'unknown'
}
export interface AnkleResult {
	left: AnkleSide
	right: AnkleSide
	asymmetryCm?: number
	asymmetryDeg?: number
	asymmetry: 'none' | 'flag' | 'act' | 'unknown'
	offsetMm?: { min: number; max: number }
	heelRaiseMm?: PerSide<number>
	pitches: PairPitch[]
	changes: Changes<'lungeCm' | 'lungeDeg'>
	findings: Finding[]
	workings: Working[]
}
/**
 * What going from one pair to another asks of the ankle; `changeDeg` is never negative: `to` is the
 * pair that asks more.
 */
export interface PairPitch {
	from: string
	to: string
	fromDeg: number
	toDeg: number
	changeDeg: number
}
export interface PostureSide {
	fpi?: number
	fpiBand?: 'highly-supinated' | 'supinated' | 'normal' | 'pronated' | 'highly-pronated'
	firstRay?: string
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
		cmPerYear: number
		errorCmPerYear: number
		trendOnly: boolean
	}
	toeRoom: ToeRoomForecast[]
	findings: Finding[]
	workings: Working[]
}
export const actions = ['proceed', 'letter', 'imaging', 'same-day', 'emergency'] as const
export type Action = (typeof actions)[number]
export type OttawaState = 'met' | 'not-met' | 'incomplete' | 'not-applicable'
export interface ScreeningItem {
	id: string
	side: 'left' | 'right' | 'both' | 'none'
	state: 'yes' | 'no' | 'not-asked'
	action: Action
	says: string
	basis: Basis
}
/** Foot at risk in diabetes (NICE NG19). */
export type DiabeticRisk = 'low' | 'moderate' | 'high' | 'active' | 'incomplete'
export interface ScreeningResult {
	action: Action
	items: ScreeningItem[]
	ottawa: Partial<PerSide<{ ankle: OttawaState; foot: OttawaState }>>
	wells?: { score?: number; band: 'likely' | 'unlikely' | 'not-applicable' }
	diabeticFoot?: Partial<PerSide<DiabeticRisk>>
	/**
	 * Limbs whose insert and rotation output stop until what was done is recorded
	 * (decisions.screeningDone), and the items that stop each.
	 */
	blockedSides: ('left' | 'right')[]
	blockedBy: PerSide<string[]>
	findings: Finding[]
}
export interface FeatureWish {
	feature: Feature
	because: Because[]
	basis: Basis
	says: string
	rule: string
}
/** One line of a match: points where it costs any. */
export interface MatchReason {
	rule: string
	says: string
	points?: number
	because: Because[]
	basis: Basis
}
export type JointName = 'first metatarsal head' | 'fifth metatarsal head' | 'heel centre'
/**
 * Distance from a joint to the nearest stud of a sole, mm; every stud's distance is in `eachMm`, in
 * the order of the model's studs.
 */
export interface StudDistance {
	joint: JointName
	nearestMm: number
	nearestStud: number
	eachMm: number[]
	under: number[]
	atRisk: Because[]
}
export interface RankedModel {
	id: string
	name: string
	sole: string
	verdict: 'suits' | 'with-changes' | 'unsuitable'
	/** Sum of the soft penalties: lower is better. Only for the order, not a score of quality. */
	points: number
	size: {
		system: string
		label: number
		fitting?: string
		insideLengthMm: number
		ballWidthMm: number
	}
	toeRoomMm: number
	widthMarginMm?: number
	depthMarginMm?: number
	offsetMm?: number
	stops: MatchReason[]
	for: MatchReason[]
	against: MatchReason[]
	/** Wished properties the shelf does not record for this model. */
	unknown: string[]
	wouldChange: string[]
	studs?: { left?: StudDistance[]; right?: StudDistance[] }
	price?: number
}
/** A change to the footwear, or a way to lace it, chosen by findings. */
export interface FootwearWork {
	id: string
	name: string
	side: 'left' | 'right' | 'both'
	says: string
	limits: string
	because: Because[]
	cautions: string[]
	basis: Basis
}
export interface CurrentPair {
	id: string
	toeRoomMm?: number
	verdict: 'keep' | 'change' | 'replace' | 'unknown'
	says: string
	reasons?: string[]
	/**
	 * The date from which the toe room is expected below the limit, and the span of the forecast's
	 * band.
	 */
	replaceBy?: string
	replaceBetween?: { from: string; to?: string }
}
export interface FootwearResult {
	target: { seek: FeatureWish[]; avoid: FeatureWish[] }
	contradictions: { feature: Feature; says: string }[]
	current: CurrentPair[]
	/** The models of the shelf, best first; empty without a shelf or without a foot length. */
	ranked: RankedModel[]
	modifications?: FootwearWork[]
	lacing?: FootwearWork[]
	findings: Finding[]
}
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
}
/**
 * One element of an insert: what, how much, within what, why. Ids stand in
 * shared/engine/insert/element-words.ts.
 */
export interface InsertElement {
	element: string
	value?: number
	unit?: string
	choice?: string
	range?: [number, number]
	where: 'boot' | 'trainer' | 'both'
	says: string
	because: Because[]
	basis: Basis
	cautions: string[]
}
export interface InsertSide {
	/**
	 * proposed: elements stand; not-needed: no symptom or finding calls for one; stopped: see
	 * stoppedBy
	 */
	state: 'proposed' | 'not-needed' | 'stopped'
	stoppedBy: { id: string; says: string }[]
	elements: InsertElement[]
}
export interface InsertConflict {
	id: string
	side: 'left' | 'right'
	elements: string[]
	says: string
	basis: Basis
}
export interface WearInStep {
	when: string
	says: string
}
export interface InsertResult {
	left: InsertSide
	right: InsertSide
	conflicts: InsertConflict[]
	wearIn: WearInStep[]
	findings: Finding[]
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
	/** All rooms' findings, most consequential first. */
	findings: Finding[]
	/** Measures that would add to the picture, by visit path, in plain words. */
	missing: { path: string; says: string }[]
}
