/** What is asked about the time since a visit, and what was told of it. */
import type { Holdable } from '../../visit/holdables.ts'
import type { PairRole, TakenGroup, ToDoKind, Trouble } from '../../visit/terms.ts'
import { sentence } from '../sentence.ts'
import { capital, day, listed, ofSide, term } from './format.ts'
import { holdableNames } from './gate.ts'
import { pairFor } from './question-names.ts'

/** What was to be done, as it can be named again. */
export interface ToDo extends Readonly<Record<string, unknown>> {
	what: ToDoKind
	pairs?: readonly string[] | undefined
	role?: PairRole | undefined
	side?: string | undefined
	words?: string | undefined
}
const named = (pairs: readonly string[] = []): string =>
	pairs.length > 0 ? listed(pairs) : 'the pairs named'
const toDoNames: Readonly<Record<ToDoKind, (of: ToDo) => string>> = {
	clear: () => 'waiting for the doctor to say yes',
	'stop-wearing': ({ pairs }) => `not wearing: ${named(pairs)}`,
	'mend-first': ({ pairs }) => `mending: ${named(pairs)}`,
	raise: () => 'fitting the heel raise',
	insert: () => 'getting the insert',
	'adjust-insert': () => 'having the insert changed',
	replace: ({ pairs }) => `a new pair for: ${named(pairs)}`,
	modify: ({ pairs }) => `the change to: ${named(pairs)}`,
	buy: ({ role }) => `getting a ${pairFor(role ?? 'match')}`,
	own: ({ words }) => words ?? '',
}
/** 'fitting the heel raise', 'mending: match boots'. */
export const toDoName = (row: ToDo): string => toDoNames[row.what](row)

const troubleNames: Readonly<Record<Trouble, string>> = {
	blister: 'a blister',
	wound: 'a wound',
	'new-pain': 'new pain',
	numbness: 'numbness',
	fell: 'a fall',
	'too-tight': 'too tight',
	'heel-slips': 'the heel slips',
	'wrong-size': 'the wrong size',
	'does-not-fit-boot': 'it does not fit in the boot',
}
export const troubleName = (trouble: string): string =>
	(troubleNames as Readonly<Record<string, string>>)[trouble] ?? term(trouble)
export const wornNames = { insert: 'insert', raise: 'heel raise' } as const
const groupNames: Readonly<Record<TakenGroup, string>> = {
	play: 'play',
	feet: 'feet',
	ankles: 'ankles',
	posture: 'posture',
	body: 'height and weight',
}
export const groupName = (group: TakenGroup): string => groupNames[group]
const groupsWords = (groups: readonly TakenGroup[]): string => listed(groups.map(groupName))

type Act = 'stop' | 'heal-first' | 'adjust' | 'exchange'
/** What is proposed, to the clinician: it can be changed or left out line by line. */
const proposed: Readonly<Record<Act, string>> = {
	stop: 'Proposed: not worn until you have looked at it',
	'heal-first':
		'Proposed: not worn until the skin is whole, then worn in again from the first step',
	adjust: 'Proposed: adjust it, and wear it less until then',
	exchange: 'Proposed: not worn, and exchanged for another size',
}
const forPlayer: Readonly<Record<Act, (it: string) => string>> = {
	stop: (it) => `Do not wear ${it} until we say so.`,
	'heal-first': (it) =>
		`Do not wear ${it} until the skin has healed. Then start with a short time each day again.`,
	adjust: (it) => `We will change how ${it} fits. Wear it less until then.`,
	exchange: (it) => `Do not wear ${it}. You need another size.`,
}
interface Worn extends Readonly<Record<string, unknown>> {
	trouble: Trouble
	act: Act
}
/** Two of the questions of the gate are answered by it. */
const counted: Readonly<Partial<Record<Trouble, string>>> = {
	numbness: ' Counted as the warning sign of reduced sensation.',
	wound: ' Counted as the warning sign of an open wound on the foot.',
}
const wornTrouble = (what: 'insert' | 'raise') =>
	sentence<Worn>({
		clinician: ({ trouble, act }) =>
			`Told of the ${wornNames[what]} since the last visit: ${troubleName(trouble)}. ` +
			`${proposed[act]}.${counted[trouble] ?? ''}`,
		player: ({ trouble, act }) =>
			`Your ${wornNames[what]}, ${troubleName(trouble)}: ${forPlayer[act]('it')}`,
		guardian: ({ trouble, act }) =>
			`The ${wornNames[what]}, ${troubleName(trouble)}: ${forPlayer[act]('it')}`,
		doctor: ({ trouble }) =>
			`Told of the ${wornNames[what]} since the last visit: ${troubleName(trouble)}.`,
	})
const offWords = {
	'weaned-as-planned': 'was left off step by step, as planned',
	'stopped-early': 'was stopped early',
	'never-worn': 'was never worn',
} as const
const wornOff = (what: 'insert' | 'raise') =>
	sentence<{ now: keyof typeof offWords }>({
		clinician: ({ now }) =>
			`The ${wornNames[what]} of the last plan ${offWords[now]}. What is proposed here would ` +
			'begin it again: set it aside where it is not wanted.',
	})
const answers = {
	'recheck.insert-trouble': wornTrouble('insert'),
	'recheck.raise-trouble': wornTrouble('raise'),
	'recheck.insert-off': wornOff('insert'),
	'recheck.raise-off': wornOff('raise'),
	'recheck.pair-trouble': sentence<Worn & { role: PairRole; name?: string }>({
		clinician: ({ trouble, act, role, name }) =>
			`Told of the new ${pairFor(role)}${name === undefined ? '' : ` (${name})`}: ` +
			`${troubleName(trouble)}. ${proposed[act]}.${counted[trouble] ?? ''}`,
		player: ({ trouble, act, role }) =>
			`Your new ${pairFor(role)}, ${troubleName(trouble)}: ${forPlayer[act]('it')}`,
		guardian: ({ trouble, act, role }) =>
			`The new ${pairFor(role)}, ${troubleName(trouble)}: ${forPlayer[act]('it')}`,
	}),
	'recheck.letter-open': sentence<{ came: string; on: string }>({
		clinician: ({ came, on }) =>
			`A doctor was asked on ${day(on)}. ${cameWords[came] ?? cameWords['not-asked']}`,
		player: () => 'We still wait to hear from your doctor.',
		guardian: () => 'We still wait to hear from the doctor.',
	}),
	'recheck.not-measured-again': sentence<{ groups: readonly TakenGroup[]; on: string }>({
		clinician: ({ groups, on }) =>
			`Not measured again: ${groupsWords(groups)}. The figures are those of ${day(on)}.`,
	}),
	'recheck.measure-again': sentence<{ groups: readonly TakenGroup[]; on: string }>({
		clinician: ({ groups, on }) =>
			`Taken as on ${day(on)} although something told today speaks against it: ` +
			`${groupsWords(groups)}. Measure again.`,
	}),
}
const cameWords: Readonly<Record<string, string>> = {
	'no-answer-yet': 'No answer has come yet: ask for it.',
	'not-seen': 'The player has not been seen there: see that it happens.',
	'not-asked': 'What came of it was not asked.',
}
/** Why something is asked. */
const reasons = {
	'recheck.why-warning': sentence({
		clinician: () => 'The core warning questions are asked at every visit.',
	}),
	'recheck.why-hold': sentence<{ what: Holdable; since: string }>({
		clinician: ({ what, since }) =>
			`Held since ${day(since)}: ${holdableNames[what]}. What was found ends it.`,
	}),
	'recheck.why-letter': sentence<{ action: string; on: string }>({
		clinician: ({ action, on }) => `Asked for on ${day(on)}: ${term(action)}. What came of it?`,
	}),
	'recheck.why-done': sentence<ToDo & { on: string }>({
		clinician: (row) => `To be done since ${day(row.on)}: ${toDoName(row)}.`,
	}),
	'recheck.why-bought': sentence<{ role: PairRole }>({
		clinician: ({ role }) => `A ${pairFor(role)} was asked for.`,
	}),
	'recheck.why-worn': sentence<{ what: 'insert' | 'raise'; side: string }>({
		clinician: ({ what, side }) =>
			`${capital(wornNames[what])}, ${ofSide(side, 'side')}: it was to be worn.`,
	}),
	'recheck.why-wearing-in': sentence({
		clinician: () => 'Something new was to be worn in step by step.',
	}),
	'recheck.why-season': sentence({ clinician: () => 'A season was planned.' }),
	'recheck.why-condition': sentence<{ condition: string; side: string; status: string }>({
		clinician: ({ condition, status }) => `${capital(term(condition))} was ${term(status)}.`,
	}),
	'recheck.why-measure': sentence<{ what: 'feet' | 'body'; why: 'growing' | 'swollen' }>({
		clinician: ({ what, why }) =>
			why === 'growing'
				? `${capital(groupNames[what])}: the player grows.`
				: `${capital(groupNames[what])}: a foot was swollen when it was measured.`,
	}),
}
export const recheckSentences = { ...answers, ...reasons }
