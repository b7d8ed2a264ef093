/**
 * The one band of toe room: every room, page and plan holds a pair or a model against it. Toe room
 * is inside length less the length to fit and what the sock adds, all mm.
 */
import { conditionReasons } from '../conditions/query.ts'
import type { Span } from '../findings/sizing-result.ts'
import type { Because } from '../protocol/basis.ts'
import type { Protocol, ThresholdKey } from '../protocol/protocol.ts'
import type { Visit } from '../visit/visit.ts'
import { isTrainer, type Worn } from './trainer.ts'

export type ShoeKind = 'boots' | 'trainers'
type Keys = Readonly<Record<keyof Span, ThresholdKey>>
/** Rows of the toe room for each kind of shoe. */
const roomKeys = {
	boots: {
		adult: {
			min: 'sizing.toeRoomAdultMinMm',
			target: 'sizing.toeRoomAdultTargetMm',
			max: 'sizing.toeRoomAdultMaxMm',
		},
		youth: {
			min: 'sizing.toeRoomYouthMinMm',
			target: 'sizing.toeRoomYouthTargetMm',
			max: 'sizing.toeRoomYouthMaxMm',
		},
	},
	trainers: {
		adult: {
			min: 'sizing.trainerRoomAdultMinMm',
			target: 'sizing.trainerRoomAdultTargetMm',
			max: 'sizing.trainerRoomAdultMaxMm',
		},
		youth: {
			min: 'sizing.trainerRoomYouthMinMm',
			target: 'sizing.trainerRoomYouthTargetMm',
			max: 'sizing.trainerRoomYouthMaxMm',
		},
	},
} as const satisfies Record<ShoeKind, Record<'adult' | 'youth', Keys>>
/** What bruised or ingrown nails ask for, in whatever shoe. */
const nailKeys: Keys = {
	min: 'sizing.toeRoomNailsMinMm',
	target: 'sizing.toeRoomNailsTargetMm',
	max: 'sizing.toeRoomNailsMaxMm',
}
/** Nails that are bruised or ingrown now, as reasons; none where none is recorded. */
export const soreNails = (visit: Pick<Visit, 'conditions'>): Because[] =>
	conditionReasons(visit, ['ingrown-toenail', 'subungual-haematoma'])

export interface ToeRoomBand {
	span: Span
	/** The row that each edge comes from. */
	keys: Keys
}
/** Whose toe room it is. */
export interface WhoseRoom {
	adult: boolean
	nailsAreSore: boolean
}
/** The band of a kind of shoe, mm: sore nails raise an edge that lies below theirs. */
export function toeRoomBand(
	kind: ShoeKind,
	{ adult, nailsAreSore }: WhoseRoom,
	protocol: Protocol,
): ToeRoomBand {
	const usual: Keys = roomKeys[kind][adult ? 'adult' : 'youth']
	const edge = (at: keyof Span): ThresholdKey =>
		nailsAreSore && protocol.value(nailKeys[at]) > protocol.value(usual[at])
			? nailKeys[at]
			: usual[at]
	const keys = { min: edge('min'), target: edge('target'), max: edge('max') }
	return {
		span: {
			min: protocol.value(keys.min),
			target: protocol.value(keys.target),
			max: protocol.value(keys.max),
		},
		keys,
	}
}
/** Which band a pair or a model is held against. */
export const shoeKindOf = (shoe: Worn): ShoeKind => (isTrainer(shoe) ? 'trainers' : 'boots')
/**
 * The row of the least toe room of a pair in use: of a growing foot what is left once the room for
 * growth is used up, of an adult the lower edge of the band.
 */
export function leastRoomKey(shoe: Worn, adult: boolean): ThresholdKey {
	const kind = shoeKindOf(shoe)
	if (adult) return roomKeys[kind].adult.min
	return kind === 'trainers' ? 'footwear.youthTrainerReplaceMm' : 'footwear.youthReplaceMm'
}
