/**
 * Weekly steps back to the usual load after a bone stress injury or a long lay-off: advice to talk
 * through, not a release to play.
 */
import type { ReturnStep } from '../findings/assessment.ts'
import type { Protocol } from '../protocol/protocol.ts'

/**
 * Percent of the usual weekly load, week by week: a start, steps of at most so many percent, an
 * easier week at intervals, until usual.
 */
export function returnSteps(protocol: Protocol): ReturnStep[] {
	const start = protocol.value('loading.returnStartPercent'),
		rise = 1 + protocol.value('loading.weeklyRisePercent') / 100
	const every = protocol.value('loading.easierWeekEvery'),
		easier = protocol.value('loading.easierWeekPercent') / 100,
		most = protocol.value('loading.returnMostWeeks')
	const steps: ReturnStep[] = []
	let level = start
	for (let week = 1; week <= most; week++) {
		const rest = every > 1 && week % every === 0
		if (week > 1 && !rest) level = Math.min(100, level * rise)
		steps.push({
			week,
			percentOfUsual: rest ? level * easier : level,
			kind: rest ? 'easier' : level >= 100 ? 'usual' : week === 1 ? 'start' : 'step',
		})
		if (level >= 100 && !rest) break
	}
	return steps
}
