/** A file that a person named is a plain file of a bounded length, or refused at once in words. */
import { execFileSync, spawnSync } from 'node:child_process'
import { mkdirSync, mkdtempSync, symlinkSync, writeFileSync } from 'node:fs'
import { createServer, type Server } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { FileRefused, readPlainFile, startOfPlainFile } from '../../electron/store/plain-file.ts'
import { openNow } from './clock-app.ts'

const folder = mkdtempSync(join(tmpdir(), 'lastwright-plain-'))
const at = (name: string): string => join(folder, name)
const command = fileURLToPath(new URL('../../electron/command/main.ts', import.meta.url))
const fewHandles = fileURLToPath(new URL('./fixtures/few-handles.ts', import.meta.url))
let listening: Server
const refused = (file: string, most = 1000): FileRefused => {
	try {
		readPlainFile(file, most)
	} catch (error) {
		if (error instanceof FileRefused) return error
		throw error
	}
	throw new Error(`${file} was read`)
}

describe.skipIf(process.platform === 'win32')('what is no file', () => {
	const strange: [string, RegExp][] = [
		[at('pipe'), /is a pipe, not a file/],
		[at('to-pipe'), /is a pipe, not a file/],
		[at('socket'), /is a socket, not a file/],
		['/dev/zero', /is a device, not a file/],
		['/dev/tty', /is a device, not a file/],
		[at('folder'), /is a folder, not a file/],
	]
	beforeAll(async () => {
		execFileSync('mkfifo', [at('pipe')])
		symlinkSync(at('pipe'), at('to-pipe'))
		mkdirSync(at('folder'))
		listening = createServer()
		await new Promise<void>((resolve) => listening.listen(at('socket'), resolve))
	})
	afterAll(() => {
		listening.close()
	})
	test.each(strange)('%s is refused by its name', (file, words) => {
		const error = refused(file)
		expect([error.why, error.message]).toEqual(['not-a-file', expect.stringMatching(words)])
		expect(error.message).toContain(file)
		expect(() => startOfPlainFile(file, 10)).toThrow(words)
	})
	test('given as a pack, a backup or the records of another PC it is refused, and the host goes on', async () => {
		const app = openNow(mkdtempSync(join(tmpdir(), 'lastwright-plain-app-')))
		try {
			for (const [file, words] of strange) {
				for (const passphrase of [undefined, 'seven grey herons']) {
					const answer = await app.call('session.moveHere', { file, passphrase })
					expect(answer.ok, file).toBe(false)
					expect('message' in answer && answer.message, file).toMatch(
						passphrase === undefined ? /is not a file|not a file/ : words,
					)
				}
			}
			expect((await app.call('session.status', {})).ok).toBe(true)
		} finally {
			app.close()
		}
	})
	test('given to the command line it is refused, and the remedy named', () => {
		for (const [file, words] of strange) {
			const { status, stderr } = spawnSync(process.execPath, [command, 'assess', file], {
				encoding: 'utf8',
				timeout: 30_000,
			})
			expect([file, status]).toEqual([file, 2])
			expect(stderr).toMatch(words)
			expect(stderr).toContain('allowed: a JSON file, or - for standard input')
		}
	})
})
describe('what is a file', () => {
	test('is read to its last byte, and refused one byte above the limit', () => {
		writeFileSync(at('short'), 'x'.repeat(1000))
		expect(readPlainFile(at('short'), 1000).length).toBe(1000)
		expect(startOfPlainFile(at('short'), 10).toString()).toBe('x'.repeat(10))
		const error = refused(at('short'), 999)
		expect([error.why, error.message]).toEqual([
			'too-long',
			expect.stringContaining('longer than 999 bytes'),
		])
		writeFileSync(at('none'), '')
		expect(readPlainFile(at('none'), 0).length).toBe(0)
		expect(refused(at('absent')).why).toBe('absent')
		expect(refused(join(at('short'), 'below')).why).toBe('absent')
	})
	test.skipIf(process.platform !== 'linux')(
		'one that calls itself empty is read as far as the limit',
		() => {
			expect(readPlainFile('/proc/self/maps', 10_000_000).length).toBeGreaterThan(100)
			expect(refused('/proc/self/maps', 100).why).toBe('too-long')
		},
	)
})
test.skipIf(process.platform === 'win32')(
	'too few file handles are said as what they are, however few are left',
	{ timeout: 120_000 },
	() => {
		const records = mkdtempSync(join(tmpdir(), 'lastwright-handles-'))
		const said = Array.from({ length: 9 }, (_, left) =>
			spawnSync(
				'/bin/sh',
				['-c', 'ulimit -n 100; exec "$0" "$@"', process.execPath, fewHandles, records, `${left}`],
				{ encoding: 'utf8' },
			),
		).map(({ stdout, stderr }) => stdout || stderr)
		const others = said.filter(
			(words) => words !== 'opened' && !words.includes('as many files open as this PC allows'),
		)
		expect(others).toEqual([])
		expect(said[0]).toContain('ulimit -n')
	},
)
