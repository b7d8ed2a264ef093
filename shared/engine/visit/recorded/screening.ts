/** The warning-sign questions: an injury, a suspected clot, and one question for each sign. */
import { z } from 'zod'
import { choice, measure, text, yesNo } from '../fields.ts'
import { unfoldedShape } from './unfolded.ts'

const injurySchema = z.strictObject({
	side: choice('Injured side', ['left', 'right']),
	daysAgo: measure('Days since the injury', 'days', [0, 3650], [0, 60]).optional(),
	malleolarZonePain: yesNo('Pain in the malleolar zone'),
	midfootZonePain: yesNo('Pain in the midfoot zone'),
	tenderLateralMalleolus: yesNo(
		'Bone tenderness, lateral malleolus (posterior edge, distal 6 cm, or tip)',
	),
	tenderMedialMalleolus: yesNo(
		'Bone tenderness, medial malleolus (posterior edge, distal 6 cm, or tip)',
	),
	tenderNavicular: yesNo('Bone tenderness, navicular'),
	tenderFifthMetatarsalBase: yesNo('Bone tenderness, base of fifth metatarsal'),
	unableToBearWeightThen: yesNo('Unable to bear weight at once after the injury'),
	unableToBearWeightNow: yesNo('Unable to take four steps now'),
	pregnant: yesNo('Pregnant', { private: 'pregnancy' }),
	cannotBeAssessed: yesNo('Intoxicated, head injury, distracting injury or cannot follow the test'),
	swellingOrOpenSkin: yesNo(
		'Swelling too great to feel the bone, open skin, or seen before for this injury',
	),
})
const wellsSchema = z.strictObject({
	activeCancer: yesNo('Active cancer (treated within 6 months, or palliative)'),
	paralysisOrCast: yesNo('Paralysis, paresis or recent plaster on the leg'),
	bedriddenOrSurgery: yesNo('Bedridden 3 days or more, or major surgery within 12 weeks'),
	deepVeinTenderness: yesNo('Tenderness along the deep veins'),
	entireLegSwollen: yesNo('Entire leg swollen'),
	calfDifferenceCm: measure(
		'Calf larger than the other side',
		'cm',
		[0, 30],
		[0, 10],
		1,
	).optional(),
	pittingOedema: yesNo('Pitting oedema, symptomatic leg only'),
	collateralVeins: yesNo('Collateral superficial veins (not varicose)'),
	previousDvt: yesNo('Previous deep vein thrombosis'),
	alternativeAsLikely: yesNo('Another diagnosis at least as likely'),
})
/** The general questions: one row each in shared/screening decides what a yes leads to. */
export const generalFlagShape = {
	nightPain: yesNo('Pain at night or at rest'),
	fever: yesNo('Fever, or generally unwell'),
	reducedSensation: yesNo('Reduced sensation or tingling in the feet'),
	newWeakness: yesNo('New weakness, foot drop or saddle numbness'),
	hotSwollenJoint: yesNo('Hot, swollen joint'),
	spreadingInfection: yesNo('Spreading skin infection or discharge'),
	calfSuspicion: yesNo('Swollen, painful calf: clot suspected'),
	breathlessOrChestPain: yesNo('Breathless, chest pain, coughing blood or collapse'),
	achillesRuptureSuspected: yesNo(
		'Sudden calf or Achilles pop, or no foot movement on calf squeeze',
	),
	syndesmosisSuspected: yesNo(
		'High ankle sprain signs (tender syndesmosis with squeeze, rotation pain or cannot hop)',
	),
	lisfrancSuspected: yesNo(
		'Midfoot pain after twist or axial load with plantar bruise or failed single heel rise',
	),
	boneStressHighRisk: yesNo(
		'Focal bone pain: navicular, fifth metatarsal, sesamoid, medial malleolus, talus, second ' +
			'metatarsal base',
	),
	boneStressLowRisk: yesNo('Focal bone pain at another foot or shin bone'),
	limpUnexplained: yesNo('Limp for more than a week without a diagnosis'),
	hipPainWithLimp: yesNo('Limp with pain in hip, groin, thigh or knee'),
	lumpOrSwelling: yesNo('Unexplained or enlarging lump or bony swelling'),
	coldPaleFoot: yesNo('Cold, pale foot, or no pulse'),
	exertionalTightness: yesNo('Tight leg with numb foot on exercise'),
	activeFootUlcer: yesNo('Open ulcer or wound on the foot'),
	morningStiffness: yesNo(
		'Morning stiffness over 30 minutes, or swollen toes, or bilateral heel pain',
	),
	periodsAbsent: yesNo('Periods absent for three cycles or more, or not begun by 15 years', {
		private: 'periods',
	}),
	unintendedWeightLoss: yesNo('Weight loss, or falling off the growth curve', {
		private: 'weight',
	}),
	rigidFlatFoot: yesNo('Rigid flat foot, or one-sided high arch'),
	suddenLegLengthDifference: yesNo('Leg-length difference that came on suddenly'),
	cardiacOrConcussion: yesNo('Fainting, palpitations in sport, or a recent blow to the head'),
	pregnant: yesNo('Pregnant', { private: 'pregnancy' }),
	fluoroquinolone: yesNo(
		'Fluoroquinolone antibiotic (names end in -floxacin), now or in the past months',
		{ private: 'medication' },
	),
	corticosteroidLongTerm: yesNo(
		'Corticosteroid by mouth or drip for long, or in repeated courses',
		{
			private: 'medication',
		},
	),
	corticosteroidInjection: yesNo(
		'Corticosteroid injected near a tendon of leg or foot in the past months',
		{ private: 'medication' },
	),
	anticoagulant: yesNo('Anticoagulant (blood thinner)', { private: 'medication' }),
}
export const screeningSchema = z.strictObject({
	injury: injurySchema.optional(),
	wells: wellsSchema.optional(),
	...unfoldedShape,
	...generalFlagShape,
	/** For the clinician alone: in no document, list, letter or trail. */
	safeguardingNote: text('Safeguarding note', 4000).meta({ private: 'safeguarding' }).optional(),
})
export type Injury = z.infer<typeof injurySchema>
export type Screening = z.infer<typeof screeningSchema>
