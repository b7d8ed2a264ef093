/** The calls about what became of visits. */
import { z } from 'zod'
import type { LwDocument } from '../../engine/report/document.ts'
import { call, clinicians, treating } from '../workplace/call.ts'
import { nothing, pdf } from '../workplace/shapes.ts'

const period = z.strictObject({ from: z.iso.date(), to: z.iso.date() })
const band = z.strictObject({ low: z.number(), high: z.number() })
const ownSchema = z.strictObject({
	/** how many forecasts there are; absent while they are too few to show */
	forecasts: z.number().optional(),
	least: z.number(),
	/** what the clinic's own forecasts say; absent while there are too few */
	band: band.optional(),
	/** what the protocol has now */
	inForce: band,
	/** the band in force was taken from the clinic's own forecasts */
	isTaken: z.boolean(),
})
export type OwnBand = z.infer<typeof ownSchema>

export const clinicAuditCalls = {
	/**
	 * Counts of what became of the visits of these days: a document of tables, without a name or an id.
	 * Counts that could tell who somebody is are not in it.
	 */
	'clinicAudit.read': call(
		/** absent: the last years up to today */
		z.strictObject({ days: period.optional() }),
		z.strictObject({
			days: period,
			document: z.custom<LwDocument>(),
			own: ownSchema,
			/** visits that cannot be read, how many: they are missing in the tables */
			unread: z.number(),
		}),
		clinicians,
	),
	/** The same as a file to print. */
	'clinicAudit.print': call(period, z.strictObject({ pdf }), clinicians),
	/** The same as lines of a table. */
	'clinicAudit.export': call(
		period,
		z.strictObject({ csv: z.string(), fileName: z.string() }),
		clinicians,
	),
	/** Puts the clinic's own error of these days into the protocol, as a new version. */
	'clinicAudit.adopt': call(period.extend({ band }), nothing, clinicians),
	/** Sets the band back to what it was before it was taken over, as a new version. */
	'clinicAudit.setBack': call(nothing, nothing, clinicians),
	/** Whether the forecast of the foot was wrong too often here, for who reads one. */
	'clinicAudit.forecast': call(nothing, z.strictObject({ says: z.array(z.string()) }), treating),
} as const
