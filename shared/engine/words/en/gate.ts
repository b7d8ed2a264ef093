/** What is held back, by what, and what ends it. */

import { nameOfField } from '../../visit/field-names.ts'
import type { Holdable, HoldUntil } from '../../visit/holdables.ts'
import { termWords } from '../../visit/terms.ts'
import { sentence } from '../sentence.ts'
import { day, listed } from './format.ts'
import { noSport } from './screening/no-sport.ts'
import { signNames } from './sign-names.ts'

export const holdableNames: Readonly<Record<Holdable, string>> = {
	sport: 'sport',
	match: 'matches',
	impact: 'running and jumping',
	purchase: 'buying footwear',
	shelf: 'models of the shelf',
	season: 'the plan of the season',
	raise: 'heel raises',
	weight: 'weight on the limb',
	test: 'tests under load',
	exercise: 'exercises',
	insert: 'an insert',
}
export const untilNames: Readonly<Record<HoldUntil, string>> = {
	outcome: 'what was found is recorded',
	'imaging-result': 'the result of imaging is recorded',
	'treating-doctor': 'the treating doctor allows it',
	surgeon: 'the surgeon allows it',
	'foot-protection-review': 'the foot-protection review is recorded',
}
/** The same for the player. */
const untilForPlayer: Readonly<Record<HoldUntil, string>> = {
	outcome: 'the doctor has told us what it is',
	'imaging-result': 'the scan result is known',
	'treating-doctor': 'the doctor who treats you says yes',
	surgeon: 'your surgeon says yes',
	'foot-protection-review': 'the foot clinic has seen your feet',
}
/** What of a hold concerns the player; the rest is the clinician's own work. */
const heldForPlayer: Readonly<Partial<Record<Holdable, string>>> = {
	sport: 'sport',
	match: 'matches',
	impact: 'running and jumping',
	purchase: 'buying shoes',
	raise: 'heel raises',
	weight: 'weight on that leg',
	exercise: 'your exercises',
	insert: 'an insole',
}
export interface HoldFilling extends Readonly<Record<string, unknown>> {
	/** The rule without its room: a line of sign-names.ts or a question. */
	sign: string
	side: 'left' | 'right' | 'none'
	what: readonly Holdable[]
	until: HoldUntil
	since: string
}
/** A sign by its own name, that of its question, or that of the condition. */
export const signInWords = (sign: string): string =>
	signNames[sign] ?? nameOfField(sign) ?? termWords(sign.replace(/^condition-/, ''))
const ofSign = ({ sign, side }: Pick<HoldFilling, 'sign' | 'side'>): string =>
	`${signInWords(sign)}${side === 'none' ? '' : `, ${side}`}`
/** A sign may be private: no reader but the clinician hears its name here. */
const forPlayer = ({ what, until }: HoldFilling): string => waitForPlayer(what, until)
/** What is held, in a row. */
export const heldWords = (what: readonly Holdable[]): string =>
	listed(what.map((one) => holdableNames[one]))
/** What the player waits with, and for whom; empty where it is the clinician's own work. */
export function waitForPlayer(what: readonly Holdable[], until: HoldUntil): string {
	const held = what.flatMap((one) => heldForPlayer[one] ?? [])
	return held.length === 0 ? '' : `Wait with ${listed(held)} until ${untilForPlayer[until]}.`
}
const waits = 'is held until what was found is recorded'

export const gateSentences = {
	'gate.hold': sentence<HoldFilling>({
		clinician: (hold) =>
			`Held since ${day(hold.since)} (${ofSign(hold)}): ` +
			`${listed(hold.what.map((one) => holdableNames[one]))}, until ${untilNames[hold.until]}.`,
		player: forPlayer,
		doctor: ({ what, until }) =>
			`Held back here until ${untilNames[until]}: ` +
			`${listed(what.map((one) => holdableNames[one]))}.`,
	}),
	'gate.not-established': sentence<{ questions: readonly string[] }>({
		clinician: ({ questions }) =>
			`Not established: ${listed(questions.map((id) => coreQuestionNames[id] ?? id))} not asked. ` +
			'Ask, or set aside with a reason.',
	}),
	'gate.nothing-found': sentence({
		clinician: () =>
			'Nothing found that must wait, by the questions that were asked. That is no clearance.',
	}),
	'screening.ends-nothing': sentence<{ number: number }>({
		clinician: ({ number }) =>
			`Outcome ${number} ends no hold: it names no open sign and side, lifts nothing that is held, ` +
			'is dated before the sign or after the visit, or lacks the word of the treating doctor.',
	}),
	'screening.foot-at-risk': sentence<{ side: string }>({
		clinician: ({ side }) =>
			`Foot at risk, ${side}: insert, shelf and buying of sport footwear wait for a ` +
			'foot-protection review. Skin care, protective footwear and daily looks at the feet do not.',
		player: () =>
			'Your foot needs extra care. Look at your feet each day. Do not buy new sport shoes until ' +
			'the foot clinic has seen you.',
		guardian: () =>
			'The foot needs extra care. Look at both feet each day. Do not buy new sport shoes until ' +
			'the foot clinic has seen them.',
		doctor: ({ side }) =>
			`Foot at risk, ${side}; please arrange a foot-protection review before new footwear.`,
	}),
	'screening.uncleared-surgery': sentence<{ side: string }>({
		clinician: ({ side }) =>
			`Operated and not cleared, ${side}: sport, impact, tests under load and exercises wait for ` +
			'the surgeon.',
		player: () => 'Ask your surgeon when you may run, jump and play. Wait with sport until then.',
		guardian: () =>
			'Ask the surgeon when running, jumping and play may start. No sport until then.',
		doctor: ({ side }) =>
			`Operated and not cleared, ${side}; please say when running, jumping and sport are allowed.`,
		coach: noSport,
	}),
	'screening.severe-pain': sentence<{ side: string }>({
		clinician: ({ side }) =>
			`Severe pain now, ${side}: no matches, no impact until it was looked into and the outcome ` +
			'recorded.',
		player: () => 'With pain this bad, do not play, run or jump. We look for the reason first.',
		guardian: () =>
			'With pain this bad, no playing, running or jumping. We look for the reason first.',
		doctor: ({ side }) =>
			`Severe pain now, ${side}; matches and impact wait until its cause is known.`,
		coach: noSport,
	}),
	'screening.no-insert-yet': sentence<{ side: string }>({
		clinician: ({ side }) =>
			`Nothing new under the foot yet, ${side}: what was found there is looked into first.`,
		doctor: ({ side }) =>
			`No insert yet, ${side}: what was found there is to be looked into first.`,
	}),
	'screening.bone-stress-recovering': sentence<{ side: string }>({
		clinician: ({ side }) =>
			`Stress fracture that heals, ${side}: matches and impact only when the treating doctor ` +
			'allows them.',
		player: () => 'Do not play matches, run or jump until the doctor who treats you says yes.',
		guardian: () => 'No matches, running or jumping until the doctor who treats this says yes.',
		doctor: ({ side }) =>
			`Stress fracture that heals, ${side}; please say when matches, running and jumping are allowed.`,
		coach: noSport,
	}),
	'screening.carried': sentence<{
		sign: string
		side: 'left' | 'right' | 'none'
		since: string
		sport: boolean
	}>({
		clinician: ({ since, ...sign }) =>
			`Open since ${day(since)}: ${ofSign(sign)}. What it holds ${waits}.`,
		player: () =>
			'Something from an earlier visit is not cleared yet. Keep to what you were told then.',
		guardian: () =>
			'Something from an earlier visit is not cleared yet. What was said then still holds.',
		doctor: ({ since }) => `A sign found on ${day(since)} is not cleared yet.`,
		coach: ({ sport }) => (sport ? noSport() : ''),
	}),
}
/** What is asked, where it was not. */
export const coreQuestionNames: Readonly<Record<string, string>> = {
	'night-pain': 'pain at night or at rest',
	fever: 'fever or unwell',
	'reduced-sensation': 'feeling in the feet',
	limp: 'a limp with pain of hip, thigh or knee',
	injury: 'the injury behind it',
	'weight-bearing': 'the rest of the injury rules',
	calf: 'a swollen, painful calf',
	'diabetic-foot': 'the foot in diabetes',
}
