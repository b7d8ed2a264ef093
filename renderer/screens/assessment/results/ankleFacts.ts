/** The answer of the ankles in words: the band of each side, what stops it, what it asks. Pure. */
import { isHeld } from '../../../../shared/engine/facts/held.ts'
import type {
	AnkleResult,
	AnkleSide,
	Assessment,
	RaiseKind,
} from '../../../../shared/engine/findings/assessment.ts'
import { termWords } from '../../../../shared/engine/visit/terms.ts'
import type { Side, Visit } from '../../../../shared/engine/visit/visit.ts'
import { amount, listed } from '../../../../shared/engine/words/en/format.ts'
import { ankleLimits } from '../../../../shared/engine/words/words.ts'

/** The band of an ankle, large. */
export function bandWords({ band, recordedOnly }: AnkleSide): string {
	if (recordedOnly) return 'Not judged today'
	if (band === 'restricted') return 'Restricted'
	return band === 'adequate' ? 'Not restricted' : 'Not established'
}
/** Whether anything of the ankles was read, or felt. */
export const isRead = ({ left, right }: Pick<AnkleResult, Side>, { ankles }: Visit): boolean =>
	[left, right].some((ankle) =>
		[ankle.lungeCm, ankle.lungeDeg, ankle.kneeStraightDeg, ankle.kneeBentDeg].some(
			(value) => value !== undefined,
		),
	) || Boolean(ankles?.left?.endFeel ?? ankles?.right?.endFeel)

const aims: Readonly<Record<Exclude<RaiseKind, 'none'>, string>> = {
	range: 'heel above the forefoot, for range',
	pain: 'added under the heel, for pain',
	'leg-length': 'added, for the leg length',
}
/** What it asks of a heel raise on this foot; empty where none is aimed at. */
function raiseOn(side: Side, { prescription: { gate, raise } }: Assessment): string {
	if (isHeld(gate, 'raise')) return 'Raise: held, none is proposed'
	const { kind, mm } = raise.aim
	return kind === 'none' || mm === undefined ? '' : `Raise: ${amount(mm[side], 'mm')} ${aims[kind]}`
}
/** What bears the band out, or shakes it. */
function sureness({ band, bandSure, bandBy }: AnkleSide): string {
	if (band === 'unknown') return ''
	if (!bandSure) return 'Within error of the cut-off: measure again'
	return bandBy === 'distance-for-stature' ? 'By a distance scaled to stature' : ''
}
/** What stands under the band of a side. @param why its tests wait today; empty where they do not */
export function sideLines(side: Side, assessment: Assessment, visit: Visit, why: string): string[] {
	const ankle = assessment.ankle[side]
	const { endFeel } = visit.ankles?.[side] ?? {}
	const stops = ankleLimits[ankle.limitedBy]
	return [
		...(ankle.recordedOnly
			? [why ? `Tests wait: ${why}` : 'Injured or in severe pain: kept, compared with nothing']
			: [sureness(ankle)]),
		stops && `Stopped by ${stops}`,
		endFeel ? `End feel: ${termWords(endFeel)}` : '',
		raiseOn(side, assessment),
	].filter(Boolean)
}
const asymmetryWords: Readonly<Record<AnkleResult['asymmetry'], string>> = {
	none: 'not more than the limits in use',
	flag: 'more than the limit to watch',
	act: 'enough to look for a reason',
	unknown: '',
}
/** 'Difference: 2.4 cm and 6.4 degrees, enough to look for a reason'; empty where not both were read. */
export function differenceWords({ asymmetry, asymmetryCm, asymmetryDeg }: AnkleResult): string {
	const gaps = [
		...(asymmetryCm === undefined ? [] : [amount(asymmetryCm, 'cm')]),
		...(asymmetryDeg === undefined ? [] : [amount(asymmetryDeg, 'deg')]),
	]
	return gaps.length === 0 ? '' : `Difference: ${listed(gaps)}, ${asymmetryWords[asymmetry]}`
}
