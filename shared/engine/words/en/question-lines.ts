/** One line a question: what is proposed, as a clinician would say it. */
import type { Holdable } from '../../visit/holdables.ts'
import type { Adjustment } from '../../visit/recorded/insert-worn.ts'
import type { Condition, Exercise, Feature, Sole } from '../../visit/terms.ts'
import { sentence } from '../sentence.ts'
import { conditionWords, exerciseWords } from './conditions.table.ts'
import { featureName, soleName } from './features.ts'
import { amount, capital, count, day, listed, number } from './format.ts'
import { heldWords } from './gate.ts'
import { adjustmentLine } from './insert-adjust.ts'
import { elementName } from './insert-names.ts'
import { questionName } from './question-names.ts'
import { actionWords, sideWords } from './terms.table.ts'
import { workName } from './work.ts'

type Action = keyof typeof actionWords
type State = 'held' | 'nothing-found' | 'not-established'
interface Span {
	min: number
	max: number
}
type Verdict = 'keep' | 'modify' | 'training-only' | 'replace' | 'stop-wearing'
const verdictWords: Readonly<Record<Verdict, string>> = {
	keep: 'keep',
	modify: 'keep, with changes',
	'training-only': 'training only',
	replace: 'replace',
	'stop-wearing': 'stop wearing',
}
/** A subject that is held back: one line, nothing to settle. */
const waits = 'Held back by a warning sign, nothing is proposed.'
const cautionsAlone = 'No proposal; cautions to read.'

/** A row of what the player has now: 'growing heel pain, both sides, pain 6 of 10'. */
interface Complained {
	condition: Condition
	side: 'left' | 'right' | 'both' | 'none'
	/** Worst pain, 0 to 10. */
	pain?: number
}
const complainedOf = ({ condition, side, pain }: Complained): string =>
	[
		conditionWords[condition].name,
		...(side === 'none' ? [] : [sideWords[side]]),
		...(pain === undefined ? [] : [`pain ${pain} of 10`]),
	].join(', ')
/** What is done about load: what a room proposes, else what the clinician set. */
export interface LoadParams {
	/** Hours of sport a week at most. */
	hoursPerWeek?: number
	daysOffPerWeek?: number
	sessionsPerWeek?: number
	minutesPerSession?: number
	/** How long. */
	weeks?: number
	/** Weekly steps back to the usual load. */
	returnWeeks?: number
	/** How many steps of the clinician's own. */
	ownSteps?: number
}
const under = (value: number | undefined, says: (value: number) => string): string[] =>
	value === undefined ? [] : [says(value)]
export const loadActs = (load: LoadParams): string[] => [
	...under(load.hoursPerWeek, (hours) => `at most ${amount(hours, 'hours')} of sport a week`),
	...under(load.sessionsPerWeek, (sessions) =>
		sessions === 0 ? 'no session' : `at most ${amount(sessions, 'sessions')} a week`,
	),
	...under(load.minutesPerSession, (minutes) => `${amount(minutes, 'minutes')} at most each`),
	...under(load.daysOffPerWeek, (days) => `at least ${amount(days, 'days')} a week off`),
	...under(load.weeks, (weeks) => `for ${amount(weeks, 'weeks')}`),
	...under(load.returnWeeks, (weeks) => `back to the usual load in ${amount(weeks, 'weeks')}`),
	...under(load.ownSteps || undefined, (steps) =>
		count(steps, 'step of your own', 'steps of your own'),
	),
]
/** Names of pairs, and what is added in them. */
interface RaisedPairs {
	pairs: readonly string[]
	leftMm: number
	rightMm: number
}
const isEven = ({ leftMm, rightMm }: RaisedPairs): boolean => leftMm === rightMm
const heights = (raised: RaisedPairs): string =>
	isEven(raised)
		? amount(raised.leftMm, 'mm')
		: `left ${amount(raised.leftMm, 'mm')}, right ${amount(raised.rightMm, 'mm')}`
function raiseWords(raised: readonly RaisedPairs[], none: readonly string[]): string {
	const [only] = raised
	const foot = raised.every(isEven) ? 'Both feet: ' : ''
	if (raised.length === 1 && only && none.length === 0)
		return `${foot}${heights(only)} in every pair`
	return [
		`${foot}${raised.map((each) => `${heights(each)} in ${listed(each.pairs)}`).join('; ')}`,
		...(none.length > 0 ? [`none in ${listed(none)}`] : []),
	].join('; ')
}
interface PairParams {
	role: string
	soles: readonly Sole[]
	/** The features that matter most, first first. */
	seek: readonly Feature[]
	/** Those that no feature sought says already. */
	avoid: readonly Feature[]
	/** The role of a pair that is asked for alike and stands before it; empty where none is. */
	as: string
	models: number
	/** The owned pair that serves; empty where none does. */
	keep: string
	means: 'keep' | 'with-what-you-have' | 'buy'
}
function wantedWords({ soles, seek, avoid, models, as }: PairParams): string[] {
	const features = [
		...seek.map(featureName),
		...avoid.map((feature) => `no ${featureName(feature)}`),
	]
	return [
		...(as === ''
			? [
					...(soles.length > 0 ? [listed(soles.map(soleName))] : []),
					...(features.length > 0 ? [listed(features)] : []),
				]
			: [`as the ${questionName(`pair.${as}`)}`]),
		...(models > 0 ? [count(models, 'model')] : []),
	]
}
function pairWords(pair: PairParams): string {
	const wanted = wantedWords(pair)
	if (pair.keep !== '' && pair.means === 'keep') return `Keep: ${pair.keep}.`
	if (pair.keep !== '') return `Keep, with changes: ${pair.keep}.`
	if (wanted.length === 0) return cautionsAlone
	return pair.means === 'buy'
		? `New: ${wanted.join('; ')}.`
		: `With what there is: ${wanted.join('; ')}.`
}
type Elements = Readonly<Record<'left' | 'right', readonly string[]>>
/** What every device has goes without saying. */
const plainElements = ['device', 'shell', 'cover', 'length']
const mostElements = 4
function elementsOf(elements: readonly string[]): string {
	const own = elements.filter((element) => !plainElements.includes(element))
	const named = own.slice(0, mostElements).map(elementName)
	const more = own.length - named.length
	return named.length === 0
		? 'device alone'
		: listed([...named, ...(more > 0 ? [`${more} more`] : [])])
}
function insertWords({ left, right }: Elements): string {
	const both = left.join() === right.join()
	if (both) return `Left and right: ${elementsOf(left)}.`
	return `${[
		...(left.length > 0 ? [`Left: ${elementsOf(left)}`] : []),
		...(right.length > 0 ? [`${left.length > 0 ? 'right' : 'Right'}: ${elementsOf(right)}`] : []),
	].join('; ')}.`
}
/** The insert that is worn, and what is done to it. */
interface KeptParams {
	on: string
	lines: readonly Adjustment[]
}
const keptWords = ({ on, lines }: KeptParams): string =>
	lines.length === 0
		? `Keep the insert of ${day(on)} as it is.`
		: `Adjust the insert of ${day(on)}. ${capital(lines.map(adjustmentLine).join('; '))}.`
/** 'Liner swap; stud under the first joint, right.' of `liner-swap.both`, `stud-first.right`. */
function worksWords(works: readonly string[]): string {
	const named = works.map((work) => {
		const at = work.lastIndexOf('.')
		const side = work.slice(at + 1)
		const name = workName(work.slice(0, at)).toLowerCase()
		return side === 'left' || side === 'right' ? `${name}, ${side}` : name
	})
	return `${capital(named.join('; '))}.`
}
/** What goes without saying where something else is held. */
const implied: Readonly<Partial<Record<Holdable, readonly Holdable[]>>> = {
	sport: ['match', 'impact', 'season'],
	purchase: ['shelf'],
	weight: ['test', 'exercise'],
}
const withoutImplied = (held: readonly Holdable[]): Holdable[] => {
	const said = new Set(held.flatMap((what) => implied[what] ?? []))
	return held.filter((what) => !said.has(what))
}
/** Each stands beside the name of its question. */
export const questionSentences = {
	'question.gate': sentence<{
		state: State
		action: Action
		unasked: number
		/** What is held. */
		held: readonly Holdable[]
	}>({
		clinician: ({ state, action, unasked, held }) => {
			if (state === 'not-established')
				return `Not established: ${count(unasked, 'core question')} not asked.`
			const asks = action === 'proceed' ? [] : [actionWords[action]]
			const holds = held.length > 0 ? [`held: ${heldWords(withoutImplied(held))}`] : []
			return asks.length + holds.length === 0
				? 'No warning sign found.'
				: `${capital([...asks, ...holds].join('; '))}.`
		},
	}),
	'question.complaint': sentence<{
		complaint: string
		conditions: readonly Complained[]
		load: LoadParams
		exercises: readonly Exercise[]
		/** What else of the plan is for it. */
		beside: readonly ('raise' | 'insert')[]
		/** Load waits for what is held. */
		waits: boolean
	}>({
		clinician: ({ complaint, conditions, load, exercises, beside, waits }) => {
			const told = complaint.trim().replace(/\.$/, '')
			const [first, ...others] = conditions
			const about = first
				? `${capital(complainedOf(first))}${others.length > 0 ? `, and ${others.length} more` : ''}`
				: told === ''
					? 'No complaint recorded'
					: capital(told)
			if (waits) return `${about}: load waits for what is held.`
			const acts = loadActs(load)
			const done = [
				...(acts.length > 0 ? acts : ['no change of load']),
				...exercises.map((exercise) => exerciseWords[exercise]),
				...(beside.length > 0 ? [`with the ${listed(beside.map(questionName))}`] : []),
			]
			return `${about}: ${done.join('; ')}.`
		},
	}),
	'question.size': sentence<{
		insideLengthMm: Span | false
		eu?: number
		uk?: number
		/** The label is of the child's scale, which begins anew for adults. */
		child?: true
	}>({
		clinician: ({ insideLengthMm, eu, uk, child }) =>
			insideLengthMm
				? `${number(insideLengthMm.min)} to ${amount(insideLengthMm.max, 'mm')} inside` +
					`${eu === undefined ? '' : `; about EU ${number(eu)}`}` +
					`${uk === undefined ? '' : `, UK ${child ? 'child ' : ''}${number(uk)}`}.`
				: cautionsAlone,
	}),
	'question.raise': sentence<{
		raised: readonly RaisedPairs[]
		/** Pairs in which nothing is put. */
		none: readonly string[]
		/** A raise is asked for, whether or not a pair can take it. */
		wanted: boolean
	}>({
		clinician: ({ raised, none, wanted }) => {
			if (raised.length === 0)
				return wanted ? 'Asked for, and no pair can take it as it is.' : `None. ${cautionsAlone}`
			return `${capital(raiseWords(raised, none))}.`
		},
	}),
	'question.pair': sentence<PairParams & Readonly<Record<string, unknown>>>({
		clinician: pairWords,
	}),
	'question.owned': sentence<{
		/** Those that ask for something, most urgent first. */
		pairs: readonly { pair: string; verdict: Verdict; by?: string }[]
		/** Kept as they are. */
		kept: readonly string[]
	}>({
		clinician: ({ pairs, kept }) => {
			const said = [
				...pairs.map(
					({ pair, verdict, by }) =>
						`${pair}: ${verdictWords[verdict]}${by === undefined ? '' : ` by ${day(by)}`}`,
				),
				...(kept.length > 0 ? [`${listed(kept)}: keep`] : []),
			]
			return said.length === 0 ? cautionsAlone : `${capital(said.join('; '))}.`
		},
	}),
	'question.insert': sentence<Elements & { kept?: KeptParams }>({
		clinician: ({ kept, ...elements }) => {
			if (kept) return keptWords(kept)
			return elements.left.length + elements.right.length === 0
				? `None. ${cautionsAlone}`
				: insertWords(elements)
		},
	}),
	'question.changes': sentence<{ works: readonly string[] }>({
		clinician: ({ works }) => (works.length === 0 ? cautionsAlone : worksWords(works)),
	}),
	'question.lacing': sentence<{ works: readonly string[] }>({
		clinician: ({ works }) => (works.length === 0 ? cautionsAlone : worksWords(works)),
	}),
	'question.review': sentence<{ date: string }>({
		clinician: ({ date }) =>
			date === '' ? `No date asked for. ${cautionsAlone}` : `By ${day(date)}.`,
	}),
	'question.held': sentence<{ question: string }>({
		clinician: () => waits,
	}),
}
