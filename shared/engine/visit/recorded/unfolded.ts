/**
 * The questions that unfold by complaint. Every one may be left unasked; engine/screening/signs.ts
 * says what an answer leads to.
 */
import { z } from 'zod'
import { choice, count, measure, sides, yesNo } from '../fields.ts'
import { boneSites } from '../terms.ts'

const painSide = choice('Side', ['left', 'right', 'both'])
const boneStressSchema = z.strictObject({
	side: painSide,
	site: choice('Site', boneSites).optional(),
	focalTenderness: yesNo('Tender at one point on the bone'),
	loadPain: yesNo('Pain that comes with load and eases with rest'),
	nightPain: yesNo('Pain at this bone at night or at rest'),
	hopPain: yesNo(
		'Focal bone pain in ten single-leg hops (do not hop with rest pain, a high-risk site, or ' +
			'hip or groin pain)',
	),
	weeksOfPain: measure('Weeks of pain', 'weeks', [0, 520], [0, 26]).optional(),
})
const achillesSchema = z.strictObject({
	side: painSide,
	noMovementOnSqueeze: yesNo('Calf squeeze: the foot does not move'),
	footDropsKneeBent: yesNo('Prone, knee bent to 90 degrees: the foot falls to neutral or beyond'),
	gap: yesNo('Gap felt in the tendon'),
})
const syndesmosisSchema = z.strictObject({
	side: painSide,
	ligamentTenderness: yesNo('Tender over the ligament above the ankle'),
	squeezePain: yesNo('Pain when shin and fibula are squeezed together'),
	rotationPain: yesNo('Pain on turning the foot outwards, ankle bent up'),
	cannotHop: yesNo('Cannot hop on this leg'),
	painOutOfProportion: yesNo('Pain out of proportion to the injury'),
})
const lisfrancSchema = z.strictObject({
	side: painSide,
	midfootPain: yesNo('Midfoot pain after a twist or a load along the foot'),
	plantarBruise: yesNo('Bruise under the midfoot'),
	cannotHeelRise: yesNo('Cannot rise on this heel alone'),
	stressPain: yesNo('Pain on stressing the joints at the bases of the metatarsals'),
	cannotBearWeight: yesNo('Cannot bear weight'),
})
const infectionSchema = z.strictObject({
	side: painSide,
	hotSwollenJoint: yesNo('This joint is hot and swollen'),
	spreadingRedness: yesNo('Redness that spreads, or discharge'),
	infectedNailOrBlister: yesNo('Infected nail fold or blister, not spreading'),
	generallyIll: yesNo('Fever, shivering, fast pulse or confused with it'),
})
const limpSchema = z.strictObject({
	side: painSide,
	days: measure('Days of limping', 'days', [0, 3650], [0, 60]).optional(),
	feverInPastWeek: yesNo('Fever of 38.5 degrees or more in the past week'),
	cannotBearWeight: yesNo('Cannot bear weight'),
	severePainOnMovement: yesNo('Severe pain when the joint is moved for the child'),
	nightWaking: yesNo('Wakes at night with it'),
	bonyLump: yesNo('Bony lump'),
	weightLossOrSweats: yesNo('Weight loss or sweats', { private: 'weight' }),
	hipThighKneePain: yesNo('Pain in hip, groin, thigh or knee'),
	examinedBefore: yesNo('Already examined by a doctor for it'),
})
const tumourSchema = z.strictObject({
	side: painSide,
	unexplainedBonePain: yesNo('Bone pain or bony swelling without an explanation'),
	mostDaysForTwoWeeks: yesNo('On most days for two weeks or more'),
	enlargingLump: yesNo('Lump that grows'),
})
const feltAt = (place: string) => yesNo(`10 g monofilament felt: ${place}`)
const neurologicalSchema = sides({
	feltHallux: feltAt('underside of the big toe'),
	feltFirstHead: feltAt('under the first metatarsal head'),
	feltFifthHead: feltAt('under the fifth metatarsal head'),
}).extend({
	gettingWorse: yesNo('Loss of feeling or strength that is getting worse'),
	saddleOrBladder: yesNo('Saddle numbness, or change of bladder or bowel'),
})
const vascularSchema = sides({
	noDorsalisPedis: yesNo('No pulse on the top of the foot'),
	noPosteriorTibial: yesNo('No pulse behind the inner ankle'),
	anklePressureIndex: measure(
		'Ankle-brachial pressure index',
		'ratio',
		[0, 2.5],
		[0.4, 1.5],
		2,
	).optional(),
	restPain: yesNo('Pain at rest in a cold or pale foot'),
}).extend({ tightLegWithFootDrop: yesNo('Tight, painful leg now with numb foot or foot drop') })
const diabeticFootSchema = sides({
	callus: yesNo('Callus'),
	deformity: yesNo('Deformity'),
	neuropathy: yesNo('Loss of protective feeling'),
	ischaemia: yesNo('Poor blood supply, not critical'),
	previousUlcer: yesNo('Ulcer in the past'),
	amputation: yesNo('Amputation'),
	ulcer: yesNo('Ulcer now'),
	infection: yesNo('Spreading infection now'),
	criticalIschaemia: yesNo('Critical lack of blood now'),
	gangrene: yesNo('Gangrene'),
	hotRedSwollen: yesNo('Hot, red, swollen foot, with or without pain'),
}).extend({
	renalReplacement: yesNo('Dialysis or kidney transplant'),
	limbOrLifeThreat: yesNo('Limb or life in danger'),
})
const lowEnergySchema = z.strictObject({
	periodsMissed: measure('Periods missed in a row', 'periods', [0, 60], [0, 12])
		.meta({ private: 'periods' })
		.optional(),
	periodsNotBegun: yesNo('Periods not begun', { private: 'periods' }),
	highRiskBoneStress: count(
		'Bone stress injuries of hip neck, sacrum or pelvis in two years',
		'count',
		[0, 20],
	).optional(),
	otherBoneStress: count('Other bone stress injuries in two years', 'count', [0, 20]).optional(),
	monthsLostToBoneStress: measure(
		'Months lost to bone stress in two years',
		'months',
		[0, 24],
		[0, 12],
	).optional(),
	offGrowthCurve: yesNo('Falling off the growth curve', { private: 'weight' }),
})
const inflammatorySchema = z.strictObject({
	morningStiffnessMin: measure('Morning stiffness', 'min', [0, 1440], [0, 240]).optional(),
	bothHeels: yesNo('Both heels painful'),
	swollenToe: yesNo('A whole toe swollen'),
	skinNailEye: yesNo('Psoriasis, nail changes or inflamed eye'),
})
export const unfoldedShape = {
	boneStress: boneStressSchema.optional(),
	achilles: achillesSchema.optional(),
	syndesmosis: syndesmosisSchema.optional(),
	lisfranc: lisfrancSchema.optional(),
	infection: infectionSchema.optional(),
	limp: limpSchema.optional(),
	tumour: tumourSchema.optional(),
	neurological: neurologicalSchema.optional(),
	vascular: vascularSchema.optional(),
	diabeticFoot: diabeticFootSchema.optional(),
	lowEnergy: lowEnergySchema.optional(),
	inflammatory: inflammatorySchema.optional(),
}
