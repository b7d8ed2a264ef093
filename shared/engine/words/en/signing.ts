/** What keeps a visit from being signed, each with its remedy. */

import type { Entry, Tree } from '../../visit/entries.ts'
import { privateTopicAt } from '../../visit/private.ts'
import { sentence } from '../sentence.ts'
import { amount, listed } from './format.ts'
import { coreQuestionNames } from './gate.ts'
import { questionName } from './prescription.ts'
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
	'signing.typed-twice': sentence<TwoTyped>({
		clinician: ({ keys, pair, stands, other }) =>
			privateTopicAt(keys.slice(1).join('.')) === 'safeguarding'
				? 'An entry for clinicians alone was typed twice. A clinician keeps one of the two.'
				: `${entryName(keys, pair)} was typed twice: ${entryWords(stands, keys)} stands, ` +
					`${entryWords(other, keys)} was typed too. Keep one of the two, above.`,
	}),
	'signing.consent-not-noted': sentence({
		clinician: () => 'Consent is not noted. Tick it once it was given and noted.',
	}),
}
