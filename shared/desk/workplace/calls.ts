/** The calls about letterhead, protocol, and the look of this PC. */
import { z } from 'zod'
import { boundedRecord } from '../../engine/plain/bounded.ts'
import { protocolSchema } from '../../engine/protocol/protocol.ts'
import { clinicSchema } from '../../engine/report/clinic.ts'
import { anyone, call, clinicians, staff } from './call.ts'
import { lookSchema } from './look.ts'
import { id, nothing, reason } from './shapes.ts'

const thresholds = boundedRecord(80, z.number().min(-1_000_000).max(1_000_000), 1000)

export const workplaceCalls = {
	'clinic.get': call(nothing, clinicSchema, staff),
	'clinic.save': call(clinicSchema, nothing, clinicians),
	/** The thresholds in force; without `savedAs` the shipped ones. */
	'protocol.get': call(
		nothing,
		z.strictObject({ file: protocolSchema, savedAs: id.optional() }),
		staff,
	),
	/** Newest first. */
	'protocol.versions': call(
		nothing,
		z.strictObject({
			versions: z.array(
				z.strictObject({
					savedAs: id,
					file: protocolSchema,
					why: z.string(),
					by: z.string(),
					at: z.string(),
				}),
			),
		}),
		staff,
	),
	/** What the findings of the demo visits would say; nothing is saved. */
	'protocol.preview': call(
		z.strictObject({ values: thresholds, fpiScheme: z.enum(['raw', 'trial']).optional() }),
		z.strictObject({
			visits: z.number(),
			changes: z.array(
				z.strictObject({
					name: z.string(),
					visitDate: z.string(),
					gone: z.array(z.string()),
					added: z.array(z.string()),
				}),
			),
		}),
		clinicians,
	),
	/**
	 * All values the clinic sets; a key left out has the shipped value. `follows` is the version it
	 * was changed from.
	 */
	'protocol.save': call(
		z.strictObject({
			values: thresholds,
			fpiScheme: z.enum(['raw', 'trial']).optional(),
			why: reason,
			follows: id.optional(),
		}),
		z.strictObject({ file: protocolSchema, savedAs: id }),
		clinicians,
	),
	/** How this PC shows the screens; nothing personal in it. */
	'look.get': call(nothing, lookSchema, anyone),
	'look.save': call(lookSchema, nothing, staff),
} as const
