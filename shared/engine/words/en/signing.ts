/** What keeps a visit from being signed, each with its remedy. */

import type { Entry, Tree } from '../../visit/entries.ts'
import { privateTopicAt } from '../../visit/private.ts'
import { sentence } from '../sentence.ts'
import { amount, listed } from './format.ts'
import { coreQuestionNames } from './gate.ts'
import { languageName } from './languages.ts'
import { questionName } from './question-names.ts'
import { actionWords } from './terms.table.ts'
import { entryName, entryWords } from './typed-twice.ts'

/** Two entries of one field: what stands, and what was typed too. */
type TwoTyped = {
	keys: readonly string[]
	/** what the pair is called that it is of */
	pair: string | undefined
	stands: Entry | Tree | null
	other: Entry | Tree | null
}
const languageNamesOf = (tags: readonly string[]): string => listed(tags.map(languageName))

export const signingSentences = {
	'signing.not-assessed': sentence({
		clinician: () =>
			'The findings cannot be worked out from the entries. Look through the earlier steps.',
	}),
	'signing.open-questions': sentence<{ questions: readonly string[] }>({
		clinician: ({ questions }) =>
			`Questions without an answer: ${listed(questions.map(questionName))}. Settle each one in ` +
			'Decide.',
	}),
	'signing.gate-not-established': sentence<{ unasked: readonly string[] }>({
		clinician: ({ unasked }) =>
			`Safety is not established: ${listed(unasked.map((id) => coreQuestionNames[id] ?? id))} ` +
			'not asked. Ask in Flags, or set the question of safety aside with a reason in Decide.',
	}),
	'signing.overtaken-notes': sentence<{ findings: number }>({
		clinician: ({ findings }) =>
			'Lines that read otherwise than when you changed or dropped them: ' +
			`${findings}. Look at them again in Decide.`,
	}),
	'signing.overtaken-elements': sentence<{ elements: number }>({
		clinician: ({ elements }) =>
			'Elements of the insert that are proposed otherwise than when you changed or dropped them: ' +
			`${elements}. Look at them again in Decide.`,
	}),
	'signing.overtaken-marks': sentence<{ marks: number }>({
		clinician: ({ marks }) =>
			`Models to try or changes to the boot that would print as they read before: ${marks}. ` +
			'Take the new words, or take the mark off, in Decide.',
	}),
	'signing.not-yet-values': sentence<{ fields: number }>({
		clinician: ({ fields }) =>
			`Fields that are not a value yet: ${fields}. Correct or clear each one.`,
	}),
	'signing.condition-without-status': sentence<{ conditions: number }>({
		clinician: ({ conditions }) =>
			`Conditions of which nobody said how they stand: ${conditions}. Choose current, recovering ` +
			'or past, or take the condition out.',
	}),
	'signing.changed-without-words': sentence<{ finding: string }>({
		clinician: ({ finding }) =>
			`A changed line has no words (${finding}). Write the words that stand, or accept or drop it.`,
	}),
	'signing.own-line-empty': sentence<{ line: string }>({
		clinician: ({ line }) => `Your own line ${line} is empty. Write it or remove it.`,
	}),
	'signing.raise-without-reason': sentence<{ limitMm: number }>({
		clinician: ({ limitMm }) =>
			`The heel raise is above ${amount(limitMm, 'mm')}. Write the reason in Decide, or lower it.`,
	}),
	'signing.referral-not-recorded': sentence<{ action: keyof typeof actionWords }>({
		clinician: ({ action }) =>
			`Screening asks for ${actionWords[action]}. Write in Decide what was done about it.`,
	}),
	'signing.told-nobody': sentence({
		clinician: () => 'It is not noted to whom it was explained. Tick who was told.',
	}),
	'signing.told-unnamed': sentence({
		clinician: () => 'Someone else was told, without a name. Write the name.',
	}),
	'signing.guardian-unnamed': sentence({
		clinician: () => 'The name of the guardian is missing. Write it.',
	}),
	'signing.told-nothing': sentence({
		clinician: () =>
			'It is not noted what was explained. Tick it: the plan, other options, doing nothing, risks.',
	}),
	'signing.no-answer': sentence({
		clinician: () => 'The answer is not noted. Choose agreed, agreed in part, or declined.',
	}),
	'signing.declined-what': sentence({
		clinician: () => 'What was not agreed to is empty. Write what was declined.',
	}),
	'signing.answer-by-nobody': sentence({
		clinician: () => 'It is not noted whose answer it is. Tick who agreed or declined.',
	}),
	'signing.answer-by-unnamed': sentence({
		clinician: () => 'Someone else answered. Write the name, and what gives the right to consent.',
	}),
	'signing.competence-not-judged': sentence<{ alone: boolean }>({
		clinician: ({ alone }) =>
			(alone ? 'A minor answered without a guardian' : 'A minor disagrees with the guardian') +
			': competence for this decision is not judged. Judge it and write the grounds' +
			(alone ? ', or involve a guardian.' : '.'),
	}),
	'signing.not-competent-alone': sentence({
		clinician: () =>
			'The player is judged not competent for this decision and answered alone. Ask a guardian, or ' +
			'someone else with the right to consent.',
	}),
	'signing.interpreter-child': sentence({
		clinician: () =>
			'An interpreter is never under 18, and never a child, brother or sister of the player. Explain ' +
			'it again through another interpreter, by telephone if need be.',
	}),
	'signing.interpreter-unnamed': sentence({
		clinician: () => 'An interpreter was present. Write the name or number, and choose who it is.',
	}),
	'signing.interpreter-why': sentence({
		clinician: () => 'An interpreter was needed and there was none. Write why.',
	}),
	'signing.language-open': sentence<{ languages: readonly string[] }>({
		clinician: ({ languages }) =>
			`${languageNamesOf(languages)} is preferred and the papers are in English. Say under Interpreter ` +
			'whether one took part.',
	}),
	'signing.language-how': sentence<{ languages: readonly string[] }>({
		clinician: ({ languages }) =>
			`${languageNamesOf(languages)} is preferred and there was no interpreter. Write how it was ` +
			'explained.',
	}),
	'signing.chaperone-unnamed': sentence({
		clinician: () => 'A chaperone was accepted, without a name. Write the name.',
	}),
	'signing.chaperone-why': sentence({
		clinician: () => 'No chaperone was offered. Write why.',
	}),
	'signing.typed-twice': sentence<TwoTyped>({
		clinician: ({ keys, pair, stands, other }) =>
			privateTopicAt(keys.slice(1).join('.')) === 'safeguarding'
				? 'An entry for clinicians alone was typed twice. A clinician keeps one of the two.'
				: `${entryName(keys, pair)} was typed twice: ${entryWords(stands, keys)} stands, ` +
					`${entryWords(other, keys)} was typed too. Keep one of the two, above.`,
	}),
}
