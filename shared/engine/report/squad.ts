/**
 * The squad summary for the clinician: who is stopped, each in a box, the most urgent first; counts;
 * then one row for each other player.
 */
import { isHeld } from '../facts/held.ts'
import { type Action, actions, type OwnedVerdict } from '../findings/assessment.ts'
import { isPlanDeclined } from '../visit/agreement.ts'
import { paperName } from '../words/names.ts'
import type { Speak } from '../words/speak.ts'
import { actionWords, capital, dateWords } from '../words/words.ts'
import { clinicianOf, heading, letterheadOf, nameOf, say, speakOf } from './base.ts'
import type { Block, LwDocument } from './document.ts'
import { insertWorn } from './insert-of.ts'
import { planOf } from './plan-of.ts'
import { actionIn } from './referral/reasons.ts'
import type { ListFrame, SquadMember } from './squad/member.ts'
import { memberTable, stopText } from './squad/rows.ts'

export function squadForClinician(
	members: readonly SquadMember[],
	{ clinic, on, team, draft }: ListFrame,
): LwDocument {
	const t = speakOf(clinic)
	const ofTeam: LwDocument['subject'] = team ? [[t('subject.team'), team]] : []
	const ordered = byUrgency(members)
	const others = ordered.filter((member) => !isStopped(member))
	return {
		title: t('squad.title'),
		kind: 'squad',
		language: 'en',
		draft,
		letterhead: letterheadOf(clinic),
		running: t('squad.confidential'),
		landscape: true,
		print: 'compact',
		slim: true,
		paper: clinic.paper ?? 'A4',
		subject: [
			...ofTeam,
			[t('subject.date'), dateWords(on)],
			[t('subject.status'), draft ? t('squad.draft') : t('squad.confidential')],
		],
		blocks: [
			...ordered.filter(isStopped).map((member) => stopBox(member, t)),
			heading(t('squad.counts')),
			countTable(members, t),
			heading(t('squad.list')),
			members.length === 0 ? say(t('squad.none')) : memberTable(others, t),
		],
		notes: [],
		footer: t('page.footerSquad', clinicianOf(clinic)),
		createdAt: `${on}T12:00:00.000Z`,
	}
}
const stateOf = ({ state = 'assessed' }: SquadMember) => state
const isUrgentToday: readonly Action[] = ['same-day', 'emergency']
/** No sport, or somebody to be seen today: not left to a row of a table. */
const isStopped = (member: SquadMember): boolean =>
	stateOf(member) === 'assessed' &&
	(isHeld(planOf(member).gate, 'sport') || isUrgentToday.includes(actionIn(member)))
function stopBox(member: SquadMember, t: Speak): Block {
	const name = nameOf(member.visit)
	const action = actionWords[actionIn(member)]
	const title = isHeld(planOf(member).gate, 'sport')
		? t('squad.stop', { name, action })
		: t('squad.today', { name, action: capital(action) })
	return { kind: 'alert', title, text: stopText(member, t) }
}
/** How many pairs of a player have a verdict that was decided, or that warns of a danger. */
const hasPairs = (verdicts: readonly OwnedVerdict[], member: SquadMember): boolean =>
	planOf(member).owned.some((pair) => verdicts.includes(pair.verdict))
const isInsertWorn = (member: SquadMember): boolean =>
	insertWorn(planOf(member)) && !isPlanDeclined(member.decisions)
/** What was decided and recorded; a proposal that nobody settled counts nowhere. */
function countTable(members: readonly SquadMember[], t: Speak): Block {
	const inState = (state: string) => members.filter((member) => stateOf(member) === state)
	const seen = inState('assessed')
	const seenWith = (holds: (member: SquadMember) => boolean) => seen.filter(holds).length
	const counts: [string, number][] = [
		[t('squad.assessed'), seen.length],
		[t('squad.refused'), inState('refused').length],
		[t('squad.absent'), inState('absent').length],
		[t('squad.stopped'), seenWith((member) => isHeld(planOf(member).gate, 'sport'))],
		[t('squad.replace'), seenWith((member) => hasPairs(['replace', 'stop-wearing'], member))],
		[t('squad.change'), seenWith((member) => hasPairs(['modify', 'training-only'], member))],
		[t('squad.insert'), seenWith(isInsertWorn)],
		[t('squad.refer'), seenWith(({ decisions }) => !!decisions.referralDone?.trim())],
		[t('squad.reviews'), seenWith((member) => planOf(member).review !== undefined)],
		[t('squad.incomplete'), seenWith(({ assessment }) => assessment.missing.length > 0)],
	]
	return {
		kind: 'table',
		caption: t('squad.countsCaption'),
		head: [t('coach.item'), ...counts.map(([name]) => name)],
		widths: [60, ...counts.map(() => '*' as const)],
		align: ['left', ...counts.map(() => 'right' as const)],
		rows: [[t('squad.count'), ...counts.map(([, count]) => String(count))]],
	}
}
/** By what is asked for, then by what is held; who was not assessed stands last. */
function urgencyOf(member: SquadMember): number {
	if (stateOf(member) !== 'assessed') return -1
	const { gate } = planOf(member)
	const held = (['impact', 'match', 'sport'] as const).findLastIndex((what) => isHeld(gate, what))
	return actions.indexOf(actionIn(member)) * 10 + held + 1
}
const byUrgency = (members: readonly SquadMember[]): SquadMember[] =>
	members.toSorted((a, b) => urgencyOf(b) - urgencyOf(a) || (sortName(a) < sortName(b) ? -1 : 1))
const sortName = ({ visit }: SquadMember): string =>
	`${paperName(visit.player).familyName} ${nameOf(visit)}`
