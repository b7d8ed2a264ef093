/**
 * Weekly steps back to the usual load after a bone stress injury or a long lay-off: advice to talk
 * through, not a release to play.
 */
import {
	conditionReading,
	type RecordedCondition,
	recordedConditions,
} from '../conditions/query.ts'
import type { ReturnStep } from '../findings/assessment.ts'
import type { Finding } from '../findings/finding.ts'
import type { Protocol } from '../protocol/protocol.ts'
import type { Condition } from '../visit/terms.ts'
import type { Visit } from '../visit/visit.ts'
import { state } from '../words/statement.ts'
import { loadingFinding } from './says.ts'

const stepKind = (week: number, level: number): ReturnStep['kind'] => {
	if (level >= 100) return 'usual'
	return week === 1 ? 'start' : 'step'
}
/**
 * Percent of the usual weekly load, week by week: a start, steps of at most so many percent, an
 * easier week at intervals, until usual.
 */
export function returnSteps(protocol: Protocol): ReturnStep[] {
	const rise = 1 + protocol.value('loading.weeklyRisePercent') / 100
	const easierEvery = protocol.value('loading.easierWeekEvery')
	const easierShare = protocol.value('loading.easierWeekPercent') / 100
	const mostWeeks = protocol.value('loading.returnMostWeeks')
	const steps: ReturnStep[] = []
	let level = protocol.value('loading.returnStartPercent')
	for (let week = 1; week <= mostWeeks; week++) {
		if (easierEvery > 1 && week % easierEvery === 0) {
			steps.push({ week, percentOfUsual: level * easierShare, kind: 'easier' })
			continue
		}
		if (week > 1) level = Math.min(100, level * rise)
		steps.push({ week, percentOfUsual: level, kind: stepKind(week, level) })
		if (level >= 100) break
	}
	return steps
}
const boneStress: readonly Condition[] = [
	'second-metatarsal-stress-fracture',
	'fifth-metatarsal-stress-fracture',
	'navicular-stress-fracture',
]
/** Bone stress injuries that the player is coming back from. */
export const recoveringBones = (visit: Visit): RecordedCondition[] =>
	recordedConditions(visit, boneStress).filter(({ status }) => status === 'recovering')
/** The steps as they are read; nothing without steps. */
export function returnFindings(
	visit: Visit,
	steps: readonly ReturnStep[] | undefined,
	protocol: Protocol,
): Finding[] {
	if (!steps) return []
	return [
		loadingFinding(
			state('loading.return-steps', {
				startPercent: protocol.value('loading.returnStartPercent'),
				risePercent: protocol.value('loading.weeklyRisePercent'),
				easierWeekEvery: protocol.value('loading.easierWeekEvery'),
				weeks: steps.length,
			}),
			'advise',
			recoveringBones(visit).map(conditionReading),
			protocol.basis('return by weekly steps', 'loading.returnStartPercent'),
		),
	]
}
