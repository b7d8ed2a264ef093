/** Pain and sessions missed by complaint, from signed visits, each change against its error. */
import { conditionRow } from '../conditions/registry.ts'
import { present } from '../plain/present.ts'
import type { Basis } from '../protocol/basis.ts'
import type { Protocol } from '../protocol/protocol.ts'
import type { LastVisit } from '../recheck/asked.ts'
import type { Visit } from '../visit/visit.ts'
import { capital, conditionInWords, sideWords } from '../words/words.ts'
import { changesOver } from './changes.ts'

/** What was asked of a complaint at one visit; what was not is absent. */
interface CourseReading {
	now?: number
	worst?: number
	missed?: number
	daysOff?: number
}
interface PainStep {
	of: 'now' | 'worst'
	/** ISO dates of the two visits that have it. */
	from: string
	to: string
	was: number
	is: number
	verdict: 'beyond-error' | 'within-error'
}
export interface CourseComplaint {
	name: string
	/** One for each visit, in their order. */
	readings: CourseReading[]
	steps: PainStep[]
}
interface CourseVisit {
	date: string
	/** The letter that stands for what was changed; absent where nothing was. */
	mark?: string
	changes: string[]
}
export interface Course {
	/** Oldest first. */
	visits: CourseVisit[]
	complaints: CourseComplaint[]
	/** The smallest change of pain that is no error, points of 10. */
	limit: { points: number; population: string; basis: Basis }
}
type Recorded = NonNullable<Visit['conditions']>[number]
const keyOf = ({ condition, side, inWords = '' }: Recorded): string =>
	[condition, side, inWords].join(' ')
const nameOf = (one: Recorded): string =>
	[
		capital(conditionInWords(one, 'clinician')),
		...(conditionRow(one.condition).sides === 'each' ? [sideWords[one.side]] : []),
	].join(', ')
const readingOf = (one: Recorded | undefined): CourseReading =>
	present({
		now: one?.painNow,
		worst: one?.painWorst,
		missed: one?.sessionsMissed,
		daysOff: one?.daysOff,
	})
/** A, B to Z, then A2: what was changed at a visit has one letter. */
const letters = 26
const markOf = (place: number): string =>
	String.fromCharCode(65 + (place % letters)) +
	(place < letters ? '' : String(Math.floor(place / letters) + 1))
/** Each reading against the one before it, however many visits did not ask. */
function stepsOf(
	of: PainStep['of'],
	readings: readonly CourseReading[],
	dates: readonly string[],
	points: number,
): PainStep[] {
	const taken = readings.flatMap((reading, at) => {
		const value = reading[of]
		const date = dates[at]
		return value === undefined || date === undefined ? [] : [{ value, date }]
	})
	return taken.slice(1).flatMap(({ value, date }, at) => {
		const before = taken[at]
		if (!before) return []
		const isBeyond = Math.abs(value - before.value) >= points
		return [
			{
				of,
				from: before.date,
				to: date,
				was: before.value,
				is: value,
				verdict: isBeyond ? ('beyond-error' as const) : ('within-error' as const),
			},
		]
	})
}
/** @param signed signed visits, the latest version of each, any order */
export function courseOf(signed: readonly LastVisit[], protocol: Protocol): Course {
	const visits = signed.toSorted((one, other) =>
		one.visit.visitDate < other.visit.visitDate ? -1 : 1,
	)
	const dates = visits.map(({ visit }) => visit.visitDate)
	const points = protocol.value('player.painRealChange')
	const changes = changesOver(visits, protocol)
	const recorded = new Map(
		visits.flatMap(({ visit }) => (visit.conditions ?? []).map((one) => [keyOf(one), one])),
	)
	let marked = 0
	return {
		visits: dates.map((date, at) => {
			const told = (changes[at] ?? []).map(({ says }) => says)
			return {
				date,
				...(told.length > 0 && { mark: markOf(marked++) }),
				changes: told,
			}
		}),
		complaints: [...recorded].flatMap(([key, one]) => {
			const readings = visits.map(({ visit }) =>
				readingOf(visit.conditions?.find((other) => keyOf(other) === key)),
			)
			if (readings.every((reading) => Object.keys(reading).length === 0)) return []
			const steps = (['now', 'worst'] as const).flatMap((of) =>
				stepsOf(of, readings, dates, points),
			)
			return [{ name: nameOf(one), readings, steps }]
		}),
		limit: {
			points,
			population: protocol.row('player.painRealChange').population,
			basis: protocol.basis('smallest real change of pain', 'player.painRealChange'),
		},
	}
}
