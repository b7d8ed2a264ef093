/**
 * What the questions that unfold by complaint lead to: one row a conclusion. Tri-state throughout:
 * not asked stays not asked.
 */
import type { Action } from '../findings/assessment.ts'
import type { FindingSide } from '../findings/finding.ts'
import type { Basis, Strength } from '../protocol/basis.ts'
import type { Protocol, ThresholdKey } from '../protocol/protocol.ts'
import { bothSides } from '../visit/sides.ts'
import type { Screening, Side } from '../visit/visit.ts'
import { allOf, anyOf, type Tri } from './ottawa.ts'
import { siteRow } from './site-row.ts'

/**
 * `ageYears` in completed years; `decimalAgeYears` where 'above 9' means from the day after the
 * birthday on.
 */
export interface SignContext {
	minor: boolean
	ageYears: number
	decimalAgeYears: number
	protocol: Protocol
}
export interface SignReading {
	side: FindingSide
	holds: Tri
}
export interface SignRow {
	id: string
	group: string
	read(answers: Screening, context: SignContext): SignReading[]
	action: Action
	minorAction?: Action
	says: string
	/**
	 * What is said where the answers are all there and it does not hold: never that anything is
	 * cleared.
	 */
	notMet?: string
	basis(protocol: Protocol): Basis
}
type WithSide = {
	[K in keyof Screening]-?: NonNullable<Screening[K]> extends { side: 'left' | 'right' | 'both' }
		? K
		: never
}[keyof Screening]
type Sided = 'neurological' | 'vascular'
type Words = Pick<SignRow, 'action' | 'minorAction' | 'says' | 'notMet'>
type Ground = { source: string; strength: Strength } | { key: ThresholdKey }

const not = (answer: Tri): Tri => (answer === undefined ? undefined : !answer)
const above = (value: number | undefined, limit: number): Tri =>
	value === undefined ? undefined : value > limit
const atLeast = (value: number | undefined, limit: number): Tri =>
	value === undefined ? undefined : value >= limit
const basisOf =
	(group: string, ground: Ground): SignRow['basis'] =>
	(protocol) =>
		'key' in ground ? protocol.basis(group, ground.key) : { rule: group, ...ground }

/** A conclusion from a group that names its side. */
function on<K extends WithSide>(
	group: K,
	id: string,
	holds: (answers: NonNullable<Screening[K]>, context: SignContext) => Tri,
	words: Words,
	ground: Ground,
): SignRow {
	return {
		id,
		group,
		...words,
		basis: basisOf(group, ground),
		read: (all, context) => {
			const answers = all[group]
			return answers
				? [{ side: (answers as { side: FindingSide }).side, holds: holds(answers, context) }]
				: []
		},
	}
}
/** A conclusion drawn for each foot of a group that has both. */
function each<K extends Sided>(
	group: K,
	id: string,
	holds: (foot: NonNullable<NonNullable<Screening[K]>[Side]>, context: SignContext) => Tri,
	words: Words,
	ground: Ground,
): SignRow {
	return {
		id,
		group,
		...words,
		basis: basisOf(group, ground),
		read: (all, context) =>
			bothSides.flatMap((side) => {
				const foot = all[group]?.[side]
				return foot ? [{ side, holds: holds(foot, context) }] : []
			}),
	}
}
/** A conclusion about the whole person. */
function whole<K extends 'neurological' | 'vascular' | 'lowEnergy' | 'inflammatory'>(
	group: K,
	id: string,
	holds: (answers: NonNullable<Screening[K]>, context: SignContext) => Tri,
	words: Words,
	ground: Ground,
): SignRow {
	return {
		id,
		group,
		...words,
		basis: basisOf(group, ground),
		read: (all, context) => {
			const answers = all[group]
			return answers ? [{ side: 'none', holds: holds(answers, context) }] : []
		},
	}
}

const memory = { source: 'common practice (from memory)', strength: 'practice' } as const
const bone = {
	source:
		'Am Fam Physician 2003;67:85; Ekstrand and van Dijk 2013, Br J Sports Med 47:754; sites ' +
		'partly from memory',
	strength: 'expert',
} as const
const limp = {
	source: 'NHS hospital limp guideline 2021; Queensland paediatric guideline',
	strength: 'guideline',
} as const
const ng12 = {
	source: 'NICE NG12 (secondary pages); CCLG guideline',
	strength: 'guideline',
} as const
const ng19 = { source: 'NICE NG19', strength: 'guideline' } as const
const reds = { source: 'IOC REDs CAT2 2023, Br J Sports Med', strength: 'expert' } as const
const high = (site: Parameters<typeof siteRow>[0]): Tri => {
	const row = siteRow(site)
	return row ? row.risk === 'high' : undefined
}
/** A site not named is treated like a low-risk one, and the name is asked for. */
const lowOrUnnamed = (site: Parameters<typeof siteRow>[0]): boolean =>
	siteRow(site)?.risk !== 'high'
const unclear =
	' This does not say that nothing is wrong: stop and come back if pain stays, worsens, or ' +
	'comes at night.'

export const signRows: readonly SignRow[] = [
	on(
		'boneStress',
		'bone-stress-hip',
		(a) =>
			allOf(
				a.site === undefined ? undefined : siteRow(a.site)?.deep === true,
				anyOf(a.loadPain, a.focalTenderness, a.nightPain),
			),
		{
			action: 'same-day',
			says:
				'Bone stress injury of the hip neck suspected: no weight on the leg, no hop test, ' +
				'emergency department the same day.',
		},
		memory,
	),
	on(
		'boneStress',
		'bone-stress-high',
		(a) =>
			allOf(
				high(a.site),
				anyOf(a.focalTenderness, a.hopPain),
				anyOf(a.loadPain, a.hopPain, a.nightPain),
			),
		{
			action: 'imaging',
			says:
				'Bone stress injury at a high-risk site suspected: stop impact, no weight on the ' +
				'foot, MRI or CT. A normal plain film does not rule it out.',
			notMet: `Bone stress rule for a high-risk site not met.${unclear}`,
		},
		bone,
	),
	on(
		'boneStress',
		'bone-stress-low-imaging',
		(a, c) =>
			allOf(
				lowOrUnnamed(a.site),
				a.focalTenderness,
				anyOf(a.loadPain, a.hopPain),
				anyOf(
					a.nightPain,
					a.hopPain,
					above(a.weeksOfPain, c.protocol.value('screening.boneStressWeeks')),
				),
			),
		{
			action: 'imaging',
			says:
				'Focal bone pain with rest pain, a painful hop or more than two weeks of pain: stop ' +
				'impact and arrange imaging. A normal plain film does not rule out a bone stress ' +
				'injury.',
		},
		{ key: 'screening.boneStressWeeks' },
	),
	on(
		'boneStress',
		'bone-stress-rest-pain',
		(a) => a.nightPain,
		{
			action: 'imaging',
			says:
				'Bone pain at night or at rest: no hop test, no impact, arrange imaging. In a young ' +
				'player ask for an X-ray within 48 hours.',
		},
		ng12,
	),
	on(
		'boneStress',
		'bone-stress-low',
		(a) =>
			allOf(
				lowOrUnnamed(a.site),
				anyOf(a.focalTenderness, a.hopPain),
				anyOf(a.loadPain, a.hopPain),
			),
		{
			action: 'letter',
			says:
				'Bone stress injury is possible (no high-risk site named): relative rest without ' +
				'impact, write to the doctor, review in two weeks.',
			notMet: `Bone stress rule not met.${unclear}`,
		},
		memory,
	),
	on(
		'achilles',
		'achilles-rupture',
		(a) => anyOf(a.noMovementOnSqueeze, a.footDropsKneeBent, a.gap),
		{
			action: 'same-day',
			says:
				'Achilles rupture suspected: same-day emergency department, ankle supported with ' +
				'the toes down, no insert. In the study every rupture had two or more of the three ' +
				'tests positive; walking, or even a heel rise, does not exclude it.',
			notMet:
				'None of the three rupture tests is positive. About one rupture in five was missed at ' +
				'first: test again if push-off stays weak.',
		},
		{
			source:
				'Maffulli 1998, Am J Sports Med 26:266 (calf squeeze .96 and .93, knee bent .88 and ' +
				'.85, gap .73 and .89, sensitivity and specificity)',
			strength: 'cohort',
		},
	),
	on(
		'syndesmosis',
		'syndesmosis',
		(a) => allOf(a.ligamentTenderness, anyOf(a.squeezePain, a.rotationPain, a.cannotHop)),
		{
			action: 'imaging',
			says: 'High ankle sprain suspected: imaging, and protect in a boot meanwhile.',
			notMet:
				'High ankle sprain rule not met. In the first day the tests miss many: examine again on ' +
				'day 5.',
		},
		{ source: 'Sman 2015, Br J Sports Med 49:323 (n 87)', strength: 'cohort' },
	),
	on(
		'lisfranc',
		'lisfranc',
		(a) => allOf(a.midfootPain, anyOf(a.plantarBruise, a.cannotHeelRise, a.stressPain)),
		{
			action: 'imaging',
			says:
				'Midfoot ligament injury suspected: weight-bearing films of both feet or CT, no ' +
				'weight on the foot meanwhile. Films without weight miss about one in four.',
			notMet:
				'Midfoot ligament rule not met. One in three to five is missed at first: examine again ' +
				'within a week if the midfoot still hurts.',
		},
		{ source: 'Ponkilainen 2020; J Foot Ankle Res 2023, s13047-023-00608-0', strength: 'cohort' },
	),
	on(
		'lisfranc',
		'lisfranc-no-weight',
		(a) => allOf(anyOf(a.midfootPain, a.plantarBruise), a.cannotBearWeight),
		{
			action: 'same-day',
			says:
				'Midfoot injury and no weight can be borne: emergency department the same day, no ' +
				'weight on the foot.',
		},
		{ source: 'Ponkilainen 2020; J Foot Ankle Res 2023, s13047-023-00608-0', strength: 'cohort' },
	),
	on(
		'infection',
		'infected-joint',
		(a) => a.hotSwollenJoint,
		{
			action: 'same-day',
			says: 'Hot, swollen joint: an infected joint must be excluded the same day.',
		},
		limp,
	),
	on(
		'infection',
		'infected-skin',
		(a) => a.spreadingRedness,
		{
			action: 'same-day',
			says: 'Spreading infection: medical review the same day, no insert and no boot on this foot.',
		},
		memory,
	),
	on(
		'infection',
		'infection-ill',
		(a) =>
			allOf(anyOf(a.hotSwollenJoint, a.spreadingRedness, a.infectedNailOrBlister), a.generallyIll),
		{ action: 'emergency', says: 'Infection and generally ill: emergency department now.' },
		memory,
	),
	on(
		'infection',
		'infected-nail',
		(a) => a.infectedNailOrBlister,
		{
			action: 'letter',
			says:
				'Infected nail fold or blister: treat or refer; look again in two days, and the ' +
				'same day if redness spreads.',
		},
		memory,
	),
	on(
		'limp',
		'limp-signs',
		(a) =>
			anyOf(
				a.feverInPastWeek,
				a.cannotBearWeight,
				a.severePainOnMovement,
				a.nightWaking,
				a.bonyLump,
				a.weightLossOrSweats,
			),
		{
			action: 'same-day',
			says:
				'Limp with a warning sign (fever, no weight bearing, severe pain on movement, night ' +
				'waking, lump, weight loss or sweats): hospital the same day. An infected joint is ' +
				'an emergency for the bone surgeons.',
			notMet:
				'None of the limp warning signs recorded. Come back the same day if fever, night pain ' +
				'or refusal to bear weight appears.',
		},
		limp,
	),
	on(
		'limp',
		'limp-long',
		(a, c) =>
			anyOf(
				above(a.days, c.protocol.value('screening.limpUndiagnosedDays')),
				allOf(
					above(a.days, c.protocol.value('screening.limpUnassessedDays')),
					not(a.examinedBefore),
				),
			),
		{
			action: 'letter',
			minorAction: 'same-day',
			says:
				'Limp that has lasted more than a week without an examination, or two weeks without ' +
				'a diagnosis: have it examined; a growing player the same day.',
		},
		{ key: 'screening.limpUnassessedDays' },
	),
	on(
		'limp',
		'limp-hip',
		(a, c) =>
			allOf(
				c.minor && c.decimalAgeYears > c.protocol.value('screening.slippedEpiphysisOverYears'),
				a.hipThighKneePain,
			),
		{
			action: 'imaging',
			says:
				'Limp with hip, thigh or knee pain at this age: a slipped growth plate of the hip ' +
				'must be looked for with films of both hips; no impact until then.',
		},
		{ key: 'screening.slippedEpiphysisOverYears' },
	),
	on(
		'tumour',
		'bone-pain-unexplained',
		(a) => a.unexplainedBonePain,
		{
			action: 'letter',
			minorAction: 'imaging',
			says:
				'Unexplained bone pain or bony swelling: through the doctor the same day, in a ' +
				'young player an X-ray within 48 hours. That it does not hurt at night is no ' +
				'reassurance.',
		},
		ng12,
	),
	on(
		'tumour',
		'bone-pain-persistent',
		(a) => a.mostDaysForTwoWeeks,
		{
			action: 'letter',
			minorAction: 'imaging',
			says:
				'Bone pain on most days for two weeks or more: through the doctor, in a young ' +
				'player a blood count within 48 hours.',
		},
		ng12,
	),
	on(
		'tumour',
		'lump',
		(a) => a.enlargingLump,
		{
			action: 'imaging',
			says:
				'A lump that grows: ultrasound through the doctor, within 48 hours in a young ' +
				'player and two weeks in an adult.',
		},
		ng12,
	),
	each(
		'neurological',
		'monofilament',
		(f) => anyOf(not(f.feltHallux), not(f.feltFirstHead), not(f.feltFifthHead)),
		{
			action: 'letter',
			says:
				'Monofilament not felt at one or more of the three sites: protective feeling is ' +
				'reduced. Write to the doctor; no insert and no new footwear without review. Never ' +
				'test on callus.',
			notMet:
				'Monofilament felt at the three sites. The test misses about half of nerve trouble: ' +
				'repeat it if numbness is reported.',
		},
		{ source: 'NHS England foot screen (pooled sensitivity about .53)', strength: 'guideline' },
	),
	whole(
		'neurological',
		'nerve-worse',
		(a) => anyOf(a.gettingWorse, a.saddleOrBladder),
		{
			action: 'emergency',
			says:
				'Loss of feeling or strength that is getting worse, or saddle numbness or bladder ' +
				'change: emergency department now.',
		},
		memory,
	),
	each(
		'vascular',
		'pulses',
		(f) => allOf(f.noDorsalisPedis, f.noPosteriorTibial),
		{
			action: 'letter',
			says:
				'Neither foot pulse is felt: write to the doctor about the blood supply, with an ' +
				'ankle pressure reading.',
		},
		ng19,
	),
	each(
		'vascular',
		'pressure-index',
		(f, c) =>
			f.anklePressureIndex === undefined
				? undefined
				: f.anklePressureIndex < c.protocol.value('screening.anklePressureIndex'),
		{
			action: 'letter',
			says:
				'Ankle-brachial pressure index below the limit: write to the doctor about the blood ' +
				'supply.',
		},
		{ key: 'screening.anklePressureIndex' },
	),
	each(
		'vascular',
		'rest-pain',
		(f) => f.restPain,
		{
			action: 'emergency',
			says:
				'Pain at rest in a cold or pale foot: blood supply must be checked at once in an ' +
				'emergency department.',
		},
		ng19,
	),
	whole(
		'vascular',
		'compartment',
		(a) => a.tightLegWithFootDrop,
		{
			action: 'emergency',
			says:
				'Tight, painful leg with numb foot or foot drop now: compartment pressure, ' +
				'emergency department now.',
		},
		memory,
	),
	whole(
		'lowEnergy',
		'low-energy',
		(a, c) =>
			anyOf(
				atLeast(a.periodsMissed, c.protocol.value('screening.periodsMissed')),
				allOf(c.ageYears >= c.protocol.value('screening.menarcheYears'), a.periodsNotBegun),
				atLeast(a.highRiskBoneStress, c.protocol.value('screening.redsHighRiskBoneStress')),
				atLeast(a.otherBoneStress, c.protocol.value('screening.redsOtherBoneStress')),
				atLeast(a.monthsLostToBoneStress, c.protocol.value('screening.redsMonthsLost')),
				a.offGrowthCurve,
			),
		{
			action: 'letter',
			says:
				'Signs that can go with low energy availability: write to the sports physician. No ' +
				'score is made here.',
			notMet:
				'No listed sign of low energy availability. It can be there without them: ask again ' +
				'each season.',
		},
		reds,
	),
	whole(
		'inflammatory',
		'inflammatory',
		(a, c) =>
			anyOf(
				above(a.morningStiffnessMin, c.protocol.value('screening.morningStiffnessMin')),
				a.bothHeels,
				a.swollenToe,
				a.skinNailEye,
			),
		{
			action: 'letter',
			says:
				'Long morning stiffness, both heels painful, a whole toe swollen, or skin, nail or ' +
				'eye signs: write to the doctor about inflammatory disease.',
		},
		{ key: 'screening.morningStiffnessMin' },
	),
]
