/** The letter to a coach about one player: what the player may do, then facts, limits, what to wear. */
import { termWords } from '../visit/terms.ts'
import { fullDay } from '../words/en/format.ts'
import type { Speak } from '../words/speak.ts'
import { dateWords } from '../words/words.ts'
import { heading, say, small, speakOf } from './base.ts'
import type { ClubFields } from './club.ts'
import { clubFrame, consentWords, insertWords, pairWords, reviewWords } from './club-page.ts'
import type { Block, BlockOf, LwDocument } from './document.ts'
import type { ListFrame } from './squad/member.ts'

/** Sessions in a letter; the season chart has the rest. */
const mostSessions = 18

/** @param frame `on`: the day of the letter */
export function coachLetter(
	fields: ClubFields,
	frame: Pick<ListFrame, 'clinic' | 'on' | 'draft'>,
): LwDocument {
	const { clinic, on, draft } = frame
	const t = speakOf(clinic)
	return {
		...clubFrame(frame, t),
		title: t('coach.title'),
		kind: 'coach',
		running: fields.name,
		print: 'compact',
		slim: true,
		subject: [
			[t('subject.player'), fields.name],
			[t('subject.team'), fields.club ?? t('common.notStated')],
			[t('subject.date'), dateWords(on)],
			[t('subject.by'), clinic.clinician.name],
			...(draft ? [[t('subject.status'), t('status.draft')] satisfies [string, string]] : []),
		],
		blocks: [
			may(fields, t),
			...facts(fields, t),
			...limits(fields, t),
			...pairs(fields, t),
			...sessions(fields, on, t),
			small(t('coach.intro', { consent: consentWords(fields, t) })),
		],
	}
}
/** What the player may do stands over everything, without a reason. */
function may({ name, mayTrain, mayPlay }: ClubFields, t: Speak): Block {
	if (mayTrain && mayPlay)
		return { kind: 'text', tone: 'headline', text: t('coach.mayAll', { name }) }
	return {
		kind: 'alert',
		large: true,
		title: mayTrain ? t('coach.noMatch') : t('coach.noSport'),
		text: [...(mayTrain ? [t('coach.trainOnly', { name })] : []), t('coach.untilWeSay')].join(' '),
	}
}
function facts(fields: ClubFields, t: Speak): Block[] {
	const { mayTrain, minutesToChange: minutes } = fields
	const rows: BlockOf<'facts'>['rows'] = [
		...(mayTrain ? [{ label: t('coach.insert'), text: insertWords(fields, t) }] : []),
		...(minutes === undefined || !mayTrain
			? []
			: [{ label: t('coach.minutes'), text: t('coach.minutesValue', { minutes }) }]),
		{ label: t('coach.review'), text: reviewWords(fields, t) },
	]
	return [heading(t('coach.facts')), { kind: 'facts', rows }]
}
function limits(fields: ClubFields, t: Speak): Block[] {
	if (fields.limits.length === 0 || !fields.mayTrain) return []
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
	// no plan was made, none was shared, or none of it may be taken part in: the page cannot tell which
	if (total === 0) return []
	const next = fields.sessions.filter((session) => session.date >= on).slice(0, mostSessions)
	if (next.length === 0) return [heading(t('coach.wear')), say(t('coach.over', { total }))]
	const table: Block = {
		kind: 'table',
		caption: t('coach.wearCaption'),
		head: [t('coach.date'), t('coach.start'), t('coach.kind'), t('coach.surface'), t('coach.pair')],
		widths: ['*', 50, 60, 110, 60],
		rows: next.map(({ date, start, kind, surface, letter }) => [
			fullDay(date),
			start ?? '',
			kind,
			termWords(surface),
			letter ?? t('chart.none'),
		]),
	}
	return [
		heading(t('coach.wear')),
		table,
		...(next.length < total ? [small(t('coach.more', { count: next.length, total }))] : []),
	]
}
