/** Findings of the sessions themselves: too close together, or too often on artificial turf. */
import { conditionReading } from '../../conditions/query.ts'
import { type Finding, findingOf, reading } from '../../findings/finding.ts'
import type { Protocol } from '../../protocol/protocol.ts'
import { rounded } from '../../visit/sides.ts'
import type { Surface } from '../../visit/terms.ts'
import type { Visit } from '../../visit/visit.ts'
import { state } from '../../words/statement.ts'
import { commonPractice } from '../finding.ts'
import { sideOf, thatAsk } from '../problem/condition-asks.ts'
import {
	endHour,
	momentOf,
	type SeasonProblem,
	type Slot,
	totalMinutes,
} from '../problem/problem.ts'

const artificialTurf: readonly Surface[] = ['artificial-3g', 'artificial-sand']
/** Each session with the one before it, and the hours from the end of that to its beginning. */
function neighbours(slots: readonly Slot[]): { slot: Slot; hours: number }[] {
	let before: Slot | undefined
	return slots.flatMap((slot) => {
		const pair = before && { slot, hours: slot.startHour - endHour(before) }
		before = slot
		return pair ?? []
	})
}
function overlapFindings(open: readonly Slot[]): Finding[] {
	const overlap = neighbours(open).filter(({ hours }) => hours < 0)
	if (overlap.length === 0) return []
	return [
		findingOf(state('season.overlap', { sessions: overlap.length }), {
			id: 'season.overlap',
			side: 'none',
			level: 'caution',
			because: overlap.map(({ slot, hours }) => ({
				measure: 'overlapMinutes',
				at: momentOf(slot),
				value: rounded(-60 * hours, 0),
				unit: 'min',
			})),
			basis: commonPractice('sessions must not overlap'),
		}),
	]
}
function closeMatchFindings(open: readonly Slot[], protocol: Protocol): Finding[] {
	const within = protocol.value('season.matchesCloseHours')
	const close = neighbours(open.filter((slot) => slot.kind === 'match')).filter(
		({ hours }) => hours >= 0 && hours < within,
	)
	if (close.length === 0) return []
	return [
		findingOf(state('season.matches-close', { matches: close.length, hours: within }), {
			id: 'season.matches-close',
			side: 'none',
			level: 'note',
			because: close.map(({ slot, hours }) => ({
				measure: 'hoursAfterMatch',
				at: momentOf(slot),
				value: rounded(hours, 0),
				unit: 'h',
			})),
			basis: protocol.basis('matches close together', 'season.matchesCloseHours'),
		}),
	]
}
/** After an injury that asks for it the share of artificial turf is pointed out. */
function turfFindings(open: readonly Slot[], visit: Visit, protocol: Protocol): Finding[] {
	const history = thatAsk(visit, ({ ask }) => ask === 'tell-turf-share')
	const total = totalMinutes(open)
	const turf = totalMinutes(open.filter(({ surface }) => artificialTurf.includes(surface)))
	if (history.length === 0 || total === 0) return []
	if (turf / total <= protocol.value('season.turfShare')) return []
	const percent = rounded((100 * turf) / total, 0)
	return [
		findingOf(state('season.turf-share', { percent }), {
			id: 'season.turf-share',
			side: sideOf(history),
			level: 'caution',
			because: [...history.map(conditionReading), reading('turfPercent', percent, '%')],
			basis: protocol.basis('share of the time on artificial turf', 'season.turfShare'),
		}),
	]
}
/** What the sessions ahead give rise to, whatever is worn in them. */
export function calendarFindings(
	problem: SeasonProblem,
	visit: Visit,
	protocol: Protocol,
): Finding[] {
	const open = problem.slots.filter((slot) => !slot.past)
	return [
		...overlapFindings(open),
		...closeMatchFindings(open, protocol),
		...turfFindings(open, visit, protocol),
	]
}
