/** How much to play and train: what the clinician set, while nothing holds it. */
import { loadWaits } from '../../prescription/load.ts'
import type { SettledPlan } from '../../prescription/settled.ts'
import { amount } from '../../words/en/format.ts'
import type { Speak } from '../../words/speak.ts'
import { heading } from '../base.ts'
import type { Block } from '../document.ts'

/** One line for each figure, then the steps as they were typed; none where none was set. */
function loadLines({ load, gate }: SettledPlan, t: Speak): string[] {
	const { sessionsPerWeek, minutesPerSession, daysOffPerWeek, weeks, steps = [] } = load?.own ?? {}
	if (loadWaits(gate)) return []
	return [
		...(sessionsPerWeek === undefined
			? []
			: [
					sessionsPerWeek === 0
						? t('player.noSessions')
						: t('player.sessions', { sessions: amount(sessionsPerWeek, 'sessions') }),
				]),
		...(minutesPerSession === undefined
			? []
			: [t('player.minutes', { minutes: amount(minutesPerSession, 'minutes') })]),
		...(daysOffPerWeek === undefined
			? []
			: [t('player.daysOff', { days: amount(daysOffPerWeek, 'days') })]),
		...(weeks === undefined ? [] : [t('player.loadWeeks', { weeks: amount(weeks, 'weeks') })]),
		...steps,
	]
}
export function loadBlocks(plan: SettledPlan, t: Speak): Block[] {
	const items = loadLines(plan, t)
	return items.length === 0 ? [] : [heading(t('player.load')), { kind: 'list', items }]
}
