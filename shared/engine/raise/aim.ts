/** What the raise of a visit aims at: both heels for range or pain, one side for the leg length. */
import { hasCondition } from '../conditions/query.ts'
import { isHeld } from '../facts/held.ts'
import type { Gate, PerSide, RaiseAim } from '../findings/assessment.ts'
import { present } from '../plain/present.ts'
import type { Because } from '../protocol/basis.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { bothSides, perSide, rounded } from '../visit/sides.ts'
import type { Side, Visit } from '../visit/visit.ts'
import type { RaiseContext } from './raise.ts'
import { type RaiseReason, raiseReasons } from './reasons.ts'

/** What keeps a raise of both heels from being given although there is a reason. */
export type Against =
	| { why: 'limb-waits'; side: Side }
	| { why: 'back-of-ankle'; side: Side; front: boolean }
export interface Aimed {
	aim: RaiseAim
	/** Reasons for both heels, the highest first; empty where something speaks against them. */
	reasons: RaiseReason[]
	/** The correction on the shorter side, mm; 0 without one. */
	correctionMm: number
	shorter?: Side
	against: Against[]
}
/** Material under the heel waits where the limb may not be loaded or its insert is held. */
const waits = (gate: Gate, side: Side): boolean =>
	isHeld(gate, 'weight', side) || isHeld(gate, 'insert', side)

/** A raise closes the back of the ankle: none where that is what hurts. */
function backOfAnkle(visit: Visit, { ankle }: RaiseContext): Against[] {
	return bothSides.flatMap((side): Against[] => {
		if (!hasCondition(visit, ['posterior-ankle-impingement'], { side })) return []
		const front =
			ankle[side].limitedBy === 'anterior-block' ||
			hasCondition(visit, ['anterior-ankle-impingement'], { side })
		return [{ why: 'back-of-ankle', side, front }]
	})
}
/** The correction of the leg length where the posture room proposes one; 0 without one. */
function correctionFor(visit: Visit, { gate, posture }: RaiseContext, protocol: Protocol) {
	const { correctionMm, shorter } = posture.legLength ?? {}
	if (correctionMm === undefined || shorter === undefined) return undefined
	// in standing nothing can be judged while a leg may not be loaded
	const held = isHeld(gate, 'weight') || isHeld(gate, 'insert', shorter)
	if (held || hasCondition(visit, ['posterior-ankle-impingement'], { side: shorter }))
		return undefined
	// down to what can be cut, so that it is never more than the most
	const stepMm = protocol.value('raise.stepMm')
	return { shorter, mm: rounded(Math.floor(correctionMm.max / stepMm) * stepMm, 1) }
}
const inBoth = (mm: number): PerSide<number> => perSide(() => mm)
/** The aim for both heels, with the correction on top of it on the shorter side. */
function aimOf(
	visit: Visit,
	[first]: readonly RaiseReason[],
	because: Because[],
	correction: ReturnType<typeof correctionFor>,
	protocol: Protocol,
): RaiseAim {
	const legLengthMm =
		correction && perSide((side) => (side === correction.shorter ? correction.mm : 0))
	if (first)
		return present({
			kind: first.kind,
			mm: legLengthMm
				? perSide((side) => rounded(first.mm + legLengthMm[side], 1))
				: inBoth(first.mm),
			because,
			basis: protocol.basis('heel raise to both feet', first.key),
			legLengthMm,
		})
	if (!legLengthMm) return { kind: 'none', because: [] }
	const { legLengthDifferenceMm: differenceMm = 0 } = visit.body ?? {}
	return {
		kind: 'leg-length',
		mm: legLengthMm,
		because: [{ measure: 'legLengthDifferenceMm', value: differenceMm, unit: 'mm' }],
		basis: protocol.basis('leg-length correction', 'posture.legLengthShareMax'),
		legLengthMm,
	}
}
/** The aim of a visit whose raise is not held. */
export function aimOfVisit(visit: Visit, context: RaiseContext, protocol: Protocol): Aimed {
	const wanted = raiseReasons(visit, context.ankle, context.facts, protocol)
	const against: Against[] =
		wanted.length === 0
			? []
			: [
					...bothSides
						.filter((side) => waits(context.gate, side))
						.map((side): Against => ({ why: 'limb-waits', side })),
					...backOfAnkle(visit, context),
				]
	const reasons = against.length > 0 ? [] : wanted
	const correction = correctionFor(visit, context, protocol)
	const because = reasons.flatMap((reason) => reason.because)
	return present({
		aim: aimOf(visit, reasons, because, correction, protocol),
		reasons,
		correctionMm: correction?.mm ?? 0,
		shorter: correction?.shorter,
		against,
	})
}
