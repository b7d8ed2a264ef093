/** What a club may read: a whitelist of fields, taken only under a consent that is in force. */

import { isHeld } from '../facts/held.ts'
import { present } from '../plain/present.ts'
import { pairsLeftOff } from '../prescription/owned.ts'
import type { SettledPlan } from '../prescription/settled.ts'
import { isPlanDeclined } from '../visit/agreement.ts'
import type { Visit } from '../visit/visit.ts'
import { fullPaperName } from '../words/names.ts'
import { fitIn, staysOff } from './fit.ts'
import type { PlanView } from './inputs.ts'
import { insertWorn } from './insert-of.ts'
import { planLetters } from './pair-letters.ts'
import { isOpen, type PlanInput, planOf } from './plan-of.ts'
import { waits } from './waits.ts'

/** A consent as the club documents need it. Dates ISO 8601; the last day of `until` included. */
export interface ClubConsent {
	id: string
	purpose: 'coach' | 'squad-club'
	decision: 'permit' | 'deny'
	given: string
	/** Who gave it, where that is recorded. */
	by?: ConsentGiver
	until?: string
	withdrawn?: string
}
/** Who can consent for a player. */
export const consentGivers = ['player', 'parent', 'guardian', 'other-authority'] as const
type ConsentGiver = (typeof consentGivers)[number]
/**
 * Practical limits a clinician may tick: closed words, so that nothing clinical can be typed into
 * them.
 * @internal
 */
export const practicalLimits = [
	'no-new-on-match-day',
	'warm-up-in-trainers',
	'no-hard-ground-studs',
	'break-between-sessions',
	'player-decides-to-stop',
] as const
type PracticalLimit = (typeof practicalLimits)[number]
/** What the clinician adds for the club, and the day it is made. */
export interface ClubAdds {
	/** ISO date on which the document is made. */
	on: string
	purpose: ClubConsent['purpose']
	plan?: PlanView
	limits?: readonly PracticalLimit[]
	minutesToChange?: number
}
/** All that a club document can hold. No free text but the name of the player and of the club. */
export interface ClubFields {
	name: string
	club?: string
	assessed: boolean
	/** Whether the player may train, and may play matches: never why. */
	mayTrain: boolean
	mayPlay: boolean
	insertWorn: boolean
	minutesToChange?: number
	reviewDate?: string
	limits: PracticalLimit[]
	/** Pairs that may be worn. */
	pairs: { letter: string; sole?: string; trainingOnly?: boolean }[]
	sessions: {
		date: string
		start?: string
		kind: 'training' | 'match'
		surface: string
		letter?: string
	}[]
	consent: { given: string; by?: ConsentGiver; until?: string }
	/** In a draft: what is not decided yet, so that it reads as neither yes nor no. */
	open: ('insert' | 'review')[]
}
/** A club document was asked for without a consent in force. @internal */
export class NoConsent extends Error {
	override readonly name = 'NoConsent'
}
/** Why a consent does not hold on a day; undefined where it does. */
export function consentRefusal(
	consent: ClubConsent | undefined,
	{ on, purpose }: Pick<ClubAdds, 'on' | 'purpose'>,
): string | undefined {
	if (!consent)
		return `consent: missing, given nothing, allowed: a consent for "${purpose}" in force on ${on}`
	if (consent.purpose !== purpose)
		return `consent.purpose: for something else, given "${consent.purpose}", allowed: "${purpose}"`
	if (consent.decision !== 'permit')
		return `consent.decision: not given, given "${consent.decision}", allowed: "permit"`
	if (consent.given > on)
		return (
			`consent.given: not yet in force on ${on}, given ${consent.given}, allowed: ${on} or ` +
			'before'
		)
	if (consent.withdrawn !== undefined && consent.withdrawn <= on)
		return (
			`consent.withdrawn: withdrawn, given ${consent.withdrawn}, allowed: a consent that ` +
			`stands on ${on}`
		)
	if (consent.until !== undefined && consent.until < on)
		return `consent.until: run out, given ${consent.until}, allowed: ${on} or later`
	return undefined
}
/** Running is what training is made of: where that waits, so does training. */
const mayTrain = ({ gate }: SettledPlan): boolean =>
	!isHeld(gate, 'sport') && !isHeld(gate, 'impact')
const mayPlay = (plan: SettledPlan): boolean => mayTrain(plan) && !isHeld(plan.gate, 'match')
/** Pairs that may be worn: one that may not is on no page of the club. */
function wornPairs(visit: Visit, plan: SettledPlan, letters: ReadonlyMap<string, string>) {
	if (!mayTrain(plan)) return []
	const { owned } = plan
	const verdicts = new Map(owned.map(({ id, verdict }) => [id, verdict]))
	const leftOff = pairsLeftOff(owned)
	return (visit.footwear ?? [])
		.filter(({ id }) => !leftOff.includes(id))
		.filter(({ id }) => !owned.some((one) => one.id === id && staysOff(fitIn(one, visit, plan))))
		.map((pair) =>
			present({
				letter: letters.get(pair.id) ?? '',
				sole: pair.sole,
				trainingOnly: verdicts.get(pair.id) === 'training-only' || undefined,
			}),
		)
		.toSorted((one, other) => (one.letter < other.letter ? -1 : 1))
}
/** Sessions that may be taken part in, with pairs that may be worn. */
function heldSessions(plan: SettledPlan, { sessions = [] }: Partial<PlanView>) {
	if (!mayTrain(plan) || waits(plan.gate, 'season')) return []
	return mayPlay(plan) ? sessions : sessions.filter(({ kind }) => kind !== 'match')
}
/** What a draft has not settled; behind a stop neither is asked. */
function openIn(input: PlanInput): ClubFields['open'] {
	const plan = planOf({ ...input, draft: true })
	return mayTrain(plan)
		? [
				...(isOpen(plan, 'insert') || isOpen(plan, 'raise') ? (['insert'] as const) : []),
				...(isOpen(plan, 'review') ? (['review'] as const) : []),
			]
		: []
}
/**
 * The only door from a visit to the club. @throws NoConsent naming what is missing where no consent
 * is in force
 */
export function clubFields(
	{ visit, assessment, decisions, draft = false }: PlanInput & { visit: Visit },
	consent: ClubConsent | undefined,
	adds: ClubAdds,
): ClubFields {
	const refusal = consentRefusal(consent, adds)
	if (refusal || !consent) throw new NoConsent(refusal)
	// what was only proposed is no fact of the club's
	const plan = planOf({ assessment, decisions })
	const letters = planLetters(visit, adds.plan)
	const pairs = wornPairs(visit, plan, letters)
	const isWorn = new Set(pairs.map(({ letter }) => letter))
	const letterOf = (pair: string | undefined): string | undefined => {
		const letter = pair === undefined ? undefined : letters.get(pair)
		return letter !== undefined && isWorn.has(letter) ? letter : undefined
	}
	return present({
		name: fullPaperName(visit.player),
		club: visit.player.club || undefined,
		assessed: true,
		mayTrain: mayTrain(plan),
		mayPlay: mayPlay(plan),
		insertWorn: insertWorn(plan) && !isPlanDeclined(decisions),
		minutesToChange: adds.minutesToChange,
		reviewDate: plan.review?.date,
		limits: [...(adds.limits ?? [])],
		pairs,
		sessions: heldSessions(plan, adds.plan ?? {}).map(({ date, start, kind, surface, pair }) =>
			present({ date, start: start || undefined, kind, surface, letter: letterOf(pair) }),
		),
		consent: present({
			given: consent.given,
			by: consent.by,
			until: consent.until || undefined,
		}),
		open: draft ? openIn({ assessment, decisions }) : [],
	})
}
