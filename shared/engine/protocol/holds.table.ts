/**
 * What each warning sign holds back, and what ends it. One row a rule; a second row adds what holds only from an action on. The rule is
 * the code of the screening item, or a rule of the facts by its own name. Signs that are not listed hold nothing.
 * Held sport after a suspected fracture, bone stress, clot, heart or head waits for the treating doctor (common practice, no source).
 * What each holds is common practice, no source, unless `source` says otherwise; the signs' own sources stand in screening/.
 */
import type { Holdable, HoldUntil } from '../visit/holdables.ts'
import type { Strength } from './basis.ts'
import type { ThresholdKey } from './protocol.ts'

type HoldSet = Readonly<Partial<Record<HoldUntil, readonly Holdable[]>>>
/** A group of questions that names the side of a general question, where it was opened too. */
type PlacedBy = 'achilles' | 'syndesmosis' | 'lisfranc' | 'boneStress' | 'infection' | 'limp' | 'tumour' | 'injury'
export interface HoldRow {
	rule: string
	holds: HoldSet
	/** Holds only where the sign asks for this action or a more urgent one. */
	from?: 'imaging'
	placedBy?: readonly PlacedBy[]
	/** The limb is acutely injured or ill: its tests are recorded, not compared. */
	acute?: true
	/** What is there for good: an outcome stands this long (a row of the protocol). */
	standsMonths?: ThresholdKey
	/** Holds on the day alone: the next visit measures anew. */
	today?: true
	/** What the rule rests on where it is not the screening item's own source. */
	source?: string
	strength?: Strength
}

const buying = ['purchase', 'shelf'] as const
const ofPlayer = ['sport', 'match', 'impact', ...buying, 'season', 'raise'] as const
const ofLimb = ['test', 'exercise', 'insert'] as const
/** Ill, infected, or not yet explained: nothing new is proposed, nothing is loaded. */
const everything = { outcome: [...ofPlayer, ...ofLimb] } as const
/** The same, and no weight on the limb. */
const everythingNoWeight = { outcome: [...ofPlayer, ...ofLimb, 'weight'] } as const
/** Something in the limb may be broken or torn through. */
const broken = { 'treating-doctor': ['sport', 'match'], 'imaging-result': ['impact', ...buying, 'season', 'raise', ...ofLimb, 'weight'] } as const
/** The same where the limb may bear weight, in a boot or with support. */
const brokenBearingWeight = { 'treating-doctor': ['sport', 'match'], 'imaging-result': ['impact', ...buying, 'season', 'raise', ...ofLimb] } as const
const clot = { 'treating-doctor': ['sport', 'match'], outcome: ['impact', ...buying, 'season', 'raise', ...ofLimb] } as const
const heartOrHead = { 'treating-doctor': ['sport', 'match'], outcome: ['impact', 'season', 'test', 'exercise'] } as const
const wound = { outcome: ['sport', 'match', 'impact', 'season', 'raise', 'test', 'exercise'], 'foot-protection-review': [...buying, 'insert'] } as const
/** Sore with load: less of it, and no hop, until it was looked at. */
const lessLoad = { outcome: ['match', 'impact', 'season', 'test'] } as const

export const holdRows: readonly HoldRow[] = [
	// facts of any entry
	{ rule: 'foot-at-risk', standsMonths: 'screening.footReviewMonths', holds: { 'foot-protection-review': [...buying, 'insert'] }, source: 'NICE NG19; healed plantar ulcer in medical-grade footwear: J Foot Ankle Res 2018;11:2 (abstract). What waits: common practice, no source', strength: 'guideline' },
	{ rule: 'uncleared-surgery', holds: { surgeon: ['sport', 'match', 'impact', 'season', 'test', 'exercise', 'insert', 'raise'] }, acute: true },
	{ rule: 'severe-pain', holds: { outcome: ['match', 'impact'] }, acute: true },
	{ rule: 'bone-stress-recovering', holds: { 'treating-doctor': ['match', 'impact'] } },
	{ rule: 'swollen-foot', today: true, holds: { outcome: [...buying] } },
	{ rule: 'no-insert-yet', holds: { outcome: ['insert'] }, source: 'expert opinion and common practice; midfoot sprain: J Foot Ankle Res 2023, s13047-023-00608-0', strength: 'expert' },
	// injury
	{ rule: 'screening.ottawa-met', holds: broken, acute: true, source: 'Ottawa ankle and foot rules (Stiell, JAMA 1993)', strength: 'guideline' },
	{ rule: 'screening.ottawa-not-applicable', holds: broken, acute: true },
	{ rule: 'screening.newly-unable', holds: broken, acute: true },
	{ rule: 'screening.achilles-rupture', holds: broken, acute: true },
	{ rule: 'screening.achillesRuptureSuspected', holds: broken, placedBy: ['achilles'], acute: true },
	{ rule: 'screening.syndesmosis', holds: brokenBearingWeight, acute: true },
	{ rule: 'screening.syndesmosisSuspected', holds: brokenBearingWeight, placedBy: ['syndesmosis', 'injury'], acute: true },
	{ rule: 'screening.lisfranc', holds: broken, acute: true },
	{ rule: 'screening.lisfranc-no-weight', holds: broken, acute: true },
	{ rule: 'screening.lisfrancSuspected', holds: broken, placedBy: ['lisfranc', 'injury'], acute: true },
	// bone
	{ rule: 'screening.bone-stress-hip', holds: broken, acute: true },
	{ rule: 'screening.bone-stress-high', holds: broken, acute: true, source: 'Am Fam Physician 2003;67:85', strength: 'expert' },
	{ rule: 'screening.boneStressHighRisk', holds: broken, placedBy: ['boneStress'], acute: true, source: 'Am Fam Physician 2003;67:85', strength: 'expert' },
	{ rule: 'screening.bone-stress-low-imaging', holds: brokenBearingWeight, acute: true },
	{ rule: 'screening.bone-stress-rest-pain', holds: brokenBearingWeight, acute: true },
	{ rule: 'screening.bone-stress-low', holds: lessLoad, acute: true },
	{ rule: 'screening.boneStressLowRisk', holds: lessLoad, placedBy: ['boneStress'], acute: true },
	{ rule: 'screening.steroid-bone', holds: brokenBearingWeight, acute: true },
	{ rule: 'screening.condition-navicular-stress-fracture', holds: broken, acute: true },
	{ rule: 'screening.condition-fifth-metatarsal-stress-fracture', holds: broken, acute: true },
	{ rule: 'screening.condition-second-metatarsal-stress-fracture', holds: broken, acute: true },
	// infection, and a joint that is hot
	{ rule: 'screening.fever', holds: everything },
	{ rule: 'screening.hotSwollenJoint', holds: everything, placedBy: ['infection'], acute: true },
	{ rule: 'screening.infected-joint', holds: everythingNoWeight, acute: true },
	{ rule: 'screening.spreadingInfection', holds: everything, placedBy: ['infection'], acute: true },
	{ rule: 'screening.infected-skin', holds: everything, acute: true },
	{ rule: 'screening.infection-ill', holds: everything, acute: true },
	// limp, hip of a growing player, bone pain without a reason
	{ rule: 'screening.limp-hip', holds: broken, acute: true, source: "Queensland Health paediatric orthopaedics; Royal Children's Hospital Melbourne", strength: 'guideline' },
	{ rule: 'screening.hipPainWithLimp', holds: lessLoad, placedBy: ['limp'] },
	{ rule: 'screening.hipPainWithLimp', holds: broken, from: 'imaging', placedBy: ['limp'], acute: true, source: "Queensland Health paediatric orthopaedics; Royal Children's Hospital Melbourne", strength: 'guideline' },
	{ rule: 'screening.limp-signs', holds: everythingNoWeight, acute: true },
	{ rule: 'screening.limp-weight-loss', holds: everything },
	{ rule: 'screening.limp-long', holds: lessLoad },
	{ rule: 'screening.limp-long', holds: everything, from: 'imaging', acute: true },
	{ rule: 'screening.limpUnexplained', holds: lessLoad, placedBy: ['limp'] },
	{ rule: 'screening.limpUnexplained', holds: everything, from: 'imaging', placedBy: ['limp'], acute: true },
	{ rule: 'screening.nightPain', holds: everything },
	{ rule: 'screening.lumpOrSwelling', holds: everything, placedBy: ['tumour'] },
	{ rule: 'screening.lump', holds: everything },
	{ rule: 'screening.bone-pain-unexplained', holds: lessLoad },
	{ rule: 'screening.bone-pain-unexplained', holds: everything, from: 'imaging' },
	{ rule: 'screening.bone-pain-persistent', holds: lessLoad },
	{ rule: 'screening.bone-pain-persistent', holds: everything, from: 'imaging' },
	{ rule: 'screening.unintendedWeightLoss', holds: { outcome: ['match', 'impact', 'season'] } },
	// clot, blood supply, nerves
	{ rule: 'screening.wells', holds: clot, acute: true },
	{ rule: 'screening.calfSuspicion', holds: clot, acute: true },
	{ rule: 'screening.breathlessOrChestPain', holds: { 'treating-doctor': ['sport', 'match'], outcome: ['impact', ...buying, 'season', 'raise', ...ofLimb] } },
	{ rule: 'screening.coldPaleFoot', holds: everything, acute: true },
	{ rule: 'screening.rest-pain', holds: everything, acute: true },
	{ rule: 'screening.compartment', holds: everything, acute: true },
	{ rule: 'screening.newWeakness', holds: everything },
	{ rule: 'screening.nerve-worse', holds: everything },
	// skin and diabetes
	{ rule: 'screening.activeFootUlcer', holds: wound },
	{ rule: 'screening.diabetic-foot-active', holds: wound, acute: true },
	{ rule: 'screening.diabetic-threat', holds: everything, acute: true },
	// heart and head
	{ rule: 'screening.cardiacOrConcussion', holds: heartOrHead },
	{ rule: 'screening.anticoagulant-head', holds: heartOrHead },
	// medicines and pregnancy: what their own sentences say
	{ rule: 'screening.anticoagulant-injury', holds: everything, acute: true },
	{ rule: 'screening.fluoroquinolone', holds: { outcome: ['raise', 'test', 'exercise'] } },
	{ rule: 'screening.fluoroquinolone-tendon', holds: everything },
	{ rule: 'screening.corticosteroidInjection', holds: { outcome: ['test', 'exercise'] } },
	{ rule: 'screening.pregnant', holds: { 'treating-doctor': ['match'] } },
	// shape
	{ rule: 'screening.suddenLegLengthDifference', holds: { outcome: ['raise'] } },
	{ rule: 'screening.rigidFlatFoot', holds: { outcome: ['insert'] } },
]
