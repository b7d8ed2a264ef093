/** What keeps a pair out of a session, as data; and its words. */
import { daysBetween } from '../../../plain/days.ts'
import type { Code, Sole, Surface } from '../../../visit/terms.ts'
import { amount, fullDay, number, term, weekday } from '../format.ts'

export type Ground = 'dry' | 'damp' | 'wet'
/** A pair by its letter in the plan and its name as it was typed. */
export type NamedPair = {
	letter: string
	name: string
}
/** Minutes in a pair, by its name. */
export interface Part {
	pair: string
	minutes: number
}
/** The day of one session as it is spoken of on the day of another; ISO dates. */
export interface Seen {
	date: string
	from: string
}
/** Why a pair may not be worn in a session at all. */
export type Barred =
	| {
			why:
				| 'worn-out'
				| 'not-bought'
				| 'not-at-hand'
				| 'breaking-in'
				| 'stopped'
				| 'left-off'
				| 'training-only'
	  }
	| { why: 'replaced'; by: string }
	| { why: 'sole'; sole: Sole; surface: Surface }
	| { why: 'code'; code: Code; rule: 'stud-length'; valueMm: number; mostMm: number }
/** Why a week has room for so many minutes only. */
export type WeeklyLimit =
	| { limit: 'low-offset' | 'pair'; mostMinutes: number }
	| { limit: 'studs' }
	| { limit: 'lay-off' }
/** What speaks against a pair, named as it was typed, in a session. */
export type Hindrance = { pair: string } & (
	| { is: 'barred'; barred: Barred }
	| { is: 'moist'; ground: Ground; worn: Seen }
	| { is: 'week-full'; limit: WeeklyLimit; usedMinutes: number; mostMinutes: number }
	| { is: 'share-reached'; mostPercent: number }
	| { is: 'life-elsewhere' | 'elsewhere' }
	| { is: 'kept'; ground: Ground; next: Seen }
)

/** 'A (firm boots)'. */
export const called = ({ letter, name }: NamedPair): string => `${letter} (${name})`
/** 'natural soft, wet'. */
export const groundWords = (surface: string, ground: Ground): string =>
	ground === 'dry' ? term(surface) : `${term(surface)}, ${ground}`
/** '20 minutes in firm boots, then 55 minutes in turf shoes'. */
export const partsInWords = (parts: readonly Part[]): string =>
	parts.map(({ pair, minutes }) => `${amount(minutes, 'minutes', 0)} in ${pair}`).join(', then ')
/** 'Tuesday' within the six days before or after, otherwise the day in full. */
export function seenWords({ date, from }: Seen): string {
	const days = daysBetween(from, date)
	if (days === 0) return 'the same day'
	return Math.abs(days) < 7 ? weekday(date) : fullDay(date)
}
const studRule = (valueMm: number, mostMm: number): string =>
	`studs of ${amount(valueMm, 'mm')}, at most ${amount(mostMm, 'mm')}`
/** Studs against the rule of a code: 'studs of 25 mm, at most 21 mm'. */
export const codeRuleWords: Readonly<
	Record<'stud-length', (valueMm: number, mostMm: number) => string>
> = { 'stud-length': studRule }
const plainly = {
	'worn-out': 'worn out',
	'not-bought': 'not yet bought',
	'not-at-hand': 'not at hand',
	'breaking-in': 'still being broken in',
	stopped: 'stopped by a finding',
	'left-off': 'not to be worn',
	'training-only': 'for training only',
} as const
function barredWords(barred: Barred): string {
	if (barred.why === 'sole') return `${term(barred.sole)} sole not for ${term(barred.surface)}`
	if (barred.why === 'code') {
		const { code, rule, valueMm, mostMm } = barred
		return `not allowed in ${term(code)}: ${codeRuleWords[rule](valueMm, mostMm)}`
	}
	if (barred.why === 'replaced') return `to be replaced by ${fullDay(barred.by)}`
	return plainly[barred.why]
}
/** 'at most 200 minutes a week in low-heeled boots'. */
export function limitWords(weekly: WeeklyLimit): string {
	if (weekly.limit === 'studs') return 'studs come back step by step after bone stress'
	if (weekly.limit === 'lay-off') return 'less load after a long lay-off'
	const most = `at most ${amount(weekly.mostMinutes, 'minutes', 0)} a week`
	return weekly.limit === 'pair' ? `${most} in this pair` : `${most} in low-heeled boots`
}
const moistWords = { wet: 'still wet from', damp: 'still damp from', dry: 'not aired since' }
type Spoken = { [Kind in Hindrance['is']]: (said: Extract<Hindrance, { is: Kind }>) => string }
const hindranceTable: Spoken = {
	barred: ({ pair, barred }) => `${pair}: ${barredWords(barred)}`,
	moist: ({ pair, ground, worn }) =>
		`${pair} ${moistWords[ground]} ${worn.date === worn.from ? 'earlier ' : ''}${seenWords(worn)}`,
	'week-full': ({ pair, limit, usedMinutes, mostMinutes }) =>
		`${pair}: ${limitWords(limit)} (${number(usedMinutes, 0)} of ${number(mostMinutes, 0)} used ` +
		'this week)',
	'share-reached': ({ pair, mostPercent }) =>
		`${pair}: at most ${amount(mostPercent, '%', 0)} of the training time`,
	'life-elsewhere': ({ pair }) => `${pair}: its remaining life is needed elsewhere`,
	elsewhere: ({ pair }) => `${pair} are needed elsewhere`,
	kept: ({ pair, ground, next }) =>
		`${pair} ${ground === 'dry' ? 'kept' : 'kept dry'} for ` +
		`${next.date === next.from ? 'later ' : ''}${seenWords(next)}`,
}
/** 'firm boots still wet from Tuesday'. */
export const hindranceWords = (said: Hindrance): string =>
	(hindranceTable[said.is] as (said: Hindrance) => string)(said)
