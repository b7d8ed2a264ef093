/**
 * What a medicine makes of something else that was recorded: an answer that alone calls for nobody
 * does so together with a painful tendon, a sore bone, an injury.
 */
import {
	conditionReading,
	type RecordedCondition,
	recordedConditions,
} from '../conditions/query.ts'
import type { Action } from '../findings/assessment.ts'
import type { Finding, FindingSide } from '../findings/finding.ts'
import type { Basis, Because } from '../protocol/basis.ts'
import type { Condition } from '../visit/terms.ts'
import type { Screening } from '../visit/visit.ts'
import { type Statement, state } from '../words/statement.ts'
import { anyOf } from './answers.ts'
import {
	type Conclusions,
	distinctSides,
	itemOf,
	type Screened,
	screeningFinding,
	sidedId,
} from './conclusions.ts'
import { answeredYes } from './general.ts'

const tendonConditions = [
	'achilles-insertional',
	'achilles-midportion',
	'peroneal-tendinopathy',
	'posterior-tibial-tendinopathy',
	'patellar-tendinopathy',
] as const satisfies readonly Condition[]
const nailAndSkin = [
	'subungual-haematoma',
	'ingrown-toenail',
	'blister',
] as const satisfies readonly Condition[]

const regulators: Basis = {
	rule: 'fluoroquinolone and tendons',
	source:
		'MHRA Drug Safety Update 2019 (at the first tendon pain stop and contact the doctor at once; ' +
		'not together with a corticosteroid)',
	strength: 'guideline',
}
const steroidAndBone: Basis = {
	rule: 'corticosteroid and bone',
	source: 'van Staa 2003, J Bone Miner Res 18:913 (abstract); imaging early from memory',
	strength: 'cohort',
}
const bleedingInLimb: Basis = {
	rule: 'anticoagulant and injury',
	source:
		'case series: Am J Orthop 2008;37:E201 (compartment syndrome after low-energy injury on warfarin)',
	strength: 'expert',
}
const bleedingInHead: Basis = {
	rule: 'anticoagulant and head injury',
	source: 'NICE NG232 (secondary page) and NICE QS74, statement 2',
	strength: 'guideline',
}
const bleedingAtNail: Basis = {
	rule: 'anticoagulant and nail or blister',
	source: 'common practice, no source',
	strength: 'practice',
}
const hopTest: Basis = {
	rule: 'hop test',
	source: 'common practice, no source',
	strength: 'practice',
}

/** What a medicine makes worse, and where. */
interface Reason {
	side: FindingSide
	because: Because[]
}
const reasonOf = (recorded: RecordedCondition): Reason => ({
	side: recorded.side,
	because: [conditionReading(recorded)],
})
/** One entry a side, with all its reasons. */
const bySide = (reasons: readonly Reason[]): Reason[] =>
	distinctSides(reasons).map((side) => ({
		side,
		because: reasons.filter((reason) => reason.side === side).flatMap(({ because }) => because),
	}))
/** Something that holds together with a medicine; nothing of it is listed where it does not. */
interface Together extends Reason {
	action: Action
	statement: Statement
	basis: Basis
}
/** Tendon pain now, by side: from the recorded conditions and the rupture tests. */
function painfulTendons({ visit, answers }: Screened): Reason[] {
	const { achilles } = answers
	const tested =
		achilles && anyOf(achilles.noMovementOnSqueeze, achilles.footDropsKneeBent, achilles.gap)
	return [
		...recordedConditions(visit, tendonConditions).map(reasonOf),
		...(achilles && tested === true ? [{ side: achilles.side, because: answeredYes }] : []),
		...(answers.achillesRuptureSuspected === true
			? [{ side: 'none' as const, because: answeredYes }]
			: []),
	]
}
const withFluoroquinolone = (screened: Screened): Together[] => [
	...bySide(painfulTendons(screened)).map(
		(reason): Together => ({
			...reason,
			action: 'same-day',
			statement: state('screening.fluoroquinolone-tendon'),
			basis: regulators,
		}),
	),
	...(screened.answers.corticosteroidLongTerm === true
		? [
				{
					side: 'none' as const,
					because: answeredYes,
					action: 'letter' as const,
					statement: state('screening.fluoroquinolone-steroid'),
					basis: regulators,
				},
			]
		: []),
]
/** Bone pain by side: the bone named, or the general questions. */
function boneSides({ boneStress, ...answers }: Screening): FindingSide[] {
	const focal = boneStress && anyOf(boneStress.focalTenderness, boneStress.hopPain)
	if (boneStress && focal === true) return [boneStress.side]
	return anyOf(answers.boneStressHighRisk, answers.boneStressLowRisk) === true ? ['none'] : []
}
const withCorticosteroid = ({ answers }: Screened): Together[] =>
	boneSides(answers).map((side) => ({
		side,
		because: answeredYes,
		action: 'imaging',
		statement: state('screening.steroid-bone'),
		basis: steroidAndBone,
	}))

/** An injury that is fresh, or of unknown date, and of which not everything was denied. */
function freshInjury({ answers: { injury }, protocol }: Screened): FindingSide[] {
	if (!injury) return []
	const { daysAgo, side } = injury
	const old = daysAgo !== undefined && daysAgo > protocol.value('screening.ottawaMaxDays')
	const hurt = anyOf(
		injury.malleolarZonePain,
		injury.midfootZonePain,
		injury.tenderLateralMalleolus,
		injury.tenderMedialMalleolus,
		injury.tenderNavicular,
		injury.tenderFifthMetatarsalBase,
		injury.unableToBearWeightThen,
		injury.unableToBearWeightNow,
		injury.swellingOrOpenSkin,
	)
	return old || hurt === false ? [] : [side]
}
const withAnticoagulant = (screened: Screened): Together[] => [
	...freshInjury(screened).map(
		(side): Together => ({
			side,
			because: answeredYes,
			action: 'same-day',
			statement: state('screening.anticoagulant-injury'),
			basis: bleedingInLimb,
		}),
	),
	...(screened.answers.cardiacOrConcussion === true
		? [
				{
					side: 'none' as const,
					because: answeredYes,
					action: 'emergency' as const,
					statement: state('screening.anticoagulant-head'),
					basis: bleedingInHead,
				},
			]
		: []),
]
interface NailItem extends Together {
	condition: Condition
}
const nailsOnAnticoagulant = ({ visit }: Screened): NailItem[] =>
	nailAndSkin.flatMap((condition) =>
		bySide(recordedConditions(visit, [condition]).map(reasonOf)).map((reason) => ({
			...reason,
			condition,
			action: 'letter',
			statement: state('screening.anticoagulant-nail', { condition }),
			basis: bleedingAtNail,
		})),
	)
/** A hop test on a tendon or bone that a medicine weakens. */
function hopTested({ answers }: Screened): Finding[] {
	const { boneStress, fluoroquinolone, corticosteroidLongTerm, corticosteroidInjection } = answers
	const weakened = anyOf(fluoroquinolone, corticosteroidLongTerm, corticosteroidInjection)
	if (boneStress?.hopPain === undefined || weakened !== true) return []
	return [
		screeningFinding(state('screening.hop-tested-medicine'), {
			side: boneStress.side,
			level: 'caution',
			basis: hopTest,
		}),
	]
}

/** What the recorded medicines make of the rest; nothing where none is taken. */
export function medicineConclusions(screened: Screened): Conclusions {
	const { fluoroquinolone, corticosteroidLongTerm, anticoagulant } = screened.answers
	const together = [
		...(fluoroquinolone === true ? withFluoroquinolone(screened) : []),
		...(corticosteroidLongTerm === true ? withCorticosteroid(screened) : []),
		...(anticoagulant === true ? withAnticoagulant(screened) : []),
	]
	const nails = anticoagulant === true ? nailsOnAnticoagulant(screened) : []
	const found = [
		...together.map((one) => ({ ...one, id: sidedId(one.statement.code, one.side) })),
		...nails.map((one) => ({
			...one,
			id: sidedId(`${one.statement.code}.${one.condition}`, one.side),
		})),
	]
	return {
		items: found.map(({ statement, side, basis, action, id }) =>
			itemOf(statement, { side, basis, action, id, state: 'yes' }),
		),
		findings: hopTested(screened),
		because: Object.fromEntries(found.map(({ id, because }) => [id, because])),
	}
}
