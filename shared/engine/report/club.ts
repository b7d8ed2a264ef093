/**
 * What a club may read: a whitelist of fields, taken only under a consent that is in force, and the
 * two documents made of it.
 */

import { lettersOf } from '../season/problem/letters.ts'
import type { Decisions } from '../visit/decisions.ts'
import { termWords } from '../visit/terms.ts'
import type { Visit } from '../visit/visit.ts'
import type { Speak } from '../words/speak.ts'
import { dateWords } from '../words/words.ts'
import { clinicianOf, heading, letterheadOf, say, small, speakOf } from './base.ts'
import type { Clinic } from './clinic.ts'
import type { Block, LwDocument } from './document.ts'
import type { PlanView } from './inputs.ts'

/** A consent as the club documents need it. Dates ISO 8601; the last day of `until` included. */
export interface ClubConsent {
	id: string
	purpose: 'coach' | 'squad-club'
	decision: 'permit' | 'deny'
	given: string
	until?: string
	withdrawn?: string
}
/**
 * Practical limits a clinician may tick: closed words, so that nothing clinical can be typed into
 * them.
 */
export const practicalLimits = [
	'no-new-on-match-day',
	'warm-up-in-trainers',
	'no-hard-ground-studs',
	'break-between-sessions',
	'player-decides-to-stop',
] as const
export type PracticalLimit = (typeof practicalLimits)[number]
/** What the clinician adds for the club, and the day it is made. */
export interface ClubAdds {
	/** ISO date on which the document is made. */ on: string
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
	insertWorn: boolean
	minutesToChange?: number
	reviewDate?: string
	limits: PracticalLimit[]
	pairs: { letter: string; sole?: string }[]
	sessions: {
		date: string
		start?: string
		kind: 'training' | 'match'
		surface: string
		letter?: string
	}[]
	consent: { id: string; given: string; until?: string }
}
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
/** Letters of the pairs, the same as in the plan, on the chart and in the calendar. */
export const planLetters = (visit: Visit, plan: PlanView | undefined): Map<string, string> =>
	lettersOf(
		[...(visit.footwear ?? [])].sort((a, b) => (a.id < b.id ? -1 : 1)),
		(plan?.pairs ?? []).flatMap(({ id, letter }) => (letter === undefined ? [] : [{ id, letter }])),
	)
/** Whether the clinician decided that something is worn inside the shoe. */
export const insertDecided = ({ heelRaiseMm, insert }: Decisions): boolean =>
	(heelRaiseMm !== undefined && heelRaiseMm.left + heelRaiseMm.right > 0) ||
	[...(insert?.left ?? []), ...(insert?.right ?? [])].some((one) => one.choice !== 'drop')

/**
 * The only door from a visit to the club. @throws NoConsent naming what is missing where no consent
 * is in force
 */
export function clubFields(
	visit: Visit,
	decisions: Decisions,
	consent: ClubConsent | undefined,
	adds: ClubAdds,
): ClubFields {
	const refusal = consentRefusal(consent, adds)
	if (refusal || !consent) throw new NoConsent(refusal)
	const pairs = visit.footwear ?? []
	const letters = planLetters(visit, adds.plan)
	return {
		name: `${visit.player.givenName} ${visit.player.familyName}`,
		...(visit.player.club ? { club: visit.player.club } : {}),
		assessed: true,
		insertWorn: insertDecided(decisions),
		...(adds.minutesToChange === undefined ? {} : { minutesToChange: adds.minutesToChange }),
		...(decisions.reviewDate ? { reviewDate: decisions.reviewDate } : {}),
		limits: [...(adds.limits ?? [])],
		pairs: pairs.map((pair) => ({
			letter: letters.get(pair.id) ?? '',
			...(pair.sole ? { sole: pair.sole } : {}),
		})),
		sessions: (adds.plan?.sessions ?? []).map(({ date, start, kind, surface, pair }) => {
			const letter = pair === undefined ? undefined : letters.get(pair)
			return { date, ...(start ? { start } : {}), kind, surface, ...(letter ? { letter } : {}) }
		}),
		consent: {
			id: consent.id,
			given: consent.given,
			...(consent.until ? { until: consent.until } : {}),
		},
	}
}
const consentWords = ({ consent: { id, given, until } }: ClubFields, t: Speak): string =>
	until
		? t('coach.consentUntil', { id, given: dateWords(given), until: dateWords(until) })
		: t('coach.consent', { id, given: dateWords(given) })
const soleWords = (sole: string | undefined, t: Speak) =>
	sole ? termWords(sole) : t('common.notStated')
function paper(
	clinic: Clinic,
	on: string,
	t: Speak,
): Pick<
	LwDocument,
	'language' | 'draft' | 'letterhead' | 'footer' | 'createdAt' | 'notes' | 'paper'
> {
	return {
		language: 'en',
		draft: false,
		letterhead: letterheadOf(clinic),
		footer: t('page.footerClub', clinicianOf(clinic)),
		createdAt: `${on}T12:00:00.000Z`,
		notes: [],
		paper: clinic.paper ?? 'A4',
	}
}
/** Sessions in a letter; the season chart has the rest. */
const mostSessions = 18
/** The letter to a coach about one player. @param on ISO date of the letter */
export function coachLetter(fields: ClubFields, clinic: Clinic, on: string): LwDocument {
	const t = speakOf(clinic)
	const yes = (value: boolean) => (value ? t('common.yes') : t('common.no'))
	const limits: Block[] =
		fields.limits.length === 0
			? []
			: [
					heading(t('coach.limits')),
					{ kind: 'list', items: fields.limits.map((limit) => t(`limit.${limit}`)) },
				]
	const next = fields.sessions.filter((session) => session.date >= on).slice(0, mostSessions)
	const sessions: Block =
		next.length === 0
			? say(t('coach.noPlan'))
			: {
					kind: 'table',
					caption: t('coach.wearCaption'),
					head: [
						t('coach.date'),
						t('coach.start'),
						t('coach.kind'),
						t('coach.surface'),
						t('coach.pair'),
					],
					widths: ['*', 50, 60, 110, 60],
					rows: next.map((one) => [
						dateWords(one.date),
						one.start ?? '',
						one.kind,
						termWords(one.surface),
						one.letter ?? t('chart.none'),
					]),
				}
	return {
		...paper(clinic, on, t),
		title: t('coach.title'),
		kind: 'coach',
		running: fields.name,
		subject: [
			[t('subject.player'), fields.name],
			[t('subject.team'), fields.club ?? t('common.notStated')],
			[t('subject.date'), dateWords(on)],
			[t('subject.consent'), consentWords(fields, t)],
		],
		blocks: [
			say(t('coach.intro')),
			heading(t('coach.facts')),
			{
				kind: 'table',
				caption: t('coach.factsCaption'),
				head: [t('coach.item'), t('coach.answer')],
				widths: ['*', 200],
				rows: [
					[t('coach.assessed'), yes(fields.assessed)],
					[t('coach.insert'), yes(fields.insertWorn)],
					...(fields.minutesToChange === undefined
						? []
						: [[t('coach.minutes'), t('coach.minutesValue', { minutes: fields.minutesToChange })]]),
					[t('coach.review'), fields.reviewDate ? dateWords(fields.reviewDate) : t('coach.noDate')],
				],
			},
			...limits,
			...(fields.pairs.length === 0
				? []
				: [
						heading(t('coach.pairs')),
						{
							kind: 'table',
							caption: t('coach.pairsCaption'),
							head: [t('coach.letter'), t('coach.sole')],
							widths: [60, '*'],
							rows: fields.pairs.map((pair) => [pair.letter, soleWords(pair.sole, t)]),
						} satisfies Block,
					]),
			heading(t('coach.wear')),
			sessions,
			...(next.length < fields.sessions.length
				? [small(t('coach.more', { count: next.length, total: fields.sessions.length }))]
				: []),
		],
	}
}
/**
 * The squad sheet for the club: only players whose fields were given, in order of name. @param on
 * ISO date of the sheet
 */
export function squadForClub(
	players: readonly ClubFields[],
	clinic: Clinic,
	on: string,
	team?: string,
): LwDocument {
	const t = speakOf(clinic)
	const rows = players
		.toSorted((a, b) => (a.name < b.name ? -1 : a.name > b.name ? 1 : 0))
		.map((player) => [
			player.name,
			player.assessed ? t('common.yes') : t('common.no'),
			player.pairs.map((pair) => `${pair.letter} ${soleWords(pair.sole, t)}`).join(', ') ||
				t('chart.none'),
			player.insertWorn ? t('common.yes') : t('common.no'),
			player.reviewDate ? dateWords(player.reviewDate) : t('coach.noDate'),
			[
				...(player.minutesToChange === undefined
					? []
					: [t('coach.minutesValue', { minutes: player.minutesToChange })]),
				...player.limits.map((limit) => t(`limit.${limit}`)),
			].join(' '),
		])
	return {
		...paper(clinic, on, t),
		title: t('squadClub.title'),
		kind: 'squad',
		...(team ? { running: team } : {}),
		landscape: true,
		subject: [
			...(team ? [[t('subject.team'), team] as [string, string]] : []),
			[t('subject.date'), dateWords(on)],
			[t('subject.players'), t('squadClub.listed', { count: rows.length })],
		],
		blocks:
			rows.length === 0
				? [say(t('squadClub.none'))]
				: [
						small(t('squadClub.intro')),
						{
							kind: 'table',
							caption: t('squadClub.caption'),
							head: [
								t('subject.player'),
								t('coach.assessed'),
								t('coach.pairs'),
								t('coach.insert'),
								t('coach.review'),
								t('coach.limits'),
							],
							widths: [140, 70, 170, 60, 80, '*'],
							rows,
						},
					],
	}
}
