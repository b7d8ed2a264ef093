/**
 * What travels in a pack: records as they stand in the store, drafts, and the manifest that names
 * it all. Keys that a later version adds are left out of what is read here; who reads a pack names
 * them.
 */
import { z } from 'zod'
import { staffRoles } from '../records/people.ts'

const id = z.string().min(1).max(80)
const origin = z.string().max(40)
/**
 * A record on its way: who wrote it (`origin`), where it stands in the order (`tick`, and `number`
 * among those of its author), and whom it is about. Records of the first version of the program
 * have neither `version`, `number` nor `signature`.
 */
export const carriedSchema = z.object({
	id,
	kind: z.string().min(1).max(40),
	/** version of the form of its value; 1 where absent */
	version: z.int().min(1).optional(),
	at: z.iso.datetime({ offset: true }),
	follows: id.optional(),
	origin,
	tick: z.int().min(0),
	number: z.int().min(0).optional(),
	value: z.unknown(),
	about: id.optional(),
	thing: id.optional(),
	card: z.unknown().optional(),
	/** by the installation that wrote it */
	signature: z.string().max(200).optional(),
})
export type Carried = z.infer<typeof carriedSchema>
export const carriedDraftSchema = z.object({
	id,
	at: z.iso.datetime({ offset: true }),
	value: z.unknown(),
})
export type CarriedDraft = z.infer<typeof carriedDraftSchema>
/** A draft as it stood when a pack went out: what a change is measured against. */
const draftBaseSchema = z.object({ id, digest: z.string() })
export type DraftBase = z.infer<typeof draftBaseSchema>
/** The installation that made a pack; its public key is base64 of DER (SPKI). */
const makerSchema = z.object({ origin, publicKey: z.string().max(200) })
export type Maker = z.infer<typeof makerSchema>

/** Someone of the clinic as a laptop needs to know them; a PIN never travels. */
export const carriedPersonSchema = z.object({
	personId: id,
	slot: id,
	name: z.string(),
	registration: z.string(),
	role: z.enum(staffRoles),
	active: z.boolean(),
})
export type CarriedPerson = z.infer<typeof carriedPersonSchema>

export const manifestSchema = z.object({
	format: z.literal('lastwright-pack'),
	/** of the file's form: 1 of program 0.1.0, 2 since */
	version: z.int().min(1),
	packId: id,
	/** `out` goes to the laptop, `return` comes back and names the pack it answers. */
	direction: z.enum(['out', 'return']),
	answers: id.optional(),
	/** how many files for the way back the laptop had made when it made this one; from version 2 */
	turn: z.int().min(1).optional(),
	madeAt: z.iso.datetime({ offset: true }),
	madeBy: z.object({ personId: id, name: z.string() }),
	/** Last day on which it opens, ISO 8601. */
	expires: z.iso.date(),
	/** The installation at home, as it was named when the pack went out. */
	home: z.string(),
	/** The clinic's records, which keep this name for ever; from version 2. */
	recordsId: z.string().optional(),
	/** from version 2 */
	installation: makerSchema.optional(),
	/** who works at home, as far as the laptop needs them; from version 2 */
	people: z.array(carriedPersonSchema).optional(),
	clinicName: z.string(),
	players: z.array(
		z.object({
			playerId: id,
			name: z.string(),
			birthDate: z.string(),
			visits: z.int().min(0),
		}),
	),
	counts: z.record(z.string(), z.int().min(0)),
	records: z.int().min(0),
	drafts: z.int().min(0),
	bases: z.array(draftBaseSchema),
	/** The protocol the engine of the maker works by. */
	protocol: z.object({ id: z.string(), version: z.number(), digest: z.string() }),
	shelf: z.boolean(),
	/** SHA-256 of each entry, in order: records first, then drafts. */
	sha256: z.array(z.string().regex(/^[0-9a-f]{64}$/, '64 hex digits')),
})
export type Manifest = z.infer<typeof manifestSchema>

type Place = Pick<Carried, 'tick' | 'origin' | 'id'>
/** Order of records that every store agrees on, in whatever order they arrived. */
export function inOrder(first: Place, second: Place): number {
	if (first.tick !== second.tick) return first.tick - second.tick
	if (first.origin !== second.origin) return first.origin < second.origin ? -1 : 1
	if (first.id === second.id) return 0
	return first.id < second.id ? -1 : 1
}
