/**
 * Were two players swapped? Changes since the last visit that hardly happen, asked before going on.
 * Nothing is changed by asking.
 */
import { openProtocol, type Protocol } from '../../engine/protocol/protocol.ts'
import { dayInWords } from '../../engine/visit/age.ts'
import { bothSides, meanOf, rounded } from '../../engine/visit/sides.ts'
import type { Visit } from '../../engine/visit/visit.ts'

export interface SwapQuestion {
	path: string
	says: string
	basis: ReturnType<Protocol['basis']>
}
const dayMs = 86_400_000
const yearDays = 365.25
/** @param earlier visits of the same player in any order. Lengths mm, stature cm, mass kg */
export function swapQuestions(
	now: Visit,
	earlier: readonly Visit[],
	protocol: Protocol = openProtocol(),
): SwapQuestion[] {
	const questions: SwapQuestion[] = []
	const ask = (path: string, says: string, key: Parameters<Protocol['basis']>[1]) =>
		questions.push({ path, says, basis: protocol.basis('swapped players', key) })
	const last = earlier
		.filter((visit) => visit.visitDate < now.visitDate)
		.toSorted((a, b) => (a.visitDate < b.visitDate ? 1 : -1))[0]
	const feet = {
		left: meanOf(now.feet?.left?.heelToToeMm),
		right: meanOf(now.feet?.right?.heelToToeMm),
	}
	if (
		feet.left !== undefined &&
		feet.right !== undefined &&
		Math.abs(feet.left - feet.right) > protocol.value('squad.sideDifferenceMm')
	)
		ask(
			'feet.left.heelToToeMm',
			`Left and right foot differ by ${rounded(Math.abs(feet.left - feet.right), 1)} mm.`,
			'squad.sideDifferenceMm',
		)
	if (!last) return questions
	const years = (Date.parse(now.visitDate) - Date.parse(last.visitDate)) / dayMs / yearDays
	const since = `since ${dayInWords(last.visitDate)}`
	for (const side of bothSides) {
		const before = meanOf(last.feet?.[side]?.heelToToeMm)
		const value = feet[side]
		if (before === undefined || value === undefined) continue
		const change = value - before
		if (-change > protocol.value('squad.footShorterMm'))
			ask(
				`feet.${side}.heelToToeMm`,
				`The ${side} foot is ${rounded(-change, 1)} mm shorter ${since}: ${rounded(before, 1)} ` +
					`mm then, ${rounded(value, 1)} mm now.`,
				'squad.footShorterMm',
			)
		// measuring error counts whatever the time: within it nothing is asked
		if (
			change >
			protocol.value('squad.footShorterMm') + protocol.value('squad.footGrownMmPerYear') * years
		)
			ask(
				`feet.${side}.heelToToeMm`,
				`The ${side} foot is ${rounded(change, 1)} mm longer ${since}: ${rounded(before, 1)} mm ` +
					`then, ${rounded(value, 1)} mm now.`,
				'squad.footGrownMmPerYear',
			)
	}
	const [tallBefore, tall] = [last.body?.statureCm, now.body?.statureCm]
	if (tallBefore !== undefined && tall !== undefined) {
		const change = tall - tallBefore
		if (-change > protocol.value('squad.statureDownCm'))
			ask(
				'body.statureCm',
				`Stature is ${rounded(-change, 1)} cm less ${since}: ${tallBefore} cm then, ${tall} cm now.`,
				'squad.statureDownCm',
			)
		if (
			change >
			protocol.value('squad.statureDownCm') + protocol.value('squad.statureUpCmPerYear') * years
		)
			ask(
				'body.statureCm',
				`Stature is ${rounded(change, 1)} cm more ${since}: ${tallBefore} cm then, ${tall} cm now.`,
				'squad.statureUpCmPerYear',
			)
	}
	const [heavyBefore, heavy] = [last.body?.massKg, now.body?.massKg]
	if (heavyBefore !== undefined && heavy !== undefined) {
		const percent = (100 * Math.abs(heavy - heavyBefore)) / heavyBefore
		if (percent > protocol.value('squad.massChangePercent') * Math.max(1, years))
			ask(
				'body.massKg',
				`Body mass differs by ${rounded(percent, 0)} % ${since}: ${heavyBefore} kg then, ` +
					`${heavy} kg now.`,
				'squad.massChangePercent',
			)
	}
	return questions
}
