/**
 * What travels in a pack: records as they stand in the store, drafts, and the manifest that names
 * it all.
 */
import { z } from 'zod'

const id = z.string().min(1).max(80)
/**
 * A record on its way: who wrote it (`origin`), where it stands in the order (`tick`), and whom it
 * is about.
 */
export const carriedSchema = z.strictObject({
	id,
	kind: z.string().max(40),
	/** of the form of its value; 1 where it is not given */
	version: z.int().min(1).optional(),
	at: z.string(),
	follows: id.optional(),
	origin: z.string().max(40),
	tick: z.int().min(0),
	/** among the records of its origin; absent in packs of the first version */
	number: z.int().min(0).optional(),
	/** of its author, base64 */
	signature: z.string().max(200).optional(),
	value: z.unknown(),
	about: id.optional(),
	thing: id.optional(),
	card: z.unknown().optional(),
})
export type Carried = z.infer<typeof carriedSchema>
export const carriedDraftSchema = z.strictObject({ id, at: z.string(), value: z.unknown() })
export type CarriedDraft = z.infer<typeof carriedDraftSchema>
/** A draft as it stood when a pack went out: what a change is measured against. */
const draftBaseSchema = z.strictObject({ id, digest: z.string() })
export type DraftBase = z.infer<typeof draftBaseSchema>

export const manifestSchema = z.strictObject({
	format: z.literal('lastwright-pack'),
	version: z.literal(1),
	packId: id,
	/** `out` goes to the laptop, `return` comes back and names the pack it answers. */
	direction: z.enum(['out', 'return']),
	answers: id.optional(),
	madeAt: z.string(),
	madeBy: z.strictObject({ personId: id, name: z.string() }),
	/** Last day on which it opens, ISO 8601. */
	expires: z.iso.date(),
	home: z.string(),
	clinicName: z.string(),
	players: z.array(
		z.strictObject({
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
	protocol: z.strictObject({ id: z.string(), version: z.number(), digest: z.string() }),
	shelf: z.boolean(),
	/** SHA-256 of each entry, in order: records first, then drafts. */
	sha256: z.array(z.string().regex(/^[0-9a-f]{64}$/)),
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
