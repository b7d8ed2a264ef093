/** A copy of the records beside those in use: brought to this version, opened with the same keys. */
import { chmodSync, copyFileSync, readdirSync, rmSync } from 'node:fs'
import { basename, dirname, join } from 'node:path'
import { DatabaseSync } from 'node:sqlite'
import { DataKeys, dataKeyOf } from './data-keys.ts'
import { forgetFile, lockUp } from './forgetting.ts'
import type { Parts } from './parts.ts'
import { migrate } from './schema.ts'

/** What a copy is made for; a crash leaves it, and it is removed at the next start. */
const purposes = ['restoring', 'looking'] as const
type Purpose = (typeof purposes)[number]
const sideFiles = ['', '-wal', '-shm', '-journal']

/** Keys of their own: forgetting the ones leaves the others. */
export const copyOfKeys = (keys: DataKeys): DataKeys =>
	new DataKeys(keys.all().map(({ bytes }) => dataKeyOf(bytes)))

/** Where a copy for a purpose lies. */
export const placeBeside = (records: string, purpose: Purpose): string => `${records}.${purpose}`
export function removeFile(file: string): void {
	for (const end of sideFiles) rmSync(file + end, { force: true })
}
/** Takes away what a crash left of copies. */
export function removeCopies(records: string): void {
	for (const purpose of purposes) removeFile(placeBeside(records, purpose))
}
/**
 * Takes away whatever may hold records besides the records file and its backups: copies, and files
 * that were kept aside as damaged.
 * @returns their names
 */
export function removeKeptAside(records: string): string[] {
	const start = `${basename(records)}.`
	const isOurs = (name: string) =>
		purposes.some((purpose) => name.startsWith(start + purpose)) ||
		name.startsWith(`${start}damaged-`)
	const names = readdirSync(dirname(records)).filter(isOurs)
	for (const name of names) rmSync(join(dirname(records), name), { force: true })
	return names
}
/** A copy of a file at its place, brought up to this version; what was there is removed first. */
export function copyBeside(from: string, place: string): void {
	removeFile(place)
	copyFileSync(from, place)
	chmodSync(place, 0o600)
	const db = new DatabaseSync(place)
	try {
		migrate(db)
		db.exec('PRAGMA journal_mode=DELETE')
	} finally {
		db.close()
	}
}
/** Opens a copy with keys; closeBeside() ends it. */
export function openBeside(parts: Parts, file: string, keys: DataKeys): void {
	parts.database.open(file)
	forgetFile(parts)
	parts.keyring.take(copyOfKeys(keys))
}
/** Forgets its keys, and leaves the copy as one file. */
export function closeBeside(parts: Parts, file: string): void {
	lockUp(parts)
	parts.database.close()
	const db = new DatabaseSync(file)
	try {
		db.exec('PRAGMA journal_mode=DELETE')
	} finally {
		db.close()
	}
}
