/** What the footwear rules look at, gathered once. */
import type {
	AnkleResult,
	GrowthResult,
	PostureResult,
	SizingResult,
} from '../findings/assessment.ts'
import type { Because } from '../protocol/basis.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { ageYears as completedYears } from '../visit/age.ts'
import { bothSides, rounded } from '../visit/sides.ts'
import { type Condition, type Surface, termWords } from '../visit/terms.ts'
import type { Visit } from '../visit/visit.ts'

export interface FootwearContext {
	sizing: SizingResult
	ankle: AnkleResult
	posture: PostureResult
	growth?: GrowthResult | undefined
}
export interface Facts {
	adult: boolean
	ageYears: number
	massKg?: number
	heavy: boolean
	position: string
	code: string
	surfaces: readonly Surface[]
	/** Reasons for a current or recovering condition; none when it is not recorded. */
	now(...conditions: Condition[]): Because[]
	/** The same, past ones included: for history that stays relevant. */
	ever(...conditions: Condition[]): Because[]
	broad: Because[]
	narrow: Because[]
	restricted: Because[]
	pinched: Because[]
	plantarflexedFirstRay: Because[]
	stiffFirstJoint: Because[]
	pronated: Because[]
	supinated: Because[]
	growing: Because[]
	/** One foot clearly longer than the other: more than error of measurement. */
	longer: Because[]
	mobileFirstRay: Because[]
	/** Adult runner on roads at or below the median mass of the trial. */
	lighter: Because[]
}
/**
 * JIS EEE and wider (after its size, as in 26EEE), US 2E and wider: two letters above the usual.
 */
const broadJis = /^[\d.]+(E{3,}|F|G)$/,
	broadUs = /^(E{2,}|[2-9]E)$/
const broadFitting = ({ jis, us }: { jis?: string; us?: string }): string | undefined =>
	jis !== undefined && broadJis.test(jis)
		? jis
		: us !== undefined && broadUs.test(us)
			? us
			: undefined

/** A value for reading: two digits of a computed number, words as they are. */
const shownValue = (value: string | number | undefined): string | number =>
	typeof value === 'number' ? rounded(value, 2) : (value ?? 'yes')

export function factsOf(
	visit: Visit,
	{ sizing, ankle, posture, growth }: FootwearContext,
	protocol: Protocol,
): Facts {
	const ageYears = completedYears(visit.player.birthDate, visit.visitDate)
	const adult = ageYears >= protocol.value('footwear.adultFromYears')
	const massKg = visit.body?.massKg
	const recorded = (list: readonly Condition[], past: boolean): Because[] =>
		(visit.conditions ?? [])
			.filter(
				(condition) => list.includes(condition.condition) && (past || condition.status !== 'past'),
			)
			.map((condition) => ({
				measure: `${termWords(condition.condition)}${condition.side === 'none' ? '' : ` (${condition.side})`}`,
				value: condition.status,
			}))
	const sidesWhere = (
		measure: string,
		value: (side: 'left' | 'right') => string | number | undefined,
		holds: (side: 'left' | 'right') => boolean,
	): Because[] =>
		bothSides
			.filter(holds)
			.map((side) => ({ measure: `${measure}, ${side}`, value: shownValue(value(side)) }))
	const z = (side: 'left' | 'right') => sizing[side].widthForLengthZ
	const lengthGap =
		sizing.left.lengthMm === undefined || sizing.right.lengthMm === undefined
			? undefined
			: Math.abs(sizing.left.lengthMm - sizing.right.lengthMm)
	return {
		adult,
		ageYears,
		...(massKg === undefined ? {} : { massKg }),
		heavy: adult && massKg !== undefined && massKg >= protocol.value('footwear.heavyKg'),
		position: (visit.play?.position ?? '').toLowerCase(),
		code: visit.play?.code ?? '',
		surfaces: visit.play?.surfaces ?? [],
		now: (...list) => recorded(list, false),
		ever: (...list) => recorded(list, true),
		broad: [
			...sidesWhere(
				'Width for length, z',
				(side) => z(side),
				(side) => adult && z(side) !== undefined && z(side)! >= protocol.value('footwear.broadZ'),
			),
			...sidesWhere(
				'Fitting',
				(side) => broadFitting(sizing[side].fitting),
				(side) => broadFitting(sizing[side].fitting) !== undefined,
			),
		],
		narrow: sidesWhere(
			'Width for length, z',
			(side) => z(side),
			(side) => adult && z(side) !== undefined && z(side)! <= protocol.value('footwear.narrowZ'),
		),
		restricted: sidesWhere(
			'Ankle range',
			(side) => ankle[side].band,
			(side) => ankle[side].band === 'restricted',
		),
		pinched: sidesWhere(
			'Ankle limited by',
			(side) => ankle[side].limitedBy,
			(side) => ankle[side].limitedBy === 'anterior-block',
		),
		plantarflexedFirstRay: sidesWhere(
			'First ray',
			(side) => posture[side].firstRay,
			(side) => posture[side].firstRay === 'plantarflexed',
		),
		stiffFirstJoint: sidesWhere(
			'First MTP',
			(side) => posture[side].firstMtp,
			(side) => posture[side].firstMtp === 'structural-limit',
		),
		pronated: sidesWhere(
			'Foot posture',
			(side) => posture[side].fpi ?? posture[side].fpiBand,
			(side) => posture[side].fpiBand === 'highly-pronated',
		),
		supinated: sidesWhere(
			'Foot posture',
			(side) => posture[side].fpi ?? posture[side].fpiBand,
			(side) =>
				posture[side].fpiBand === 'supinated' || posture[side].fpiBand === 'highly-supinated',
		),
		longer:
			lengthGap !== undefined && lengthGap >= protocol.value('footwear.unequalMm')
				? [{ measure: 'Difference in foot length', value: rounded(lengthGap, 1), unit: 'mm' }]
				: [],
		mobileFirstRay: sidesWhere(
			'First ray',
			(side) => posture[side].firstRay,
			(side) => posture[side].firstRay === 'hypermobile',
		),
		lighter:
			adult &&
			massKg !== undefined &&
			massKg <=
				protocol.value(
					visit.player.sex === 'male' ? 'footwear.lighterMaleKg' : 'footwear.lighterFemaleKg',
				) &&
			visit.play?.surfaces?.includes('road')
				? [
						{ measure: 'Body mass', value: massKg, unit: 'kg' },
						{ measure: 'Surface', value: 'road' },
					]
				: [],
		growing: adult || !growth ? [] : [{ measure: 'Growth stage', value: growth.band }],
	}
}
