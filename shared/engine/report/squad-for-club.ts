/** The squad sheet for the club: only players whose fields were given, in order of name. */
import { present } from '../plain/present.ts'
import type { Speak } from '../words/speak.ts'
import { dateWords } from '../words/words.ts'
import { say, small, speakOf } from './base.ts'
import type { Clinic } from './clinic.ts'
import type { ClubFields } from './club.ts'
import { clubFrame, soleWords, yesOrNo } from './club-page.ts'
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
		t('coach.pairs'),
		t('coach.insert'),
		t('coach.review'),
		t('coach.limits'),
	],
	widths: [140, 70, 170, 60, 80, '*'],
	rows: players.toSorted(byName).map((player) => playerRow(player, t)),
})
function byName(a: ClubFields, b: ClubFields): number {
	if (a.name === b.name) return 0
	return a.name < b.name ? -1 : 1
}
function playerRow(player: ClubFields, t: Speak): string[] {
	const { name, assessed, insertWorn, reviewDate, minutesToChange } = player
	const pairs = player.pairs.map(({ letter, sole }) => `${letter} ${soleWords(sole, t)}`)
	const minutes =
		minutesToChange === undefined ? [] : [t('coach.minutesValue', { minutes: minutesToChange })]
	const limits = player.limits.map((limit) => t(`limit.${limit}`))
	return [
		name,
		yesOrNo(assessed, t),
		pairs.join(', ') || t('chart.none'),
		yesOrNo(insertWorn, t),
		reviewDate ? dateWords(reviewDate) : t('coach.noDate'),
		[...minutes, ...limits].join(' '),
	]
}
