/** What the footwear room returns: what to look for, the pairs owned, the models of the shelf. */
import type { Basis, Because } from '../protocol/basis.ts'
import type { SettlingRank } from '../protocol/settling.table.ts'
import type { JointName } from '../visit/shelf.ts'
import type { Feature, PairRole, Surface } from '../visit/terms.ts'
import type { Statement } from '../words/statement.ts'
import type { Finding } from './finding.ts'
import type { Settled } from './prescription-result.ts'

export interface FeatureWish extends Statement {
	feature: Feature
	because: Because[]
	basis: Basis
	rule: string
	/** Where it stands in the order of settling; a record of before 0.4 lacks it and what follows. */
	rank?: SettlingRank
	/** Of an injury now: its worst pain, 0 to 10. */
	severity?: number
	/** Not to be had otherwise: a model that goes against it is not put forward. */
	strict?: boolean
	/** For these grounds only. */
	grounds?: Surface[]
	/** For pairs of these roles only. */
	roles?: PairRole[]
}
/** One line of a match: points where it costs any. */
export interface MatchReason extends Statement {
	rule: string
	points?: number
	because: Because[]
	basis: Basis
}
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
/** What would make a model fit. */
export interface ModelChange extends Statement {
	/** Can be done to this model; false: another size or another model is meant. */
	toThisModel: boolean
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
	/** Wished properties the shelf does not record for this model, in words; and as terms. */
	unknown: string[]
	unknownFeatures?: Feature[]
	/** What would change the verdict, in words; and with codes. */
	wouldChange: string[]
	changes?: ModelChange[]
	studs?: { left?: StudDistance[]; right?: StudDistance[] }
	price?: number
}
/** A change to the footwear, or a way to lace it, chosen by findings. */
export interface FootwearWork extends Statement {
	id: string
	name: string
	side: 'left' | 'right' | 'both'
	limits: string
	because: Because[]
	cautions: string[]
	/** The name, the limits and the cautions with their codes; an older record lacks them. */
	stated?: { name: Statement; limits: Statement; cautions: Statement[] }
	basis: Basis
}
export interface CurrentPair extends Statement {
	id: string
	toeRoomMm?: number
	verdict: 'keep' | 'change' | 'replace' | 'unknown'
	/** What else is to be watched, in words; `params.said` holds all parts with their codes. */
	reasons?: string[]
	/**
	 * The date from which the toe room is expected below the limit, and the span of the forecast's
	 * band.
	 */
	replaceBy?: string
	replaceBetween?: { from: string; to?: string }
}
export interface Contradiction extends Statement {
	feature: Feature
	/** The other of an opposite pair; left out where one feature is both sought and avoided. */
	other?: Feature
}
export interface FootwearResult {
	target: { seek: FeatureWish[]; avoid: FeatureWish[] }
	/** What pulls apart among the room's own wishes. */
	contradictions: Contradiction[]
	/** What gave way, and to what; a record of before 0.4 has none. */
	settled?: Settled[]
	current: CurrentPair[]
	/** The models of the shelf, best first; empty without a shelf or without a foot length. */
	ranked: RankedModel[]
	modifications?: FootwearWork[]
	lacing?: FootwearWork[]
	findings: Finding[]
}
