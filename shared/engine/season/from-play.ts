/**
 * The weekly pattern proposed of what was entered under play: how often, on what, in which code. Days
 * and lengths are this program's own choice and are said to be: nothing of it stands before a person
 * takes it.
 */
import { present } from '../plain/present.ts'
import type { Protocol } from '../protocol/protocol.ts'
import type { Surface } from '../visit/terms.ts'
import type { Pattern, Visit } from '../visit/visit.ts'
import { type Statement, state } from '../words/statement.ts'
import { matchDays, trainingDays } from './from-play.table.ts'

type Kind = Pattern['kind']
export interface PatternProposed {
	rows: Pattern[]
	/** What was chosen for the player and is to be looked at. */
	said: Statement
}
/** Where no surface was entered: the one that most soles may be worn on. */
const usualSurface: Surface = 'natural-firm'
/** Sessions in a usual week: one every other week counts as one a week. */
const eachWeek = (count: number | undefined, days: number): number =>
	Math.min(days, count === undefined || count <= 0 ? 0 : Math.max(1, Math.round(count)))

/**
 * Rows of a usual week, matches first, trainings on the days that are left; surfaces in turn.
 * @returns undefined where neither matches nor trainings were entered
 */
export function patternFromPlay(
	{ play }: Pick<Visit, 'play'>,
	protocol: Protocol,
): PatternProposed | undefined {
	const matches = eachWeek(play?.matchesPerWeek, matchDays.length)
	const onMatches = matchDays.slice(0, matches)
	const free = trainingDays.filter((day) => !onMatches.includes(day))
	const trainings = eachWeek(play?.trainingsPerWeek, free.length)
	if (matches + trainings === 0) return undefined
	const { surfaces = [], code } = play ?? {}
	const row = (kind: Kind, minutes: number) => (weekday: Pattern['weekday'], place: number) =>
		present({
			id: `play-${kind}-${weekday}`,
			weekday,
			kind,
			minutes,
			surface: surfaces[place % Math.max(1, surfaces.length)] ?? usualSurface,
			code,
		})
	const [matchMinutes, trainingMinutes] = [
		protocol.value('season.matchMinutes'),
		protocol.value('season.trainingMinutes'),
	]
	return {
		rows: [
			...onMatches.map(row('match', matchMinutes)),
			...free.slice(0, trainings).map(row('training', trainingMinutes)),
		],
		said: state('season.from-play', {
			matches,
			trainings,
			matchMinutes,
			trainingMinutes,
			surfaceGiven: surfaces.length > 0,
		}),
	}
}
