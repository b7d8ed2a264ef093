/** Every kind of document by its name: what it needs, and what composes it. */

import { isMinor } from '../facts/age.ts'
import { isHeld } from '../facts/held.ts'
import { present } from '../plain/present.ts'
import { openProtocol } from '../protocol/protocol.ts'
import { ageYears } from '../visit/age.ts'
import { isPlanDeclined } from '../visit/agreement.ts'
import { adjustmentsOf, keptInsertOf } from './adjustments-of.ts'
import { appointmentSheet } from './appointment.ts'
import { nameOf } from './base.ts'
import type { Clinic } from './clinic.ts'
import { type ClubAdds, type ClubConsent, clubFields, consentRefusal } from './club.ts'
import { coachLetter } from './coach-letter.ts'
import type { LwDocument } from './document.ts'
import { guardianSummary } from './guardian.ts'
import type { ReportInput } from './inputs.ts'
import { insertOf } from './insert-of.ts'
import { insertOrder } from './insert-order.ts'
import { planOf } from './plan-of.ts'
import { playerReport } from './player.ts'
import { hasReason } from './referral/reasons.ts'
import { referralLetter } from './referral.ts'
import { wornIn } from './season-chart/chart-input.ts'
import { seasonChart } from './season-chart.ts'
import type { SquadMember } from './squad/member.ts'
import { squadForClinician } from './squad.ts'
import { squadForClub } from './squad-for-club.ts'
import { waits } from './waits.ts'

export interface KindInput extends ReportInput {
	/** ISO date on which the document is made. */
	on: string
	/** The other members of the squad. */
	members?: readonly SquadMember[]
	team?: string
	/** The squad summary: for the clinician where absent. */
	audience?: 'clinician' | 'club'
	/** Consents by place: this visit's first, then the members' in their order. */
	consents?: readonly (ClubConsent | undefined)[]
	clubAdds?: Pick<ClubAdds, 'limits' | 'minutesToChange'>
	/** Of the season chart; that of the clinic where absent. */
	paper?: 'A4' | 'Letter' | 'A3'
	showName?: boolean
}
interface Kind {
	/**
	 * One line per missing input: path, what is wrong, given, allowed; empty where it can be
	 * composed.
	 */
	problems(input: KindInput): string[]
	compose(input: KindInput): LwDocument
}
const guardianProblems = ({ visit, protocol = openProtocol() }: KindInput): string[] => {
	const { player, visitDate } = visit
	if (player.guardian || isMinor(visit, protocol)) return []
	const years = ageYears(player.birthDate, visitDate)
	return [
		`player.guardian: missing, given nothing for a player of ${years} years, allowed: ` +
			`a guardian, or a player under ${protocol.value('player.adultFromYears')}`,
	]
}
const referralProblems = (input: KindInput): string[] =>
	hasReason(input)
		? []
		: [
				'referral: no reason for a letter, given a visit without a sign that asks for one, ' +
					'allowed: a visit with such a sign, or a request of the clinician',
			]
/** What was declined is not ordered. */
const insertProblems = (input: KindInput): string[] => {
	if (isPlanDeclined(input.decisions))
		return [
			'decisions.agreement.answer: the plan was declined, given declined, allowed: a plan that was ' +
				'agreed to, at least in part',
		]
	if (adjustmentsOf(input)) return []
	const kept = keptInsertOf(input)
	if (kept)
		return [
			`insert: nothing to order, given an insert of ${kept.orderedOn} that goes on being worn as it ` +
				'is, allowed: an adjustment of it, or a new one in its place',
		]
	const { left, right } = insertOf(input)
	if (left.length + right.length > 0) return []
	const { insert, gate } = planOf(input)
	if (isHeld(gate, 'sport'))
		return [
			'insert: held, given a visit whose sport waits and with it every insert, allowed: a visit ' +
				'in which nothing holds sport',
		]
	return [
		`insert: nothing to order, given left ${insert.left.state} and right ` +
			`${insert.right.state}, allowed: a visit with findings that call for an insert, or ` +
			'elements the clinician added',
	]
}
const seasonProblems = (input: KindInput): string[] => {
	const { plan, visit } = input
	if (waits(planOf(input).gate, 'season'))
		return [
			'season: held, given a visit whose sport or season waits, allowed: a visit in which ' +
				'nothing holds it',
		]
	if (plan && plan.sessions.length > 0) return []
	return [
		'season: no sessions to draw, given ' +
			`${visit.season ? 'a season without a plan of sessions' : 'nothing'}, allowed: a ` +
			'visit with season.sessions or season.pattern and at least one pair, or a plan file',
	]
}
const composeSeason = (input: KindInput): LwDocument => {
	const { clinic, visit, draft, on, paper = clinic.paper ?? 'A4', version, showName } = input
	const plan = input.plan ?? { sessions: [], pairs: [] }
	return seasonChart(
		present({ ...wornIn(input), visit, clinic, plan, paper, draft, on, version, showName }),
	)
}
const refused = (refusal: string | undefined): string[] => (refusal ? [refusal] : [])
/** This visit first, then the other members in their order. */
const squadOf = ({ visit, assessment, decisions, members = [] }: KindInput): SquadMember[] => [
	{ visit, assessment, decisions },
	...members,
]
/** The club reads of no player without a consent in force. */
const squadProblems = (input: KindInput): string[] => {
	if (input.audience !== 'club') return []
	const asked = { on: input.on, purpose: 'squad-club' } as const
	return squadOf(input).flatMap(({ visit }, place) =>
		refused(consentRefusal(input.consents?.[place], asked)).map(
			(line) => `${nameOf(visit)}: ${line}`,
		),
	)
}
const composeSquad = (input: KindInput): LwDocument => {
	const { clinic, on, team, draft } = input
	const members = squadOf(input)
	if (input.audience !== 'club') return squadForClinician(members, { clinic, on, team, draft })
	const players = members.map((member, place) =>
		clubFields({ ...member, draft }, input.consents?.[place], { on, purpose: 'squad-club' }),
	)
	return squadForClub(players, { clinic, on, team, draft })
}
const coachAdds = ({ on, plan, clubAdds }: KindInput): ClubAdds => ({
	...present({ on, purpose: 'coach' as const, plan }),
	...clubAdds,
})
const composeCoach = (input: KindInput): LwDocument => {
	const { consents, clinic, on, draft } = input
	return coachLetter(clubFields(input, consents?.[0], coachAdds(input)), { clinic, on, draft })
}
const nothingMissing = (): string[] => []

const table = {
	player: { problems: nothingMissing, compose: playerReport },
	appointment: { problems: nothingMissing, compose: appointmentSheet },
	guardian: { problems: guardianProblems, compose: guardianSummary },
	referral: { problems: referralProblems, compose: referralLetter },
	'insert-order': { problems: insertProblems, compose: insertOrder },
	'season-chart': { problems: seasonProblems, compose: composeSeason },
	squad: { problems: squadProblems, compose: composeSquad },
	coach: {
		problems: (input) => refused(consentRefusal(input.consents?.[0], coachAdds(input))),
		compose: composeCoach,
	},
} satisfies Record<string, Kind>
export type KindName = keyof typeof table
/** Every kind of document by its name. */
export const kinds: Record<KindName, Kind> = table
export const kindNames = Object.keys(kinds) as KindName[]
/** Whether this version can write a kind of that name. */
export const isKind = (name: unknown): name is KindName =>
	typeof name === 'string' && Object.hasOwn(kinds, name)
/** A clinic that was not given: the pages say so. */
export const unnamedClinic: Clinic = {
	format: 'lastwright-clinic',
	version: 1,
	name: 'Footwear assessment',
	address: [],
	colour: '#1f5f5b',
	clinician: { name: 'the assessing clinician', registration: 'not stated' },
}
