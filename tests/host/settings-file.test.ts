/** The settings file of a PC: of a version, kept through newer and broken ones. */
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { SettingsFile } from '../../electron/services/clinic/settings-file.ts'
import { defaultLook } from '../../shared/desk/workplace/look-choices.ts'
import { folder } from './bench-app.ts'

const now = () => new Date('2027-01-20T09:00:00.000Z')
const held = (text?: string) => {
	const here = folder()
	const file = join(here, 'settings.json')
	if (text !== undefined) writeFileSync(file, text)
	const written = (): unknown => JSON.parse(readFileSync(file, 'utf8'))
	const aside = () => readdirSync(here).filter((name) => name.includes('.broken-'))
	return { here, file, open: () => new SettingsFile(here, now), written, aside }
}
const look = { ...defaultLook, textPercent: 150 }

describe('the settings file', () => {
	it('is written with its version, and read again', () => {
		const { open, written } = held()
		const first = open()
		expect([first.settings, first.notice]).toEqual([{}, ''])
		first.save({ backupFolder: '/media/stick' })
		first.save({ look })
		expect(written()).toEqual({ version: 2, backupFolder: '/media/stick', look })
		expect(open().settings).toEqual({ backupFolder: '/media/stick', look })
	})
	it('of the first version of the program, which named none, is read', () => {
		const { open } = held(JSON.stringify({ backupFolder: '/media/stick' }))
		expect(open().settings).toEqual({ backupFolder: '/media/stick' })
	})
	it('of a newer version is read as far as it goes, and keeps the rest when it is saved', () => {
		const newer = { version: 7, backupFolder: '/a', look: 'round', share: { pcs: [1, 2] } }
		const { open, written, aside } = held(JSON.stringify(newer))
		const settings = open()
		expect([settings.settings, settings.notice]).toEqual([{ backupFolder: '/a' }, ''])
		settings.save({ backupFolder: '/b' })
		expect(written()).toEqual({ ...newer, backupFolder: '/b' })
		expect(aside()).toEqual([])
	})
	it.each([
		['cut short', '{"backupFolder":', /not JSON/],
		['with a key twice', '{"backupFolder":"/a","backupFolder":"/b"}', /backupFolder: given twice/],
		['of another form', '{"backupFolder":7}', /backupFolder: wrong type, given 7/],
		['with a key of nobody', '{"version":1,"colour":"red"}', /colour: unknown key/],
		['that is a list', '[]', /wrong type/],
	])('%s is set aside and said', (_, text, words) => {
		const { here, open, aside } = held(text)
		const settings = open()
		expect([settings.settings, settings.notice]).toEqual([{}, expect.stringMatching(words)])
		expect(aside().map((name) => readFileSync(join(here, name), 'utf8'))).toEqual([text])
		settings.save({ look })
		expect(open().settings).toEqual({ look })
		expect(aside()).toHaveLength(1)
	})
	it('that cannot be read at all is never written over', () => {
		const { here, file, open, aside } = held()
		mkdirSync(file)
		const settings = open()
		expect(settings.notice).toMatch(/could not be read \(.*folder.*kept as/)
		expect([existsSync(file), aside()]).toEqual([false, [expect.stringContaining('2027-01-20')]])
		settings.save({ look })
		expect(open().settings).toEqual({ look })
		rmSync(here, { recursive: true })
	})
})
