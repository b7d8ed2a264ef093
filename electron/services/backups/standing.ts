/** What protects people, read out of the records of a store or of a backup. */
import { z } from 'zod'
import type { Standing, StandingConsent } from '../../../shared/desk/backups/compare.ts'
import { type OutboxItem, outboxItemSchema } from '../../../shared/desk/outbox/item.ts'
import { type Consent, consentSchema } from '../../../shared/desk/records/consent.ts'
import { staffRoles } from '../../../shared/desk/records/people.ts'
import { type RegisterLine, registerLineSchema } from '../../../shared/desk/records/retention.ts'
import type { Kind, NewRecord, StoredRecord } from '../../store/store.ts'
import type { PersonValue } from '../people/memory.ts'
import { Newest } from '../records/newest.ts'

/** A person as far as it is compared; whatever else stands there goes on with it. */
const personSchema: z.ZodType<PersonValue> = z.looseObject({
	personId: z.string(),
	slot: z.string(),
	name: z.string(),
	registration: z.string(),
	role: z.enum(staffRoles),
	active: z.boolean(),
	pin: z.object({ salt: z.string(), hash: z.string() }).optional(),
})
/** What is asked of a store, or of a file that is to take its place. */
export interface ReadableRecords {
	each: (kinds: readonly Kind[], use: (record: StoredRecord) => void, damaged: string[]) => void
}
/** The newest versions, each with the record that holds it. */
export interface Protected {
	people: Newest<PersonValue>
	consents: Newest<Consent>
	items: Newest<OutboxItem>
	/** the player each consent is about, by the consent's id */
	playerOf: Map<string, string>
	register: RegisterLine[]
}
/** The kinds whose records since the backup are taken in again: what protects people. */
export const protectiveKinds: readonly Kind[] = [
	'person',
	'consent',
	'register',
	'hold',
	'outbox',
	'sending',
	'sending-note',
	'breach',
	'restored',
]
const comparedKinds: readonly Kind[] = ['person', 'consent', 'outbox', 'register']

/** The player a record is about, as far as it is known. */
export type PlayerOf = (record: StoredRecord) => string | undefined

/**
 * Reads what protects people. A record that this version cannot read is left out; it is named where
 * the store is loaded.
 */
export function protectedIn(store: ReadableRecords, playerOf: PlayerOf): Protected {
	const found: Protected = {
		people: new Newest(),
		consents: new Newest(),
		items: new Newest(),
		playerOf: new Map(),
		register: [],
	}
	const take = (record: StoredRecord) => takers.get(record.kind)?.(found, record, playerOf)
	store.each(comparedKinds, take, [])
	return found
}
type Take = (found: Protected, record: StoredRecord, playerOf: PlayerOf) => void
const takers = new Map<Kind, Take>([
	[
		'person',
		({ people }, { id, value }) => {
			const read = personSchema.safeParse(value)
			if (read.success) people.take(read.data.personId, read.data, id)
		},
	],
	[
		'consent',
		({ consents, playerOf: players }, record, playerOf) => {
			const read = consentSchema.safeParse(record.value)
			if (!read.success) return
			const { consentId } = read.data
			consents.take(consentId, read.data, record.id)
			const playerId = playerOf(record)
			if (playerId !== undefined) players.set(consentId, playerId)
		},
	],
	[
		'outbox',
		({ items }, { id, value }) => {
			const read = outboxItemSchema.safeParse(value)
			if (read.success) items.take(read.data.itemId, read.data, id)
		},
	],
	[
		'register',
		({ register }, { value }) => {
			const read = registerLineSchema.safeParse(value)
			if (read.success) register.push(read.data)
		},
	],
])
/** As the comparison looks at it. */
export const standingOf = ({ people, consents, items, playerOf }: Protected): Standing => ({
	people: people.all(),
	items: items.all(),
	consents: consents.all().flatMap((consent): StandingConsent[] => {
		const playerId = playerOf.get(consent.consentId)
		const record = consents.recordOf(consent.consentId)
		return playerId === undefined || record === undefined ? [] : [{ playerId, record, consent }]
	}),
})
/** The record of an item's next version. */
export const itemRecord = (
	items: Pick<Newest<OutboxItem>, 'recordOf'>,
	item: OutboxItem,
): Omit<NewRecord, 'at'> => ({
	kind: 'outbox',
	follows: items.recordOf(item.itemId),
	value: item,
	about: item.playerId,
	thing: item.itemId,
})
