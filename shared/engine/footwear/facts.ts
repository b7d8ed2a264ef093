/** What the footwear rules look at, gathered once. */
import { isAdult } from '../facts/age.ts'
import type {
	AnkleResult,
	GrowthResult,
	PostureResult,
	SizingResult,
} from '../findings/assessment.ts'
import { present } from '../plain/present.ts'
import type { Because } from '../protocol/basis.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { ageYears as completedYears } from '../visit/age.ts'
import { bothSides, rounded } from '../visit/sides.ts'
import { type Condition, type Surface, termWords } from '../visit/terms.ts'
import type { Side, Visit } from '../visit/visit.ts'

/** The results of other rooms that the footwear room draws on. */
export interface FootwearContext {
	sizing: SizingResult
	ankle: AnkleResult
	posture: PostureResult
	growth?: GrowthResult | undefined
}
/** Lists of reasons are empty where the fact does not hold on either side. */
export interface Facts {
	adult: boolean
	ageYears: number
	massKg?: number
	heavy: boolean
	position: string
	code: string
	surfaces: readonly Surface[]
	/** Reasons for current or recovering conditions, whatever their side: a pair is for both feet. */
	nowAnywhere(...conditions: Condition[]): Because[]
	/** The same, past ones included: for history that stays relevant. */
	everAnywhere(...conditions: Condition[]): Because[]
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
const broadJis = /^[\d.]+(E{3,}|F|G)$/
const broadUs = /^(E{2,}|[2-9]E)$/
function broadFitting({ jis, us }: { jis?: string; us?: string }): string | undefined {
	if (jis !== undefined && broadJis.test(jis)) return jis
	return us !== undefined && broadUs.test(us) ? us : undefined
}
type Found = string | number | undefined
/** The sides on which something was found; a computed number is told to two digits. */
const onSides = (measure: string, found: (side: Side) => Found): Because[] =>
	bothSides.flatMap((side) => {
		const value = found(side)
		if (value === undefined) return []
		return [
			{
				measure: `${measure}, ${side}`,
				value: typeof value === 'number' ? rounded(value, 2) : value,
			},
		]
	})
/** Conditions of either side and of none alike. */
const anywhere = (visit: Visit, wanted: readonly Condition[], pastToo: boolean): Because[] =>
	(visit.conditions ?? [])
		.filter(({ condition }) => wanted.includes(condition))
		.filter(({ status }) => pastToo || status !== 'past')
		.map(({ condition, side, status }) => ({
			measure: `${termWords(condition)}${side === 'none' ? '' : ` (${side})`}`,
			value: status,
		}))

type Shape = Pick<Facts, 'broad' | 'narrow' | 'longer'>
/** Width for length is judged in adults only; a broad fitting speaks for itself. */
function shapeFacts(sizing: SizingResult, adult: boolean, protocol: Protocol): Shape {
	const widthZ = (holds: (z: number) => boolean) =>
		onSides('Width for length, z', (side) => {
			const z = sizing[side].widthForLengthZ
			return adult && z !== undefined && holds(z) ? z : undefined
		})
	const { left, right } = sizing
	const gapMm =
		left.lengthMm === undefined || right.lengthMm === undefined
			? undefined
			: Math.abs(left.lengthMm - right.lengthMm)
	return {
		broad: [
			...widthZ((z) => z >= protocol.value('footwear.broadZ')),
			...onSides('Fitting', (side) => broadFitting(sizing[side].fitting)),
		],
		narrow: widthZ((z) => z <= protocol.value('footwear.narrowZ')),
		longer:
			gapMm !== undefined && gapMm >= protocol.value('footwear.unequalMm')
				? [{ measure: 'Difference in foot length', value: rounded(gapMm, 1), unit: 'mm' }]
				: [],
	}
}
type Ankle = Pick<Facts, 'restricted' | 'pinched'>
const ankleFacts = (ankle: AnkleResult): Ankle => ({
	restricted: onSides('Ankle range', (side) =>
		ankle[side].band === 'restricted' ? ankle[side].band : undefined,
	),
	pinched: onSides('Ankle limited by', (side) =>
		ankle[side].limitedBy === 'anterior-block' ? ankle[side].limitedBy : undefined,
	),
})
type Posture = Pick<
	Facts,
	'plantarflexedFirstRay' | 'mobileFirstRay' | 'stiffFirstJoint' | 'pronated' | 'supinated'
>
function postureFacts(posture: PostureResult): Posture {
	const firstRay = (wanted: string) =>
		onSides('First ray', (side) =>
			posture[side].firstRay === wanted ? posture[side].firstRay : undefined,
		)
	const bands = (...wanted: string[]) =>
		onSides('Foot posture', (side) => {
			const { fpi, fpiBand } = posture[side]
			return fpiBand !== undefined && wanted.includes(fpiBand) ? (fpi ?? fpiBand) : undefined
		})
	return {
		plantarflexedFirstRay: firstRay('plantarflexed'),
		mobileFirstRay: firstRay('hypermobile'),
		stiffFirstJoint: onSides('First MTP', (side) =>
			posture[side].firstMtp === 'structural-limit' ? posture[side].firstMtp : undefined,
		),
		pronated: bands('highly-pronated'),
		supinated: bands('supinated', 'highly-supinated'),
	}
}
function lighterRunner(visit: Visit, adult: boolean, protocol: Protocol): Because[] {
	const massKg = visit.body?.massKg
	const onRoads = visit.play?.surfaces?.includes('road') === true
	if (!adult || massKg === undefined || !onRoads) return []
	const limit = visit.player.sex === 'male' ? 'footwear.lighterMaleKg' : 'footwear.lighterFemaleKg'
	if (massKg > protocol.value(limit)) return []
	return [
		{ measure: 'Body mass', value: massKg, unit: 'kg' },
		{ measure: 'Surface', value: 'road' },
	]
}

/** What the rules ask about, from the visit and the rooms before. */
export function factsOf(
	visit: Visit,
	{ sizing, ankle, posture, growth }: FootwearContext,
	protocol: Protocol,
): Facts {
	const ageYears = completedYears(visit.player.birthDate, visit.visitDate)
	const adult = isAdult(visit, protocol)
	const massKg = visit.body?.massKg
	return present({
		adult,
		ageYears,
		massKg,
		heavy: adult && massKg !== undefined && massKg >= protocol.value('footwear.heavyKg'),
		position: (visit.play?.position ?? '').toLowerCase(),
		code: visit.play?.code ?? '',
		surfaces: visit.play?.surfaces ?? [],
		nowAnywhere: (...conditions: Condition[]) => anywhere(visit, conditions, false),
		everAnywhere: (...conditions: Condition[]) => anywhere(visit, conditions, true),
		...shapeFacts(sizing, adult, protocol),
		...ankleFacts(ankle),
		...postureFacts(posture),
		lighter: lighterRunner(visit, adult, protocol),
		growing: adult || !growth ? [] : [{ measure: 'Growth stage', value: growth.band }],
	})
}
