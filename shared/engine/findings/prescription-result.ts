/**
 * The prescription: the one plan of a visit, composed of what the rooms propose. Screens, documents
 * and season read it and no room's own wish.
 */
import type { Basis } from '../protocol/basis.ts'
import type { LoadFields } from '../visit/answers.ts'
import type { Adjustment } from '../visit/recorded/insert-worn.ts'
import type { Exercise, Feature, PairRole, Sole, Surface } from '../visit/terms.ts'
import type { Statement } from '../words/statement.ts'
import type { PerSide } from './compared.ts'
import type { Gate } from './gate.ts'
import type { RaisePlan } from './raise-result.ts'
import type { Span } from './sizing-result.ts'

/** What to do first; at most three, most urgent first. `code` and `params` say what. */
export interface Priority extends Statement {
	rank: number
	who: 'clinician' | 'player' | 'guardian' | 'doctor'
	/** The last day by which, ISO date; today's date is now. */
	when: string
	/** Ids of findings. */
	because: string[]
}
/** A wish that had to give way, and to what. */
export interface Settled extends Statement {
	feature: Feature
	/** What it gave way to: a feature, or what was decided (`gate`, `length`, `ground`). */
	over: string
}
/** What one finding asks of a pair, whether it stands or gave way. */
export interface PairReason {
	/** Its id. */
	finding: string
	seek: Feature[]
	avoid: Feature[]
}
/** What to look for in a pair of one role. */
export interface RolePair {
	/** `match`, or `match.2` where one sole cannot serve all grounds: stable for the same visit. */
	id: string
	role: PairRole
	surfaces: Surface[]
	sole?: Sole
	insideLengthMm?: Span
	width?: string
	offsetMm?: { min: number; max: number }
	seek: Feature[]
	avoid: Feature[]
	/** What each finding asked of it; absent where nothing may be bought. */
	reasons?: PairReason[]
	settled: Settled[]
	/** The owned pair that serves the role; then nothing needs to be bought. */
	ownedPair?: string
	/** Pairs of the role that stay in use and do not serve it here, each with why. */
	beside?: Statement[]
	/** Owned pairs whose sole suits it, whatever else is said of them: one that may be worn serves. */
	couldServe?: string[]
	/** Models of the shelf, best first, at most three. */
	shelf: string[]
	/** keep: nothing needs to change; with-what-you-have: changes only; buy: a purchase is worth it. */
	means: 'keep' | 'with-what-you-have' | 'buy'
}
export type OwnedVerdict = 'keep' | 'modify' | 'training-only' | 'replace' | 'stop-wearing'
export interface OwnedPair extends Statement {
	id: string
	verdict: OwnedVerdict
	/** Replace by this day, ISO date. */
	by?: string
	/** Ids of findings. */
	because: string[]
	/** Ids of changes to this pair (footwear work). */
	work: string[]
}
/** What is done about load. A figure is a rule of a room, or else the clinician's own. */
export interface LoadPlan {
	/** Hours of sport a week at most. */
	hoursPerWeek?: number
	daysOffPerWeek?: number
	/** Weekly steps back to the usual load (`loading.returnSteps`). */
	returnWeeks?: number
	/** Often used for what is recorded; how much is the clinician's. */
	exercises: Exercise[]
	/** What the clinician set: it stands in place of the figures above. */
	own?: LoadFields
}
/** A day by which a part of the plan asks for a review; it goes with that part. */
export interface ReviewAsked {
	by: 'gate' | 'signs' | 'growth' | 'raise' | 'insert' | 'owned'
	date: string
	because: string[]
}
export interface PrescribedInsert {
	state: 'proposed' | 'not-needed' | 'held'
	/** Ids of elements; their amounts stand in `insert.SIDE.elements`. */
	elements: string[]
	/** Pairs in which it is worn: owned pairs by id, or `role.<role>`. */
	pairs: string[]
}
/** A change to the insert that is worn, and what it rests on. */
export interface ProposedAdjustment extends Statement {
	line: Adjustment
	basis: Basis
	/** What speaks against it, and does not take it out. */
	against: Statement[]
}
/** The insert that is worn goes on being worn, with what is done to it; nothing where it stays. */
export interface InsertKept {
	orderedOn: string
	/** What stands: as proposed, or as the clinician set it. */
	lines: Adjustment[]
	proposed: ProposedAdjustment[]
	/** A new one is ordered in its place. */
	anew?: true
}
export type Firmness = 'steady' | 'near-a-limit' | 'either-way'
/** What the clinician settles with one answer. */
export interface Question extends Statement {
	/** Unique and stable: `gate`, `size`, `raise`, `pair.match`, `owned`, `insert`, ... */
	id: string
	/** Findings shown under it; a caution among them is read here. */
	because: string[]
	held: boolean
	/** SHA-256 of the content of the proposal: an answer to another one is asked again. */
	of: string
	/** Nothing that it rests on changed beyond error since the last visit: may be left as it was. */
	unchanged: boolean
	firmness?: Firmness
	decidedBy?: string[]
}
export interface Prescription {
	gate: Gate
	priorities: Priority[]
	/** Records before 0.5 have none. */
	load?: LoadPlan
	raise: RaisePlan
	pairs: RolePair[]
	owned: OwnedPair[]
	insert: PerSide<PrescribedInsert>
	/** Absent where no insert of ours goes on being worn; records before 0.6 have none. */
	insertKept?: InsertKept
	/** Changes to footwear and ways to lace (footwear.modifications, .lacing), each as `ID.SIDE`. */
	changes: string[]
	lacing: string[]
	review?: { date: string; because: string[] }
	/** What the review is the earliest of; records before 0.5 have none. */
	reviewAsked?: ReviewAsked[]
	questions: Question[]
}
