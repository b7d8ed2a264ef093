/** Toe room by kind of shoe, and the inside length that it asks for. */
import type { ToeRoomBand } from '../facts/toe-room.ts'
import type { Span } from '../findings/assessment.ts'
import { type Finding, findingOf, reading } from '../findings/finding.ts'
import { exactly, type Formula, plus, quantity } from '../findings/formula.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { rounded } from '../visit/sides.ts'
import { state } from '../words/statement.ts'

export interface InsideLength {
	toeRoomMm: Span
	insideLengthMm: Span
}
/** The inside length that a toe room asks for, all mm. */
export const insideFor = (fitLengthMm: number, sockMm: number, toeRoomMm: number): Formula =>
	plus(quantity(fitLengthMm), quantity(sockMm), exactly(toeRoomMm))
/** Toe room and inside length of a band, mm. */
export function insideLength(
	{ span }: ToeRoomBand,
	fitLengthMm: number,
	sockMm: number,
): InsideLength {
	const inside = (roomMm: number) => rounded(insideFor(fitLengthMm, sockMm, roomMm).value, 1)
	return {
		toeRoomMm: span,
		insideLengthMm: {
			min: inside(span.min),
			target: inside(span.target),
			max: inside(span.max),
		},
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
