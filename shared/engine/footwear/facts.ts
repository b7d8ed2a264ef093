/** What the footwear rules look at, gathered once. */
import { isAdult } from '../facts/age.ts'
import type {
	AnkleResult,
	Gate,
	GrowthResult,
	PlayerFacts,
	PostureResult,
	RaiseResult,
	SizingResult,
} from '../findings/assessment.ts'
import { reading } from '../findings/finding.ts'
import { present } from '../plain/present.ts'
import type { Because } from '../protocol/basis.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { ageYears as completedYears } from '../visit/age.ts'
import { bodySize } from '../visit/body-size.ts'
import { type Position, positionsOf } from '../visit/positions.ts'
import { bothSides, rounded } from '../visit/sides.ts'
import type { Code, Surface } from '../visit/terms.ts'
import type { Side, Visit } from '../visit/visit.ts'

/** The results of other rooms that the footwear room draws on. */
export interface FootwearContext {
	sizing: SizingResult
	ankle: AnkleResult
	posture: PostureResult
	growth?: GrowthResult | undefined
	/** Left out where a caller has none: nothing is known, nothing is held, nothing is raised. */
	facts?: PlayerFacts | undefined
	gate?: Gate | undefined
	raise?: RaiseResult | undefined
}
/** Lists of reasons are empty where the fact does not hold on either side. */
export interface Facts {
	visit: Visit
	adult: boolean
	ageYears: number
	massKg?: number
	heavy: boolean
	/** Those that the typed position names; what the list does not know is left out. */
	positions: readonly Position[]
	code?: Code
	surfaces: readonly Surface[]
	broad: Because[]
	narrow: Because[]
	restricted: Because[]
	pinched: Because[]
	plantarflexedFirstRay: Because[]
	stiffFirstJoint: Because[]
	pronated: Because[]
	supinated: Because[]
	/** The stage of growth, of players who are not adults. */
	growthBand?: GrowthResult['band']
	/** To be treated as around the growth spurt. */
	aroundSpurt: boolean
	/** One foot clearly longer than the other: more than error of measurement. */
	longer: Because[]
	mobileFirstRay: Because[]
	/** The Beighton score met its cut-off. */
	mobileJoints: Because[]
	/** Adult runner on roads at or below the median mass of the trial. */
	lighter: Because[]
	/** Why a foot may lose its skin unnoticed, from whatever entry. */
	footAtRisk: Because[]
}
type Found = string | number | undefined
/** The sides on which something was found; a computed number is told to two digits. */
const onSides = (measure: string, found: (side: Side) => Found): Because[] =>
	bothSides.flatMap((side) => {
		const value = found(side)
		if (value === undefined) return []
		return [{ measure, side, value: typeof value === 'number' ? rounded(value, 2) : value }]
	})

/** The fitting that stands far enough above the usual one, by whichever scheme. */
function broadFitting(
	{ fitting, lettersAboveUsual }: SizingResult['left'],
	protocol: Protocol,
): string | undefined {
	const leastLetters = protocol.value('footwear.broadLetters')
	const scheme = (['jis', 'us'] as const).find(
		(name) => (lettersAboveUsual?.[name] ?? -Infinity) >= leastLetters,
	)
	return scheme && fitting[scheme]
}
type Shape = Pick<Facts, 'broad' | 'narrow' | 'longer'>
/** Width for length is judged in adults only; a broad fitting speaks for itself. */
function shapeFacts(sizing: SizingResult, adult: boolean, protocol: Protocol): Shape {
	const widthZ = (holds: (z: number) => boolean) =>
		onSides('widthForLengthZ', (side) => {
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
			...onSides('fitting', (side) => broadFitting(sizing[side], protocol)),
		],
		narrow: widthZ((z) => z <= protocol.value('footwear.narrowZ')),
		longer:
			gapMm !== undefined && gapMm >= protocol.value('footwear.unequalMm')
				? [{ measure: 'footLengthDifferenceMm', value: rounded(gapMm, 1), unit: 'mm' }]
				: [],
	}
}
type Ankle = Pick<Facts, 'restricted' | 'pinched'>
const ankleFacts = (ankle: AnkleResult): Ankle => ({
	restricted: onSides('ankleBand', (side) =>
		ankle[side].band === 'restricted' ? ankle[side].band : undefined,
	),
	pinched: onSides('ankleLimitedBy', (side) =>
		ankle[side].limitedBy === 'anterior-block' ? ankle[side].limitedBy : undefined,
	),
})
type Posture = Pick<
	Facts,
	| 'plantarflexedFirstRay'
	| 'mobileFirstRay'
	| 'mobileJoints'
	| 'stiffFirstJoint'
	| 'pronated'
	| 'supinated'
>
/** The first ray of a side, as a reason, where it is as wanted. */
export const firstRayReason = (posture: PostureResult, side: Side, wanted: string): Because[] =>
	posture[side].firstRay === wanted ? [{ measure: 'firstRay', side, value: wanted }] : []
/** The first joint of a side, as a reason, where its structure limits it. */
export const stiffJointReason = (posture: PostureResult, side: Side): Because[] =>
	posture[side].firstMtp === 'structural-limit'
		? [{ measure: 'firstMtp', side, value: 'structural-limit' }]
		: []
function postureFacts(posture: PostureResult): Posture {
	const firstRay = (wanted: string) =>
		bothSides.flatMap((side) => firstRayReason(posture, side, wanted))
	const bands = (...wanted: string[]) =>
		bothSides.flatMap((side): Because[] => {
			const { fpi, fpiBand } = posture[side]
			if (fpiBand === undefined || !wanted.includes(fpiBand)) return []
			return [
				fpi === undefined
					? { measure: 'footPostureBand', side, value: fpiBand }
					: { measure: 'footPosture', side, value: fpi },
			]
		})
	return {
		plantarflexedFirstRay: firstRay('plantarflexed'),
		mobileFirstRay: firstRay('hypermobile'),
		mobileJoints:
			posture.beighton?.state === 'met'
				? [{ measure: 'beighton', value: posture.beighton.score, unit: '/9' }]
				: [],
		stiffFirstJoint: bothSides.flatMap((side) => stiffJointReason(posture, side)),
		pronated: bands('highly-pronated'),
		supinated: bands('supinated', 'highly-supinated'),
	}
}
function lighterRunner(visit: Visit, adult: boolean, protocol: Protocol): Because[] {
	const { massKg } = bodySize(visit)
	const onRoads = visit.play?.surfaces?.includes('road') === true
	if (!adult || massKg === undefined || !onRoads) return []
	const limit = visit.player.sex === 'male' ? 'footwear.lighterMaleKg' : 'footwear.lighterFemaleKg'
	if (massKg > protocol.value(limit)) return []
	return [reading('massKg', massKg, 'kg'), { measure: 'surfaces', value: 'road' }]
}

/** What the rules ask about, from the visit and the rooms before. */
export function factsOf(
	visit: Visit,
	{ sizing, ankle, posture, growth, facts }: FootwearContext,
	protocol: Protocol,
): Facts {
	const ageYears = completedYears(visit.player.birthDate, visit.visitDate)
	const adult = isAdult(visit, protocol)
	const { massKg } = bodySize(visit)
	const { position = '', code, surfaces = [] } = visit.play ?? {}
	return present({
		visit,
		adult,
		ageYears,
		massKg,
		heavy: adult && massKg !== undefined && massKg >= protocol.value('footwear.heavyKg'),
		positions: positionsOf(position, code),
		code,
		surfaces,
		...shapeFacts(sizing, adult, protocol),
		...ankleFacts(ankle),
		...postureFacts(posture),
		lighter: lighterRunner(visit, adult, protocol),
		footAtRisk: facts ? bothSides.flatMap((side) => facts[side].footAtRisk) : [],
		growthBand: adult ? undefined : growth?.band,
		aroundSpurt: !adult && growth?.aroundSpurt === true,
	})
}
