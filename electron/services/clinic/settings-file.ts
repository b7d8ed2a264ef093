/**
 * The settings file of this PC: nothing personal in it. A broken one is kept aside and said so,
 * never wiped; what a newer version wrote into it stays there.
 */
import { copyFileSync, existsSync, mkdirSync, renameSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { z } from 'zod'
import { purposeNames } from '../../../shared/desk/places/purposes.table.ts'
import { lookSchema } from '../../../shared/desk/workplace/look.ts'
import { parseJson, RepeatedKey } from '../../../shared/engine/plain/json.ts'
import { present } from '../../../shared/engine/plain/present.ts'
import { problemLine, problemsOf } from '../../../shared/engine/visit/problems.ts'
import { putInPlace } from '../../store/files.ts'
import { FileRefused, readPlainFile } from '../../store/plain-file.ts'
import type { Settings } from '../records/deps.ts'
import { Refusal } from '../records/refusal.ts'

/** Of the form written here; a file without one is of the first version of the program. */
const version = 2
const fields = {
	backupFolder: z.string().min(1).max(1000).optional(),
	look: lookSchema.optional(),
	lastPlaces: z.partialRecord(z.enum(purposeNames), z.string().min(1).max(1000)).optional(),
}
const settingsSchema = z.strictObject({
	version: z.int().min(1).max(version).optional(),
	...fields,
})
const newerSchema = z.looseObject({ version: z.int().min(version + 1) })
/** far above what the settings can hold */
const mostBytes = 1024 * 1024
/** What a file holds: what is used of it, what stays in it unread, and what is wrong with it. */
interface Held {
	settings: Settings
	unread: Record<string, unknown>
	wrong?: string
}
const nothingHeld = (): Held => ({ settings: {}, unread: {} })
const asideName = (now: Date): string =>
	`settings.json.broken-${now.toISOString().replace(/[:.]/g, '-')}`

/** A file of a newer version: each field that reads here is used, and all of it is kept. */
function heldOfNewer(given: Record<string, unknown>): Held {
	const settings: Settings = {}
	const backupFolder = fields.backupFolder.safeParse(given.backupFolder)
	const look = fields.look.safeParse(given.look)
	if (backupFolder.success) settings.backupFolder = backupFolder.data
	if (look.success) settings.look = look.data
	const lastPlaces = fields.lastPlaces.safeParse(given.lastPlaces)
	if (lastPlaces.success) settings.lastPlaces = lastPlaces.data
	return { settings, unread: given }
}
function heldBy(text: string): Held {
	let given: unknown
	try {
		given = parseJson(text)
	} catch (error) {
		const wrong =
			error instanceof RepeatedKey ? problemLine(error) : 'it is not JSON, or was cut short'
		return { ...nothingHeld(), wrong }
	}
	const newer = newerSchema.safeParse(given)
	if (newer.success) return heldOfNewer(newer.data)
	const read = settingsSchema.safeParse(given)
	if (!read.success)
		return { ...nothingHeld(), wrong: problemsOf(read.error, given).map(problemLine).join('; ') }
	const { version: _version, ...settings } = read.data
	return { settings, unread: {} }
}
/** The settings of a data folder, read once and written whole. */
export class SettingsFile {
	readonly settings: Settings
	/** what the person should know of the file, in words; '' where all is well */
	readonly notice: string
	readonly #folder: string
	readonly #file: string
	readonly #now: () => Date
	readonly #unread: Record<string, unknown>
	/** a broken file that could not be put aside stands there still */
	#broken = false

	constructor(folder: string, now: () => Date) {
		this.#folder = folder
		this.#file = join(folder, 'settings.json')
		this.#now = now
		const { settings, unread, wrong } = this.#read()
		this.settings = settings
		this.#unread = unread
		this.notice = wrong === undefined ? '' : this.#putAside(wrong)
	}
	#read(): Held {
		if (!existsSync(this.#file)) return nothingHeld()
		try {
			return heldBy(readPlainFile(this.#file, mostBytes).toString('utf8'))
		} catch (error) {
			const wrong = error instanceof FileRefused ? error.message : 'the system refuses to read it'
			return { ...nothingHeld(), wrong }
		}
	}
	#putAside(wrong: string): string {
		const aside = asideName(this.#now())
		try {
			renameSync(this.#file, join(this.#folder, aside))
		} catch {
			this.#broken = true
			return (
				`The settings file ${this.#file} cannot be read (${wrong}). The usual settings are ` +
				'used; records are unaffected.'
			)
		}
		return (
			`The settings file could not be read (${wrong}). It was kept as ${aside} and the ` +
			'usual settings are used; records are unaffected. Choose the backup folder again.'
		)
	}
	/** Uses what was changed, until the program ends. */
	use(changed: Settings): void {
		Object.assign(this.settings, changed)
	}
	/** Uses and writes what was changed. @throws Refusal where a broken file could not be copied */
	save(changed: Settings): void {
		mkdirSync(this.#folder, { recursive: true, mode: 0o700 })
		if (this.#broken) this.#copyAside()
		this.use(changed)
		const whole = { version, ...this.#unread, ...present({ ...this.settings }) }
		const part = `${this.#file}.part`
		writeFileSync(part, `${JSON.stringify(whole, null, '\t')}\n`, { mode: 0o600 })
		putInPlace(part, this.#file)
	}
	#copyAside(): void {
		const aside = join(this.#folder, asideName(this.#now()))
		try {
			if (existsSync(this.#file)) copyFileSync(this.#file, aside)
			this.#broken = false
		} catch {
			throw new Refusal(
				'clinic.settings-not-copied',
				`The settings file ${this.#file} cannot be read and could not be copied. Nothing was ` +
					'changed: move it elsewhere by hand, then try again.',
			)
		}
	}
}
