/** The list of who is due: one line a player, chosen and ordered. Pure. */
import { type Standing, type StandingDue, weekOf } from './standing.ts'

/** A player with all that is due. */
export interface DueLine {
	playerId: string
	club: string | undefined
	isMinor: boolean
	/** who signed the newest visit */
	clinician: string
	items: StandingDue[]
}
/** What is shown; what is absent chooses nothing out. */
export interface Chosen {
	show?: Standing | undefined
	club?: string | undefined
	age?: 'adult' | 'minor' | undefined
	clinician?: string | undefined
}
/** A line with the day it stands under: of its first item that is shown. */
export interface PlacedLine extends DueLine {
	day: string
	/** `overdue`, or the Monday of the week */
	week: string
}
const isShown = ({ standing }: StandingDue, show: Standing | undefined): boolean =>
	show === undefined ? standing !== 'ended' : standing === show

/** The lines that are chosen, by day; players of the same day keep their order. */
export function chosenLines(
	lines: readonly DueLine[],
	{ show, club, age, clinician }: Chosen,
	today: string,
): PlacedLine[] {
	return lines
		.filter(
			(line) =>
				(club === undefined || line.club === club) &&
				(age === undefined || line.isMinor === (age === 'minor')) &&
				(clinician === undefined || line.clinician === clinician),
		)
		.flatMap((line): PlacedLine[] => {
			const [first] = line.items.filter((item) => isShown(item, show))
			if (!first) return []
			const week =
				first.standing === 'ended' ? weekOf(first.day, first.day) : weekOf(first.day, today)
			return [{ ...line, day: first.day, week }]
		})
		.toSorted((one, other) => one.day.localeCompare(other.day))
}
/** Players that are due before today, in this week, and that are booked or asked to wait. */
export function countsOf(
	lines: readonly DueLine[],
	today: string,
): { overdue: number; thisWeek: number; booked: number; waits: number } {
	const week = weekOf(today, today)
	const withAny = (is: (item: StandingDue) => boolean): number =>
		lines.filter(({ items }) => items.some(is)).length
	const isOverdue = (item: StandingDue): boolean =>
		item.standing === 'due' && weekOf(item.day, today) === 'overdue'
	return {
		overdue: withAny(isOverdue),
		thisWeek: lines.filter(
			({ items }) =>
				!items.some(isOverdue) &&
				items.some((item) => item.standing === 'due' && weekOf(item.day, today) === week),
		).length,
		booked: withAny(({ standing }) => standing === 'booked'),
		waits: withAny(({ standing }) => standing === 'waits'),
	}
}
