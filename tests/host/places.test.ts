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
const said = (work: () => unknown) => {
	try {
		work()
	} catch (error) {
		if (error instanceof Refusal) return error.message
		throw error
	}
	return ''
}

test('a folder: not whole, not there, a file, and one that takes it', () => {
	expect(said(() => folderToWrite('media/stick'))).toMatch(
		/^The folder "media\/stick" is not a whole path/,
	)
	expect(said(() => folderToWrite(join(here, 'stik', 'deep')))).toBe(
		`There is no folder ${here}/stik/deep. Check the spelling, and that the stick is plugged ` +
			`in; ${here} is there.`,
	)
	expect(said(() => folderToWrite(file))).toBe(
		`${file} is a file, not a folder. Give the folder it stands in: ${here}.`,
	)
	expect(folderToWrite(here)).toBe(here)
})
test.skipIf(process.getuid?.() === 0)('a folder that may not be written to', () => {
	expect(said(() => folderToWrite(join(here, 'locked')))).toMatch(/locked cannot be written to/)
})
test('a file: not whole, not there, a folder, and one that can be read', () => {
	expect(said(() => fileToRead('return.lwpack'))).toMatch(/not a whole path/)
	expect(said(() => fileToRead(join(here, 'retrun.lwpack')))).toContain(
		`There is no file ${here}/retrun.lwpack.`,
	)
	expect(said(() => fileToRead(here))).toMatch(/is a folder, not a file/)
	expect(fileToRead(file)).toBe(file)
})
test('a write that fails is worded by its cause, and another fault is not hidden', () => {
	const fault = (code: string) => Object.assign(new Error(code), { code })
	expect(writeTrouble(fault('ENOSPC'), here, 'No half pack')).toBe(
		`There is no room in ${here}. Free some space or use another stick. No half pack was left ` +
			'there.',
	)
	expect(writeTrouble(fault('EROFS'), here, 'No half report')).toMatch(
		/cannot be written to.*No half report was left there/,
	)
	expect(writeTrouble(new TypeError('else'), here, 'No half pack')).toBeUndefined()
})
test('the reports of a screening day and a pack go through the same words', async () => {
	const { app, playerId } = await withPlayer()
	await signed(app, playerId, {}, '2027-01-10')
	for (const [folder, words] of [
		['nowhere', /not a whole path/],
		[join(here, 'none'), /There is no folder/],
		[file, /is a file, not a folder/],
		['/proc/self', /cannot be written to|no room/],
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
			).message,
			folder,
		).toMatch(words)
	}
	const { squadId } = await app.ask('squad.create', {
		text: 'Number,Given name,Family name,Birth date,Sex\n1,Ada,Fieldling,2010-01-02,f',
		team: 'Rovers',
		day: '2027-01-20',
		same: {},
	})
	for (const [folder, words] of [
		['nowhere', /not a whole path/],
		[join(here, 'none'), /There is no folder/],
		[file, /is a file, not a folder/],
		[here, /Nobody of this day is signed/],
	] as const)
		expect((await app.refused('squad.reports', { squadId, folder })).message, folder).toMatch(words)
	expect(readdirSync(here).sort()).toEqual(['locked', 'pack.lwpack'])
	app.close()
})
