/** What a condition asks of each room, for the clinician's screens alone. */
import { fieldMeta } from '../../visit/field-meta.ts'
import type { Exercise, Feature } from '../../visit/terms.ts'
import { visitSchema } from '../../visit/visit.ts'
import { sentence } from '../sentence.ts'
import { exerciseWords } from './conditions.table.ts'
import { spanWords } from './conditions.ts'
import { featureName } from './features.ts'
import { capital, listed, terms, together } from './format.ts'
import { type ObjectionRule, objectionWords } from './insert-cautions.ts'
import { type ElementId, elementName } from './insert-names.ts'
import { spokenParts } from './parts.ts'
import { questionHeadings } from './question-headings.table.ts'
import { workSentences } from './work.ts'

const features = (names: readonly Feature[]): string => listed(names.map(featureName))
/** What stands before each part, in the order in which they are read. */
export const askedPartNames = {
	ages: 'Ages',
	care: 'Care',
	questions: 'To ask',
	shoe: 'Shoe',
	changes: 'Changes to a shoe',
	lacing: 'Lacing',
	insert: 'Insert',
	season: 'Season',
	exercise: 'Exercise',
} as const
export type AskedPartName = keyof typeof askedPartNames

const workWords = (code: string): string =>
	spokenParts(workSentences, [{ code, params: {} }], 'clinician').join(' ')
const nameOfWork = (id: string): string => workWords(`work.${id}.name`)
/** What a question, or a group of them, is called. @param path 'screening.nightPain' */
function questionName(path: string): string {
	const name = path.split('.').at(-1) ?? path
	return questionHeadings[name] ?? fieldMeta(visitSchema, path).title
}
type AskOfSeason = {
	ask: 'stop' | 'limit-low-offset' | 'limit-studs' | 'tell-turf-share'
	when: 'current' | 'now' | 'recovering' | 'ever'
}
const seasonWords: { readonly [Ask in AskOfSeason['ask']]: string } = {
	stop: 'No session is planned',
	'limit-low-offset': 'Minutes a week in boots with little offset are limited',
	'limit-studs': 'Studded boots come back step by step',
	'tell-turf-share': 'The share of artificial turf is pointed out',
}
const whileWords: { readonly [When in AskOfSeason['when']]: string } = {
	current: 'while it is current',
	now: 'while it is current or recovering',
	recovering: 'while it is recovering',
	ever: 'while it is current or recovering, and when it is past',
}
export const askedSentences = {
	'asked.ages': sentence<{ fromYears?: number; toYears?: number }>({
		clinician: (span) => `Usually seen ${spanWords(span)}.`,
	}),
	'asked.questions': sentence<{ questions: readonly string[] }>({
		clinician: ({ questions }) => `${questions.map(questionName).join('; ')}.`,
	}),
	'asked.shoe': sentence<{
		seek: readonly Feature[]
		avoid: readonly Feature[]
		past: boolean
		/** Only where something measured calls for it as well. */
		together: boolean
		/** Only of players who still grow. */
		growing?: boolean
	}>({
		clinician: ({ seek, avoid, past, together: measured, growing }) =>
			together(
				seek.length > 0 && `Seek ${features(seek)}.`,
				avoid.length > 0 && `Avoid ${features(avoid)}.`,
				measured && 'Only where a measure calls for it as well.',
				growing && 'Only of players who still grow.',
				past && 'Also when it is past.',
			),
	}),
	'asked.studs': sentence<{ joints: readonly string[]; past: boolean }>({
		clinician: ({ joints, past }) =>
			`No stud under the ${listed(joints, 'or')}${past ? ', also when it is past' : ''}.`,
	}),
	'asked.work': sentence<{ work: string; withSought: readonly Feature[] }>({
		clinician: ({ work, withSought }) =>
			withSought.length === 0
				? `${nameOfWork(work)}.`
				: `${nameOfWork(work)}, where the shoe is to have ${terms(withSought)}.`,
	}),
	'asked.work-care': sentence<{ caution: string; works: readonly string[] }>({
		clinician: ({ caution, works }) =>
			`${listed(works.map(nameOfWork))}: care. ${workWords(caution)}`,
	}),
	'asked.work-never': sentence<{ works: readonly string[] }>({
		clinician: ({ works }) => `${listed(works.map(nameOfWork))}: not offered.`,
	}),
	'asked.insert-stop': sentence<{ past: boolean }>({
		clinician: ({ past }) =>
			`No insert ${past ? 'while it is current, and when it is past too' : 'while it is current'}, until what was done ` +
			'about it is recorded.',
	}),
	'asked.insert-element': sentence<{ element: ElementId; alone: boolean; inBothShoes: boolean }>({
		clinician: ({ element, alone, inBothShoes }) =>
			`${capital(elementName(element))}${inBothShoes ? ' in both shoes' : ''}` +
			`${alone ? '' : ', together with another finding'}.`,
	}),
	'asked.insert-against': sentence<{
		element: ElementId
		rule: ObjectionRule
		leavesOut: boolean
		past: boolean
	}>({
		clinician: ({ element, rule, leavesOut, past }) =>
			`${leavesOut ? 'Leaves out' : 'Care with'} the ${elementName(element)}` +
			`${past ? ', also when it is past' : ''} (${objectionWords({ rule, conditions: [] })}).`,
	}),
	'asked.insert-gentle': sentence({ clinician: () => 'A softer shell, and slower wearing in.' }),
	'asked.season': sentence<AskOfSeason>({
		clinician: ({ ask, when }) => `${seasonWords[ask]} ${whileWords[when]}.`,
	}),
	'asked.exercise': sentence<{ exercises: readonly Exercise[] }>({
		clinician: ({ exercises }) =>
			`Often used, to choose and to dose by you: ` +
			`${exercises.map((exercise) => exerciseWords[exercise]).join('; ')}.`,
	}),
}
/** The other names of a condition, on the page where all of them are told. */
export const otherNames = (synonyms: readonly string[]): string =>
	`Also called: ${listed(synonyms)}.`
