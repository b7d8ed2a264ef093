/** The calls about the audit trail, the settings of the records, consents, and keeping. */
import { z } from 'zod'
import { call, clinicians, desk, owners, staff } from '../workplace/call.ts'
import { id, nothing, reason } from '../workplace/shapes.ts'
import { auditRowSchema } from './audit.ts'
import { consentSchema, newConsentSchema, purposeNames } from './consent.ts'
import { registerLineSchema } from './retention.ts'
import { recordSettingsSchema } from './settings.ts'

const auditRow = auditRowSchema.extend({ hash: z.string(), person: z.string() })

export const recordCalls = {
	/** `workstation` asks for the rows a laptop brought home, by the name `places` gives it. */
	'audit.page': call(
		z.strictObject({
			before: z.int().min(1).optional(),
			limit: z.int().min(1).max(500),
			playerId: id.optional(),
			function: z.string().max(40).optional(),
			workstation: id.optional(),
		}),
		z.strictObject({
			rows: z.array(auditRow),
			places: z.array(
				z.strictObject({
					workstation: z.string(),
					rows: z.number(),
					from: z.string(),
					to: z.string(),
				}),
			),
			/** a sentence where rows between these are missing or cannot be read */
			leftOut: z.string().optional(),
		}),
		owners,
	),
	'audit.verify': call(
		nothing,
		z.strictObject({
			rows: z.number(),
			/** of laptops, checked too */
			awayRows: z.number(),
			problems: z.array(z.string()),
		}),
		owners,
	),
	/** What was found amiss with the records and the owner has not looked into yet. */
	'audit.alarms': call(
		nothing,
		z.strictObject({ alarms: z.array(z.strictObject({ at: z.string(), says: z.string() })) }),
		owners,
	),
	/** The owner has looked into all of it: the heads go by what is there from now on. */
	'audit.settle': call(z.strictObject({ reason }), nothing, owners),
	'audit.export': call(
		nothing,
		z.strictObject({ csv: z.string(), rows: z.number(), leftOut: z.string().optional() }),
		owners,
	),
	'recordSettings.get': call(nothing, recordSettingsSchema, staff),
	'recordSettings.save': call(recordSettingsSchema, nothing, owners),
	'consents.list': call(
		z.strictObject({ playerId: id }),
		z.strictObject({ consents: z.array(consentSchema) }),
		staff,
	),
	'consents.record': call(
		z.strictObject({ playerId: id, consent: newConsentSchema }),
		z.strictObject({ consentId: id }),
		desk,
	),
	'consents.withdraw': call(
		z.strictObject({
			playerId: id,
			consentId: id,
			withdrawn: z.iso.date(),
			withdrawnBy: z.string().trim().min(1).max(160),
		}),
		nothing,
		desk,
	),
	/** Asked at the moment of use. */
	'consents.check': call(
		z.strictObject({ playerId: id, purpose: z.enum(purposeNames), recipient: z.string().max(160) }),
		z.strictObject({
			inForce: z.boolean(),
			because: z.string(),
			consentId: z.string().optional(),
			expires: z.string().optional(),
		}),
		staff,
	),
	'retention.due': call(
		z.strictObject({ on: z.iso.date().optional() }),
		z.strictObject({
			rule: z.string(),
			due: z.array(
				z.strictObject({
					playerId: id,
					name: z.string(),
					birthDate: z.string(),
					lastEntry: z.string(),
					keepUntil: z.string(),
				}),
			),
			held: z.array(z.strictObject({ playerId: id, name: z.string(), reason: z.string() })),
		}),
		owners,
	),
	'retention.hold': call(
		z.strictObject({ playerId: id, reason, on: z.boolean() }),
		nothing,
		clinicians,
	),
	/** Removes the bytes and keeps a register line. */
	'retention.destroy': call(
		z.strictObject({ playerId: id, reason, name: z.string().max(200), alsoBackups: z.boolean() }),
		z.strictObject({
			records: z.number(),
			/** backups of this PC and of others, by their file names */
			backupsThatStillHold: z.array(z.string()),
			/** why they remain, and what is to be done about it: a sentence each */
			says: z.array(z.string()),
		}),
		owners,
	),
	'retention.register': call(
		nothing,
		z.strictObject({ lines: z.array(registerLineSchema.omit({ recordIds: true })) }),
		owners,
	),
} as const
