/** What the plan asks of the clinician, one line a question, and what is to be done first. */
import type { Holdable, HoldUntil } from '../../visit/holdables.ts'
import { alsoTo, type Sentence, sentence } from '../sentence.ts'
import { amount, capital, count, day, listed, term } from './format.ts'
import { heldWords, untilNames, waitForPlayer } from './gate.ts'
import { actionWords } from './terms.table.ts'

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

/** Each stands beside the name of its question. */
const questions = {
	'question.gate': sentence<{ state: State; action: Action; unasked: number }>({
		clinician: ({ state, action, unasked }) =>
			state === 'not-established'
				? `Not established, ${count(unasked, 'core question')} not asked.`
				: state === 'held'
					? `A warning sign holds back part of the plan; ${actionWords[action]}.`
					: action === 'proceed'
						? 'No warning sign found.'
						: `${capital(actionWords[action])}.`,
	}),
	'question.complaint': sentence<{ complaint: string; steps: number }>({
		clinician: ({ complaint, steps }) =>
			`${complaint === '' ? 'None recorded' : capital(complaint.replace(/\.$/, ''))}` +
			`${steps > 0 ? `; a return to play in ${count(steps, 'week')}` : ''}.`,
	}),
	'question.size': sentence<{ insideLengthMm: Span | false }>({
		clinician: ({ insideLengthMm }) =>
			insideLengthMm
				? `Look for ${amount(insideLengthMm.min, 'mm').replace(' mm', '')} to ` +
					`${amount(insideLengthMm.max, 'mm')} inside.`
				: cautionsAlone,
	}),
	'question.raise': sentence<{
		leftMm: number
		rightMm: number
		pairs: number
		/** A raise is asked for, whether or not a pair can take it. */
		wanted: boolean
	}>({
		clinician: ({ leftMm, rightMm, pairs, wanted }) =>
			leftMm + rightMm === 0
				? wanted
					? 'Asked for, and no pair can take it as it is.'
					: `None. ${cautionsAlone}`
				: `Up to ${amount(leftMm, 'mm')} left and ${amount(rightMm, 'mm')} right, in ` +
					`${count(pairs, 'pair')}.`,
	}),
	'question.pair': sentence<{
		role: string
		soles: readonly string[]
		seek: number
		avoid: number
		models: number
	}>({
		clinician: ({ soles, seek, avoid, models }) =>
			`${capital(
				listed([
					...soles.map((sole) => `${term(sole)} sole`),
					`${count(seek, 'feature')} to seek`,
					`${avoid} to avoid`,
					...(models > 0 ? [`${count(models, 'model')} to try`] : []),
				]),
			)}.`,
	}),
	'question.owned': sentence<{
		pairs: readonly { pair: string; verdict: Verdict }[]
	}>({
		clinician: ({ pairs }) =>
			pairs.length === 0
				? cautionsAlone
				: `${capital(
						pairs.map(({ pair, verdict }) => `${pair}: ${verdictWords[verdict]}`).join('; '),
					)}.`,
	}),
	'question.insert': sentence<{ left: number; right: number }>({
		clinician: ({ left, right }) =>
			left + right === 0
				? `None. ${cautionsAlone}`
				: `${count(left, 'element')} left, ${right} right.`,
	}),
	'question.changes': sentence<{ changes: number; lacings: number }>({
		clinician: ({ changes, lacings }) =>
			changes + lacings === 0
				? cautionsAlone
				: `${listed([
						...(changes > 0 ? [count(changes, 'change')] : []),
						...(lacings > 0 ? [count(lacings, 'way to lace', 'ways to lace')] : []),
					])}.`,
	}),
	'question.lacing': sentence<{ lacings: number }>({
		clinician: ({ lacings }) =>
			lacings === 0 ? cautionsAlone : `${count(lacings, 'way to lace', 'ways to lace')}.`,
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
