/** What stands beside the files of a fixture: what to open, by which secret, and what was seen. */
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import type { Views } from './views.ts'

/** Records to be opened: a data folder that is copied, or a file that becomes the records of a PC. */
export interface Opening {
	name: string
	/** folder of a store, a backup, or a pack */
	from: string
	kind: 'folder' | 'backup' | 'pack'
	passphrase: string
	recoveryKey?: string
	views: Views
	/** the last row of the trail that the views hold; 0 where the trail begins anew at each opening */
	lastRow: number
	/** everybody who has or had a passphrase: how the program answered to it */
	people: { passphrase: string; answered: unknown }[]
}
/** A file of the way back, to be merged into the records of an opening. */
export interface Homecoming {
	into: string
	from: string
	passphrase: string
	/** what the preview said */
	result: unknown
}
export interface Manifest {
	version: string
	commit: string
	/** the moment at which everything is looked at */
	lookedAt: string
	/** versions of the kinds of records; absent where there was no ledger yet */
	kinds?: Record<string, number>
	openings: Opening[]
	homecomings: Homecoming[]
}
export const fixtures = fileURLToPath(new URL('./fixtures/', import.meta.url))
export const fixtureNames = (): string[] =>
	readdirSync(fixtures, { withFileTypes: true })
		.filter((entry) => entry.isDirectory())
		.map((entry) => entry.name)
		.sort()
export const readManifest = (name: string): Manifest =>
	JSON.parse(readFileSync(join(fixtures, name, 'manifest.json'), 'utf8'))
/** Versions of the program, oldest first; what came before 0.1.0 is no version of its own. */
export const versionsKept = (): string[] => fixtureNames().filter((name) => /^\d/.test(name))
