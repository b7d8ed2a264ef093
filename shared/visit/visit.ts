/** Visit file, version 1: the only definition of what a clinician records at a visit. */
import { z } from 'zod'
import { choice, count, isoDate, measure, repeats, sides, text, yesNo } from './fields.ts'
import { codes, conditions, endFeels, firstRays, sexes, sizeSystems, soles, statuses, surfaces } from './terms.ts'

const email = (title: string) => z.email().nullable().optional().meta({ title })

export const playerSchema = z.strictObject({
	givenName: text('Given name', 80),
	familyName: text('Family name', 80),
	birthDate: isoDate('Birth date'),
	sex: choice('Sex', sexes),
	club: text('Club', 120).optional(),
	guardian: z.strictObject({ name: text('Guardian name', 120), relation: text('Relation', 60).optional(), email: email('Guardian e-mail'), phone: text('Guardian phone', 40).optional() }).optional(),
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
})

export const bodySchema = z.strictObject({
	statureCm: measure('Stature', 'cm', [70, 240], [100, 215], 1).optional(),
	sittingHeightCm: measure('Sitting height', 'cm', [40, 130], [55, 110], 1).optional(),
	massKg: measure('Body mass', 'kg', [10, 250], [18, 150], 1).optional(),
	motherStatureCm: measure("Mother's stature", 'cm', [120, 220], [140, 195], 1).optional(),
	fatherStatureCm: measure("Father's stature", 'cm', [120, 230], [150, 210], 1).optional(),
	parentStatures: choice('Parent statures', ['reported', 'measured']).optional(),
	growthOrHormoneTreatment: yesNo('Growth disorder, steroid or hormone treatment'),
	legLengthDifferenceMm: measure('Leg-length difference, shorter side', 'mm', [0, 80], [0, 25]).optional(),
	shorterLeg: choice('Shorter leg', ['left', 'right']).optional(),
	puberty: choice('Maturity', ['before', 'during', 'after']).optional(),
	beighton: count('Beighton score', '/9', [0, 9]).optional(),
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
	firstMtpDegNonWeightBearing: repeats(measure('First MTP, off the ground', 'deg', [0, 120], [20, 100], 1)),
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
	tenderLateralMalleolus: yesNo('Bone tenderness, lateral malleolus (posterior edge, distal 6 cm, or tip)'),
	tenderMedialMalleolus: yesNo('Bone tenderness, medial malleolus (posterior edge, distal 6 cm, or tip)'),
	tenderNavicular: yesNo('Bone tenderness, navicular'),
	tenderFifthMetatarsalBase: yesNo('Bone tenderness, base of fifth metatarsal'),
	unableToBearWeightThen: yesNo('Unable to bear weight at once after the injury'),
	unableToBearWeightNow: yesNo('Unable to take four steps now'),
	pregnant: yesNo('Pregnant'),
	cannotBeAssessed: yesNo('Intoxicated, head injury, distracting injury or cannot follow the test'),
})
export const wellsSchema = z.strictObject({
	activeCancer: yesNo('Active cancer (treated within 6 months, or palliative)'),
	paralysisOrCast: yesNo('Paralysis, paresis or recent plaster on the leg'),
	bedriddenOrSurgery: yesNo('Bedridden 3 days or more, or major surgery within 12 weeks'),
	deepVeinTenderness: yesNo('Tenderness along the deep veins'),
	entireLegSwollen: yesNo('Entire leg swollen'),
	calfDifferenceCm: measure('Calf larger than the other side', 'cm', [0, 30], [0, 10], 1).optional(),
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
	achillesRuptureSuspected: yesNo('Sudden calf or Achilles pop, or no foot movement on calf squeeze'),
	syndesmosisSuspected: yesNo('High ankle sprain signs (tender syndesmosis with squeeze, rotation pain or cannot hop)'),
	lisfrancSuspected: yesNo('Midfoot pain after twist or axial load with plantar bruise or failed single heel rise'),
	boneStressHighRisk: yesNo('Focal bone pain: navicular, fifth metatarsal, sesamoid, medial malleolus, talus, second metatarsal base'),
	boneStressLowRisk: yesNo('Focal bone pain at another foot or shin bone'),
	limpUnexplained: yesNo('Limp for more than a week without a diagnosis'),
	lumpOrSwelling: yesNo('Unexplained or enlarging lump or bony swelling'),
	coldPaleFoot: yesNo('Cold, pale foot, or no pulse'),
	exertionalTightness: yesNo('Tight leg with numb foot on exercise'),
	activeFootUlcer: yesNo('Open ulcer or wound on the foot'),
	morningStiffness: yesNo('Morning stiffness over 30 minutes, or swollen toes, or bilateral heel pain'),
	periodsAbsent: yesNo('Periods absent for three cycles or more, or not begun by 15 years'),
	unintendedWeightLoss: yesNo('Weight loss, or falling off the growth curve'),
	rigidFlatFoot: yesNo('Rigid flat foot, or one-sided high arch'),
}
export const screeningSchema = z.strictObject({ injury: injurySchema.optional(), wells: wellsSchema.optional(), ...generalFlagShape })

export const pairSchema = z.strictObject({
	id: text('Pair', 40),
	name: text('Name', 80).optional(),
	sole: choice('Sole', soles).optional(),
	sizeSystem: choice('Size system', sizeSystems).optional(),
	size: measure('Size', 'label', [0, 420], [0, 60], 1).optional(),
	insideLengthMm: measure('Inside length', 'mm', [90, 420], [150, 350], 1).optional(),
	heelToForefootOffsetMm: measure('Offset, heel to forefoot', 'mm', [-10, 30], [0, 15], 1).optional(),
	heelLiftMm: measure('Heel raise inside', 'mm', [0, 25], [0, 12], 1).optional(),
	minutesWorn: measure('Minutes worn', 'min', [0, 200000], [0, 20000]).optional(),
	acquired: isoDate('Acquired').optional(),
	lifeMinutes: measure('Expected life', 'min', [60, 100000], [3000, 12000]).optional(),
	dryingHours: measure('Drying time', 'h', [0, 168], [4, 96]).optional(),
	note: text('Note', 500).optional(),
})
export const sessionSchema = z.strictObject({
	date: isoDate('Date'),
	start: z.string().regex(/^([01]\d|2[0-3]):[0-5]\d$/, 'a time HH:MM, 00:00 to 23:59').optional(),
	minutes: measure('Minutes', 'min', [1, 600], [20, 180]),
	kind: choice('Kind', ['training', 'match']),
	surface: choice('Surface', surfaces),
	ground: choice('Ground', ['dry', 'damp', 'wet']).optional(),
})
export const seasonSchema = z.strictObject({ from: isoDate('Season from'), to: isoDate('Season to'), sessions: z.array(sessionSchema).max(1500).optional() })

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
export type Side = 'left' | 'right'
export type SideOf<K extends 'feet' | 'ankles' | 'posture'> = NonNullable<NonNullable<Visit[K]>['left']>
