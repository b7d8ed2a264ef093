/** The squad summary for the clinician: counts, then one row a visit, in order of name. */
import type { Assessment } from '../findings/assessment.ts'
import type { Decisions } from '../visit/decisions.ts'
import type { Visit } from '../visit/visit.ts'
import { actionWords, dateWords, shown } from '../words/words.ts'
import { clinicianOf, heading, letterheadOf, nameOf, speakOf } from './base.ts'
import type { Clinic } from './clinic.ts'
import { insertDecided } from './club.ts'
import type { LwDocument } from './document.ts'

export interface SquadMember {
	visit: Visit
	assessment: Assessment
	decisions: Decisions
	/** assessed where absent */
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
	const states = {
		assessed: t('squad.assessed'),
		refused: t('squad.refused'),
		absent: t('squad.absent'),
	}
	const stateOf = (one: SquadMember) => one.state ?? 'assessed'
	const seen = members.filter((member) => stateOf(member) === 'assessed')
	const has = (verdict: string) => (one: SquadMember) =>
		one.assessment.footwear.current.some((pair) => pair.verdict === verdict)
	const counts: [string, number][] = [
		[states.assessed, seen.length],
		[states.refused, members.filter((member) => stateOf(member) === 'refused').length],
		[states.absent, members.filter((member) => stateOf(member) === 'absent').length],
		[t('squad.replace'), seen.filter(has('replace')).length],
		[t('squad.change'), seen.filter(has('change')).length],
		[t('squad.insert'), seen.filter((member) => insertDecided(member.decisions)).length],
		[
			t('squad.refer'),
			seen.filter((member) => member.assessment.screening.action !== 'proceed').length,
		],
		[t('squad.reviews'), seen.filter((member) => member.decisions.reviewDate !== undefined).length],
		[t('squad.incomplete'), seen.filter((member) => member.assessment.missing.length > 0).length],
	]
	const rows = members
		.toSorted((a, b) =>
			`${a.visit.player.familyName} ${nameOf(a.visit)}` <
			`${b.visit.player.familyName} ${nameOf(b.visit)}`
				? -1
				: 1,
		)
		.map((member) => {
			const { visit, assessment, decisions } = member
			const name = nameOf(visit)
			if (stateOf(member) !== 'assessed')
				return [
					name,
					dateWords(visit.player.birthDate),
					states[stateOf(member)],
					'',
					'',
					'',
					'',
					'',
					'',
				]
			const { insideLengthMm } = assessment.sizing
			const count = (verdict: string) =>
				assessment.footwear.current.filter((pair) => pair.verdict === verdict).length
			const raise = decisions.heelRaiseMm
			return [
				name,
				dateWords(visit.player.birthDate),
				`${states.assessed}, ${dateWords(visit.visitDate)}`,
				insideLengthMm
					? `${shown(insideLengthMm.min)} to ${shown(insideLengthMm.max)}`
					: t('common.notMeasured'),
				actionWords[assessment.screening.action],
				t('squad.pairsValue', { replace: count('replace'), change: count('change') }),
				raise ? `${shown(raise.left)} / ${shown(raise.right)}` : '',
				decisions.reviewDate ? dateWords(decisions.reviewDate) : '',
				String(assessment.missing.length),
			]
		})
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
			...(team ? [[t('subject.team'), team] as [string, string]] : []),
			[t('subject.date'), dateWords(on)],
			[t('subject.status'), t('squad.confidential')],
		],
		blocks: [
			heading(t('squad.counts')),
			{
				kind: 'table',
				caption: t('squad.countsCaption'),
				head: [t('coach.item'), ...counts.map(([name]) => name)],
				widths: [60, ...counts.map(() => '*' as const)],
				rows: [[t('squad.count'), ...counts.map(([, count]) => String(count))]],
			},
			heading(t('squad.list')),
			rows.length === 0
				? { kind: 'text', text: t('squad.none') }
				: {
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
						rows,
					},
		],
		notes: [],
		footer: t('page.footerSquad', clinicianOf(clinic)),
		createdAt: `${on}T12:00:00.000Z`,
	}
}
