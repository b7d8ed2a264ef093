/** Difference between the two ankles, cm and degrees kept apart. */
import type { AnkleResult, AnkleSide, PerSide } from '../findings/assessment.ts'
import { type Finding, findingOf, reading } from '../findings/finding.ts'
import { present } from '../plain/present.ts'
import type { Protocol, ThresholdKey } from '../protocol/protocol.ts'
import { rounded } from '../visit/sides.ts'
import { state } from '../words/statement.ts'

/** `key` is the row that decided, where a difference is worth a word. */
interface Asymmetry {
	asymmetryCm: number | undefined
	asymmetryDeg: number | undefined
	asymmetry: AnkleResult['asymmetry']
	key?: ThresholdKey
}
const gapOf = (left: number | undefined, right: number | undefined): number | undefined =>
	left === undefined || right === undefined ? undefined : rounded(Math.abs(left - right), 4)

/**
 * How far the ankles differ, and whether to watch it (flag) or to look for a reason (act); a limb
 * that is only recorded is compared with nothing.
 */
export function asymmetryOf({ left, right }: PerSide<AnkleSide>, protocol: Protocol): Asymmetry {
	if (left.recordedOnly || right.recordedOnly)
		return { asymmetryCm: undefined, asymmetryDeg: undefined, asymmetry: 'unknown' }
	const asymmetryCm = gapOf(left.lungeCm, right.lungeCm)
	const asymmetryDeg = gapOf(left.lungeDeg, right.lungeDeg)
	const reaches = (value: number | undefined, key: ThresholdKey) =>
		value !== undefined && value >= protocol.value(key)
	const gaps = { asymmetryCm, asymmetryDeg }
	if (asymmetryCm === undefined && asymmetryDeg === undefined)
		return { ...gaps, asymmetry: 'unknown' }
	if (reaches(asymmetryCm, 'ankle.asymmetryActCm'))
		return { ...gaps, asymmetry: 'act', key: 'ankle.asymmetryActCm' }
	if (reaches(asymmetryDeg, 'ankle.asymmetryActDeg'))
		return { ...gaps, asymmetry: 'act', key: 'ankle.asymmetryActDeg' }
	if (reaches(asymmetryCm, 'ankle.asymmetryFlagCm'))
		return { ...gaps, asymmetry: 'flag', key: 'ankle.asymmetryFlagCm' }
	return { ...gaps, asymmetry: 'none' }
}
/** A finding where the ankles differ by more than measurement error. */
export function asymmetryFindings(
	{ asymmetryCm, asymmetryDeg, asymmetry, key }: Asymmetry,
	protocol: Protocol,
): Finding[] {
	if (key === undefined) return []
	const verdict = asymmetry === 'act' ? 'act' : 'flag'
	const shown = (gap: number | undefined) => (gap === undefined ? undefined : rounded(gap, 1))
	const gaps = present({ gapCm: shown(asymmetryCm), gapDeg: shown(asymmetryDeg) })
	return [
		findingOf(state('ankle.asymmetry', { verdict, ...gaps }), {
			side: 'both',
			level: verdict === 'act' ? 'advise' : 'note',
			because: [
				...(asymmetryCm === undefined ? [] : [reading('lungeGapCm', asymmetryCm, 'cm')]),
				...(asymmetryDeg === undefined ? [] : [reading('lungeGapDeg', asymmetryDeg, 'deg')]),
			],
			basis: protocol.basis('ankle asymmetry', key),
		}),
	]
}
