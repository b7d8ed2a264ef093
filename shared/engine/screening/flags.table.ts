/** What each general question leads to when answered yes. One row a question; the action of a minor may be higher. */
import type { Action } from '../findings/assessment.ts'
import type { Strength } from '../protocol/basis.ts'
import type { Visit } from '../visit/visit.ts'
import { type FlagRow, row } from './flag-row.ts'

const memory = 'common practice (from memory)'
const limp = 'NHS hospital limp guideline 2021; Queensland paediatric guideline'

export const flagRows: readonly FlagRow[] = [
	row('nightPain', 'imaging', 'Pain at night or at rest: arrange imaging and stop impact until it is explained. In a young player ask for an X-ray within 48 hours.', 'NICE NG12 (secondary pages)', 'guideline'),
	row('fever', 'same-day', 'Fever or generally unwell with a painful limb: medical review the same day.', limp, 'guideline'),
	row('reducedSensation', 'letter', 'Reduced sensation in the feet: write to the doctor, test with a monofilament; no new footwear without review.', 'NHS England foot screen; NICE NG19', 'guideline'),
	row('newWeakness', 'emergency', 'New weakness, foot drop or saddle numbness: emergency department now.', memory, 'practice'),
	row('hotSwollenJoint', 'same-day', 'Hot, swollen joint: an infected joint must be excluded the same day.', limp, 'guideline'),
	row('spreadingInfection', 'same-day', 'Spreading skin infection: medical review the same day; emergency department if generally ill.', memory, 'practice'),
	row('calfSuspicion', 'same-day', 'A clot in the leg is suspected: medical review the same day, whatever the score.', 'NICE NG158', 'guideline'),
	row('breathlessOrChestPain', 'emergency', 'Breathless, chest pain, coughing blood or collapse: emergency services now.', 'NICE NG158', 'guideline'),
	row('achillesRuptureSuspected', 'same-day', 'Achilles rupture suspected: same-day emergency department, ankle supported with the toes down, no insert.', 'Maffulli 1998, Am J Sports Med 26:266', 'cohort'),
	row('syndesmosisSuspected', 'imaging', 'High ankle sprain suspected: imaging, and protect in a boot meanwhile.', 'Sman 2015, Br J Sports Med 49:323', 'cohort'),
	row('lisfrancSuspected', 'imaging', 'Midfoot ligament injury suspected: weight-bearing films of both feet or CT; no weight on the foot meanwhile.', 'Ponkilainen 2020; J Foot Ankle Res 2023, s13047-023-00608-0', 'cohort'),
	row('boneStressHighRisk', 'imaging', 'Bone stress injury at a high-risk site suspected: stop impact, no weight on the foot, MRI or CT. A normal plain film does not rule it out.', 'Am Fam Physician 2003;67:85; Ekstrand and van Dijk 2013, Br J Sports Med 47:754', 'expert'),
	row('boneStressLowRisk', 'letter', 'Bone stress injury at a low-risk site suspected: stop impact, write to the doctor, review in two weeks.', memory, 'practice'),
	row('limpUnexplained', 'letter', 'Limp for more than a week without a diagnosis: have it examined. In a growing player do so the same day.', limp, 'guideline', 'same-day'),
	row('lumpOrSwelling', 'imaging', 'Unexplained or enlarging lump: imaging through the doctor, within 48 hours in a young player and two weeks in an adult.', 'NICE NG12 (secondary pages)', 'guideline'),
	row('coldPaleFoot', 'emergency', 'Cold, pale foot or no pulse: blood supply must be checked at once in an emergency department.', 'NICE NG19; acute limb ischaemia from memory', 'guideline'),
	row('exertionalTightness', 'letter', 'Tight leg with numb foot on exercise: write to the doctor about compartment pressure; emergency if it does not settle.', memory, 'practice'),
	row('activeFootUlcer', 'same-day', 'Open ulcer or wound: refer to the foot protection service within one working day.', 'NICE NG19', 'guideline'),
	row('morningStiffness', 'letter', 'Long morning stiffness, swollen toes or both heels painful: write to the doctor about inflammatory disease.', memory, 'practice'),
	row('periodsAbsent', 'letter', 'Absent periods: write to the sports physician about low energy availability.', 'IOC REDs CAT2 2023, Br J Sports Med', 'expert'),
	row('unintendedWeightLoss', 'letter', 'Weight loss or falling off the growth curve: write to the doctor.', 'IOC REDs CAT2 2023, Br J Sports Med', 'expert'),
	row('suddenLegLengthDifference', 'letter', 'Leg-length difference that came on suddenly: write to the doctor before anything is raised.', 'common practice, no source', 'practice'),
	row('cardiacOrConcussion', 'same-day', 'Fainting, palpitations in sport or a recent blow to the head: outside this assessment. Stop, no sport, medical review the same day; emergency services if unwell now.', 'common practice, no source', 'practice'),
	row('rigidFlatFoot', 'letter', 'Rigid flat foot or one-sided high arch: write to the doctor before an insert is made.', 'common practice, no source', 'practice'),
]

type Recorded = NonNullable<Visit['conditions']>[number]
export interface ConditionRow {
	condition: Recorded['condition']
	statuses: readonly Recorded['status'][]
	action: Action
	says: string
	source: string
	strength: Strength
}
/** Recorded conditions that by themselves call for somebody else. */
export const conditionRows: readonly ConditionRow[] = [
	{ condition: 'navicular-stress-fracture', statuses: ['current'], action: 'imaging', says: 'Current navicular stress fracture: no impact; imaging and medical care first.', source: 'Am Fam Physician 2003;67:85', strength: 'expert' },
	{ condition: 'fifth-metatarsal-stress-fracture', statuses: ['current'], action: 'imaging', says: 'Current fifth metatarsal stress fracture: no impact; imaging and surgical opinion first.', source: 'Ekstrand and van Dijk 2013, Br J Sports Med 47:754', strength: 'cohort' },
	{ condition: 'second-metatarsal-stress-fracture', statuses: ['current'], action: 'imaging', says: 'Current second metatarsal stress fracture: no impact until imaging has shown the site.', source: 'common practice (from memory)', strength: 'practice' },
	{ condition: 'neuropathy', statuses: ['current', 'recovering'], action: 'letter', says: 'Neuropathy: write to the doctor; no new footwear without review.', source: 'NICE NG19', strength: 'guideline' },
	{ condition: 'previous-foot-ulcer', statuses: ['current', 'recovering', 'past'], action: 'letter', says: 'Previous foot ulcer: high-risk foot, write to the foot protection service; no new footwear without review.', source: 'NICE NG19', strength: 'guideline' },
	{ condition: 'diabetes', statuses: ['current', 'recovering'], action: 'letter', says: 'Diabetes: make sure that the foot check is up to date and the diabetes team knows of the sport.', source: 'NICE NG19', strength: 'guideline' },
]
