/** Ages by the two conventions of the growth equations and of everyday speech. */
import { completedYears, daysBetween } from '../plain/days.ts'

/** Days of a year and of a month, as the growth equations and the growth charts count them. */
export const daysPerYear = 365.25
export const daysPerMonth = 30.4375
/** Decimal age in years: days / 365.25 (the convention of the maturity equations). */
export const decimalAgeYears = (birthDate: string, date: string): number =>
	daysBetween(birthDate, date) / daysPerYear
/** Age in months: days / 30.4375 (the convention of the growth charts). */
export const ageMonths = (birthDate: string, date: string): number =>
	daysBetween(birthDate, date) / daysPerMonth
/** Completed years, as a birthday counts them. */
export const ageYears = (birthDate: string, date: string): number => completedYears(birthDate, date)
