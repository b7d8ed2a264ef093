/** Plain words for what the engine names in trade terms. */
import { dayInWords, shortDayInWords } from '../plain/days.ts'
import { type Feature, termWords } from '../visit/terms.ts'
import type { Visit } from '../visit/visit.ts'
import { conditionWords } from './en/conditions.table.ts'
import { ruleNames } from './en/features.ts'
import { capital } from './en/format.ts'
import * as en from './en/terms.table.ts'

type Recorded = Pick<
	NonNullable<Visit['conditions']>[number],
	'condition' | 'inWords' | 'operation' | 'operationDate'
>

export { glossary } from './en/glossary.table.ts'
export { capital }
export const {
	actionWords,
	ankleLimits,
	defaultWarningSigns,
	sideWords,
	statusWords,
	strengthWords,
	weekdays,
} = en
/** A feature as a player reads it. */
export const featureInWords = (feature: Feature): string =>
	en.featureWords[feature] ?? termWords(feature)
/** A recorded condition by name; what a clinician typed is not put before the player. */
export function conditionInWords(
	{ condition, inWords, operation, operationDate }: Recorded,
	reader: 'clinician' | 'player' | 'doctor',
): string {
	const { name, player, doctor = name } = conditionWords[condition]
	if (reader === 'player') return player
	const listedName = reader === 'doctor' ? doctor : name
	const called = condition === 'other-condition' ? (inWords ?? listedName) : listedName
	const done = [operation, operationDate && dateWords(operationDate)].filter(Boolean).join(', ')
	return done === '' ? called : `${called} (${done})`
}
/**
 * A rule's name for a note: no id of the program, and a capital first. What a clinician asks for
 * under a condition of its own is numbered, which is nothing to read.
 */
export const ruleInWords = (rule: string): string =>
	capital(en.ruleWords[rule] ?? ruleNames[rule] ?? (/\s/.test(rule) ? rule : wordsOfId(rule)))
/** An id of the program as words: 'lowEnergy' and 'low-energy' as 'low energy'. */
const wordsOfId = (id: string): string =>
	termWords(
		id
			.replace(/-\d+$/, '')
			.replaceAll(/[._]/g, '-')
			.replaceAll(/(?<=[a-z])[A-Z]/g, (letter) => `-${letter.toLowerCase()}`),
	)
/** '2027-01-20' as '20 January 2027'. */
export const dateWords = (isoDate: string): string => dayInWords(isoDate)
/** '2027-01-20' as '20 Jan'. */
export const dayWords = (isoDate: string): string => shortDayInWords(isoDate)
/** A number for reading, without trailing zeros. */
export const shown = (value: number, digits = 1): string =>
	String(Math.round(value * 10 ** digits) / 10 ** digits)
/** Half sizes as the trade writes them. */
export const sizeShown = (size: number): string =>
	Number.isInteger(size) ? String(size) : `${Math.floor(size) || ''}½`
