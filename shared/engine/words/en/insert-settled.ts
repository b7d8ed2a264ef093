/** What of an insert is held, what is to become of one already worn, and what gave way. */
import type { HoldUntil } from '../../visit/holdables.ts'
import type { Side } from '../../visit/visit.ts'
import { sentence } from '../sentence.ts'
import { amount, capital, listed } from './format.ts'
import { untilNames } from './gate.ts'
import { type ElementId, elementName } from './insert-names.ts'

/** By what one of two elements was chosen. */
type SettledBy = 'safety' | 'pain-now' | 'strength'
/** What gave way before anything was proposed, and to what. */
const settled = {
	'insert.settled-opposite': sentence<{
		side: Side
		gives: ElementId
		to: ElementId
		/** They undo each other, or do the same work. */
		why: 'undo' | 'same-work'
		by: SettledBy
	}>({
		clinician: ({ side, gives, to, why, by }) =>
			`${capital(elementName(gives))} gives way to ${elementName(to)} on the ${side}: they ` +
			`${why === 'undo' ? 'work against each other' : 'do the same work'}, and ${byWords[by]}.`,
	}),
	'insert.settled-neither': sentence<{ side: Side; first: ElementId; second: ElementId }>({
		clinician: ({ side, first, second }) =>
			`${capital(elementName(first))} and ${elementName(second)} on the ${side} work against each ` +
			'other, and nothing found speaks for one of them: neither is proposed.',
	}),
	'insert.settled-shell': sentence<{ side: Side; wishedMm: number; mm: number }>({
		clinician: ({ side, wishedMm, mm }) =>
			`The ${side} shell gives way to the boot: ${amount(mm, 'mm')} of a stiffer material in place ` +
			`of ${amount(wishedMm, 'mm')}. For trainers alone ${amount(wishedMm, 'mm')} would stand.`,
	}),
	'insert.settled-skive': sentence<{
		side: Side
		cupMm: number
		bootMm: number
		/** Whether a post of the same edge is proposed too, which stays in boots. */
		withPost: boolean
	}>({
		clinician: ({ side, cupMm, bootMm, withPost }) =>
			`The skive on the ${side} is for trainers: it needs a heel cup of ${amount(cupMm, 'mm')}, and ` +
			`a boot holds about ${amount(bootMm, 'mm')}` +
			`${withPost ? '; in boots the post works alone' : ''}.`,
	}),
	'insert.settled-room': sentence<{
		side: Side
		element: ElementId
		at: 'heel' | 'toes'
		wasMm: number
		/** 0 where it is left out. */
		leftMm: number
		/** Absent where it is the depth of this boot. */
		limitMm?: number | undefined
	}>({
		clinician: ({ side, element, at, wasMm, leftMm, limitMm }) =>
			`${capital(elementName(element))} on the ${side}: ` +
			(leftMm === 0
				? `left out (${amount(wasMm, 'mm')})`
				: `${amount(leftMm, 'mm')} in place of ${amount(wasMm, 'mm')}`) +
			`, since ${placeWords[at](limitMm)}.` +
			(element === 'heel-cushion'
				? ' A soft material for what lies under the heel does the same.'
				: ''),
	}),
	'insert.settled-trainers': sentence<{
		side: Side
		elements: readonly ElementId[]
		at: 'heel' | 'toes'
		totalMm: number
		limitMm: number
	}>({
		clinician: ({ side, elements, at, totalMm, limitMm }) =>
			`For trainers only on the ${side}: ${listed(elements.map(elementName), 'and')}. Together ` +
			`${amount(totalMm, 'mm')}, and ${placeWords[at](limitMm)}.`,
		player: () => 'Some parts of your insert fit in trainers only. Leave them out of your boots.',
		guardian: () => 'Some parts of the insert fit in trainers only. Leave them out of the boots.',
	}),
}
const byWords: Record<SettledBy, string> = {
	safety: 'less speaks against the other',
	'pain-now': 'the other is for the worse complaint now',
	strength: 'the evidence for the other is stronger',
}
const placeWords = {
	heel: (limitMm?: number) =>
		limitMm === undefined
			? 'a boot holds no more under the heel'
			: `a boot holds ${amount(limitMm, 'mm')} under the heel, any raise included`,
	toes: (limitMm?: number) =>
		limitMm === undefined
			? 'no more is free over the toes'
			: `${amount(limitMm, 'mm')} are free over the toes`,
}
/** What is to become of an insert already worn. */
export type WornInsert = 'leave' | 'leave-held' | 'take-out-hurts' | 'take-out-new'
const wornWords: Record<WornInsert, string> = {
	leave: 'leave it in; nothing found speaks against it',
	'leave-held': 'leave it as it is until the outcome is recorded; nothing is changed or added',
	'take-out-hurts': 'take it out, since the pair hurts, and see whether it still does',
	'take-out-new': 'take it out when the new one goes in; never two in one shoe',
}
const wornToPlayer: Record<WornInsert, string> = {
	leave: 'keep wearing it.',
	'leave-held': 'leave it as it is for now.',
	'take-out-hurts': 'take it out. Tell us if the pair still hurts.',
	'take-out-new': 'take it out when the new one goes in.',
}
const waiting = {
	'insert.one-sided': sentence<{ side: Side; other: Side; mm: number; waits: boolean }>({
		clinician: ({ side, other, mm, waits }) =>
			`The insert puts ${amount(mm, 'mm')} under the ${side} heel alone, less the liner that comes ` +
			'out: count it between the feet. ' +
			(waits
				? `Nothing goes under the ${other} foot yet: fit this one where the heels stand level.`
				: `Put a flat layer as thick under the ${other} heel, so that a raise and a correction ` +
					'of the leg length start from level heels.'),
		player: ({ side, other, waits }) =>
			waits
				? `Your insert lifts your ${side} heel a little. We check that you stand level.`
				: `Your insert lifts your ${side} heel a little. We put a thin layer under your ${other} ` +
					'heel, so that you stand level.',
		guardian: ({ side, other, waits }) =>
			waits
				? `The insert lifts the ${side} heel a little. We check that the player stands level.`
				: `The insert lifts the ${side} heel a little. We put a thin layer under the ${other} heel, ` +
					'so that the player stands level.',
	}),
	'insert.held': sentence<{ side: Side; until: readonly HoldUntil[] }>({
		clinician: ({ side, until }) =>
			`No insert for the ${side} foot until ${listed(
				until.map((end) => untilNames[end]),
				'and',
			)}.`,
		player: ({ side }) => `No insert for your ${side} foot yet. First it must be looked at.`,
		guardian: ({ side }) => `No insert for the ${side} foot yet. First it must be looked at.`,
		doctor: ({ side }) => `No insert is made for the ${side} foot until it is cleared.`,
	}),
	'insert.held-until': sentence<{ until: HoldUntil }>({
		clinician: ({ until }) => `The insert is held until ${untilNames[until]}.`,
	}),
	'insert.worn': sentence<{ pair: string; verdict: WornInsert }>({
		clinician: ({ pair, verdict }) => `The insert worn in "${pair}": ${wornWords[verdict]}.`,
		player: ({ pair, verdict }) => `The insert in "${pair}": ${wornToPlayer[verdict]}`,
	}),
}
export const settledSentences = { ...waiting, ...settled }
