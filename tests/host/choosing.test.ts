/**
 * A folder or a file chosen by looking: real folders, links, a stick that is gone, many entries; who
 * may look; and that nothing outside of the places is told.
 */
import {
	chmodSync,
	mkdirSync,
	mkdtempSync,
	readdirSync,
	rmSync,
	symlinkSync,
	utimesSync,
	writeFileSync,
} from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeEach, describe, expect, test, vi } from 'vitest'
import { lookInto } from '../../electron/services/places/looking.ts'
import { makeFolder } from '../../electron/services/places/new-folder.ts'
import { type Place, placesHere } from '../../electron/services/places/places.ts'
import { Refusal } from '../../electron/services/records/refusal.ts'
import { chosenBy } from '../../electron/window/choosing.ts'
import { contract } from '../../shared/contract.ts'
import type { Look } from '../../shared/desk/places/calls.ts'
import { type Purpose, purposes } from '../../shared/desk/places/purposes.table.ts'
import { clinic, folder, type Opened, open, passphrase } from './bench-app.ts'

const here = mkdtempSync(join(tmpdir(), 'lastwright-choosing-'))
const stick = join(here, 'stick')
const outside = join(here, 'outside')
const places: Place[] = [{ path: stick, name: 'stick', kind: 'stick' }]
afterAll(() => rmSync(here, { recursive: true, force: true }))
beforeEach(() => {
	for (const one of [stick, outside]) {
		rmSync(one, { recursive: true, force: true })
		mkdirSync(one, { recursive: true })
	}
})
const names = ({ entries }: Look) => entries.map(({ name }) => name)
const codeOf = async (work: Promise<unknown>): Promise<string> => {
	try {
		await work
	} catch (error) {
		if (error instanceof Refusal) return error.code
		throw error
	}
	return 'not refused'
}

describe('a folder shows', () => {
	test('its folders as people count, and the files that are wanted with size and day', async () => {
		for (const name of ['week 10', 'week 2', '.hidden']) mkdirSync(join(stick, name))
		for (const name of ['return-1.lwpack', 'RETURN-2.LWPACK', 'letter.pdf', '.x.lwpack'])
			writeFileSync(join(stick, name), 'abc')
		const at = new Date('2027-01-19T10:00:00.000Z')
		utimesSync(join(stick, 'return-1.lwpack'), at, at)
		expect(names(await lookInto(places, 'pack', stick))).toEqual(['week 2', 'week 10'])
		const found = await lookInto(places, 'come-home', stick)
		expect(names(found)).toEqual(['return-1.lwpack', 'RETURN-2.LWPACK', 'week 2', 'week 10'])
		expect(found.entries[0]).toEqual({
			name: 'return-1.lwpack',
			path: join(stick, 'return-1.lwpack'),
			is: 'file',
			bytes: 3,
			changedAt: at.toISOString(),
		})
		expect(found.at).toMatchObject({ name: 'stick', canWrite: true })
		expect(found.at?.freeBytes).toBeGreaterThan(0)
	})
	test('links that stay inside, and none that leads out, to itself or nowhere', async () => {
		mkdirSync(join(stick, 'a'))
		mkdirSync(join(outside, 'secret'))
		writeFileSync(join(outside, 'x.lwpack'), 'x')
		symlinkSync(join(stick, 'a'), join(stick, 'to-a'))
		symlinkSync(outside, join(stick, 'out'))
		symlinkSync('..', join(stick, 'up'))
		symlinkSync(join(outside, 'x.lwpack'), join(stick, 'x.lwpack'))
		symlinkSync(join(stick, 'loop'), join(stick, 'loop'))
		symlinkSync(join(stick, 'none'), join(stick, 'gone'))
		expect(names(await lookInto(places, 'come-home', stick))).toEqual(['a', 'to-a'])
		expect((await lookInto(places, 'pack', join(stick, 'to-a'))).at?.path).toBe(join(stick, 'a'))
		for (const way of ['out', 'out/secret', 'up', '../outside', 'a/../../outside'])
			expect(await codeOf(lookInto(places, 'pack', `${stick}/${way}`)), way).toBe('places.outside')
	})
	test.each(['/', '/etc', 'stick', '', '~', '//etc', 'file:///etc', '\0', '/etc\0/media'])(
		'nothing at %j',
		async (path) => expect(await codeOf(lookInto(places, 'pack', path))).toBe('places.outside'),
	)
	test('the same refusal outside of the places, whether something is there or not', async () => {
		const said = async (path: string) => {
			const { message } = (await lookInto(places, 'pack', path).catch((error) => error)) as Error
			return message.replace(path, 'PATH')
		}
		expect(await said(join(outside, 'none'))).toBe(await said(outside))
	})
	test('that its stick was taken out, and that something is a file', async () => {
		writeFileSync(join(stick, 'note.txt'), 'x')
		expect(await codeOf(lookInto(places, 'pack', join(stick, 'note.txt')))).toBe(
			'places.file-not-folder',
		)
		rmSync(stick, { recursive: true })
		expect(await codeOf(lookInto(places, 'pack', stick))).toBe('places.no-folder')
	})
	test.skipIf(process.getuid?.() === 0)('that it may not be read or written to', async () => {
		mkdirSync(join(stick, 'shut'), { mode: 0o000 })
		mkdirSync(join(stick, 'read-only'), { mode: 0o500 })
		try {
			expect(await codeOf(lookInto(places, 'pack', join(stick, 'shut')))).toBe(
				'places.not-readable',
			)
			const readOnly = await lookInto(places, 'pack', join(stick, 'read-only'))
			expect(readOnly.at?.canWrite).toBe(false)
			expect(await codeOf(makeFolder(places, join(stick, 'read-only'), 'new'))).toBe(
				'places.not-writable',
			)
		} finally {
			chmodSync(join(stick, 'shut'), 0o700)
			chmodSync(join(stick, 'read-only'), 0o700)
		}
	})
	test('5,000 of many entries, names of the longest, and says how many it left out', async () => {
		const long = `long-${'x'.repeat(250)}`
		for (let number = 1; number <= 5004; number++) mkdirSync(join(stick, `f${number}`))
		mkdirSync(join(stick, long))
		const found = await lookInto(places, 'pack', stick)
		expect([found.entries.length, found.more]).toEqual([5000, 5])
		expect(names(found).slice(0, 3)).toEqual(['f1', 'f2', 'f3'])
		expect((await lookInto(places, 'pack', join(stick, long))).at?.name).toBe(long)
	})
})
describe('a new folder', () => {
	test('is made where it is shown, and nothing is written over', async () => {
		writeFileSync(join(stick, 'note'), 'x')
		const { path } = await makeFolder(places, stick, ' Outreach May ')
		expect([path, readdirSync(stick).sort()]).toEqual([
			join(stick, 'Outreach May'),
			['Outreach May', 'note'],
		])
		for (const name of ['Outreach May', 'note'])
			expect(await codeOf(makeFolder(places, stick, name)), name).toBe('places.folder-exists')
		for (const name of ['..', 'a/b', '', 'x'.repeat(200)])
			expect(await codeOf(makeFolder(places, stick, name)), name).toBe('places.folder-name')
		expect(await codeOf(makeFolder(places, outside, 'new'))).toBe('places.outside')
		expect(readdirSync(outside)).toEqual([])
	})
})
test('looking begins at home, documents, sticks and what is set, each once and only where it is', async () => {
	const home = join(here, 'home')
	for (const path of ['home/Documents', 'media/person/stick', 'media/disk', 'run/other'])
		mkdirSync(join(here, path), { recursive: true })
	symlinkSync('/', join(here, 'media', 'whole'))
	const machine = {
		platform: 'linux' as const,
		home,
		user: 'person',
		mounts: ['media', 'run', 'none'].map((name) => join(here, name)),
	}
	const found = await placesHere(machine, [
		{ path: join(home, 'Documents'), kind: 'last' },
		{ path: outside, kind: 'backups' },
		{ path: join(here, 'gone'), kind: 'last' },
	])
	expect(found.map(({ path, kind }) => `${kind} ${path.slice(here.length + 1)}`)).toEqual([
		'stick media/disk',
		'stick media/person/stick',
		'stick run/other',
		'documents home/Documents',
		'home home',
		'backups outside',
	])
})

describe('the calls', () => {
	const withHome = () => {
		const home = mkdtempSync(join(here, 'home-'))
		vi.stubEnv('HOME', home)
		return home
	}
	const look = (purpose: Purpose, at?: string) => ({ purpose, ...(at === undefined ? {} : { at }) })

	/** The purposes for which a call is refused to who is at work. */
	const refusedFor = async (app: Opened, name: string, input: object) => {
		const refused: string[] = []
		for (const purpose of Object.keys(purposes)) {
			const answer = await app.call(name, { ...input, purpose })
			if (!answer.ok && answer.code === 'call.not-for-this-role') refused.push(purpose)
		}
		return refused
	}
	test('serve who may make the call that the choice is for, and nobody else', async () => {
		withHome()
		const app = open(folder())
		// nobody is at work on a new PC: only what brings records here may be chosen
		await app.ask('places.look', look('move-here'))
		expect((await app.refused('places.look', look('pack'))).code).toBe('people.locked')
		await app.ask('session.setUp', { clinic, passphrase })
		for (const role of ['clinician', 'student', 'reception'])
			await app.ask('people.save', {
				name: `A ${role}`,
				registration: role === 'reception' ? '' : 'X2',
				role,
				passphrase: `quiet ${role} heron nine`,
			})
		for (const role of ['owner', 'clinician', 'student', 'reception'] as const) {
			await app.ask('session.lock')
			for (const purpose of Object.keys(purposes) as Purpose[])
				expect((await app.refused('places.look', look(purpose))).code).toBe('people.locked')
			await app.ask('session.unlock', {
				passphrase: role === 'owner' ? passphrase : `quiet ${role} heron nine`,
			})
			const mayNot = Object.entries(purposes).flatMap(([purpose, { serves }]) =>
				contract[serves].who.includes(role) ? [] : [purpose],
			)
			expect(await refusedFor(app, 'places.look', {})).toEqual(mayNot)
			expect(await refusedFor(app, 'places.newFolder', { at: '/none', name: 'x' })).toEqual(mayNot)
			expect(await refusedFor(app, 'places.choose', { path: '/none' })).toEqual(mayNot)
		}
	})
	test('remember the last folder of each purpose, and say when it is gone', async () => {
		const home = withHome()
		mkdirSync(join(home, 'packs'))
		writeFileSync(join(home, 'packs', 'a.lwpack'), 'x')
		const data = folder()
		const app = open(data)
		await app.ask('session.setUp', { clinic, passphrase })
		expect(await app.ask('places.look', look('pack'))).not.toHaveProperty('at')
		const path = join(home, 'packs')
		expect(await app.ask('places.choose', { purpose: 'pack', path })).toEqual({ path })
		await app.ask('places.choose', { purpose: 'come-home', path: join(path, 'a.lwpack') })
		app.close()
		const later = open(data)
		await later.ask('session.unlock', { passphrase })
		for (const purpose of ['pack', 'come-home'] as const)
			expect((await later.ask('places.look', look(purpose))).at.path).toBe(path)
		expect(await later.ask('places.look', look('reports'))).not.toHaveProperty('at')
		rmSync(path, { recursive: true })
		const gone = await later.ask('places.look', look('pack'))
		expect(gone.says).toContain(`${path}, chosen the last time, cannot be opened now.`)
		expect(gone.entries.map((entry: { path: string }) => entry.path)).toContain(home)
	})
	test('take a written path anywhere, looking only inside the places', async () => {
		withHome()
		const app = open(folder())
		await app.ask('session.setUp', { clinic, passphrase })
		const choice = { purpose: 'backups', path: stick }
		expect((await app.refused('places.choose', choice)).code).toBe('places.outside')
		expect(await app.ask('places.choose', { ...choice, written: true })).toEqual({ path: stick })
		// it is a place from now on
		expect((await app.ask('places.look', look('backups'))).at.path).toBe(stick)
		for (const [path, code] of [
			['stick', 'places.not-a-whole-path'],
			[join(stick, 'none'), 'places.no-folder'],
		] as const)
			expect((await app.refused('places.choose', { ...choice, path, written: true })).code).toBe(
				code,
			)
		const letter = join(stick, 'letter.pdf')
		writeFileSync(letter, 'x')
		const asked = { purpose: 'come-home', path: letter, written: true }
		expect((await app.refused('places.choose', asked)).message).toContain('ends in .lwpack')
	})
	test('ask for the dialog of the system in Electron, under the same rights', async () => {
		const home = withHome()
		const app = open(folder())
		const shown: object[] = []
		const show =
			(...filePaths: string[]) =>
			async (options: object) => {
				shown.push(options)
				return { canceled: filePaths.length === 0, filePaths }
			}
		expect(await chosenBy(app.call, 'pack', show(home))).toMatchObject({ code: 'people.locked' })
		expect(await chosenBy(app.call, 'anything', show(home))).toMatchObject({
			code: 'call.input-cannot-stand',
		})
		expect(shown).toEqual([])
		await app.ask('session.setUp', { clinic, passphrase })
		expect(await chosenBy(app.call, 'pack', show())).toEqual({ ok: true, value: {} })
		expect(await chosenBy(app.call, 'pack', show(home))).toEqual({
			ok: true,
			value: { path: home },
		})
		await chosenBy(app.call, 'pack', show())
		await chosenBy(app.call, 'come-home', show())
		expect(shown.slice(1)).toEqual([
			expect.objectContaining({ properties: ['openDirectory', 'createDirectory'] }),
			expect.objectContaining({ defaultPath: home, buttonLabel: 'Use this folder' }),
			expect.objectContaining({
				properties: ['openFile'],
				filters: [{ name: 'File for the way back', extensions: ['lwpack'] }],
			}),
		])
	})
})
