/** The consents of a roster's form, each for the person it is meant for. */
import type { NewConsent, Purpose } from '../../../shared/desk/records/consent.ts'
import type { RosterRow } from '../../../shared/desk/squad/roster-row.ts'
import {
	type RosterPeople,
	rolesAsked,
	type SharingRole,
	sharingPurposes,
	sharingRoles,
} from '../../../shared/desk/squad/roster-sharing.ts'
import { dayHere } from '../../../shared/desk/workplace/local-day.ts'
import { ageYears } from '../../../shared/engine/visit/age.ts'
import type { Player } from '../../../shared/engine/visit/visit.ts'
import { fullName } from '../../../shared/engine/words/names.ts'
import { addressTyped, contactsOf, keepContact, warningsFor } from '../outbox/contacts.ts'
import { keepConsent, recordConsent } from '../people/consents.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { Refusal } from '../records/refusal.ts'

type Needs = Pick<Memory, 'clinic' | 'drafts' | 'outbox' | 'people' | 'players'>
/** A person whom consents are given for. */
interface Meant {
	name: string
	email: string
}
type PeopleMeant = Partial<Record<SharingRole, Meant>>
/** What the consents of one list have in common. */
export interface ConsentsOf {
	team: string
	day: string
	meant: PeopleMeant
}
const asked: Record<SharingRole, string> = {
	coach: 'the coach or club',
	doctor: 'the doctor or physiotherapist',
	laboratory: 'the laboratory',
}
/** @throws Refusal where it is not said whom a consent is for, or an address cannot stand */
export function peopleMeant(
	memory: Needs,
	rows: readonly RosterRow[],
	people: RosterPeople,
): PeopleMeant {
	const roles = rolesAsked(rows.flatMap(({ consents }) => consents))
	const open = roles.filter((role) => people[role] === undefined)
	if (open.length > 0)
		throw new Refusal(
			'squad.consent-for-whom',
			'The list holds consents without saying for whom. Name the person. Nothing was changed.',
			open.map((role) => ({
				path: `people.${role}`,
				message: `missing, given nothing, allowed: the name of ${asked[role]} it was given for`,
			})),
		)
	return Object.fromEntries(roles.map((role) => [role, checked(memory, role, people[role])]))
}
function checked(memory: Needs, role: SharingRole, person: RosterPeople[SharingRole]): Meant {
	const { name = '', warningsRead } = person ?? {}
	const email = addressTyped({ email: person?.email ?? '', emailAgain: person?.emailAgain ?? '' })
	const warnings = email ? warningsFor(memory, email, name) : []
	if (warnings.length > 0 && !warningsRead)
		throw new Refusal(
			'squad.address-not-read',
			'Read what is said of the address, then tick that it was checked. Nothing was changed.',
			warnings.map((message) => ({ path: `people.${role}.email`, message })),
		)
	return { name, email }
}
interface Consenting {
	playerId: string
	/** not on record before: nothing stands that could be followed */
	isNew: boolean
	player: Player
	consents: readonly Purpose[]
}
/** Keeps the consents of a row, and puts the person each is for on the player's record. */
export function consentsKept(
	memory: Needs,
	deps: Deps,
	{ playerId, isNew, player, consents }: Consenting,
	about: ConsentsOf,
): void {
	for (const purpose of consents) {
		const role = sharingRoles.find((one) => sharingPurposes[one] === purpose)
		const meant = role && about.meant[role]
		const recipient = meant?.name ?? (purpose === 'email' ? mailedTo(player) : '')
		const consent = consentOf(memory, deps, { purpose, recipient, player, day: about.day })
		if (isNew) keepConsent(deps, playerId, consent, undefined)
		else recordConsent(memory, deps, { playerId, consent })
		if (role && meant) putOnRecord(memory, deps, playerId, { role, ...meant })
	}
}
/** Mail goes to the guardian where there is one; a consent is for a person, not for an address. */
const mailedTo = (player: Player): string => player.guardian?.name ?? fullName(player)
function putOnRecord(
	memory: Needs,
	deps: Deps,
	playerId: string,
	person: Meant & { role: SharingRole },
): void {
	const isThere = contactsOf(memory, playerId).some(
		({ name, role, email = '' }) =>
			role === person.role &&
			name.toLowerCase() === person.name.toLowerCase() &&
			email === person.email,
	)
	if (!isThere) keepContact(memory, deps, { playerId, ...person })
}
interface ConsentOf {
	purpose: Purpose
	recipient: string
	player: Player
	day: string
}
function consentOf(
	{ clinic }: Needs,
	deps: Deps,
	{ purpose, recipient, player, day }: ConsentOf,
): NewConsent {
	const today = dayHere(deps.now())
	// a player of age consents alone, whoever else stands in the list
	const grantor: NewConsent['grantor'] =
		player.guardian && ageYears(player.birthDate, day) < clinic.settings.ages.adultYears
			? { name: player.guardian.name, relation: 'guardian' }
			: { name: fullName(player), relation: 'player' }
	return {
		purpose,
		recipient,
		decision: 'permit',
		grantor,
		method: 'written',
		textVersion: 'roster form',
		given: day < today ? day : today,
	}
}
