/** Each foot as measured: means of the readings, and where it stands among adults of its sex. */
import { isAdult } from '../facts/age.ts'
import type { FootSizing, PerSide } from '../findings/assessment.ts'
import { type Finding, findingOf, reading } from '../findings/finding.ts'
import { exactly, type Formula, over, quantity } from '../findings/formula.ts'
import { below } from '../plain/normal.ts'
import { present } from '../plain/present.ts'
import type { Protocol, ThresholdKey } from '../protocol/protocol.ts'
import { meanOf, rounded } from '../visit/sides.ts'
import type { Side, Visit } from '../visit/visit.ts'
import { state } from '../words/statement.ts'
import {
	girthForLengthZ,
	jisFitting,
	jisLettersAbove,
	lengthZ,
	usMenFitting,
	usMenLettersAbove,
	widthForLengthZ,
} from './fittings.ts'

/** The row of the heel-to-ball ratio for this player's sex. */
export const ballRatioKey = ({ player }: Visit): ThresholdKey =>
	player.sex === 'male' ? 'sizing.ballRatioMen' : 'sizing.ballRatioWomen'

/** The length of shoe that heel to ball asks for, mm. */
export const lengthFromBall = (visit: Visit, ballLengthMm: number, protocol: Protocol): Formula =>
	over(quantity(ballLengthMm), exactly(protocol.value(ballRatioKey(visit))))
/**
 * Letters of a width or girth at a length, all mm; none for minors, for whom no published numbers
 * were found.
 */
export function lettersAt(
	visit: Visit,
	lengthMm: number,
	widthMm: number | undefined,
	girthMm: number | undefined,
	protocol: Protocol,
): FootSizing['fitting'] {
	const { sex } = visit.player
	if (!isAdult(visit, protocol)) return {}
	const jis = girthMm === undefined ? undefined : jisFitting(lengthMm, girthMm, sex, protocol)
	const us =
		widthMm === undefined || sex !== 'male' ? undefined : usMenFitting(lengthMm, widthMm, protocol)
	return present({ jis, us })
}
/** How far the letters stand above the usual ones; none where there are no letters. */
function lettersAboveAt(
	visit: Visit,
	lengthMm: number,
	widthMm: number | undefined,
	girthMm: number | undefined,
	protocol: Protocol,
): FootSizing['lettersAboveUsual'] {
	const { sex } = visit.player
	if (!isAdult(visit, protocol)) return undefined
	const jis = girthMm === undefined ? undefined : jisLettersAbove(lengthMm, girthMm, sex, protocol)
	const us =
		widthMm === undefined || sex !== 'male'
			? undefined
			: usMenLettersAbove(lengthMm, widthMm, protocol)
	return jis === undefined && us === undefined ? undefined : present({ jis, us })
}
/** Where an adult foot stands among adults of the same sex; nothing for minors. */
function amongAdults(
	visit: Visit,
	lengthMm: number,
	widthMm: number | undefined,
	girthMm: number | undefined,
	protocol: Protocol,
): Partial<FootSizing> {
	const { sex } = visit.player
	if (!isAdult(visit, protocol)) return {}
	const z = lengthZ(lengthMm, sex, protocol).value
	return present({
		lengthZ: z,
		lengthPercentile: 100 * below(z),
		widthForLengthZ:
			widthMm === undefined ? undefined : widthForLengthZ(lengthMm, widthMm, sex, protocol),
		girthForLengthZ:
			girthMm === undefined ? undefined : girthForLengthZ(lengthMm, girthMm, sex, protocol),
	})
}
/** The lengths of one foot, mm; what was not measured is absent. */
export function lengthsOf(visit: Visit, side: Side, protocol: Protocol) {
	const read = visit.feet?.[side]
	const ballLengthMm = meanOf(read?.heelToBallMm)
	return present({
		lengthMm: meanOf(read?.heelToToeMm),
		ballLengthMm,
		archLengthMm:
			ballLengthMm === undefined ? undefined : lengthFromBall(visit, ballLengthMm, protocol).value,
	})
}
/** One foot of a visit; what was not measured is absent. Lengths in mm. */
export function footSizing(visit: Visit, side: Side, protocol: Protocol): FootSizing {
	const read = visit.feet?.[side]
	const lengths = lengthsOf(visit, side, protocol)
	const { lengthMm } = lengths
	const widthMm = meanOf(read?.ballWidthMm)
	const girthMm = meanOf(read?.ballGirthMm)
	const measured = { ...lengths, ...present({ widthMm, girthMm }) }
	if (lengthMm === undefined) return { ...measured, fitting: {} }
	return {
		...measured,
		...amongAdults(visit, lengthMm, widthMm, girthMm, protocol),
		fitting: lettersAt(visit, lengthMm, widthMm, girthMm, protocol),
		...present({
			lettersAboveUsual: lettersAboveAt(visit, lengthMm, widthMm, girthMm, protocol),
		}),
	}
}
/** A finding where a foot is wide or narrow for its length. */
export function widthFindings(
	visit: Visit,
	side: Side,
	feet: PerSide<FootSizing>,
	protocol: Protocol,
): Finding[] {
	const { lengthMm, widthMm, widthForLengthZ: z } = feet[side]
	if (z === undefined || lengthMm === undefined || widthMm === undefined) return []
	if (Math.abs(z) <= protocol.value('sizing.widthZ')) return []
	const { sex } = visit.player
	const statement =
		z > 0 ? state('sizing.wide', { side, sex }) : state('sizing.narrow', { side, sex })
	return [
		findingOf(statement, {
			side,
			level: 'note',
			because: [
				reading('ballWidthMm', widthMm, 'mm', side),
				reading('heelToToeMm', lengthMm, 'mm', side),
				{ measure: 'widthForLengthZ', side, value: rounded(z, 2) },
			],
			basis: protocol.basis('width for length', 'sizing.widthZ'),
		}),
	]
}
