/**
 * The squad sheet for the club: only players whose fields were given; who may not play stands
 * first, then in order of name.
 */
import { present } from '../plain/present.ts'
import type { Speak } from '../words/speak.ts'
import { dateWords } from '../words/words.ts'
import { say, small, speakOf } from './base.ts'
import type { Clinic } from './clinic.ts'
import type { ClubFields } from './club.ts'
import { clubFrame, pairWords, yesOrNo } from './club-page.ts'
import type { Block, LwDocument } from './document.ts'

/** @param on ISO date of the sheet */
export function squadForClub(
	players: readonly ClubFields[],
	clinic: Clinic,
	on: string,
	team?: string,
): LwDocument {
	const t = speakOf(clinic)
	const ofTeam: LwDocument['subject'] = team ? [[t('subject.team'), team]] : []
	return {
		...clubFrame(clinic, on, t),
		title: t('squadClub.title'),
		kind: 'squad',
		...present({ running: team || undefined }),
		landscape: true,
		subject: [
			...ofTeam,
			[t('subject.date'), dateWords(on)],
			[t('subject.players'), t('squadClub.listed', { count: players.length })],
		],
		blocks:
			players.length === 0
				? [say(t('squadClub.none'))]
				: [small(t('squadClub.intro')), playerTable(players, t)],
	}
}
const playerTable = (players: readonly ClubFields[], t: Speak): Block => ({
	kind: 'table',
	caption: t('squadClub.caption'),
	head: [
		t('subject.player'),
		t('coach.assessed'),
		t('coach.mayTrain'),
		t('coach.mayPlay'),
		t('coach.pairs'),
		t('coach.insert'),
		t('coach.review'),
		t('coach.limits'),
	],
	widths: [130, 64, 50, 50, 150, 56, 76, '*'],
	rows: players.toSorted(byUrgency).map((player) => playerRow(player, t)),
})
/** Fewer things that a player may do come first. */
const mayDo = ({ mayTrain, mayPlay }: ClubFields): number => Number(mayTrain) + Number(mayPlay)
const byUrgency = (a: ClubFields, b: ClubFields): number => mayDo(a) - mayDo(b) || byName(a, b)
function byName(a: ClubFields, b: ClubFields): number {
	if (a.name === b.name) return 0
	return a.name < b.name ? -1 : 1
}
function playerRow(player: ClubFields, t: Speak): string[] {
	const { name, assessed, mayTrain, mayPlay, insertWorn, reviewDate, minutesToChange } = player
	const pairs = player.pairs.map((pair) => `${pair.letter} ${pairWords(pair, t)}`)
	const minutes =
		minutesToChange === undefined ? [] : [t('coach.minutesValue', { minutes: minutesToChange })]
	const limits = player.limits.map((limit) => t(`limit.${limit}`))
	return [
		name,
		yesOrNo(assessed, t),
		yesOrNo(mayTrain, t),
		yesOrNo(mayPlay, t),
		pairs.join(', ') || t('chart.none'),
		yesOrNo(insertWorn, t),
		reviewDate ? dateWords(reviewDate) : t('coach.noDate'),
		[...minutes, ...limits].join(' '),
	]
}
