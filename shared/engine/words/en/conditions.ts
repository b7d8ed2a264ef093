/** What is said of the conditions themselves; names and sentences of one of them: the table. */
import type { Condition, Exercise } from '../../visit/terms.ts'
import { sentence } from '../sentence.ts'
import { conditionWords, exerciseWords } from './conditions.table.ts'
import { capital, count, day, listed, ofSide, plural } from './format.ts'

type Of = Readonly<{ condition: Condition }>
/** 'from 7 to 15 years', 'from 18 years on', 'up to 15 years'. */
export function spanWords({
	fromYears,
	toYears,
}: {
	fromYears?: number
	toYears?: number
}): string {
	if (toYears === undefined) return `from ${count(fromYears ?? 0, 'year')} on`
	return fromYears === undefined
		? `up to ${count(toYears, 'year')}`
		: `from ${fromYears} to ${count(toYears, 'year')}`
}
/** What is known of an operation; which one it was is the clinician's own text. */
interface Operation {
	side: string
	operation?: string
	operationDate?: string
}
const operationWords = ({ side, operation, operationDate }: Operation): string =>
	[
		operation ?? 'operation not named',
		side === 'none' ? 'side not recorded' : ofSide(side, 'side'),
		operationDate === undefined ? 'day not recorded' : day(operationDate),
	].join(', ')
const operationsWords = (operations: readonly Operation[]): string =>
	operations.map(operationWords).join('; ')

export const conditionsSentences = {
	'footwear.condition': sentence<Of>({
		clinician: ({ condition }) => conditionWords[condition].shoe?.clinician ?? '',
		player: ({ condition }) => conditionWords[condition].shoe?.player ?? '',
	}),
	'footwear.condition-own': sentence<{ inWords?: string }>({
		clinician: ({ inWords }) =>
			`${capital(inWords ?? conditionWords['other-condition'].name)}: what the clinician asks ` +
			'of a shoe for it.',
		player: () => 'Your clinician chose this for you.',
	}),
	'conditions.caution': sentence<Of>({
		clinician: ({ condition }) => conditionWords[condition].caution?.clinician ?? '',
		player: ({ condition }) => conditionWords[condition].caution?.player ?? '',
		doctor: ({ condition }) => conditionWords[condition].caution?.doctor ?? '',
	}),
	'conditions.unusual-age': sentence<
		Of & { ageYears: number; fromYears?: number; toYears?: number }
	>({
		clinician: ({ condition, ageYears, ...span }) =>
			`${capital(conditionWords[condition].name)} is usually seen ${spanWords(span)}; this player ` +
			`is ${ageYears}. Check that it is the condition meant.`,
	}),
	'conditions.surgery-clearance': sentence<{ operations: readonly Operation[] }>({
		clinician: ({ operations }) =>
			'No running, jumping or playing before the surgeon allows it, which is not recorded: ' +
			`${operationsWords(operations)}.`,
		player: () => 'You had an operation. Do not run, jump or play before your surgeon says so.',
		guardian: () => 'No running, jumping or playing before the surgeon says so.',
		doctor: ({ operations }) =>
			`After surgery (${operationsWords(operations)}): the surgeon's clearance for impact is not ` +
			'recorded.',
	}),
	'conditions.unnamed': sentence<{ times: number }>({
		clinician: ({ times }) =>
			`${count(times, 'condition')} outside the list ${plural(times, 'is', 'are')} recorded ` +
			'without words: say what it is.',
	}),
	'conditions.exercises': sentence<{
		rows: readonly { condition: Condition; exercises: readonly Exercise[] }[]
	}>({
		clinician: ({ rows }) =>
			'Exercise often used, to choose and to dose by you: ' +
			`${rows
				.map(
					({ condition, exercises }) =>
						`${conditionWords[condition].name}: ` +
						listed(exercises.map((exercise) => exerciseWords[exercise])),
				)
				.join('; ')}.`,
	}),
}
/** The question of the screen where a condition is chosen outside its usual ages. */
export const unusualAgeQuestion = (
	ageYears: number,
	span: { fromYears?: number; toYears?: number },
): string => `Usually seen ${spanWords(span)}; this player is ${ageYears}. Is it this?`
export const conditionsReadings = { operationDate: 'day of the operation' }
