/** The squad summary for the clinician: counts, then one row a visit, in order of name. */
import type { KeptAssessment } from '../findings/assessment.ts'
import type { Decisions } from '../visit/decisions.ts'
import type { Visit } from '../visit/visit.ts'
import type { Speak } from '../words/speak.ts'
import { actionWords, dateWords, shown } from '../words/words.ts'
import { clinicianOf, heading, letterheadOf, nameOf, say, speakOf } from './base.ts'
import type { Clinic } from './clinic.ts'
import { insertDecided } from './decided.ts'
import type { Block, LwDocument } from './document.ts'

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
const stateOf = ({ state = 'assessed' }: SquadMember) => state
const stateWords = (member: SquadMember, t: Speak): string =>
	({
		assessed: t('squad.assessed'),
		refused: t('squad.refused'),
		absent: t('squad.absent'),
	})[stateOf(member)]
/** How many pairs of a player have a verdict. */
const pairsWith = (verdict: string, { assessment }: SquadMember): number =>
	assessment.footwear.current.filter((pair) => pair.verdict === verdict).length

function countTable(members: readonly SquadMember[], t: Speak): Block {
	const inState = (state: string) => members.filter((member) => stateOf(member) === state)
	const seen = inState('assessed')
	const seenWith = (holds: (member: SquadMember) => boolean) => seen.filter(holds).length
	const counts: [string, number][] = [
		[t('squad.assessed'), seen.length],
		[t('squad.refused'), inState('refused').length],
		[t('squad.absent'), inState('absent').length],
		[t('squad.replace'), seenWith((member) => pairsWith('replace', member) > 0)],
		[t('squad.change'), seenWith((member) => pairsWith('change', member) > 0)],
		[t('squad.insert'), seenWith(({ decisions }) => insertDecided(decisions))],
		[t('squad.refer'), seenWith(({ assessment }) => assessment.screening.action !== 'proceed')],
		[t('squad.reviews'), seenWith(({ decisions }) => decisions.reviewDate !== undefined)],
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
	widths: ['*', 74, 86, 66, 92, 86, 44, 74, 46],
	rows: members
		.toSorted((a, b) => (sortName(a) < sortName(b) ? -1 : 1))
		.map((member) => memberRow(member, t)),
})
const sortName = ({ visit }: SquadMember): string => `${visit.player.familyName} ${nameOf(visit)}`
/** Who was not assessed stands in the list with nothing measured. */
function memberRow(member: SquadMember, t: Speak): string[] {
	const { visit, assessment, decisions } = member
	const who = [nameOf(visit), dateWords(visit.player.birthDate)]
	const state = stateWords(member, t)
	if (stateOf(member) !== 'assessed') return [...who, state, '', '', '', '', '', '']
	const { insideLengthMm } = assessment.sizing
	const raise = decisions.heelRaiseMm
	return [
		...who,
		`${state}, ${dateWords(visit.visitDate)}`,
		insideLengthMm
			? `${shown(insideLengthMm.min)} to ${shown(insideLengthMm.max)}`
			: t('common.notMeasured'),
		actionWords[assessment.screening.action],
		t('squad.pairsValue', {
			replace: pairsWith('replace', member),
			change: pairsWith('change', member),
		}),
		raise ? `${shown(raise.left)} / ${shown(raise.right)}` : '',
		decisions.reviewDate ? dateWords(decisions.reviewDate) : '',
		String(assessment.missing.length),
	]
}
