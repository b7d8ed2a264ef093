/** Is it long enough, and not too long? Toe room against the player's band. */
import { shoeKindOf } from '../../facts/toe-room.ts'
import type { Span } from '../../findings/assessment.ts'
import type { Because } from '../../protocol/basis.ts'
import type { ThresholdKey } from '../../protocol/protocol.ts'
import type { ShelfSize } from '../../visit/shelf.ts'
import { rounded } from '../../visit/sides.ts'
import { state } from '../../words/statement.ts'
import { type Answer, mm, otherChoice, penalty, reason } from './answer.ts'
import type { Fitter, Trial } from './fitter.ts'
import { type Needs, toeRoomBand } from './needs.ts'

/** Inside length less the length to fit, mm to 0.1. */
export const toeRoomIn = (size: ShelfSize, needs: Needs): number =>
	rounded(size.insideLengthMm - needs.lengthMm, 1)

/** A stop outside what can be worn, else points by the distance from the target. */
export function askLength({ model, size }: Trial, fitter: Fitter): Answer {
	const { needs, value, basis } = fitter
	const toeRoomMm = toeRoomIn(size, needs)
	const room = toeRoomBand(model, needs)
	const keys = needs.roomKeys[shoeKindOf(model)]
	const because = [
		mm('insideLengthMm', size.insideLengthMm),
		...needs.because.length,
		mm('toeRoomMm', toeRoomMm),
	]
	const leastMm = rounded(needs.lengthMm + room.min, 1)
	if (toeRoomMm < room.min)
		return {
			stops: [
				reason(
					'too-short',
					state('match.too-short', { toeRoomMm, leastMm: room.min }),
					because,
					basis('toe room', keys.min),
				),
			],
			changes: [otherChoice(state('match.change-to-least-length', { leastMm }))],
		}
	if (toeRoomMm > room.max + value('footwear.tooLongBeyondMm')) {
		const mostMm = rounded(needs.lengthMm + room.max, 1)
		return {
			stops: [
				reason(
					'too-long',
					state('match.too-long', { toeRoomMm, mostMm: room.max }),
					because,
					basis('too long', 'footwear.tooLongBeyondMm'),
				),
			],
			changes: [otherChoice(state('match.change-length', { leastMm, mostMm }))],
		}
	}
	return withinReach(toeRoomMm, room, keys, because, fitter)
}
/** It can be worn; what is off the target costs points. */
function withinReach(
	toeRoomMm: number,
	room: Span,
	keys: Record<keyof Span, ThresholdKey>,
	because: Because[],
	{ value, basis }: Fitter,
): Answer {
	const offTargetMm = Math.abs(toeRoomMm - room.target)
	const points = offTargetMm * value('footwear.pointsToeRoom')
	if (toeRoomMm > room.max)
		return {
			against: [
				penalty(
					'toe-room',
					state('match.toe-room-above', { toeRoomMm, leastMm: room.min, mostMm: room.max }),
					points,
					because,
					basis('toe room', keys.max),
				),
			],
		}
	const fits = reason(
		'toe-room',
		state('match.toe-room', { toeRoomMm, targetMm: room.target }),
		because,
		basis('toe room', keys.target),
	)
	// less than half of what the figures are shown to
	if (offTargetMm <= 0.05) return { for: [fits] }
	const direction = toeRoomMm < room.target ? 'below' : 'above'
	return {
		for: [fits],
		against: [
			penalty(
				'toe-room-target',
				state('match.toe-room-target', { offTargetMm: rounded(offTargetMm, 1), direction }),
				points,
				because,
				basis('toe room target', 'footwear.pointsToeRoom'),
			),
		],
	}
}
