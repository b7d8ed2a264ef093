/**
 * Were two players swapped? Changes since the last visit that hardly happen, asked before going on.
 * Nothing is changed by asking.
 */

import { dayInWords, daysBetween } from '../../engine/plain/days.ts'
import { openProtocol, type Protocol } from '../../engine/protocol/protocol.ts'
import { daysPerYear } from '../../engine/visit/age.ts'
import { bodySize } from '../../engine/visit/body-size.ts'
import { bothSides, meanOf, rounded } from '../../engine/visit/sides.ts'
import type { Side, Visit } from '../../engine/visit/visit.ts'

export interface SwapQuestion {
	path: string
	says: string
	basis: ReturnType<Protocol['basis']>
}
type Key = Parameters<Protocol['basis']>[1]
/** Two visits of one player, and the time between them. */
interface Between {
	before: Visit
	now: Visit
	years: number
	/** 'since ...', for a sentence */
	since: string
	protocol: Protocol
}
const question = (protocol: Protocol, path: string, says: string, key: Key): SwapQuestion => ({
	path,
	says,
	basis: protocol.basis('swapped players', key),
})

/** @param earlier visits of the same player in any order. Lengths mm, stature cm, mass kg */
export function swapQuestions(
	now: Visit,
	earlier: readonly Visit[],
	protocol: Protocol = openProtocol(),
): SwapQuestion[] {
	const [before] = earlier
		.filter((visit) => visit.visitDate < now.visitDate)
		.toSorted((left, right) => (left.visitDate < right.visitDate ? 1 : -1))
	const questions = feetApart(now, protocol)
	if (!before) return questions
	const between: Between = {
		before,
		now,
		years: daysBetween(before.visitDate, now.visitDate) / daysPerYear,
		since: `since ${dayInWords(before.visitDate)}`,
		protocol,
	}
	return [
		...questions,
		...bothSides.flatMap((side) => footChanged(side, between)),
		...statureChanged(between),
		...massChanged(between),
	]
}
const footMm = (visit: Visit, side: Side): number | undefined =>
	meanOf(visit.feet?.[side]?.heelToToeMm)

/** Is one foot much longer than the other? */
function feetApart(now: Visit, protocol: Protocol): SwapQuestion[] {
	const [leftMm, rightMm] = [footMm(now, 'left'), footMm(now, 'right')]
	if (leftMm === undefined || rightMm === undefined) return []
	const apartMm = Math.abs(leftMm - rightMm)
	if (apartMm <= protocol.value('squad.sideDifferenceMm')) return []
	const says = `Left and right foot differ by ${rounded(apartMm, 1)} mm.`
	return [question(protocol, 'feet.left.heelToToeMm', says, 'squad.sideDifferenceMm')]
}
/** Is a foot shorter than it was, or longer than it can have grown? */
function footChanged(side: Side, { before, now, years, since, protocol }: Between): SwapQuestion[] {
	const [thenMm, nowMm] = [footMm(before, side), footMm(now, side)]
	if (thenMm === undefined || nowMm === undefined) return []
	const changeMm = nowMm - thenMm
	const errorMm = protocol.value('squad.footShorterMm')
	// measuring error counts whatever the time: within it nothing is asked
	const mostMm = errorMm + protocol.value('squad.footGrownMmPerYear') * years
	const path = `feet.${side}.heelToToeMm`
	const both = `${rounded(thenMm, 1)} mm then, ${rounded(nowMm, 1)} mm now.`
	const sayIt = (how: string) =>
		`The ${side} foot is ${rounded(Math.abs(changeMm), 1)} mm ${how} ${since}: ${both}`
	return [
		...(-changeMm > errorMm
			? [question(protocol, path, sayIt('shorter'), 'squad.footShorterMm')]
			: []),
		...(changeMm > mostMm
			? [question(protocol, path, sayIt('longer'), 'squad.footGrownMmPerYear')]
			: []),
	]
}
/** Is the player smaller than before, or taller than a player can have grown? */
function statureChanged({ before, now, years, since, protocol }: Between): SwapQuestion[] {
	const [thenCm, nowCm] = [bodySize(before).statureCm, bodySize(now).statureCm]
	if (thenCm === undefined || nowCm === undefined) return []
	const changeCm = nowCm - thenCm
	const errorCm = protocol.value('squad.statureDownCm')
	const mostCm = errorCm + protocol.value('squad.statureUpCmPerYear') * years
	const sayIt = (how: string) =>
		`Stature is ${rounded(Math.abs(changeCm), 1)} cm ${how} ${since}: ` +
		`${rounded(thenCm, 1)} cm then, ${rounded(nowCm, 1)} cm now.`
	return [
		...(-changeCm > errorCm
			? [question(protocol, 'body.statureCm', sayIt('less'), 'squad.statureDownCm')]
			: []),
		...(changeCm > mostCm
			? [question(protocol, 'body.statureCm', sayIt('more'), 'squad.statureUpCmPerYear')]
			: []),
	]
}
/** Is the player much heavier or lighter? */
function massChanged({ before, now, years, since, protocol }: Between): SwapQuestion[] {
	const [thenKg, nowKg] = [bodySize(before).massKg, bodySize(now).massKg]
	if (thenKg === undefined || nowKg === undefined) return []
	const percent = (100 * Math.abs(nowKg - thenKg)) / thenKg
	if (percent <= protocol.value('squad.massChangePercent') * Math.max(1, years)) return []
	const says =
		`Body mass differs by ${rounded(percent, 0)} % ${since}: ` +
		`${rounded(thenKg, 1)} kg then, ${rounded(nowKg, 1)} kg now.`
	return [question(protocol, 'body.massKg', says, 'squad.massChangePercent')]
}
