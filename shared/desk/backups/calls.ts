/** The calls about backups. */
import { z } from 'zod'
import { backupReasons } from '../records/backup-name.ts'
import { call, owners, staff } from '../workplace/call.ts'
import { filePath, id, nothing, secret } from '../workplace/shapes.ts'
import { cameBackLineSchema, cameBackSchema, choices } from './came-back.ts'

const backupSchema = z.strictObject({
	file: z.string(),
	folder: z.string(),
	at: z.string(),
	reason: z.enum(backupReasons),
	bytes: z.number(),
	/** absent in the names that version 0.1.0 gave */
	origin: z.string().optional(),
	/** a record in it was damaged already when it was made */
	damaged: z.boolean().optional(),
	/** 'other': another PC made it; 'unknown': its name does not say, and it lies elsewhere */
	madeBy: z.enum(['this-pc', 'other', 'unknown']),
})
const previewSchema = z.strictObject({
	records: z.number(),
	visits: z.number(),
	lastAt: z.string().optional(),
	sameClinic: z.boolean().optional(),
	players: z.number().optional(),
	/** players that stand now and not in the backup, and the reverse */
	onlyNow: z.array(z.string()),
	onlyThen: z.array(z.string()),
	/** what cannot be opened in it, a sentence each */
	damaged: z.array(z.string()),
})
const shownList = cameBackSchema.omit({ lines: true }).extend({
	/** lines that nobody decided yet */
	open: z.int().min(0),
	lines: z.array(
		cameBackLineSchema.pick({ lineId: true, decided: true }).extend({
			what: z.string(),
			says: z.string(),
			/** the first stands already */
			choices: z.array(
				z.strictObject({
					choice: z.enum(choices),
					says: z.string(),
					asksPassphrase: z.boolean(),
				}),
			),
		}),
	),
})
/** The lists that wait, newest first; the last one decided where none waits. */
const listsSchema = z.strictObject({ lists: z.array(shownList) })

export const backupCalls = {
	'backups.list': call(
		nothing,
		z.strictObject({
			folder: z.string(),
			ageDays: z.number().optional(),
			nag: z.string(),
			backups: z.array(backupSchema),
		}),
		staff,
	),
	'backups.make': call(
		z.strictObject({ folder: filePath.optional() }),
		/** `says`: what is damaged here, and which older backup still has it; a sentence each */
		backupSchema.extend({ says: z.array(z.string()) }),
		staff,
	),
	'backups.setFolder': call(z.strictObject({ folder: filePath }), nothing, owners),
	'backups.preview': call(z.strictObject({ file: filePath }), previewSchema, owners),
	'backups.restore': call(
		/** `damageRead`: what is damaged in the backup was read, and it is restored all the same */
		z.strictObject({ file: filePath, damageRead: z.boolean().optional() }),
		z.strictObject({ before: z.string() }),
		owners,
	),
	/** What the last restores brought back or kept. */
	'backups.cameBack': call(nothing, listsSchema, owners),
	/** Decides lines of a list; a person who is let in again gets a new passphrase. */
	'backups.decide': call(
		z.strictObject({
			restoreId: id,
			decisions: z
				.array(
					z.strictObject({
						lineId: z.string().min(1).max(200),
						choice: z.enum(choices),
						passphrase: secret.optional(),
					}),
				)
				.min(1)
				.max(5000),
		}),
		listsSchema,
		owners,
	),
} as const
