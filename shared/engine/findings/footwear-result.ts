/** What the footwear room returns: what to look for, the pairs owned, the models of the shelf. */
import type { Basis, Because } from '../protocol/basis.ts'
import type { Feature } from '../visit/terms.ts'
import type { Finding } from './finding.ts'

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
