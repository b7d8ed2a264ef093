/**
 * Differences between two versions of a visit in the words of its form: for the screen that shows
 * them and for the report that must list them.
 */

import { dayInWords } from '../../engine/plain/days.ts'
import { unprintableIn } from '../../engine/plain/printable.ts'
import { choiceWords, decisionsSchema } from '../../engine/visit/decisions.ts'
import { fieldMeta } from '../../engine/visit/field-meta.ts'
import { privateTopicAt } from '../../engine/visit/private.ts'
import { termWords } from '../../engine/visit/terms.ts'
import { visitSchema } from '../../engine/visit/visit.ts'
import { hasLanguageName, languageName } from '../../engine/words/en/languages.ts'
import { type Difference, differences, notThere } from './amendment.ts'

type Loose = Record<string, unknown>
const ownTitles: Record<string, string> = {
	consentNoted: 'Consent noted',
	referralDone: 'Done about the warning sign',
	reviewDate: 'Review',
	heelRaiseMm: 'Heel raise (mm)',
	heelRaiseWhy: 'Reason for the heel raise',
	actions: 'What to do now',
	warningSigns: 'Warning signs for the player',
	lines: 'Decision',
	answers: 'Answer',
	choice: 'choice',
	says: 'words',
	why: 'reason',
	what: 'what',
	when: 'when',
	who: 'who',
	insert: 'Insert',
	screeningDone: 'Done about flags',
	findingId: 'finding',
	visitDate: 'Visit date',
	notes: 'Clinical notes',
}
/** The side that a path of the visit names. */
export function sideOf(path: string): 'left' | 'right' | undefined {
	if (/(^|\.)left(\.|$)/.test(path)) return 'left'
	return /(^|\.)right(\.|$)/.test(path) ? 'right' : undefined
}
const plainWords = (key: string) =>
	ownTitles[key] ?? key.replace(/([a-z])([A-Z])/g, '$1 $2').toLowerCase()
/** What a form knows of a field; undefined where it has none at this path. */
export function metaOf(path: string, schema: Parameters<typeof fieldMeta>[0] = visitSchema) {
	try {
		return fieldMeta(schema, path)
	} catch {
		return undefined
	}
}
/** The title of a field without its side; numbers of a list count from 1. */
export function titleOf(path: string): string {
	const keys = path.split('.')
	const bare = path.replace(/(\.\d+)+$/, '')
	const title = metaOf(path)?.title ?? metaOf(bare)?.title ?? metaOf(path, decisionsSchema)?.title
	const known = title === undefined || title === path ? undefined : title
	const number =
		keys.filter((key) => /^\d+$/.test(key)).map((key) => ` ${Number(key) + 1}`)[0] ?? ''
	const last = keys
		.filter((key) => !/^\d+$/.test(key) && key !== 'left' && key !== 'right')
		.slice(-2)
	return `${known ?? last.map(plainWords).join(', ')}${number}`
}
/** A value of the form in words, with its unit where it has one. */
export function valueWords(value: unknown, unit = ''): string {
	if (value === null || value === undefined) return 'none'
	if (typeof value === 'boolean') return value ? 'yes' : 'no'
	if (Array.isArray(value))
		return `${value.map((item) => valueWords(item)).join(', ')}${unit ? ` ${unit}` : ''}`
	if (typeof value === 'string') return textInWords(value)
	return `${String(value)}${unit ? ` ${unit}` : ''}`
}
/** A day or a term of the form in words; any other text as it is. */
function textInWords(text: string): string {
	if (/^\d{4}-\d\d-\d\d$/.test(text)) return dayInWords(text)
	return /^[a-z0-9]+(-[a-z0-9]+)+$/.test(text) ? termWords(text) : text
}
/** Whether a value is told as a whole: no group, and no list of groups. */
export const isLeaf = (value: unknown): boolean =>
	value === null ||
	typeof value !== 'object' ||
	(Array.isArray(value) && value.every((item) => item === null || typeof item !== 'object'))
interface Told {
	key: string
	part: 'entry' | 'decision' | 'result'
	title: string
	before: string
	after: string
}
const parts: Record<string, Told['part']> = {
	visit: 'entry',
	decisions: 'decision',
	assessment: 'result',
}
const shown = (text: string) => {
	try {
		const value: unknown = JSON.parse(text)
		return typeof value === 'object' && value !== null && !isLeaf(value) ? text : valueWords(value)
	} catch {
		return valueWords(text)
	}
}
/** The pairs of a version by their names; what else stands of a pair is no word for a page. */
function pairNames(text: string): string {
	try {
		return (JSON.parse(text) as Loose[]).map(({ name, id }) => String(name ?? id)).join(', ')
	} catch {
		return text
	}
}
/** A list that differs as a whole, told entry by entry: what came, went or has other words. */
function byId(
	path: string,
	part: Told['part'],
	before: string,
	after: string,
	words: (item: Loose) => string,
): Told[] {
	const read = (text: string): Map<string, string> => {
		try {
			return new Map(
				(JSON.parse(text) as Loose[]).map((item) => [
					String(item.id ?? item.findingId ?? item.question),
					words(item),
				]),
			)
		} catch {
			return new Map()
		}
	}
	const [then, now] = [read(before), read(after)]
	return [...new Set([...then.keys(), ...now.keys()])]
		.filter((id) => then.get(id) !== now.get(id))
		.map((id) => ({
			key: `${path} ${id}`,
			part,
			title: part === 'result' ? 'Finding' : `Decision about ${id.replaceAll('.', ', ')}`,
			before: then.get(id) ?? notThere,
			after: now.get(id) ?? notThere,
		}))
}
const wordsOfDecision = (decision: Loose) =>
	[choiceWords[decision.choice as keyof typeof choiceWords], decision.says, decision.why]
		.filter(Boolean)
		.join(': ')
const wordsOfAnswer = (answer: Loose) =>
	[termWords(String(answer.choice)), answer.why].filter(Boolean).join(': ')
/** Lists that are told entry by entry. */
const wordsById: Readonly<Record<string, (item: Loose) => string>> = {
	'decisions.lines': wordsOfDecision,
	'decisions.answers': wordsOfAnswer,
	'assessment.findings': (finding) => String(finding.says),
}
/** A language by its name; what is none (nothing stood there) is left as it is. */
const languageShown = (text: string): string => {
	const tag = text.replaceAll('"', '')
	return hasLanguageName(tag) ? languageName(tag) : text
}
/** What stood, in words; of a safeguarding note only that it changed. */
const toldValue = (path: string, text: string): string =>
	privateTopicAt(path) === 'safeguarding'
		? 'not shown here'
		: shown(path.endsWith('preferredLanguage') ? languageShown(text) : text)
/**
 * Differences in words; the tick for consent is set anew for each version and is no difference, nor
 * is what a decision was about. Of the results only the findings are told.
 */
export function toldDifferences(differences: readonly Difference[]): Told[] {
	return differences
		.filter(
			(difference) =>
				difference.path !== 'decisions.consentNoted' &&
				!/^decisions\.(lines|answers|insert\.(left|right))\.\d+\.(about|of|read)(\.\d+)?$/.test(
					difference.path,
				),
		)
		.flatMap(({ path, before, after }): Told[] => {
			const [first = '', ...rest] = path.split('.')
			const part = parts[first] ?? 'result'
			const words = wordsById[path]
			if (words) return byId(path, part, before, after, words)
			if (part === 'result')
				return /^assessment\.findings\.\d+\.says$/.test(path)
					? [{ key: path, part, title: 'Finding', before, after }]
					: []
			if (path === 'visit.footwear')
				return [
					{ key: path, part, title: 'Pairs', before: pairNames(before), after: pairNames(after) },
				]
			const side = sideOf(path)
			const field = rest.join('.')
			return [
				{
					key: path,
					part,
					title: `${titleOf(field || first)}${side ? `, ${side}` : ''}`,
					before: toldValue(field, before),
					after: toldValue(field, after),
				},
			]
		})
}

/**
 * What a report may tell of an amendment: measures that a player reads on it, and what was decided
 * from them. Clinical notes, warning signs, body mass, scores and the like are counted, not told.
 */
const printed = [
	'visit.visitDate',
	'visit.player.givenName',
	'visit.player.familyName',
	'visit.player.latinName',
	'visit.player.birthDate',
	'visit.player.sex',
	'visit.play',
	'visit.body.statureCm',
	'visit.feet',
	'visit.ankles',
	'visit.footwear',
	'decisions.heelRaiseMm',
	'decisions.reviewDate',
] as const
/** A note is the clinician's own, and a private measure is for readers who were released. */
const isPrinted = (path: string): boolean => {
	const field = path.replace(/^visit\./, '')
	return (
		printed.some((group) => path === group || path.startsWith(`${group}.`)) &&
		metaOf(field)?.note !== true &&
		privateTopicAt(field) === undefined
	)
}
interface Version {
	visit: unknown
	decisions: unknown
}
/**
 * The changes of an amended report as sentences, measures first; empty where nothing differs. Who
 * was told and who agreed is asked anew for each version, and is no change of the report.
 */
export function printedChanges(before: Version, after: Version): string[] {
	const core = ({ visit, decisions }: Version) => ({ visit, decisions })
	const all = toldDifferences(differences(core(before), core(after))).filter(
		({ key }) => !key.startsWith('decisions.agreement'),
	)
	const told = all.filter(
		({ key, before: then, after: now }) =>
			isPrinted(key) && unprintableIn(`${then}${now}`).length === 0,
	)
	const rest = all.length - told.length
	const words = (text: string, unit: string) =>
		text === notThere ? 'not recorded' : `${text}${unit}`
	const sentence = ({ key, title, before: then, after: now }: Told) => {
		const unit = metaOf(key.replace(/^visit\./, ''))?.unit
		return (
			`${title}: ${words(now, unit ? ` ${unit}` : '')} instead of ` +
			`${words(then, unit ? ` ${unit}` : '')}`
		)
	}
	return [...told.map(sentence), ...restWords(rest, told.length)]
}
/** How many changes are not told, in words. */
function restWords(rest: number, told: number): string[] {
	if (rest === 0) return []
	const what = rest === 1 ? 'entry or decision that is' : 'entries or decisions that are'
	return [`${rest} ${told > 0 ? 'more ' : ''}${what} not listed on this page`]
}
