/** What each general question leads to when answered yes. One row a question; the action of a minor may be higher. */
import type { Action } from '../findings/assessment.ts'
import type { Strength } from '../protocol/basis.ts'
import type { Condition } from '../visit/terms.ts'
import { type FlagRow, row } from './flag-row.ts'

const memory = 'common practice (from memory)'
const limp = 'NHS hospital limp guideline 2021; Queensland paediatric guideline'

export const flagRows: readonly FlagRow[] = [
	row('nightPain', 'imaging', 'NICE NG12 (secondary pages)', 'guideline'),
	row('fever', 'same-day', limp, 'guideline'),
	row('reducedSensation', 'letter', 'NHS England foot screen; NICE NG19', 'guideline'),
	row('newWeakness', 'emergency', memory, 'practice'),
	row('hotSwollenJoint', 'same-day', limp, 'guideline'),
	row('spreadingInfection', 'same-day', memory, 'practice'),
	row('calfSuspicion', 'same-day', 'NICE NG158', 'guideline'),
	row('breathlessOrChestPain', 'emergency', 'NICE NG158', 'guideline'),
	row('achillesRuptureSuspected', 'same-day', 'Maffulli 1998, Am J Sports Med 26:266', 'cohort'),
	row('syndesmosisSuspected', 'imaging', 'Sman 2015, Br J Sports Med 49:323', 'cohort'),
	row('lisfrancSuspected', 'imaging', 'Ponkilainen 2020; J Foot Ankle Res 2023, s13047-023-00608-0', 'cohort'),
	row('boneStressHighRisk', 'imaging', 'Am Fam Physician 2003;67:85; Ekstrand and van Dijk 2013, Br J Sports Med 47:754', 'expert'),
	row('boneStressLowRisk', 'letter', memory, 'practice'),
	row('limpUnexplained', 'letter', limp, 'guideline', { minorAction: 'same-day' }),
	row('hipPainWithLimp', 'letter', "Queensland Health paediatric orthopaedics; Royal Children's Hospital Melbourne", 'guideline', { minorAction: 'same-day' }),
	row('lumpOrSwelling', 'imaging', 'NICE NG12 (secondary pages)', 'guideline'),
	row('coldPaleFoot', 'emergency', 'NICE NG19; acute limb ischaemia from memory', 'guideline'),
	row('exertionalTightness', 'letter', memory, 'practice'),
	row('activeFootUlcer', 'same-day', 'NICE NG19', 'guideline'),
	row('morningStiffness', 'letter', memory, 'practice'),
	row('periodsAbsent', 'letter', 'IOC REDs CAT2 2023, Br J Sports Med', 'expert', { sex: 'female' }),
	row('unintendedWeightLoss', 'letter', 'IOC REDs CAT2 2023, Br J Sports Med', 'expert'),
	row('suddenLegLengthDifference', 'letter', 'common practice, no source', 'practice'),
	row('cardiacOrConcussion', 'same-day', 'common practice, no source', 'practice'),
	row('rigidFlatFoot', 'letter', 'common practice, no source', 'practice'),
	row('pregnant', 'proceed', 'Segal 2013, Am J Phys Med Rehabil (n 49, feet 2 to 10 mm longer in many, abstract); imaging and contact sport: common practice, no source', 'cohort', { level: 'caution', sex: 'female' }),
	row('fluoroquinolone', 'proceed', 'MHRA Drug Safety Update 2019 (narrowed further in January 2024); Swissmedic (within 48 hours, and months after); Alves 2019, Eur J Clin Pharmacol 75:1431 (Achilles rupture OR 2.52, 1.81 to 3.52, abstract). What not to load: common practice, no source', 'guideline', {
		level: 'caution',
	}),
	row('corticosteroidLongTerm', 'proceed', 'van Staa 2003, J Bone Miner Res 18:913 (children with four courses or more: fracture OR 1.32, 1.03 to 1.69, abstract); Mushtaq 2002, Arch Dis Child 87:93; early imaging from memory', 'cohort', { level: 'caution' }),
	row('corticosteroidInjection', 'proceed', 'Shrier 1996, Clin J Sport Med 6:245 (abstract: weakens a tendon for a time if inside it; one trial and one cohort without benefit). Holding load back: common practice, no source', 'expert', { level: 'caution' }),
	row('anticoagulant', 'proceed', 'common practice, no source', 'practice', { level: 'caution' }),
]

export interface ConditionRow {
	/** Its sentence stands in words under `screening.condition-<condition>`. */
	condition: Extract<Condition, 'navicular-stress-fracture' | 'fifth-metatarsal-stress-fracture' | 'second-metatarsal-stress-fracture' | 'neuropathy' | 'previous-foot-ulcer' | 'diabetes' | 'posterior-tibial-tendinopathy'>
	when: 'current' | 'now' | 'ever'
	action: Action
	/** Only where no heel rise on that leg was possible when it was tested. */
	noHeelRise?: true
	source: string
	strength: Strength
}
/** Recorded conditions that by themselves call for somebody else. */
export const conditionRows: readonly ConditionRow[] = [
	{ condition: 'navicular-stress-fracture', when: 'current', action: 'imaging', source: 'Am Fam Physician 2003;67:85', strength: 'expert' },
	{ condition: 'fifth-metatarsal-stress-fracture', when: 'current', action: 'imaging', source: 'Ekstrand and van Dijk 2013, Br J Sports Med 47:754', strength: 'cohort' },
	{ condition: 'second-metatarsal-stress-fracture', when: 'current', action: 'imaging', source: 'common practice (from memory)', strength: 'practice' },
	{ condition: 'neuropathy', when: 'now', action: 'letter', source: 'NICE NG19', strength: 'guideline' },
	{ condition: 'previous-foot-ulcer', when: 'ever', action: 'letter', source: 'NICE NG19', strength: 'guideline' },
	{ condition: 'diabetes', when: 'now', action: 'letter', source: 'NICE NG19', strength: 'guideline' },
	{ condition: 'posterior-tibial-tendinopathy', when: 'now', action: 'letter', noHeelRise: true, source: 'common practice, no source', strength: 'practice' },
]
