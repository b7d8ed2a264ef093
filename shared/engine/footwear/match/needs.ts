/** What a player's feet, play and insert ask of any model, worked out once for the whole shelf. */
import type { JointRisks } from '../../facts/joint-risks.ts'
import {
	toeRoomBand as roomBand,
	type ShoeKind,
	soreNails,
	type ToeRoomBand,
} from '../../facts/toe-room.ts'
import { isTrainer } from '../../facts/trainer.ts'
import type {
	AnkleResult,
	FootwearResult,
	PerSide,
	PlayerFacts,
	PostureResult,
	SizingResult,
	Span,
} from '../../findings/assessment.ts'
import { present } from '../../plain/present.ts'
import type { Because } from '../../protocol/basis.ts'
import type { Protocol } from '../../protocol/protocol.ts'
import { positionsOf } from '../../visit/positions.ts'
import type { Model } from '../../visit/shelf.ts'
import { bothSides, meanOf, perSide } from '../../visit/sides.ts'
import type { Feature, PairRole, Surface } from '../../visit/terms.ts'
import type { Visit } from '../../visit/visit.ts'
import type { InsertVolume } from '../insert-volume.ts'
import { type Joints, jointRisks, jointsOf } from '../studs.ts'
import { mm } from './answer.ts'

/** The results that a match draws on. */
export interface MatchContext {
	sizing: SizingResult
	ankle: AnkleResult
	posture: PostureResult
	/** What is sought and avoided, settled: nothing in it pulls apart. */
	target: FootwearResult['target']
	/** Features that stand over others of the same place in the order: they count for less. */
	contested: ReadonlySet<Feature>
	adult: boolean
	insert?: InsertVolume | undefined
	facts?: PlayerFacts | undefined
	/** The role and the grounds of the pair; left out: any role, all grounds played on. */
	pair?: { role: PairRole; surfaces: readonly Surface[] } | undefined
}
export interface Needs {
	/** Length to fit with sock and insert, mm: inside length less this is the toe room. */
	lengthMm: number
	/** Of the wider foot. */
	widthMm?: number
	/** Of the deeper toes. */
	depthMm?: number
	insert?: InsertVolume
	adult: boolean
	/** Toe room in boots and in trainers, mm. */
	bootRoom: Span
	trainerRoom: Span
	/** The rows that these bands come from. */
	roomKeys: Readonly<Record<ShoeKind, ToeRoomBand['keys']>>
	surfaces: readonly Surface[]
	/** Of a pair of one role; left out: any. */
	role?: PairRole
	/** Names of positions that push in a scrum. */
	scrum: readonly string[]
	code?: NonNullable<NonNullable<Visit['play']>['code']>
	joints: PerSide<Joints | undefined>
	risks: PerSide<JointRisks>
	/** The measures that each of them rests on. */
	because: { length: Because[]; width: Because[]; depth: Because[] }
}
const largest = (values: readonly (number | undefined)[]): number | undefined => {
	const known = values.filter((value) => value !== undefined)
	return known.length === 0 ? undefined : Math.max(...known)
}
function depthReasons(depthMm: number | undefined, insert: InsertVolume | undefined): Because[] {
	if (depthMm === undefined) return []
	const toes = mm('toeDepthMm', depthMm)
	return insert && insert.forefootMm > 0
		? [toes, mm('insertForefootMm', insert.forefootMm)]
		: [toes]
}

/** @returns undefined where no foot length is known: nothing can be matched */
export function needsOf(
	visit: Visit,
	{ sizing, posture, insert, adult, facts, pair }: MatchContext,
	protocol: Protocol,
): Needs | undefined {
	const { fitLengthMm, toeRoomMm, trainers } = sizing
	if (fitLengthMm === undefined || toeRoomMm === undefined || trainers === undefined)
		return undefined
	const sockMm = visit.feet?.sockMm ?? 0
	const whose = { adult, nailsAreSore: soreNails(visit).length > 0 }
	const cupMm = insert?.cup ? protocol.value('footwear.insertLengthMm') : 0
	const widthMm = largest([sizing.left.widthMm, sizing.right.widthMm])
	const depthMm = largest(bothSides.map((side) => meanOf(visit.feet?.[side]?.toeDepthMm)))
	return present({
		lengthMm: fitLengthMm + sockMm + cupMm,
		widthMm,
		depthMm,
		insert,
		adult,
		bootRoom: toeRoomMm,
		trainerRoom: trainers.toeRoomMm,
		roomKeys: {
			boots: roomBand('boots', whose, protocol).keys,
			trainers: roomBand('trainers', whose, protocol).keys,
		},
		surfaces: pair?.surfaces ?? visit.play?.surfaces ?? [],
		role: pair?.role,
		scrum: positionsOf(visit.play?.position ?? '', visit.play?.code)
			.filter(({ roles }) => roles.includes('scrum'))
			.map(({ name }) => name),
		code: visit.play?.code,
		joints: perSide((side) => jointsOf(sizing, side, protocol)),
		risks: perSide((side) => jointRisks(visit, posture, side, facts)),
		because: {
			length: [
				mm('fitLengthMm', fitLengthMm),
				...(sockMm > 0 ? [mm('sockMm', sockMm)] : []),
				...(cupMm > 0 ? [mm('insertHeelCupMm', cupMm)] : []),
			],
			width: widthMm === undefined ? [] : [mm('widerFootMm', widthMm)],
			depth: depthReasons(depthMm, insert),
		},
	})
}
/** The toe room that this model should leave, mm. */
export const toeRoomBand = (model: Model, needs: Needs): Span =>
	isTrainer(model) ? needs.trainerRoom : needs.bootRoom
