/**
 * The settings file of this PC: nothing personal in it. A broken one is kept aside and said so,
 * never wiped.
 */
import { existsSync, mkdirSync, renameSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { z } from 'zod'
import { lookSchema } from '../../../shared/desk/workplace/look.ts'
import { problemLine, problemsOf } from '../../../shared/engine/visit/problems.ts'
import { putInPlace } from '../../store/files.ts'
import { FileRefused, readPlainFile } from '../../store/plain-file.ts'
import type { Settings } from '../records/deps.ts'

const settingsSchema = z.strictObject({
	backupFolder: z.string().min(1).optional(),
	look: lookSchema.optional(),
})
/** far above what the settings can hold */
const mostBytes = 1024 * 1024
const fileOf = (folder: string) => join(folder, 'settings.json')
export function readSettings(folder: string, now: Date): { settings: Settings; notice: string } {
	const file = fileOf(folder)
	if (!existsSync(file)) return { settings: {}, notice: '' }
	let wrong: string
	try {
		const given: unknown = JSON.parse(readPlainFile(file, mostBytes).toString('utf8'))
		const read = settingsSchema.safeParse(given)
		if (read.success) return { settings: read.data, notice: '' }
		wrong = problemsOf(read.error, given).map(problemLine).join('; ')
	} catch (error) {
		wrong = error instanceof FileRefused ? error.message : 'it is not JSON, or was cut short'
	}
	const aside = `settings.json.broken-${now.toISOString().replace(/[:.]/g, '-')}`
	try {
		renameSync(file, join(folder, aside))
	} catch {
		return {
			settings: {},
			notice:
				`The settings file ${file} cannot be read (${wrong}). The usual settings are ` +
				'used; records are unaffected.',
		}
	}
	return {
		settings: {},
		notice:
			`The settings file could not be read (${wrong}). It was kept as ${aside} and the ` +
			'usual settings are used; records are unaffected. Choose the backup folder again.',
	}
}
export function writeSettings(folder: string, settings: Settings): void {
	mkdirSync(folder, { recursive: true, mode: 0o700 })
	const part = `${fileOf(folder)}.part`
	writeFileSync(part, `${JSON.stringify(settings, null, '\t')}\n`, { mode: 0o600 })
	putInPlace(part, fileOf(folder))
}
