/** Which birth dates can be, and which are asked about: the same wherever one is entered. */
import { ageYears } from './age.ts'
import { type Problem, problemOf } from './problems.ts'

/** The oldest player that a birth date is taken for, by calendar years: a choice of this program. */
export const mostYears = 110
/** Ages of players outside which the year is asked about: a choice of this program. */
const usualAges = { fromYears: 4, toYears: 60 }

const yearOf = (isoDate: string): number => Number(isoDate.slice(0, 4))

type BirthFault = 'still-to-come' | 'too-long-ago'
/** Why nobody at work can be born on a day. @param on the day on which it is asked; both ISO dates */
export function birthFault(birthDate: string, on: string): BirthFault | undefined {
	if (birthDate > on) return 'still-to-come'
	return yearOf(on) - yearOf(birthDate) > mostYears ? 'too-long-ago' : undefined
}
/** The same as a problem of an entry. @param path where the birth date stands */
export function birthProblems(birthDate: string, on: string, path: string): Problem[] {
	const fault = birthFault(birthDate, on)
	if (fault === undefined) return []
	return fault === 'still-to-come'
		? [problemOf(path, fault, birthDate, { on })]
		: [problemOf(path, fault, birthDate, { mostYears, on })]
}
/** An age in completed years that is asked about; undefined where it is usual. */
export function unusualAge(birthDate: string, on: string): number | undefined {
	const years = ageYears(birthDate, on)
	return years < usualAges.fromYears || years > usualAges.toYears ? years : undefined
}
