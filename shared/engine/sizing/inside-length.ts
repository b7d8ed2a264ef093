/** Toe room by kind of shoe, and the inside length that it asks for. */
import type { Span } from '../findings/assessment.ts'
import { type Finding, findingOf, reading } from '../findings/finding.ts'
import { exactly, type Formula, plus, quantity } from '../findings/formula.ts'
import type { Protocol, ThresholdKey } from '../protocol/protocol.ts'
import { rounded } from '../visit/sides.ts'
import { state } from '../words/statement.ts'

/** Rows of the toe room for each kind of shoe: least, aim, most. */
const toeRooms = {
	boots: {
		adult: ['sizing.toeRoomAdultMinMm', 'sizing.toeRoomAdultTargetMm', 'sizing.toeRoomAdultMaxMm'],
		youth: ['sizing.toeRoomYouthMinMm', 'sizing.toeRoomYouthTargetMm', 'sizing.toeRoomYouthMaxMm'],
	},
	trainers: {
		adult: [
			'sizing.trainerRoomAdultMinMm',
			'sizing.trainerRoomAdultTargetMm',
			'sizing.trainerRoomAdultMaxMm',
		],
		youth: [
			'sizing.trainerRoomYouthMinMm',
			'sizing.trainerRoomYouthTargetMm',
			'sizing.trainerRoomYouthMaxMm',
		],
	},
} as const satisfies Record<string, Record<string, readonly ThresholdKey[]>>

/** The row of the least toe room, which a working names. */
export const leastRoomKey = (kind: keyof typeof toeRooms, adult: boolean): ThresholdKey =>
	toeRooms[kind][adult ? 'adult' : 'youth'][0]

export interface InsideLength {
	toeRoomMm: Span
	insideLengthMm: Span
}
/** The inside length that a toe room asks for, all mm. */
export const insideFor = (fitLengthMm: number, sockMm: number, toeRoomMm: number): Formula =>
	plus(quantity(fitLengthMm), quantity(sockMm), exactly(toeRoomMm))
/** Toe room and inside length of a kind of shoe, mm. */
export function insideLength(
	kind: keyof typeof toeRooms,
	adult: boolean,
	fitLengthMm: number,
	sockMm: number,
	protocol: Protocol,
): InsideLength {
	const [least, aim, most] = toeRooms[kind][adult ? 'adult' : 'youth']
	const room = (key: ThresholdKey) => protocol.value(key)
	const inside = (key: ThresholdKey) => rounded(insideFor(fitLengthMm, sockMm, room(key)).value, 1)
	return {
		toeRoomMm: { min: room(least), target: room(aim), max: room(most) },
		insideLengthMm: { min: inside(least), target: inside(aim), max: inside(most) },
	}
}
/** Labels cannot be trusted to a size: the inside is checked. */
export const checkInsideFinding = (
	{ toeRoomMm, insideLengthMm }: InsideLength,
	fitLengthMm: number,
	sockMm: number,
	protocol: Protocol,
): Finding =>
	findingOf(
		state('sizing.check-inside', {
			spreadMm: protocol.value('sizing.labelSpreadMm'),
			minMm: insideLengthMm.min,
			maxMm: insideLengthMm.max,
		}),
		{
			side: 'both',
			level: 'note',
			because: [
				reading('fitLengthMm', fitLengthMm, 'mm'),
				reading('sockMm', sockMm, 'mm'),
				reading('leastToeRoomMm', toeRoomMm.min, 'mm'),
				reading('mostToeRoomMm', toeRoomMm.max, 'mm'),
			],
			basis: protocol.basis('check the inside length', 'sizing.labelSpreadMm'),
		},
	)
