/** What stood before a restore against what the backup holds: which lines there are to decide. */
import type { OutboxItem } from '../outbox/item.ts'
import type { Consent } from '../records/consent.ts'
import { type CameBackLine, lineOf, type PersonFacts } from './came-back.ts'

export interface StandingPerson extends PersonFacts {
	personId: string
	active: boolean
}
export interface StandingConsent {
	playerId: string
	/** the record of its newest version */
	record: string
	consent: Consent
}
/** What protects people, as it stands in a store: the newest version of each. */
export interface Standing {
	people: readonly StandingPerson[]
	consents: readonly StandingConsent[]
	items: readonly OutboxItem[]
}
const factsOf = ({ name, registration, role }: PersonFacts): PersonFacts => ({
	name,
	registration,
	role,
})
const sameFacts = (first: PersonFacts, second: PersonFacts): boolean =>
	first.name === second.name &&
	first.registration === second.registration &&
	first.role === second.role

/** People who were added, changed or taken off since the backup, or whom only the backup knows. */
function peopleLines(before: Standing, backup: Standing): CameBackLine[] {
	const then = new Map(backup.people.map((person) => [person.personId, person]))
	const now = new Set(before.people.map((person) => person.personId))
	return [
		...before.people.flatMap((person) => personLine(person, then.get(person.personId))),
		...backup.people
			.filter((person) => person.active && !now.has(person.personId))
			.map((person) => personChanged('came-back', person)),
	]
}
function personLine(now: StandingPerson, was: StandingPerson | undefined): CameBackLine[] {
	const { personId } = now
	if (!was?.active)
		return now.active
			? [lineOf({ what: 'person', personId, change: 'added' }, ['as-in-backup'])]
			: []
	if (!now.active) return [personChanged('retired', was)]
	return sameFacts(now, was) ? [] : [personChanged('changed', was)]
}
function personChanged(
	change: 'retired' | 'changed' | 'came-back',
	was: StandingPerson,
): CameBackLine {
	// the owner is the clinician of the letterhead: changed there
	const others = was.role === 'owner' ? [] : (['as-in-backup'] as const)
	return lineOf({ what: 'person', personId: was.personId, change, was: factsOf(was) }, others)
}
/** Consents that were withdrawn, given or refused since the backup. */
function consentLines(before: Standing, backup: Standing): CameBackLine[] {
	const then = new Map(backup.consents.map((known) => [known.consent.consentId, known]))
	return before.consents.flatMap(({ playerId, consent }) => {
		const { consentId, withdrawn, decision } = consent
		const was = then.get(consentId)
		const what = 'consent' as const
		if (!was) {
			if (withdrawn !== undefined) return []
			const change = decision === 'permit' ? 'given' : 'refused'
			return [lineOf({ what, consentId, playerId, change })]
		}
		if (withdrawn === undefined || was.consent.withdrawn !== undefined) return []
		return [
			lineOf({ what, consentId, playerId, change: 'withdrawn', wasRecord: was.record }, [
				'as-in-backup',
			]),
		]
	})
}
const leftStates: readonly OutboxItem['state'][] = ['sent', 'delivered', 'returned']
/** Whether a document is known to have left. */
export const hasLeft = (item: OutboxItem | undefined): boolean =>
	item !== undefined && (item.sentAt !== undefined || leftStates.includes(item.state))

/** What was sent since the backup. */
function sentLines(before: Standing, backup: Standing): CameBackLine[] {
	const then = new Map(backup.items.map((item) => [item.itemId, item]))
	return before.items.flatMap((item) => {
		const { itemId, playerId, sentAt = '' } = item
		return hasLeft(item) && !hasLeft(then.get(itemId))
			? [lineOf({ what: 'sending', itemId, playerId, at: sentAt })]
			: []
	})
}
/**
 * What changed between a backup and what stood before the restore, each a line to decide. As it
 * stood before is what is kept.
 * @param passphrases people whose passphrase was changed since the backup
 */
export function whatCameBack(
	before: Standing,
	backup: Standing,
	passphrases: readonly string[],
): CameBackLine[] {
	const known = new Set(backup.people.map((person) => person.personId))
	const active = new Set(
		before.people.filter((person) => person.active).map((person) => person.personId),
	)
	return [
		...peopleLines(before, backup),
		...passphrases
			.filter((personId) => known.has(personId) && active.has(personId))
			.map((personId) => lineOf({ what: 'passphrase', personId })),
		...consentLines(before, backup),
		...sentLines(before, backup),
	]
}
/** After a move: everybody who can open the records that were brought, and may have left since. */
export const whoCanOpen = (people: readonly StandingPerson[]): CameBackLine[] =>
	people
		.filter((person) => person.active)
		.map((person) =>
			lineOf(
				{ what: 'person', personId: person.personId, change: 'opens', was: factsOf(person) },
				person.role === 'owner' ? [] : ['take-off'],
			),
		)
/** How an item stands that must not leave by itself after a restore; undefined where it rests. */
export function mustBeChecked(item: OutboxItem): 'ready' | 'leaving' | 'uncertain' | undefined {
	if (item.state === 'uncertain') return 'uncertain'
	if (item.state !== 'ready') return undefined
	return item.handing ? 'leaving' : 'ready'
}
