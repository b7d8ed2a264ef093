/** Every kind of document by its name: what it needs, and what composes it. */
import { ageYears } from '../visit/age.ts'
import type { ReportInput } from './base.ts'
import type { Clinic } from './clinic.ts'
import {
	type ClubAdds,
	type ClubConsent,
	clubFields,
	coachLetter,
	consentRefusal,
	squadForClub,
} from './club.ts'
import type { LwDocument } from './document.ts'
import { guardianSummary } from './guardian.ts'
import { insertOrder, standingInsert } from './insert-order.ts'
import { playerReport } from './player.ts'
import { referralLetter } from './referral.ts'
import { seasonChart } from './season-chart.ts'
import { type SquadMember, squadForClinician } from './squad.ts'

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
	paper?: 'A4' | 'A3'
	showName?: boolean
}
export interface Kind {
	/**
	 * One line per missing input: path, what is wrong, given, allowed; empty where it can be
	 * composed.
	 */
	problems(input: KindInput): string[]
	compose(input: KindInput): LwDocument
}
const minorUnder = 18
const adds = (input: KindInput, purpose: ClubConsent['purpose']): ClubAdds => ({
	on: input.on,
	purpose,
	...(input.plan ? { plan: input.plan } : {}),
	...input.clubAdds,
})
const all = (input: KindInput): SquadMember[] => [
	{ visit: input.visit, assessment: input.assessment, decisions: input.decisions },
	...(input.members ?? []),
]
const refused = (refusal: string | undefined): string[] => (refusal ? [refusal] : [])

const table = {
	player: { problems: () => [], compose: playerReport },
	guardian: {
		problems: ({ visit }) =>
			visit.player.guardian || ageYears(visit.player.birthDate, visit.visitDate) < minorUnder
				? []
				: [
						'player.guardian: missing, given nothing for a player of ' +
							`${ageYears(visit.player.birthDate, visit.visitDate)} years, allowed: a guardian, ` +
							`or a player under ${minorUnder}`,
					],
		compose: guardianSummary,
	},
	referral: { problems: () => [], compose: referralLetter },
	'insert-order': {
		problems: (input) => {
			const { left, right, result } = standingInsert(input)
			return left.length + right.length > 0
				? []
				: [
						`insert: nothing to order, given left ${result.left.state} and right ` +
							`${result.right.state}, allowed: a visit with findings that call for an insert, or ` +
							'elements the clinician added',
					]
		},
		compose: insertOrder,
	},
	'season-chart': {
		problems: ({ plan, visit }) =>
			plan && plan.sessions.length > 0
				? []
				: [
						'season: no sessions to draw, given ' +
							`${visit.season ? 'a season without a plan of sessions' : 'nothing'}, allowed: a ` +
							'visit with season.sessions or season.pattern and at least one pair, or a plan file',
					],
		compose: (input) =>
			seasonChart({
				visit: input.visit,
				decisions: input.decisions,
				clinic: input.clinic,
				plan: input.plan ?? { sessions: [], pairs: [] },
				paper: input.paper ?? 'A4',
				draft: input.draft,
				on: input.on,
				...(input.version ? { version: input.version } : {}),
				...(input.showName === undefined ? {} : { showName: input.showName }),
			}),
	},
	squad: {
		problems: (input) =>
			input.audience === 'club'
				? all(input).flatMap((member, at) =>
						refused(
							consentRefusal(input.consents?.[at], { on: input.on, purpose: 'squad-club' }),
						).map(
							(line) =>
								`${member.visit.player.givenName} ${member.visit.player.familyName}: ${line}`,
						),
					)
				: [],
		compose: (input) =>
			input.audience === 'club'
				? squadForClub(
						all(input).map((member, at) =>
							clubFields(member.visit, member.decisions, input.consents?.[at], {
								on: input.on,
								purpose: 'squad-club',
							}),
						),
						input.clinic,
						input.on,
						input.team,
					)
				: squadForClinician(all(input), input.clinic, input.on, input.team),
	},
	coach: {
		problems: (input) => refused(consentRefusal(input.consents?.[0], adds(input, 'coach'))),
		compose: (input) =>
			coachLetter(
				clubFields(input.visit, input.decisions, input.consents?.[0], adds(input, 'coach')),
				input.clinic,
				input.on,
			),
	},
} satisfies Record<string, Kind>
export type KindName = keyof typeof table
export const kinds: Record<KindName, Kind> = table
export const kindNames = Object.keys(kinds) as KindName[]
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
