/** A path never leads out of a place, a folder's name never leads elsewhere, and keys stay in the list. */
import { posix, win32 } from 'node:path'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { holding, isInside, wayDown } from '../../electron/services/places/path-rules.ts'
import { jumpTo, markedBy } from '../../renderer/parts/choose/placeKeys.ts'
import { checkFolderName } from '../../shared/desk/places/folder-name.ts'

/** What somebody may write to get out of a folder, and names that only look like it. */
const part = fc.oneof(
	fc.constantFrom('..', '.', '...', '..a', 'a..', '', ' ', '~', 'C:', '\\', '/', '\0', 'etc', 'Ä'),
	fc.string({ maxLength: 6 }),
)
const systems = [
	{ platform: 'linux', paths: posix, place: '/media/stick' },
	{ platform: 'win32', paths: win32, place: 'E:\\stick' },
] as const

describe.each(systems)('on $platform', ({ platform, paths, place }) => {
	it('what counts as inside begins with the folder once all dots are followed', () => {
		fc.assert(
			fc.property(
				fc.array(part, { maxLength: 6 }),
				fc.constantFrom('/', paths.sep),
				(parts, sep) => {
					const path = [place, ...parts].join(sep)
					const whole = paths.resolve(path)
					const fold = (text: string) => (platform === 'win32' ? text.toLowerCase() : text)
					const below =
						!path.includes('\0') &&
						(fold(whole) === fold(place) || fold(whole).startsWith(fold(place) + paths.sep))
					expect(isInside(place, path, platform)).toBe(below)
				},
			),
		)
	})
	it.each([
		'media/stick',
		'',
		`${place}2`,
		`${place}${paths.sep}..`,
		`${place}${paths.sep}..${paths.sep}b`,
	])('%j is not inside', (path) => expect(isInside(place, path, platform)).toBe(false))
	it('the way down leads through every folder between, and each is in the place', () => {
		const name = fc.stringMatching(/^[a-z ]{1,5}[a-z]$/)
		fc.assert(
			fc.property(fc.array(name, { maxLength: 5 }), (names) => {
				const path = paths.join(place, ...names)
				const above = wayDown({ path: place, name: 'stick' }, path, platform)
				expect(above).toHaveLength(names.length)
				expect([...above.slice(1).map((folder) => folder.name), ...names.slice(-1)]).toEqual(names)
				for (const folder of above) expect(isInside(place, folder.path, platform)).toBe(true)
			}),
		)
	})
})
it.each(['\\\\?\\E:\\stick\\a', '\\\\server\\share', 'E:stick', 'D:\\stick', '\\stick'])(
	'%s is not in E:\\stick on Windows',
	(path) => expect(isInside('E:\\stick', path, 'win32')).toBe(false),
)
it('of places within each other the outermost holds a path', () => {
	const places = [{ path: '/home/a/b' }, { path: '/home/a' }, { path: '/home/ab' }]
	expect(holding(places, '/home/a/b/c', 'linux')).toEqual({ path: '/home/a' })
	expect(holding(places, '/home/abc', 'linux')).toBeUndefined()
})

describe('the name of a new folder', () => {
	it('stays one folder below the one that is shown, on every system', () => {
		fc.assert(
			fc.property(fc.oneof(fc.string(), part), (typed) => {
				const checked = checkFolderName(typed)
				if ('says' in checked) {
					expect(checked.says).not.toBe('')
					return
				}
				for (const { paths, place } of systems) {
					const path = paths.join(place, checked.name)
					expect(paths.dirname(path)).toBe(place)
					expect(paths.basename(path)).toBe(checked.name)
				}
			}),
		)
	})
	it.each([
		['', /is empty/],
		[' . ', /begins with a dot/],
		['..', /begins with a dot/],
		['a/b', /holds \//],
		['a\\b', /holds \\/],
		['E:', /holds :/],
		['CON', /kept by Windows/],
		['nul.txt', /kept by Windows/],
		['week.', /ends with a dot/],
		['a\u202eb', /cannot be seen/],
		['a\nb', /cannot be seen/],
		['\ud800', /cannot be seen/],
		['x'.repeat(81), /has 81 characters/],
	])('%j is refused with the reason', (typed, says) =>
		expect(checkFolderName(typed)).toEqual({ says: expect.stringMatching(says) }),
	)
	it.each(['Outreach May', 'Ärzte', '2027-05-12', 'console', 'a.b'])('%j stands', (typed) =>
		expect(checkFolderName(` ${typed} `)).toEqual({ name: typed }),
	)
})

describe('the keys of the list', () => {
	it('mark an entry of the list, or none where it is empty', () => {
		const key = fc.constantFrom('ArrowDown', 'ArrowUp', 'Home', 'End', 'PageDown', 'PageUp')
		fc.assert(
			fc.property(key, fc.nat(50), fc.nat(50), (pressed, count, at) => {
				const next = markedBy(pressed, Math.min(at, Math.max(0, count - 1)), count)
				const stays = next === undefined ? count === 0 : next >= 0 && next < count
				expect(stays).toBe(true)
			}),
		)
	})
	const names = ['Äpfel', 'backups', 'Birnen', 'birne-2', 'stick']
	it.each([
		[0, 'b', 1],
		[1, 'b', 2],
		[2, 'bb', 3],
		[3, 'b', 1],
		[0, 'bir', 2],
		[2, 'bir', 2],
		[2, 'birne-', 3],
		[4, 'ap', 0],
		[1, 'x', undefined],
	])('from entry %i, %j leads to %j', (at, letters, found) =>
		expect(jumpTo(names, at, letters)).toBe(found),
	)
})
