/** Findings of the sessions themselves: too close together, or too often on artificial turf. */
import type { Finding } from '../../findings/finding.ts'
import type { Because } from '../../protocol/basis.ts'
import type { Protocol } from '../../protocol/protocol.ts'
import { rounded } from '../../visit/sides.ts'
import type { Visit } from '../../visit/visit.ts'
import { seasonFinding } from '../finding.ts'
import { endHour, type SeasonProblem, type Slot, totalMinutes } from '../problem/problem.ts'
import { momentOf } from './moment.ts'

const commonPractice = (rule: string): Finding['basis'] => ({
	rule,
	source: 'common practice, no source',
	strength: 'practice',
})
/** Each session with the one before it. */
function neighbours(slots: readonly Slot[]): { before: Slot; slot: Slot }[] {
	let before: Slot | undefined
	return slots.flatMap((slot) => {
		const pair = before && { before, slot }
		before = slot
		return pair ?? []
	})
}
function overlapFindings(open: readonly Slot[]): Finding[] {
	const overlap = neighbours(open)
		.filter(({ before, slot }) => endHour(before) > slot.startHour)
		.map(
			({ slot }): Because => ({
				measure: momentOf(slot),
				value: 'begins before the session before it has ended',
			}),
		)
	if (overlap.length === 0) return []
	return [
		seasonFinding(
			'season.overlap',
			'caution',
			`${overlap.length} ${overlap.length === 1 ? 'session overlaps' : 'sessions overlap'} ` +
				'another. Cancel one of the two.',
			overlap,
			commonPractice('sessions must not overlap'),
		),
	]
}
function closeMatchFindings(open: readonly Slot[]): Finding[] {
	const close = neighbours(open.filter((slot) => slot.kind === 'match'))
		.map(({ before, slot }) => ({ slot, hours: slot.startHour - endHour(before) }))
		.filter(({ hours }) => hours >= 0 && hours < 24)
		.map(
			({ slot, hours }): Because => ({
				measure: momentOf(slot),
				value: rounded(hours, 0),
				unit: 'h after the match before',
			}),
		)
	if (close.length === 0) return []
	return [
		seasonFinding(
			'season.matches-close',
			'note',
			`${close.length} ${close.length === 1 ? 'match follows' : 'matches follow'} another ` +
				'within 24 hours.',
			close,
			commonPractice('matches within 24 hours are pointed out'),
		),
	]
}
/** After a stress fracture of the fifth metatarsal the share of artificial turf is pointed out. */
function turfFindings(open: readonly Slot[], visit: Visit, protocol: Protocol): Finding[] {
	const history = visit.conditions?.find(
		({ condition }) => condition === 'fifth-metatarsal-stress-fracture',
	)
	const total = totalMinutes(open)
	const turf = totalMinutes(open.filter((slot) => slot.surface.startsWith('artificial')))
	if (!history || total === 0 || turf / total <= protocol.value('season.turfShare')) return []
	const percent = rounded((100 * turf) / total, 0)
	return [
		{
			...seasonFinding(
				'season.turf-share',
				'caution',
				`${percent} % of the season's time is on artificial turf. ` +
					'Playing mostly on it is associated with fifth metatarsal stress fracture; no choice ' +
					'of boots changes this share.',
				[{ measure: 'time on artificial turf', value: percent, unit: '%' }],
				protocol.basis('season.turf-share', 'season.turfShare'),
			),
			side: history.side,
		},
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
		...closeMatchFindings(open),
		...turfFindings(open, visit, protocol),
	]
}
