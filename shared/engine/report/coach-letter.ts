/** The letter to a coach about one player: facts, practical limits, pairs, what to wear when. */
import { termWords } from '../visit/terms.ts'
import type { Speak } from '../words/speak.ts'
import { dateWords } from '../words/words.ts'
import { heading, say, small, speakOf } from './base.ts'
import type { Clinic } from './clinic.ts'
import type { ClubFields } from './club.ts'
import { clubFrame, pairWords, yesOrNo } from './club-page.ts'
import type { Block, LwDocument } from './document.ts'

/** Sessions in a letter; the season chart has the rest. */
const mostSessions = 18

/** @param on ISO date of the letter */
export function coachLetter(fields: ClubFields, clinic: Clinic, on: string): LwDocument {
	const t = speakOf(clinic)
	return {
		...clubFrame(clinic, on, t),
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
			...mayNot(fields, t),
			say(t('coach.intro')),
			...facts(fields, t),
			...limits(fields, t),
			...pairs(fields, t),
			...sessions(fields, on, t),
		],
	}
}
const consentWords = ({ consent: { given, until } }: ClubFields, t: Speak): string =>
	until
		? t('coach.consentTo', { given: dateWords(given), until: dateWords(until) })
		: t('coach.consentFrom', { given: dateWords(given) })
/** What the player may not do stands over everything, without a reason. */
function mayNot({ mayTrain, mayPlay }: ClubFields, t: Speak): Block[] {
	if (mayTrain && mayPlay) return []
	const title = mayTrain ? t('coach.noMatch') : t('coach.noSport')
	return [{ kind: 'alert', title, text: t('coach.untilWeSay') }]
}
function facts(fields: ClubFields, t: Speak): Block[] {
	const { assessed, mayTrain, mayPlay, insertWorn, minutesToChange, reviewDate } = fields
	const minutes =
		minutesToChange === undefined
			? []
			: [[t('coach.minutes'), t('coach.minutesValue', { minutes: minutesToChange })]]
	return [
		heading(t('coach.facts')),
		{
			kind: 'table',
			caption: t('coach.factsCaption'),
			head: [t('coach.item'), t('coach.answer')],
			widths: ['*', 200],
			rows: [
				[t('coach.assessed'), yesOrNo(assessed, t)],
				[t('coach.mayTrain'), yesOrNo(mayTrain, t)],
				[t('coach.mayPlay'), yesOrNo(mayPlay, t)],
				[t('coach.insert'), yesOrNo(insertWorn, t)],
				...minutes,
				[t('coach.review'), reviewDate ? dateWords(reviewDate) : t('coach.noDate')],
			],
		},
	]
}
function limits(fields: ClubFields, t: Speak): Block[] {
	if (fields.limits.length === 0) return []
	return [
		heading(t('coach.limits')),
		{ kind: 'list', items: fields.limits.map((limit) => t(`limit.${limit}`)) },
	]
}
function pairs(fields: ClubFields, t: Speak): Block[] {
	if (fields.pairs.length === 0) return []
	return [
		heading(t('coach.pairs')),
		{
			kind: 'table',
			caption: t('coach.pairsCaption'),
			head: [t('coach.letter'), t('coach.sole')],
			widths: [60, '*'],
			rows: fields.pairs.map((pair) => [pair.letter, pairWords(pair, t)]),
		},
	]
}
/** The next sessions from the day of the letter on; where some are left out, it says how many. */
function sessions(fields: ClubFields, on: string, t: Speak): Block[] {
	const total = fields.sessions.length
	const next = fields.sessions.filter((session) => session.date >= on).slice(0, mostSessions)
	const table: Block = {
		kind: 'table',
		caption: t('coach.wearCaption'),
		head: [t('coach.date'), t('coach.start'), t('coach.kind'), t('coach.surface'), t('coach.pair')],
		widths: ['*', 50, 60, 110, 60],
		rows: next.map(({ date, start, kind, surface, letter }) => [
			dateWords(date),
			start ?? '',
			kind,
			termWords(surface),
			letter ?? t('chart.none'),
		]),
	}
	// no plan was made, none was shared, or none of it may be taken part in: the page cannot tell which
	if (next.length === 0) return []
	return [
		heading(t('coach.wear')),
		table,
		...(next.length < total ? [small(t('coach.more', { count: next.length, total }))] : []),
	]
}
