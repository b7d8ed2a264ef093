/** What is to be done first; what the plan asks stands in question-lines.ts. */
import type { Holdable, HoldUntil } from '../../visit/holdables.ts'
import { alsoTo, type Sentence, sentence } from '../sentence.ts'
import { listed } from './format.ts'
import { heldWords, untilNames, waitForPlayer } from './gate.ts'
import { questionSentences } from './question-lines.ts'
import { pairFor } from './question-names.ts'
import type { actionWords } from './terms.table.ts'

type Action = keyof typeof actionWords
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
const atEmergencyDepartment: Care = {
	clinician: 'Send to the emergency department today.',
	player: 'Go to the hospital today. Ask there for the emergency department.',
	doctor: 'Sent to the emergency department the same day.',
}
const careFor = ({ action, at }: { action: Action; at?: 'emergency-department' }): Care =>
	at ? atEmergencyDepartment : careWords[action]
const anyFoot = (sides: readonly string[]): string =>
	sides.length === 2 ? 'both shoes' : `the ${sides[0] ?? ''} shoe`
const priorities = {
	'priority.act': sentence<{ action: Action; at?: 'emergency-department' }>({
		clinician: (of) => careFor(of).clinician,
		player: (of) => careFor(of).player,
		guardian: (of) => careFor(of).guardian ?? careFor(of).player,
		doctor: (of) => careFor(of).doctor,
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
	'priority.adjust-insert': sentence<{ sides: readonly string[] }>({
		clinician: ({ sides }) => `Have the insert for ${anyFoot(sides)} adjusted.`,
		player: ({ sides }) => `Give us the insert for ${anyFoot(sides)}, so that we can change it.`,
		doctor: ({ sides }) => `The insert for ${anyFoot(sides)} is adjusted.`,
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
	...questionSentences,
	...priorities,
} satisfies Readonly<Record<string, Sentence<never>>>
