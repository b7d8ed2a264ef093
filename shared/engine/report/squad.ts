/** The squad summary for the clinician: counts, then one row a visit, the most urgent first. */
import { isHeld } from '../facts/held.ts'
import { actions, type KeptAssessment, type OwnedVerdict } from '../findings/assessment.ts'
import { isPlanDeclined } from '../visit/agreement.ts'
import type { Decisions } from '../visit/decisions.ts'
import type { Visit } from '../visit/visit.ts'
import { paperName } from '../words/names.ts'
import type { Speak } from '../words/speak.ts'
import { actionWords, dateWords, shown } from '../words/words.ts'
import { clinicianOf, heading, letterheadOf, nameOf, say, speakOf } from './base.ts'
import type { Clinic } from './clinic.ts'
import type { Block, LwDocument } from './document.ts'
import { insertWorn } from './insert-of.ts'
import { planOf } from './plan-of.ts'
import { isRaised, raiseLines } from './raise-lines.ts'
import { actionIn } from './referral/reasons.ts'
import { buyingWaits, waits } from './waits.ts'

export interface SquadMember {
	visit: Visit
	assessment: KeptAssessment
	decisions: Decisions
	/** Assessed where absent. */
	state?: 'assessed' | 'refused' | 'absent'
}
/** @param on ISO date of the list */
export function squadForClinician(
	members: readonly SquadMember[],
	clinic: Clinic,
	on: string,
	team?: string,
): LwDocument {
	const t = speakOf(clinic)
	const ofTeam: LwDocument['subject'] = team ? [[t('subject.team'), team]] : []
	return {
		title: t('squad.title'),
		kind: 'squad',
		language: 'en',
		draft: false,
		letterhead: letterheadOf(clinic),
		running: t('squad.confidential'),
		landscape: true,
		paper: clinic.paper ?? 'A4',
		subject: [
			...ofTeam,
			[t('subject.date'), dateWords(on)],
			[t('subject.status'), t('squad.confidential')],
		],
		blocks: [
			...stopped(members, t),
			heading(t('squad.counts')),
			countTable(members, t),
			heading(t('squad.list')),
			members.length === 0 ? say(t('squad.none')) : memberTable(members, t),
		],
		notes: [],
		footer: t('page.footerSquad', clinicianOf(clinic)),
		createdAt: `${on}T12:00:00.000Z`,
	}
}
/** Who must not do sport stands over everything, the most urgent first. */
function stopped(members: readonly SquadMember[], t: Speak): Block[] {
	const names = byUrgency(members)
		.filter((member) => stateOf(member) === 'assessed' && isHeld(planOf(member).gate, 'sport'))
		.map((member) => `${nameOf(member.visit)}: ${actionWords[actionIn(member)]}`)
	return names.length === 0
		? []
		: [{ kind: 'alert', title: t('squad.stopped'), text: `${names.join('; ')}.` }]
}
const stateOf = ({ state = 'assessed' }: SquadMember) => state
const stateWords = (member: SquadMember, t: Speak): string =>
	({
		assessed: t('squad.assessed'),
		refused: t('squad.refused'),
		absent: t('squad.absent'),
	})[stateOf(member)]
/** How many pairs of a player have a verdict that was decided, or that warns of a danger. */
const pairsWith = (verdicts: readonly OwnedVerdict[], member: SquadMember): number =>
	planOf(member).owned.filter((pair) => verdicts.includes(pair.verdict)).length
const isInsertWorn = (member: SquadMember): boolean =>
	insertWorn(planOf(member)) && !isPlanDeclined(member.decisions)
const toReplace = ['replace', 'stop-wearing'] as const
const toChange = ['modify', 'training-only'] as const

function countTable(members: readonly SquadMember[], t: Speak): Block {
	const inState = (state: string) => members.filter((member) => stateOf(member) === state)
	const seen = inState('assessed')
	const seenWith = (holds: (member: SquadMember) => boolean) => seen.filter(holds).length
	const counts: [string, number][] = [
		[t('squad.assessed'), seen.length],
		[t('squad.refused'), inState('refused').length],
		[t('squad.absent'), inState('absent').length],
		[t('squad.stopped'), seenWith((member) => isHeld(planOf(member).gate, 'sport'))],
		[t('squad.replace'), seenWith((member) => pairsWith(toReplace, member) > 0)],
		[t('squad.change'), seenWith((member) => pairsWith(toChange, member) > 0)],
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
		rows: [[t('squad.count'), ...counts.map(([, count]) => String(count))]],
	}
}
const memberTable = (members: readonly SquadMember[], t: Speak): Block => ({
	kind: 'table',
	caption: t('squad.caption'),
	head: [
		t('subject.player'),
		t('subject.born'),
		t('squad.state'),
		t('squad.inside'),
		t('squad.action'),
		t('squad.pairs'),
		t('squad.raise'),
		t('squad.review'),
		t('squad.missing'),
	],
	widths: ['*', 70, 80, 62, 92, 80, 90, 70, 46],
	rows: byUrgency(members).map((member) => memberRow(member, t)),
})
/** Stopped from sport first, then by what is asked for; who was not assessed stands last. */
function urgencyOf(member: SquadMember): number {
	if (stateOf(member) !== 'assessed') return -1
	const { gate } = planOf(member)
	return actions.indexOf(actionIn(member)) + (isHeld(gate, 'sport') ? actions.length : 0)
}
const byUrgency = (members: readonly SquadMember[]): SquadMember[] =>
	members.toSorted((a, b) => urgencyOf(b) - urgencyOf(a) || (sortName(a) < sortName(b) ? -1 : 1))
const sortName = ({ visit }: SquadMember): string =>
	`${paperName(visit.player).familyName} ${nameOf(visit)}`
/** The inside length that stands; none to buy by while buying waits. */
function insideWords(member: SquadMember, t: Speak): string {
	const { gate, size } = planOf({ ...member, draft: true })
	if (buyingWaits(gate)) return t('squad.waits')
	const { boots } = size
	return boots ? `${shown(boots.min)} to ${shown(boots.max)}` : t('common.notMeasured')
}
/** Who was not assessed stands in the list with nothing measured. */
function memberRow(member: SquadMember, t: Speak): string[] {
	const { visit, assessment } = member
	const who = [nameOf(visit), dateWords(visit.player.birthDate)]
	const state = stateWords(member, t)
	if (stateOf(member) !== 'assessed') return [...who, state, '', '', '', '', '', '']
	const plan = planOf(member)
	const raise = isRaised(plan) && !waits(plan.gate, 'raise') ? raiseLines(plan, visit, t) : []
	const action = actionWords[actionIn(member)]
	const declined = isPlanDeclined(member.decisions) ? [t('squad.declined')] : []
	return [
		...who,
		[state, dateWords(visit.visitDate), ...declined].join(', '),
		insideWords(member, t),
		isHeld(plan.gate, 'sport') ? t('squad.stop', { action }) : action,
		t('squad.pairsValue', {
			replace: pairsWith(toReplace, member),
			change: pairsWith(toChange, member),
		}),
		raise.join('; '),
		plan.review ? dateWords(plan.review.date) : '',
		String(assessment.missing.length),
	]
}
