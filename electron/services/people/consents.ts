import { randomUUID } from 'node:crypto'
import type { InputOf, OutputOf } from '../../../shared/contract.ts'
import { contestedConsents } from '../../../shared/desk/outreach/heads.ts'
import {
	type Consent,
	type ConsentAnswer,
	consentInForce,
	consentProblems,
	type NewConsent,
	type Purpose,
} from '../../../shared/desk/records/consent.ts'
import { dayHere } from '../../../shared/desk/workplace/local-day.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { Refusal } from '../records/refusal.ts'

interface OnRecord {
	/** the latest version of each consent, in order of recording */
	standing: { record: string; consent: Consent }[]
	/** a sentence for each record of a consent that cannot be read */
	unread: string[]
}
function consentsOf(
	{ players }: Pick<Memory, 'players'>,
	{ openAbout }: Deps,
	playerId: string,
): OnRecord {
	players.entry(playerId)
	const found = new Map<string, { record: string; consent: Consent }>()
	const unread: string[] = []
	for (const id of players.idsOf(playerId)) {
		const readable = openAbout('consent', id)
		for (const { id: record, value } of readable.records)
			found.set(value.consentId, { record, consent: value })
		unread.push(...readable.unread)
	}
	const standing = [...found.values()].sort((left, right) =>
		left.consent.recordedAt < right.consent.recordedAt ? -1 : 1,
	)
	return { standing, unread }
}
const day = (deps: Deps) => dayHere(deps.now())
export const listConsents = (
	memory: Pick<Memory, 'players'>,
	deps: Deps,
	{ playerId }: InputOf<'consents.list'>,
): OutputOf<'consents.list'> => ({
	consents: consentsOf(memory, deps, playerId).standing.map(({ consent }) => consent),
})

export function recordConsent(
	memory: Pick<Memory, 'players'>,
	deps: Deps,
	{ playerId, consent }: InputOf<'consents.record'>,
): OutputOf<'consents.record'> {
	// the last word on the same purpose and recipient: two places that did not know of each other
	// then show
	const last = consentsOf(memory, deps, playerId)
		.standing.filter(
			({ consent: earlier }) =>
				earlier.purpose === consent.purpose &&
				earlier.recipient.toLowerCase() === consent.recipient.toLowerCase(),
		)
		.at(-1)
	return { consentId: keepConsent(deps, playerId, consent, last?.record) }
}
/**
 * @param follows the record of the last word on the same purpose and recipient
 * @returns the id of the consent. @throws Refusal where it cannot stand
 */
export function keepConsent(
	deps: Deps,
	playerId: string,
	consent: NewConsent,
	follows: string | undefined,
): string {
	const problems = consentProblems(consent, day(deps))
	if (problems.length)
		throw new Refusal(
			'people.consent-cannot-stand',
			'This consent cannot stand as it is. Nothing was changed.',
			problems.map((problem) => ({ ...problem, path: `consent.${problem.path}` })),
		)
	const consentId = randomUUID()
	const at = deps.now().toISOString()
	deps.keep({
		kind: 'consent',
		at,
		follows,
		value: { ...consent, consentId, recordedAt: at },
		about: playerId,
		thing: consentId,
	})
	return consentId
}
/** A withdrawal is a record that follows the consent; it always wins. */
export function withdrawConsent(
	memory: Pick<Memory, 'players'>,
	deps: Deps,
	{ playerId, consentId, withdrawn, withdrawnBy }: InputOf<'consents.withdraw'>,
): OutputOf<'consents.withdraw'> {
	const found = consentsOf(memory, deps, playerId).standing.find(
		({ consent }) => consent.consentId === consentId,
	)
	if (!found)
		throw new Refusal('people.consent-unknown', 'This consent is not on record for this player.')
	if (found.consent.withdrawn !== undefined)
		throw new Refusal(
			'people.withdrawn-already',
			`This consent was withdrawn on ${found.consent.withdrawn} already.`,
		)
	if (withdrawn > day(deps) || withdrawn < found.consent.given)
		throw new Refusal('people.withdrawal-day', 'The day of withdrawal cannot stand.', [
			{
				path: 'withdrawn',
				message: `given ${withdrawn}, allowed: ${found.consent.given} to ${day(deps)}`,
			},
		])
	deps.keep({
		kind: 'consent',
		follows: found.record,
		value: { ...found.consent, withdrawn, withdrawnBy },
		about: playerId,
		thing: consentId,
	})
	return {}
}
/**
 * The one question to ask before anything is sent, shared or shown: at that moment, of the records
 * as they are.
 */
export function checkConsent(
	memory: Pick<Memory, 'clinic' | 'outreach' | 'players'>,
	deps: Deps,
	playerId: string,
	purpose: Purpose,
	recipient: string,
): ConsentAnswer {
	const { player } = memory.players.entry(playerId)
	const { joined } = memory.outreach
	const { standing: all, unread } = consentsOf(memory, deps, playerId)
	const [notRead] = unread
	// it may be a withdrawal, whatever the others say
	if (notRead !== undefined)
		return { inForce: false, because: `A consent of this player cannot be read. ${notRead}` }
	const standing = all.filter(({ record }) => !joined.has(record))
	const [contested] = contestedConsents(
		standing.map(({ record }) => deps.openRecord('consent', record)),
		joined,
	).filter(
		(consent) =>
			consent.purpose === purpose &&
			consent.recipient.toLowerCase() === recipient.trim().toLowerCase(),
	)
	if (contested)
		return {
			inForce: false,
			because:
				'This consent was recorded differently here and on an outreach day. The stricter one ' +
				'holds until it is answered in Outreach.',
			consentId: deps.openRecord('consent', contested.standing).value.consentId,
		}
	return consentInForce(
		standing.map(({ consent }) => consent),
		{
			purpose,
			recipient,
			on: day(deps),
			birthDate: player.birthDate,
			ages: memory.clinic.settings.ages,
		},
	)
}
