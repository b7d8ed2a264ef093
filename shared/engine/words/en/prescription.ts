/** What the plan asks of the clinician, one line a question, and what is to be done first. */
import type { Holdable, HoldUntil } from '../../visit/holdables.ts'
import type { Condition, Exercise, Feature, Sole } from '../../visit/terms.ts'
import { alsoTo, type Sentence, sentence } from '../sentence.ts'
import { conditionWords, exerciseWords } from './conditions.table.ts'
import { featureName, soleName } from './features.ts'
import { amount, capital, count, day, listed, number, term } from './format.ts'
import { heldWords, untilNames, waitForPlayer } from './gate.ts'
import { elementName } from './insert-names.ts'
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
	modify: 'change',
	'training-only': 'training only',
	replace: 'replace',
	'stop-wearing': 'stop wearing',
}
/** A subject that is held back: one line, nothing to settle. */
const waits = 'Held back by a warning sign, nothing is proposed.'
const cautionsAlone = 'No proposal; cautions to read.'

const questionNames: Readonly<Record<string, string>> = {
	gate: 'safety',
	complaint: 'complaint and load',
	size: 'size',
	raise: 'heel raise',
	owned: 'pairs owned',
	insert: 'insert',
	changes: 'changes to footwear',
	lacing: 'lacing',
	review: 'review',
}
const purposes: Readonly<Record<string, string>> = { match: 'matches', everyday: 'everyday wear' }
const pairFor = (role: string): string => `pair for ${purposes[role] ?? term(role)}`
/** What a question is called in a sentence: 'heel raise', 'pair for matches'. */
export const questionName = (id: string): string =>
	id.startsWith('pair.') ? pairFor(id.slice('pair.'.length)) : (questionNames[id] ?? id)

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
const loadActs = (load: LoadParams): string[] => [
	...(load.hoursPerWeek === undefined
		? []
		: [`at most ${amount(load.hoursPerWeek, 'hours')} of sport a week`]),
	...(load.sessionsPerWeek === undefined
		? []
		: [
				load.sessionsPerWeek === 0
					? 'no session'
					: `at most ${amount(load.sessionsPerWeek, 'sessions')} a week`,
			]),
	...(load.minutesPerSession === undefined
		? []
		: [`${amount(load.minutesPerSession, 'minutes')} at most each`]),
	...(load.daysOffPerWeek === undefined
		? []
		: [`at least ${amount(load.daysOffPerWeek, 'days')} a week off`]),
	...(load.weeks === undefined ? [] : [`for ${amount(load.weeks, 'weeks')}`]),
	...(load.returnWeeks === undefined
		? []
		: [`back to the usual load in ${amount(load.returnWeeks, 'weeks')}`]),
	...(load.ownSteps === undefined || load.ownSteps === 0
		? []
		: [count(load.ownSteps, 'step of your own', 'steps of your own')]),
]
/** Names of pairs, and what is added in them. */
interface RaisedPairs {
	pairs: readonly string[]
	leftMm: number
	rightMm: number
}
const heights = ({ leftMm, rightMm }: RaisedPairs): string =>
	leftMm === rightMm
		? `${amount(leftMm, 'mm')} left and right`
		: `left ${amount(leftMm, 'mm')}, right ${amount(rightMm, 'mm')}`
const raisedIn = (raised: RaisedPairs): string => `${heights(raised)} in ${listed(raised.pairs)}`
interface PairParams {
	role: string
	soles: readonly Sole[]
	/** The features that matter most, first first. */
	seek: readonly Feature[]
	/** Those that no feature sought says already. */
	avoid: readonly Feature[]
	/** More features than are named. */
	more: number
	models: number
	/** The owned pair that serves; empty where none does. */
	keep: string
	means: 'keep' | 'with-what-you-have' | 'buy'
}
function wantedWords({ soles, seek, avoid, more, models }: PairParams): string[] {
	const features = [
		...seek.map(featureName),
		...avoid.map((feature) => `no ${featureName(feature)}`),
		...(more > 0 ? [`${more} more`] : []),
	]
	return [
		...(soles.length > 0 ? [listed(soles.map(soleName))] : []),
		...(features.length > 0 ? [listed(features)] : []),
		...(models > 0 ? [`${count(models, 'model')} to try`] : []),
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
const questions = {
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
			const acts = [
				...loadActs(load),
				...exercises.map((exercise) => exerciseWords[exercise]),
				...(beside.length > 0 ? [`with the ${listed(beside.map(questionName))}`] : []),
			]
			return acts.length > 0 ? `${about}: ${acts.join('; ')}.` : `${about}: no change of load.`
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
			const [only] = raised
			if (raised.length === 1 && only && none.length === 0)
				return `${capital(heights(only))}, in every pair.`
			const not = none.length > 0 ? [`none in ${listed(none)}`] : []
			return `${capital([...raised.map(raisedIn), ...not].join('; '))}.`
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
	'question.insert': sentence<Elements>({
		clinician: (elements) =>
			elements.left.length + elements.right.length === 0
				? `None. ${cautionsAlone}`
				: insertWords(elements),
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
interface Care {
	clinician: string
	player: string
	/** Where it is not what the player reads. */
	guardian?: string
	doctor: string
}
const careWords: Readonly<Record<Action, Care>> = {
	emergency: {
		clinician: 'Send to emergency care now.',
		player: 'Get emergency help now.',
		doctor: 'Sent to emergency care.',
	},
	'same-day': {
		clinician: 'Arrange a medical review today.',
		player: 'See a doctor today.',
		doctor: 'A medical review the same day was asked for.',
	},
	imaging: {
		clinician: 'Ask for imaging before any impact sport.',
		player: 'No running or jumping until a scan has been looked at.',
		doctor: 'Imaging was asked for before any impact sport.',
	},
	letter: {
		clinician: 'Write the letter to the doctor.',
		player: 'We write to your doctor.',
		guardian: 'We write to the doctor.',
		doctor: 'A letter was written about what was found.',
	},
	proceed: {
		clinician: 'Ask the core questions that were not asked.',
		player: 'We still have a few questions to ask you.',
		guardian: 'We still have a few questions to ask.',
		doctor: 'Some questions were not asked.',
	},
}
const anyFoot = (sides: readonly string[]): string =>
	sides.length === 2 ? 'both shoes' : `the ${sides[0] ?? ''} shoe`
const priorities = {
	'priority.act': sentence<{ action: Action }>({
		clinician: ({ action }) => careWords[action].clinician,
		player: ({ action }) => careWords[action].player,
		guardian: ({ action }) => careWords[action].guardian ?? careWords[action].player,
		doctor: ({ action }) => careWords[action].doctor,
	}),
	'priority.clear': sentence<{ what: readonly Holdable[]; until: HoldUntil }>({
		clinician: ({ what, until }) => `Held until ${untilNames[until]}: ${heldWords(what)}.`,
		player: ({ what, until }) => waitForPlayer(what, until),
		doctor: ({ what, until }) => `Held until ${untilNames[until]}: ${heldWords(what)}.`,
	}),
	'priority.stop-wearing': alsoTo(
		sentence<{ pairs: readonly string[] }>({
			clinician: ({ pairs }) => `Stop wearing: ${listed(pairs)}.`,
		}),
		'player',
		'doctor',
	),
	'priority.mend-first': alsoTo(
		sentence<{ pairs: readonly string[] }>({
			clinician: ({ pairs }) => `Not to be worn before it is mended: ${listed(pairs)}.`,
			player: ({ pairs }) => `Do not wear until mended: ${listed(pairs)}.`,
		}),
		'doctor',
	),
	'priority.raise': sentence<{ sides: readonly string[] }>({
		clinician: ({ sides }) => `Fit the heel raise in ${anyFoot(sides)}.`,
		player: ({ sides }) => `Wear the heel raise in ${anyFoot(sides)}.`,
		doctor: ({ sides }) => `A heel raise is fitted in ${anyFoot(sides)}.`,
	}),
	'priority.insert': sentence<{ sides: readonly string[] }>({
		clinician: ({ sides }) => `Order the insert for ${anyFoot(sides)}.`,
		player: ({ sides }) => `Get the insert for ${anyFoot(sides)}.`,
		doctor: ({ sides }) => `An insert is ordered for ${anyFoot(sides)}.`,
	}),
	'priority.replace': alsoTo(
		sentence<{ pairs: readonly string[] }>({
			clinician: ({ pairs }) => `Replace: ${listed(pairs)}.`,
		}),
		'player',
		'doctor',
	),
	'priority.modify': alsoTo(
		sentence<{ pairs: readonly string[] }>({
			clinician: ({ pairs }) => `Have changed or mended: ${listed(pairs)}.`,
		}),
		'player',
		'doctor',
	),
	'priority.buy': sentence<{ role: string }>({
		clinician: ({ role }) => `Find a ${pairFor(role)}.`,
		player: ({ role }) => `Get a ${pairFor(role)}.`,
	}),
	'priority.review': sentence({
		clinician: () => 'Book the review.',
		player: () => 'Come back to be checked.',
		doctor: () => 'A review is planned.',
	}),
}
export const prescriptionSentences = {
	...questions,
	...priorities,
} satisfies Readonly<Record<string, Sentence<never>>>
