/** Visit file, version 1: the only definition of what a clinician records at a visit. */
import { z } from 'zod'
import { choice, count, isoDate, measure, repeats, sides, text, yesNo } from './fields.ts'
import {
	boneSites,
	codes,
	conditions,
	damages,
	endFeels,
	firstRays,
	forefeet,
	sexes,
	sizeSystems,
	soles,
	statuses,
	surfaces,
} from './terms.ts'

const email = (title: string) => z.email().nullable().optional().meta({ title })

export const playerSchema = z.strictObject({
	givenName: text('Given name', 80),
	familyName: text('Family name', 80),
	birthDate: isoDate('Birth date'),
	sex: choice('Sex', sexes),
	club: text('Club', 120).optional(),
	guardian: z
		.strictObject({
			name: text('Guardian name', 120),
			relation: text('Relation', 60).optional(),
			email: email('Guardian e-mail'),
			phone: text('Guardian phone', 40).optional(),
		})
		.optional(),
	email: email('E-mail'),
	phone: text('Phone', 40).optional(),
})

export const playSchema = z.strictObject({
	code: choice('Code', codes).optional(),
	position: text('Position', 60).optional(),
	standard: text('Standard', 60).optional(),
	kickingFoot: choice('Kicking foot', ['left', 'right', 'both']).optional(),
	surfaces: z.array(choice('Surface', surfaces)).max(8).optional(),
	matchesPerWeek: measure('Matches a week', 'count', [0, 14], [0, 4], 1).optional(),
	trainingsPerWeek: measure('Trainings a week', 'count', [0, 21], [0, 10], 1).optional(),
	organisedHoursPerWeek: measure('Organised sport', 'h/week', [0, 60], [0, 25], 1).optional(),
	freePlayHoursPerWeek: measure('Free play', 'h/week', [0, 80], [0, 40], 1).optional(),
	monthsPerYearInOneSport: measure(
		'Months a year in this one sport',
		'months',
		[0, 12],
		[0, 12],
	).optional(),
	daysOffPerWeek: measure('Days a week without sport', 'days', [0, 7], [0, 7]).optional(),
	/** Session load a day (effort 0 to 10 times minutes), seven days a week from the date on. */
	weeks: z
		.array(
			z.strictObject({
				from: isoDate('Week from'),
				days: z.array(measure('Session load', 'effort x min', [0, 6000], [0, 2000])).length(7),
			}),
		)
		.max(60)
		.optional(),
})

export const bodySchema = z.strictObject({
	statureCm: measure('Stature', 'cm', [70, 240], [100, 215], 1).optional(),
	sittingHeightCm: measure('Sitting height', 'cm', [40, 130], [55, 110], 1).optional(),
	massKg: measure('Body mass', 'kg', [10, 250], [18, 150], 1).optional(),
	motherStatureCm: measure("Mother's stature", 'cm', [120, 220], [140, 195], 1).optional(),
	fatherStatureCm: measure("Father's stature", 'cm', [120, 230], [150, 210], 1).optional(),
	parentStatures: choice('Parent statures', ['reported', 'measured']).optional(),
	growthOrHormoneTreatment: yesNo('Growth disorder, steroid or hormone treatment'),
	legLengthDifferenceMm: measure(
		'Leg-length difference, shorter side',
		'mm',
		[0, 80],
		[0, 25],
	).optional(),
	shorterLeg: choice('Shorter leg', ['left', 'right']).optional(),
	legLengthReason: text('Reason to correct the leg-length difference', 200).optional(),
	legLengthSymptoms: yesNo('Symptoms put down to the leg-length difference'),
	legLengthYears: measure('Years the difference has been there', 'years', [0, 100]).optional(),
	legLengthCompensation: choice('Compensation in the spine', [
		'none',
		'side-bending',
		'bony',
	]).optional(),
	puberty: choice('Maturity', ['before', 'during', 'after']).optional(),
	beighton: count('Beighton score', '/9', [0, 9]).optional(),
	hypermobilityHistory: count('Hypermobility history, yes answers', '/5', [0, 5]).optional(),
})

const footShape = {
	heelToToeMm: repeats(measure('Heel to toe', 'mm', [90, 400], [150, 340], 1)),
	heelToBallMm: repeats(measure('Heel to ball', 'mm', [60, 300], [105, 255], 1)),
	ballWidthMm: repeats(measure('Ball width', 'mm', [35, 170], [55, 125], 1)),
	ballGirthMm: repeats(measure('Ball girth', 'mm', [90, 400], [150, 300], 1)),
	toeDepthMm: repeats(measure('Toe depth', 'mm', [8, 60], [14, 40], 1)),
	instepHeightMm: repeats(measure('Instep height', 'mm', [25, 130], [40, 95], 1)),
	heelWidthMm: repeats(measure('Heel width', 'mm', [25, 120], [40, 90], 1)),
}
export const feetSchema = sides(footShape).extend({
	stance: choice('Stance', ['standing', 'seated']).optional(),
	sockMm: measure('Sock, added length', 'mm', [0, 15], [0, 6], 1).optional(),
	examiner: text('Examiner', 80).optional(),
})

export const anklesSchema = sides({
	lungeCm: repeats(measure('Knee to wall', 'cm', [-10, 30], [0, 20], 1)),
	lungeDeg: repeats(measure('Lunge angle', 'deg', [0, 75], [15, 60], 1)),
	kneeStraightDeg: repeats(measure('Knee straight', 'deg', [-40, 50], [-15, 30], 1)),
	kneeBentDeg: repeats(measure('Knee bent', 'deg', [-40, 60], [-10, 45], 1)),
	endFeel: choice('End feel', endFeels).optional(),
})

const fpiItem = count('FPI item', 'score', [-2, 2])
export const postureSchema = sides({
	fpi6: z.array(fpiItem).length(6).optional().meta({ title: 'Foot posture index, six items' }),
	navicularDropMm: repeats(measure('Navicular drop', 'mm', [-10, 40], [0, 20], 1)),
	firstRay: choice('First ray', firstRays).optional(),
	forefoot: choice('Forefoot to rearfoot', forefeet).optional(),
	supinationResistance: choice('Supination resistance', ['low', 'usual', 'high']).optional(),
	firstMtpDegNonWeightBearing: repeats(
		measure('First MTP, off the ground', 'deg', [0, 120], [20, 100], 1),
	),
	jackTestDeg: repeats(measure('First MTP, standing', 'deg', [0, 90], [0, 60], 1)),
	heelRises: count('Heel rises', 'count', [0, 150], [0, 60]).optional(),
})

export const conditionSchema = z.strictObject({
	condition: choice('Condition', conditions),
	side: choice('Side', ['left', 'right', 'both', 'none']),
	status: choice('Status', statuses),
	painWorst: count('Worst pain', '/10', [0, 10]).optional(),
	note: text('Note', 500).optional(),
})

export const injurySchema = z.strictObject({
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
	pregnant: yesNo('Pregnant'),
	cannotBeAssessed: yesNo('Intoxicated, head injury, distracting injury or cannot follow the test'),
	swellingOrOpenSkin: yesNo(
		'Swelling too great to feel the bone, open skin, or seen before for this injury',
	),
})
export const wellsSchema = z.strictObject({
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
	lumpOrSwelling: yesNo('Unexplained or enlarging lump or bony swelling'),
	coldPaleFoot: yesNo('Cold, pale foot, or no pulse'),
	exertionalTightness: yesNo('Tight leg with numb foot on exercise'),
	activeFootUlcer: yesNo('Open ulcer or wound on the foot'),
	morningStiffness: yesNo(
		'Morning stiffness over 30 minutes, or swollen toes, or bilateral heel pain',
	),
	periodsAbsent: yesNo('Periods absent for three cycles or more, or not begun by 15 years'),
	unintendedWeightLoss: yesNo('Weight loss, or falling off the growth curve'),
	rigidFlatFoot: yesNo('Rigid flat foot, or one-sided high arch'),
	suddenLegLengthDifference: yesNo('Leg-length difference that came on suddenly'),
	cardiacOrConcussion: yesNo('Fainting, palpitations in sport, or a recent blow to the head'),
}
const painSide = choice('Side', ['left', 'right', 'both'])
/**
 * The questions that unfold by complaint. Every one may be left unasked; shared/engine/screening/signs.ts
 * says what an answer leads to.
 */
export const boneStressSchema = z.strictObject({
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
export const achillesSchema = z.strictObject({
	side: painSide,
	noMovementOnSqueeze: yesNo('Calf squeeze: the foot does not move'),
	footDropsKneeBent: yesNo('Prone, knee bent to 90 degrees: the foot falls to neutral or beyond'),
	gap: yesNo('Gap felt in the tendon'),
})
export const syndesmosisSchema = z.strictObject({
	side: painSide,
	ligamentTenderness: yesNo('Tender over the ligament above the ankle'),
	squeezePain: yesNo('Pain when shin and fibula are squeezed together'),
	rotationPain: yesNo('Pain on turning the foot outwards, ankle bent up'),
	cannotHop: yesNo('Cannot hop on this leg'),
	painOutOfProportion: yesNo('Pain out of proportion to the injury'),
})
export const lisfrancSchema = z.strictObject({
	side: painSide,
	midfootPain: yesNo('Midfoot pain after a twist or a load along the foot'),
	plantarBruise: yesNo('Bruise under the midfoot'),
	cannotHeelRise: yesNo('Cannot rise on this heel alone'),
	stressPain: yesNo('Pain on stressing the joints at the bases of the metatarsals'),
	cannotBearWeight: yesNo('Cannot bear weight'),
})
export const infectionSchema = z.strictObject({
	side: painSide,
	hotSwollenJoint: yesNo('This joint is hot and swollen'),
	spreadingRedness: yesNo('Redness that spreads, or discharge'),
	infectedNailOrBlister: yesNo('Infected nail fold or blister, not spreading'),
	generallyIll: yesNo('Fever, shivering, fast pulse or confused with it'),
})
export const limpSchema = z.strictObject({
	side: painSide,
	days: measure('Days of limping', 'days', [0, 3650], [0, 60]).optional(),
	feverInPastWeek: yesNo('Fever of 38.5 degrees or more in the past week'),
	cannotBearWeight: yesNo('Cannot bear weight'),
	severePainOnMovement: yesNo('Severe pain when the joint is moved for the child'),
	nightWaking: yesNo('Wakes at night with it'),
	bonyLump: yesNo('Bony lump'),
	weightLossOrSweats: yesNo('Weight loss or sweats'),
	hipThighKneePain: yesNo('Pain in hip, thigh or knee'),
	examinedBefore: yesNo('Already examined by a doctor for it'),
})
export const tumourSchema = z.strictObject({
	side: painSide,
	unexplainedBonePain: yesNo('Bone pain or bony swelling without an explanation'),
	mostDaysForTwoWeeks: yesNo('On most days for two weeks or more'),
	enlargingLump: yesNo('Lump that grows'),
})
const feltAt = (place: string) => yesNo(`10 g monofilament felt: ${place}`)
export const neurologicalSchema = sides({
	feltHallux: feltAt('underside of the big toe'),
	feltFirstHead: feltAt('under the first metatarsal head'),
	feltFifthHead: feltAt('under the fifth metatarsal head'),
}).extend({
	gettingWorse: yesNo('Loss of feeling or strength that is getting worse'),
	saddleOrBladder: yesNo('Saddle numbness, or change of bladder or bowel'),
})
export const vascularSchema = sides({
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
export const diabeticFootSchema = sides({
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
export const lowEnergySchema = z.strictObject({
	periodsMissed: measure('Periods missed in a row', 'periods', [0, 60], [0, 12]).optional(),
	periodsNotBegun: yesNo('Periods not begun'),
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
	offGrowthCurve: yesNo('Falling off the growth curve'),
})
export const inflammatorySchema = z.strictObject({
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
export const screeningSchema = z.strictObject({
	injury: injurySchema.optional(),
	wells: wellsSchema.optional(),
	...unfoldedShape,
	...generalFlagShape,
})

export const pairSchema = z.strictObject({
	id: text('Pair', 40),
	name: text('Name', 80).optional(),
	sole: choice('Sole', soles).optional(),
	sizeSystem: choice('Size system', sizeSystems).optional(),
	size: measure('Size', 'label', [0, 420], [0, 60], 1).optional(),
	insideLengthMm: measure('Inside length', 'mm', [90, 420], [150, 350], 1).optional(),
	heelToForefootOffsetMm: measure(
		'Offset, heel to forefoot',
		'mm',
		[-10, 30],
		[0, 15],
		1,
	).optional(),
	heelLiftMm: measure('Heel raise inside', 'mm', [0, 25], [0, 12], 1).optional(),
	damage: z.array(choice('Damage', damages)).max(8).optional(),
	brokenIn: yesNo('Broken in'),
	minutesWorn: measure('Minutes worn', 'min', [0, 200000], [0, 20000]).optional(),
	acquired: isoDate('Acquired').optional(),
	lifeMinutes: measure('Expected life', 'min', [60, 100000], [3000, 12000]).optional(),
	dryingHours: measure('Drying time', 'h', [0, 168], [4, 96]).optional(),
	/** One letter by which the wall chart and the calendar name the pair. */
	letter: z
		.string()
		.regex(/^[A-Z]$/, 'one capital letter A to Z')
		.optional()
		.meta({ title: 'Letter' }),
	/** A new pair, to be broken in from this day on; not worn before it. */
	newFrom: isoDate('New, worn from').optional(),
	/** In the clinic's own currency. */
	price: measure('Price', 'currency', [0, 100000], [10, 600]).optional(),
	weeklyMinutesMax: measure('Minutes a week, at most', 'min', [0, 5000], [0, 600]).optional(),
	/** Of the training time ahead: what the pair should be worn at least and at most. */
	shareMinPercent: measure('Share of training, at least', '%', [0, 100], [0, 100]).optional(),
	shareMaxPercent: measure('Share of training, at most', '%', [0, 100], [0, 100]).optional(),
	studHeightMm: measure('Longest stud', 'mm', [0, 40], [3, 21], 1).optional(),
	/** Days on which the pair is lent, lost or at the mender; the last day included. */
	unavailable: z
		.array(z.strictObject({ from: isoDate('From'), to: isoDate('To') }))
		.max(20)
		.optional(),
	note: text('Note', 500).optional(),
})
const startTime = z
	.string()
	.regex(/^([01]\d|2[0-3]):[0-5]\d$/, 'a time HH:MM, 00:00 to 23:59')
	.meta({ title: 'Start' })
const sessionShape = {
	start: startTime.optional(),
	minutes: measure('Minutes', 'min', [1, 600], [20, 180]),
	kind: choice('Kind', ['training', 'match']),
	surface: choice('Surface', surfaces),
	ground: choice('Ground', ['dry', 'damp', 'wet']).optional(),
	team: text('Team', 80).optional(),
	code: choice('Code', codes).optional(),
}
export const sessionSchema = z.strictObject({
	date: isoDate('Date'),
	...sessionShape,
	/** Stays the same when the session moves; from a calendar its UID and recurrence id. */
	id: text('Session id', 400).optional(),
	title: text('Title', 200).optional(),
	place: text('Place', 200).optional(),
	/** Absent: it takes place. */
	status: choice('Status', ['cancelled', 'bye', 'injured']).optional(),
	/** The pair the clinician wants worn, by id. */
	pinned: text('Pinned pair', 40).optional(),
	/** The pair that was worn, by id, once the session is past. */
	worn: text('Worn pair', 40).optional(),
	/** The list gave no length: the usual one was taken. */
	minutesAssumed: yesNo('Length assumed'),
	/** The imported list it came from. */
	source: text('Source', 120).optional(),
	sequence: count('Sequence', 'count', [0, 1000000]).optional(),
})
/** The same session each week, and what departs from it. */
export const patternSchema = z.strictObject({
	...sessionShape,
	id: text('Pattern id', 80),
	weekday: choice('Weekday', [
		'monday',
		'tuesday',
		'wednesday',
		'thursday',
		'friday',
		'saturday',
		'sunday',
	]),
	from: isoDate('From').optional(),
	to: isoDate('To').optional(),
})
export const exceptionSchema = z.strictObject({
	from: isoDate('From'),
	to: isoDate('To').optional(),
	status: choice('Status', ['cancelled', 'bye', 'injured']).optional(),
	/** Only sessions of this pattern; absent: all. */
	pattern: text('Pattern id', 80).optional(),
	surface: choice('Surface', surfaces).optional(),
	ground: choice('Ground', ['dry', 'damp', 'wet']).optional(),
	start: startTime.optional(),
	minutes: measure('Minutes', 'min', [1, 600], [20, 180]).optional(),
})
export const seasonSchema = z.strictObject({
	from: isoDate('Season from'),
	to: isoDate('Season to'),
	sessions: z.array(sessionSchema).max(1500).optional(),
	pattern: z.array(patternSchema).max(30).optional(),
	exceptions: z.array(exceptionSchema).max(200).optional(),
})

export const visitSchema = z.strictObject({
	format: z.literal('lastwright-visit'),
	version: z.literal(1),
	player: playerSchema,
	visitDate: isoDate('Visit date'),
	play: playSchema.optional(),
	body: bodySchema.optional(),
	feet: feetSchema.optional(),
	ankles: anklesSchema.optional(),
	posture: postureSchema.optional(),
	conditions: z.array(conditionSchema).max(40).optional(),
	screening: screeningSchema.optional(),
	footwear: z.array(pairSchema).max(20).optional(),
	season: seasonSchema.optional(),
	/** Fields the clinician chose not to measure, by path, with the reason. */
	notMeasured: z.record(z.string(), z.string()).optional(),
	notes: text('Clinical notes', 10000).optional(),
})
export type Visit = z.infer<typeof visitSchema>
export type Player = z.infer<typeof playerSchema>
export type Injury = z.infer<typeof injurySchema>
export type Screening = z.infer<typeof screeningSchema>
export type Pair = z.infer<typeof pairSchema>
export type Session = z.infer<typeof sessionSchema>
export type Pattern = z.infer<typeof patternSchema>
export type PatternException = z.infer<typeof exceptionSchema>
export type Season = z.infer<typeof seasonSchema>
export type Side = 'left' | 'right'
export type SideOf<K extends 'feet' | 'ankles' | 'posture'> = NonNullable<
	NonNullable<Visit[K]>['left']
>
