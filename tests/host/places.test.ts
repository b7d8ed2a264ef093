/**
 * Folders and files that a person typed: each fault is named with the path and what to do, and
 * nothing is left behind.
 */
import { chmodSync, mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, expect, test } from 'vitest'
import { fileToRead, folderToWrite, writeTrouble } from '../../electron/services/clinic/places.ts'
import { Refusal } from '../../electron/services/records/refusal.ts'
import { signed, withPlayer } from './bench-app.ts'
import { packPassphrase } from './bench-pack.ts'

const here = mkdtempSync(join(tmpdir(), 'lastwright-places-'))
const file = join(here, 'pack.lwpack')
writeFileSync(file, 'x')
mkdirSync(join(here, 'locked'), { mode: 0o500 })
afterAll(() => {
	chmodSync(join(here, 'locked'), 0o700)
	rmSync(here, { recursive: true, force: true })
})
/** Why it is refused; the words name the paths that they are about. */
const refused = (work: () => unknown, ...paths: string[]) => {
	try {
		work()
	} catch (error) {
		if (!(error instanceof Refusal)) throw error
		for (const path of paths) expect(error.message).toContain(path)
		return error.code
	}
	return undefined
}

test('a folder: not whole, not there, a file, and one that takes it', () => {
	expect(refused(() => folderToWrite('media/stick'), 'media/stick')).toBe('places.not-a-whole-path')
	expect(
		refused(() => folderToWrite(join(here, 'stik', 'deep')), `${here}/stik/deep`, `${here} `),
	).toBe('places.no-folder')
	expect(refused(() => folderToWrite(file), file, `${here}.`)).toBe('places.file-not-folder')
	expect(folderToWrite(here)).toBe(here)
})
test.skipIf(process.getuid?.() === 0)('a folder that may not be written to', () => {
	const locked = join(here, 'locked')
	expect(refused(() => folderToWrite(locked), locked)).toBe('places.not-writable')
})
test('a file: not whole, not there, a folder, and one that can be read', () => {
	expect(refused(() => fileToRead('return.lwpack'), 'return.lwpack')).toBe(
		'places.not-a-whole-path',
	)
	const misspelt = join(here, 'retrun.lwpack')
	expect(refused(() => fileToRead(misspelt), misspelt, `${here} `)).toBe('places.no-file')
	expect(refused(() => fileToRead(here), here)).toBe('places.folder-not-file')
	expect(fileToRead(file)).toBe(file)
})
test('a write that fails is known by its cause, and another fault is not hidden', () => {
	const fault = (code: string) => Object.assign(new Error(code), { code })
	const inWords = { says: expect.stringContaining(here) }
	expect(writeTrouble(fault('ENOSPC'), here, 'No half pack')).toEqual({
		code: 'places.no-room',
		...inWords,
	})
	expect(writeTrouble(fault('EROFS'), here, 'No half report')).toEqual({
		code: 'places.not-writable',
		...inWords,
	})
	expect(writeTrouble(new TypeError('else'), here, 'No half pack')).toBeUndefined()
})
test('the reports of a screening day and a pack go through the same words', async () => {
	const { app, playerId } = await withPlayer()
	await signed(app, playerId, {}, '2027-01-10')
	for (const [folder, code] of [
		['nowhere', 'places.not-a-whole-path'],
		[join(here, 'none'), 'places.no-folder'],
		[file, 'places.file-not-folder'],
		['/proc/self', 'places.not-writable'],
	] as const) {
		expect(
			(
				await app.refused('outreach.makePack', {
					playerIds: [playerId],
					history: 'last',
					folder,
					passphrase: packPassphrase,
					expires: '2027-02-10',
				})
			).code,
			folder,
		).toBe(code)
	}
	const { squadId } = await app.ask('squad.create', {
		text: 'Number,Given name,Family name,Birth date,Sex\n1,Ada,Fieldling,2010-01-02,f',
		team: 'Rovers',
		day: '2027-01-20',
		same: {},
	})
	for (const [folder, code] of [
		['nowhere', 'places.not-a-whole-path'],
		[join(here, 'none'), 'places.no-folder'],
		[file, 'places.file-not-folder'],
		[here, 'squad.nobody-signed'],
	] as const)
		expect((await app.refused('squad.reports', { squadId, folder })).code, folder).toBe(code)
	expect(readdirSync(here).sort()).toEqual(['locked', 'pack.lwpack'])
	app.close()
})
