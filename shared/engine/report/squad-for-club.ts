/**
 * The squad sheet for the club: only players whose fields were given; who may not play stands
 * first, then in order of name.
 */
import { present } from '../plain/present.ts'
import type { Speak } from '../words/speak.ts'
import { dateWords } from '../words/words.ts'
import { say, small, speakOf } from './base.ts'
import type { ClubFields } from './club.ts'
import { clubFrame, consentWords, insertWords, pairWords, reviewWords } from './club-page.ts'
import type { Block, LwDocument } from './document.ts'
import type { ListFrame } from './squad/member.ts'

/** @param signers who signed the visits that it rests on, each once */
export function squadForClub(
	players: readonly ClubFields[],
	frame: ListFrame,
	signers: readonly string[] = [],
): LwDocument {
	const { clinic, on, team, draft } = frame
	const t = speakOf(clinic)
	const rows: [string, string][] = [
		...(team ? [[t('subject.team'), team] satisfies [string, string]] : []),
		[t('subject.date'), dateWords(on)],
		[t('subject.by'), clinic.clinician.name],
		...(signers.length > 0
			? [[t('squadClub.signedBy'), signers.join(', ')] satisfies [string, string]]
			: []),
		[t('subject.players'), t('squadClub.listed', { count: players.length })],
		...(draft ? [[t('subject.status'), t('status.draft')] satisfies [string, string]] : []),
	]
	return {
		...clubFrame(frame, t),
		title: t('squadClub.title'),
		kind: 'squad',
		...present({ running: team || undefined }),
		landscape: true,
		print: 'compact',
		slim: true,
		subject: rows,
		blocks:
			players.length === 0
				? [say(t('squadClub.none'))]
				: [small(t('squadClub.intro')), playerTable(players, on, t)],
	}
}
type Column = readonly [head: string, width: number | '*', cell: (player: ClubFields) => string]
/** A column that has nothing to say of anybody is left out. */
function playerTable(players: readonly ClubFields[], on: string, t: Speak): Block {
	const ordered = players.toSorted(byUrgency)
	const columns = columnsOf(on, t).filter(([, , cell]) => ordered.some((one) => cell(one) !== ''))
	return {
		kind: 'table',
		caption: t('squadClub.caption'),
		head: columns.map(([head]) => head),
		widths: columns.map(([, width]) => width),
		rows: ordered.map((player) => columns.map(([, , cell]) => cell(player))),
	}
}
/** Fewer things that a player may do come first. */
const mayDo = ({ mayTrain, mayPlay }: ClubFields): number => Number(mayTrain) + Number(mayPlay)
const byUrgency = (a: ClubFields, b: ClubFields): number => mayDo(a) - mayDo(b) || byName(a, b)
function byName(a: ClubFields, b: ClubFields): number {
	if (a.name === b.name) return 0
	return a.name < b.name ? -1 : 1
}
/** Large, so that it is seen in any print. */
const mayWords = (may: boolean, t: Speak): string => (may ? t('common.yes') : t('squadClub.no'))
/** Sessions still to come in the plan; nothing where none was made, or none may be taken part in. */
function seasonWords({ sessions }: ClubFields, on: string, t: Speak): string {
	const next = sessions.filter(({ date }) => date >= on)
	const last = next.at(-1)
	return last ? t('squadClub.planned', { count: next.length, until: dateWords(last.date) }) : ''
}
/** Pairs and an insert are worn by those who train. */
const ofTraining =
	(cell: (player: ClubFields) => string): ((player: ClubFields) => string) =>
	(player) =>
		player.mayTrain ? cell(player) : ''
function limitWords({ minutesToChange, limits }: ClubFields, t: Speak): string {
	const minutes =
		minutesToChange === undefined ? [] : [t('coach.minutesValue', { minutes: minutesToChange })]
	return [...minutes, ...limits.map((limit) => t(`limit.${limit}`))].join(' ')
}
const columnsOf = (on: string, t: Speak): readonly Column[] => [
	[t('subject.player'), '*', ({ name }) => name],
	[t('coach.mayTrain'), 40, ({ mayTrain }) => mayWords(mayTrain, t)],
	[t('coach.mayPlay'), 46, ({ mayPlay }) => mayWords(mayPlay, t)],
	[
		t('coach.pairs'),
		122,
		ofTraining(({ pairs }) =>
			pairs.map((pair) => `${pair.letter} ${pairWords(pair, t)}`).join(', '),
		),
	],
	[t('coach.insert'), 46, ofTraining((player) => insertWords(player, t))],
	[t('squadClub.season'), 84, (player) => seasonWords(player, on, t)],
	[t('coach.review'), 72, (player) => reviewWords(player, t)],
	[t('coach.limits'), 84, ofTraining((player) => limitWords(player, t))],
	[t('subject.consent'), 110, (player) => consentWords(player, t)],
]
