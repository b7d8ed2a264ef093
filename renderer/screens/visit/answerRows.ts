/** The answers to the questions of a signed visit as rows for reading. Pure. */
import type { SignedVisit } from '../../../shared/contract.ts'
import type { Answer, AnswerFields } from '../../../shared/engine/visit/answers.ts'
import { termWords } from '../../../shared/engine/visit/terms.ts'
import { featureName } from '../../../shared/engine/words/en/features.ts'
import { adjustmentLine } from '../../../shared/engine/words/en/insert-adjust.ts'
import { elementName } from '../../../shared/engine/words/en/insert-names.ts'
import { questionName } from '../../../shared/engine/words/en/question-names.ts'
import { capital } from '../../../shared/engine/words/words.ts'
import { dayInWords } from '../../parts/dates.ts'
import { assessmentOf } from './rows.ts'

export interface AnswerRow {
	key: string
	question: string
	choice: string
	/** What was changed, in words; empty where nothing was. */
	changed: string
	why: string
}
const choices: Readonly<Record<Answer['choice'], string>> = {
	'as-proposed': 'as proposed',
	changed: 'changed',
	'set-aside': 'set aside',
	unchanged: 'unchanged since the visit before',
}
/** Names by id of what an answer speaks of. */
type NameOf = (id: string) => string
function namesOf(signed: SignedVisit): NameOf {
	const { modifications = [], lacing = [], ranked } = assessmentOf(signed).footwear
	const names = new Map([
		...(signed.visit.footwear ?? []).map(({ id, name }) => [id, name ?? id] as const),
		...ranked.map(({ id, name }) => [id, name] as const),
		...[...modifications, ...lacing].flatMap(({ id, side, name }) => [
			[id, name] as const,
			[`${id}.${side}`, side === 'both' ? name : `${name}, ${side}`] as const,
		]),
	])
	const element = /^(?<side>left|right)\.(?<name>.+)$/
	return (id) => {
		const { side, name } = element.exec(id)?.groups ?? {}
		if (side !== undefined && name !== undefined) return `${elementName(name)}, ${side}`
		return names.get(id) ?? id.replace(/^role\./, 'new pair for ')
	}
}
type Told = {
	[Key in keyof AnswerFields]-?: (value: NonNullable<AnswerFields[Key]>, name: NameOf) => string
}
const told: Told = {
	load: ({ sessionsPerWeek, minutesPerSession, daysOffPerWeek, weeks, steps = [] }) =>
		[
			...(sessionsPerWeek === undefined ? [] : [`${sessionsPerWeek} sessions a week at most`]),
			...(minutesPerSession === undefined ? [] : [`${minutesPerSession} minutes each at most`]),
			...(daysOffPerWeek === undefined ? [] : [`${daysOffPerWeek} days a week off`]),
			...(weeks === undefined ? [] : [`for ${weeks} weeks`]),
			...steps,
		].join('; '),
	insideLengthMm: ({ min, target, max }) => `${min} to ${max} mm inside, best ${target} mm`,
	raise: (pairs, name) =>
		pairs.map(({ pair, left, right }) => `${name(pair)} ${left} / ${right} mm`).join('; '),
	sole: (sole) => `sole ${termWords(sole)}`,
	seek: (features) => `seek ${features.map(featureName).join(', ') || 'nothing'}`,
	avoid: (features) => `avoid ${features.map(featureName).join(', ') || 'nothing'}`,
	models: (models, name) => `to try: ${models.map(name).join(', ') || 'none'}`,
	buy: (buy) => (buy ? 'a new pair is worth buying' : 'no new pair is to be bought'),
	verdicts: (rows, name) =>
		rows
			.map(
				({ id, verdict, by }) =>
					`${name(id)}: ${termWords(verdict)}${by ? ` by ${dayInWords(by)}` : ''}`,
			)
			.join('; '),
	keep: (ids, name) => `kept: ${ids.map(name).join('; ') || 'none'}`,
	adjust: (lines) =>
		`the insert that is worn: ${lines.map(adjustmentLine).join('; ') || 'as it is'}`,
	anew: (anew) => (anew ? 'a new insert in its place' : 'no new insert'),
	reviewDate: dayInWords,
}
const fieldWords = (fields: AnswerFields, name: NameOf): string =>
	(Object.keys(told) as (keyof AnswerFields)[])
		.flatMap((key) => {
			const value = fields[key]
			const say = told[key] as (value: unknown, name: NameOf) => string
			return value === undefined ? [] : [say(value, name)]
		})
		.join('. ')
/** One row an answer, in the order of the questions. */
export function answerRows(signed: SignedVisit): AnswerRow[] {
	const name = namesOf(signed)
	const order = assessmentOf(signed).prescription?.questions.map(({ id }) => id) ?? []
	return [...(signed.decisions.answers ?? [])]
		.sort((one, other) => order.indexOf(one.question) - order.indexOf(other.question))
		.map(({ question, choice, fields, why }) => ({
			key: question,
			question: capital(questionName(question)),
			choice: choices[choice],
			changed: fields ? fieldWords(fields, name) : '',
			why: why ?? '',
		}))
}
