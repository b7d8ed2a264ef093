/** Ages by the two conventions of the growth equations and of everyday speech. */
import { completedYears, daysBetween } from '../plain/days.ts'

/** Decimal age in years: days / 365.25 (the convention of the maturity equations). */
export const decimalAgeYears = (birthDate: string, date: string): number =>
	daysBetween(birthDate, date) / 365.25
/** Age in months: days / 30.4375 (the convention of the growth charts). */
export const ageMonths = (birthDate: string, date: string): number =>
	daysBetween(birthDate, date) / 30.4375
/** Completed years, as a birthday counts them. */
export const ageYears = (birthDate: string, date: string): number => completedYears(birthDate, date)
