/** The calls by which a folder or a file of this PC is chosen. */
import { z } from 'zod'
import { anyone, call } from '../workplace/call.ts'
import { filePath } from '../workplace/shapes.ts'
import { purposeNames } from './purposes.table.ts'

const purpose = z.enum(purposeNames)
/** a path as the host gave it: nothing is taken off its ends */
const listedPath = z.string().min(1).max(1000)
/** Kinds of places where looking begins. */
const placeKinds = ['home', 'documents', 'stick', 'drive', 'backups', 'last'] as const
export type PlaceKind = (typeof placeKinds)[number]

const entrySchema = z.strictObject({
	name: z.string(),
	path: z.string(),
	is: z.enum(['place', 'folder', 'file']),
	/** of a place */
	kind: z.enum(placeKinds).optional(),
	/** of a file */
	bytes: z.number().optional(),
	changedAt: z.string().optional(),
})
const lookSchema = z.strictObject({
	/** the folder that is looked into; absent where the places themselves are listed */
	at: z
		.strictObject({
			path: z.string(),
			name: z.string(),
			canWrite: z.boolean(),
			/** absent where the system does not tell */
			freeBytes: z.number().optional(),
		})
		.optional(),
	/** the folders above it, the place first */
	above: z.array(z.strictObject({ name: z.string(), path: z.string() })),
	entries: z.array(entrySchema),
	/** entries that are not listed, since there are too many */
	more: z.number(),
	/** what a person should know of the start, a sentence; empty where nothing */
	says: z.string(),
})
export type Look = z.infer<typeof lookSchema>
export type PlaceEntry = Look['entries'][number]

/**
 * Anybody may ask, since a new PC has nobody yet; the room lets choose only who may make the call
 * that the purpose serves.
 */
export const placeCalls = {
	/**
	 * The folders in a folder, and the files that the purpose wants. `at` absent: where the last
	 * choice was made; empty: the places to begin at.
	 */
	'places.look': call(
		z.strictObject({ purpose, at: listedPath.or(z.literal('')).optional() }),
		lookSchema,
		anyone,
	),
	'places.newFolder': call(
		z.strictObject({ purpose, at: listedPath, name: z.string().max(1000) }),
		z.strictObject({ path: z.string() }),
		anyone,
	),
	/**
	 * Checks a choice and remembers where it was made. `written`: a person wrote the path, or chose
	 * it in a dialog of the system; it may then lie outside of the places.
	 */
	'places.choose': call(
		z.strictObject({ purpose, path: filePath, written: z.boolean().optional() }),
		z.strictObject({ path: z.string() }),
		anyone,
	),
} as const
