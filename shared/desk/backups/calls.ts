/** The calls about backups. */
import { z } from 'zod'
import { backupReasons } from '../records/backup-name.ts'
import { call, owners, staff } from '../workplace/call.ts'
import { filePath, nothing } from '../workplace/shapes.ts'

const backupSchema = z.strictObject({
	file: z.string(),
	folder: z.string(),
	at: z.string(),
	reason: z.enum(backupReasons),
	bytes: z.number(),
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
})

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
	'backups.make': call(z.strictObject({ folder: filePath.optional() }), backupSchema, staff),
	'backups.setFolder': call(z.strictObject({ folder: filePath }), nothing, owners),
	'backups.preview': call(z.strictObject({ file: filePath }), previewSchema, owners),
	'backups.restore': call(
		z.strictObject({ file: filePath }),
		z.strictObject({ before: z.string() }),
		owners,
	),
} as const
