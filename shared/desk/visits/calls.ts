/** The calls about drafts, signed visits and their reports. */
import { z } from 'zod'
import { boundedRecord } from '../../engine/plain/bounded.ts'
import { clinicRecordSchema, clinicSchema } from '../../engine/report/clinic.ts'
import { decisionsSchema } from '../../engine/visit/decisions.ts'
import { mostTypedTwice, typedTwiceSchema } from '../../engine/visit/typed-twice.ts'
import { visitSchema } from '../../engine/visit/visit.ts'
import { call, clinicians, desk, treating } from '../workplace/call.ts'
import { id, nothing, page, pdf, reason } from '../workplace/shapes.ts'
import { signedPageSchema } from './kept-pages.ts'

/** A draft holds the visit as far as it is valid, and the raw text of fields that are not yet. */
export const draftContentSchema = z.strictObject({
	visit: visitSchema,
	raw: boundedRecord(200, z.string().max(20_000), 2000),
	decisions: decisionsSchema,
	step: z.string().max(40).optional(),
	/** entries of which two were typed: both are kept until one is chosen */
	typedTwice: z.array(typedTwiceSchema).max(mostTypedTwice).optional(),
})
export type DraftContent = z.infer<typeof draftContentSchema>

/** What stands in a signed record. The assessment is the engine's own output, kept as data. */
export const signedVisitSchema = z.strictObject({
	visitId: id,
	playerId: id,
	signedAt: z.string(),
	/**
	 * The day of signing on the clinic's calendar; absent in records of the first version of the
	 * program.
	 */
	signedOn: z.iso.date().optional(),
	signedBy: z.strictObject({ name: z.string(), registration: z.string() }),
	visit: visitSchema,
	assessment: z.unknown(),
	decisions: decisionsSchema,
	protocol: z.strictObject({ id: z.string(), version: z.number(), digest: z.string() }),
	/** SHA-256 of the canonical content. */
	digest: z.string(),
	clinic: clinicSchema,
	reportSha256: z.string(),
	/**
	 * Every page that was kept at signing, the player's report among them; the digest of the visit
	 * holds them. Absent in records of version 0.1.0.
	 */
	pages: z.array(signedPageSchema).optional(),
	/** Absent in version 1. */
	version: z.int().min(2).optional(),
	amends: z.strictObject({ reason: z.string(), digest: z.string() }).optional(),
	/** Who signed, by the list of people; absent in records of the first version of the program. */
	signer: z.strictObject({ personId: z.string(), role: z.string() }).optional(),
})
export type SignedVisit = z.infer<typeof signedVisitSchema>
/** The same as a record holds it: the letterhead of whichever version signed it. */
export const signedVisitRecordSchema = signedVisitSchema.extend({ clinic: clinicRecordSchema })
const draft = z.strictObject({
	draftId: id,
	playerId: id,
	savedAt: z.string(),
	/** tells this state of it from others */
	revision: z.string(),
	content: draftContentSchema,
})
/** The name that a window gives itself, anew whenever its page is loaded. */
const window = z.string().min(8).max(60)
const revision = z.string().max(4000)
/** Another window that has the draft open. */
const otherWindow = z.strictObject({
	/** who works there */
	by: z.string(),
	since: z.string(),
	/** the last entry there; absent where nothing was typed yet */
	typedAt: z.string().optional(),
})
const difference = z.strictObject({ path: z.string(), before: z.string(), after: z.string() })
const handed = z.strictObject({
	recipient: z.string(),
	channel: z.string(),
	version: z.number(),
	at: z.string(),
})
const noteSchema = z.strictObject({
	what: z.enum(['in-error', 'late-entry', 'countersign', 'statement']),
	text: z.string(),
	by: z.string(),
	at: z.string(),
	occurredOn: z.string().optional(),
	version: z.number(),
})
export type VisitNote = z.infer<typeof noteSchema>

export const visitCalls = {
	/**
	 * Resumes the player's open draft, or starts one dated `visitDate`; with `recheck` one that asks
	 * what the last signed visit makes worth asking.
	 */
	'drafts.open': call(
		z.strictObject({
			playerId: id,
			visitDate: z.iso.date(),
			window: window.optional(),
			recheck: z.boolean().optional(),
		}),
		z.strictObject({
			draft,
			others: z.array(otherWindow),
			earlier: z.array(visitSchema),
			/** earlier visits that cannot be read, in words: the comparison lacks them */
			lacking: z.array(z.string()).optional(),
			/** the signed visit that this draft will be the next version of, and why */
			amends: z.strictObject({ visitId: z.string(), reason: z.string() }).optional(),
		}),
		treating,
	),
	'drafts.save': call(
		z.strictObject({
			draftId: id,
			content: draftContentSchema,
			/**
			 * What the window last knew the host to have: what it did not change itself is then left as
			 * others have it. Without it all that differs is taken as typed now.
			 */
			base: draftContentSchema.optional(),
			window: window.optional(),
		}),
		z.strictObject({
			savedAt: z.string(),
			revision: z.string(),
			others: z.array(otherWindow),
			/** what stands, where that is other than what was sent */
			content: draftContentSchema.optional(),
		}),
		treating,
	),
	/** What others typed since, and who else has the draft open; a window asks by itself. */
	'drafts.look': call(
		z.strictObject({
			draftId: id,
			window,
			/** the state that it knows; what stands is answered where that is another */
			revision: revision.optional(),
			/** the window shows the draft no more */
			leaves: z.boolean().optional(),
		}),
		z.strictObject({
			others: z.array(otherWindow),
			savedAt: z.string().optional(),
			revision: z.string().optional(),
			content: draftContentSchema.optional(),
			/** the draft is open no more: signed, or put away, destroyed or joined with another */
			ended: z
				.strictObject({
					how: z.enum(['signed', 'gone']),
					at: z.string().optional(),
					by: z.string().optional(),
				})
				.optional(),
		}),
		treating,
	),
	'drafts.preview': call(z.strictObject({ draftId: id }), pdf, treating),
	'visits.sign': call(
		z.strictObject({
			draftId: id,
			/** the state that was looked over; refused where others typed something since */
			revision: revision.optional(),
		}),
		z.strictObject({ visitId: id }),
		treating,
	),
	'visits.open': call(z.strictObject({ visitId: id }), signedVisitSchema, treating),
	/**
	 * Opens a draft that becomes the next version when it is signed. The signed version stays as it
	 * is.
	 */
	'visits.amend': call(
		z.strictObject({ visitId: id, reason }),
		z.strictObject({ draftId: id }),
		clinicians,
	),
	'visits.history': call(
		z.strictObject({ visitId: id }),
		z.strictObject({
			versions: z.array(
				z.strictObject({
					version: z.number(),
					signedAt: z.string(),
					by: z.string(),
					reason: z.string().optional(),
					differences: z.array(difference),
					/** why this version cannot be read, in words */
					trouble: z.string().optional(),
				}),
			),
			notes: z.array(noteSchema),
			/** notes that cannot be read, in words */
			troubles: z.array(z.string()).optional(),
			handedOver: z.array(handed),
			tell: z.array(handed),
		}),
		treating,
	),
	'visits.markInError': call(z.strictObject({ visitId: id, reason }), nothing, clinicians),
	/**
	 * Words added afterwards, with their own author and time; a refused correction keeps the person's
	 * own statement.
	 */
	'visits.addNote': call(
		z.strictObject({
			visitId: id,
			what: z.enum(['late-entry', 'statement']),
			text: z.string().trim().min(1).max(4000),
			occurredOn: z.iso.date(),
		}),
		nothing,
		clinicians,
	),
	'visits.countersign': call(
		z.strictObject({ visitId: id, text: z.string().max(500) }),
		nothing,
		clinicians,
	),
	/** Notes that a report left the records: whom to tell after an amendment hangs on it. */
	'reports.handedOver': call(
		z.strictObject({
			visitId: id,
			recipient: z.string().trim().min(1).max(160),
			channel: z.enum(['print', 'export', 'send', 'by-hand']),
		}),
		nothing,
		desk,
	),
	'reports.open': call(
		z.strictObject({
			visitId: id,
			/** an earlier version; absent: the latest */
			version: z.number().int().min(1).optional(),
		}),
		pdf,
		treating,
	),
	/**
	 * The sheet for the appointment as it was kept at signing: its pages, and its first facts to be
	 * shown in short. Absent where the visit was signed before sheets were kept.
	 */
	'reports.sheet': call(
		z.strictObject({ visitId: id }),
		z.strictObject({
			sheet: z
				.strictObject({
					pdf,
					/** what is held, where anything is */
					held: z.string().optional(),
					facts: z.array(z.strictObject({ label: z.string(), text: z.string() })),
				})
				.optional(),
		}),
		treating,
	),
	/**
	 * A report as one page for a screen reader, from the very description its pages were drawn from.
	 */
	'reports.page': call(
		z.strictObject({
			visitId: id,
			/** an earlier version; absent: the latest */
			version: z.number().int().min(1).optional(),
		}),
		page,
		treating,
	),
	/** The same of the sheet for the appointment. */
	'reports.sheetPage': call(z.strictObject({ visitId: id }), page, treating),
} as const
