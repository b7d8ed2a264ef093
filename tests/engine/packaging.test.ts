/** What is packaged: the parts, the fuses of the table, and reading them back. */
import { spawnSync } from 'node:child_process'
import { mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { describe, expect, it, test } from 'vitest'
import { fuses, readFuses, wrongFuses } from '../../electron/window/fuses.ts'

const root = fileURLToPath(new URL('../..', import.meta.url))
const folder = join(root, 'electron/window')

const words: Record<string, boolean | null> = { true: true, false: false, null: null }
const scalar = (text: string) => (Object.hasOwn(words, text) ? words[text] : text)
const indentOf = (line: string) => line.search(/\S/)
/** A map by its keys, each with the lines that are indented below it; or a list of words. */
function readBlock(lines: readonly string[]): Record<string, unknown> | string[] {
	const [first = ''] = lines
	if (first.trim().startsWith('- '))
		return lines.map((line) => /^\s*- "?(.*?)"?$/.exec(line)?.[1] ?? '')
	const starts = [...lines.keys()].filter((at) => indentOf(lines[at]!) === indentOf(first))
	const entries = starts.map((start, index) => {
		const [, key, value] = /^\s*(\w+):\s*(.*)$/.exec(lines[start]!) ?? []
		if (key === undefined) throw new Error(`not read: ${lines[start]}`)
		const below = lines.slice(start + 1, starts[index + 1])
		return [key, value ? scalar(value) : readBlock(below)] as const
	})
	return Object.fromEntries(entries)
}
/** Just the plain form this file is written in: maps by two spaces, lists of words. */
function readYaml(text: string): Record<string, unknown> {
	const lines = text
		.split('\n')
		.filter((line) => line.trim() !== '' && !line.trim().startsWith('#'))
	return readBlock(lines) as Record<string, unknown>
}

describe('packaging', () => {
	const builder = readYaml(readFileSync(join(root, 'electron-builder.yml'), 'utf8'))
	it('sets every fuse of the table and no other', () => {
		const wanted = Object.fromEntries(
			Object.values(fuses).flatMap((fuse) => (fuse.builder ? [[fuse.builder, fuse.on]] : [])),
		)
		expect(builder.electronFuses).toEqual(wanted)
		expect(new Set(Object.values(fuses).map((fuse) => fuse.at)).size).toBe(
			Object.keys(fuses).length,
		)
	})
	it(
		'makes what each system needs, from an archive, with the entry in it and nothing ' +
			'published',
		() => {
			expect(builder).toMatchObject({
				appId: 'org.example.lastwright',
				productName: 'Lastwright',
				asar: true,
				publish: null,
				win: { target: ['nsis'] },
				mac: { target: ['dmg', 'zip'] },
				linux: { target: ['AppImage', 'deb'] },
				nsis: { deleteAppDataOnUninstall: false },
			})
			const main = (builder.extraMetadata as { main: string }).main
			expect(readFileSync(join(root, main), 'utf8')).toContain('app.enableSandbox()')
			expect(builder.files).toEqual(
				expect.arrayContaining([
					'electron/**/*',
					'shared/**/*',
					'build/renderer/**/*',
					'package.json',
				]),
			)
			expect((builder.files as string[]).join(' ')).not.toMatch(/tests|\.env/)
		},
	)
	const order = Object.values(fuses).toSorted((a, b) => a.at - b.at)
	const wire = (states: string) =>
		Buffer.concat([
			Buffer.from('before dL7pKGdnNz796PbbjQWNKmHXBZaB9tsX', 'latin1'),
			Buffer.from([1, states.length]),
			Buffer.from(states, 'latin1'),
			Buffer.from('after'),
		])
	const right = order.map((fuse) => (fuse.on ? '1' : '0')).join('')
	it('reads the wire back, one for each processor', () => {
		expect(wrongFuses(readFuses(wire(right)))).toEqual([])
		expect(readFuses(Buffer.concat([wire(right), wire(right)]))).toHaveLength(2)
		expect(() => readFuses(Buffer.from('no wire here'))).toThrow(/No fuse wire/)
		expect(() =>
			readFuses(
				Buffer.concat([Buffer.from('dL7pKGdnNz796PbbjQWNKmHXBZaB9tsX'), Buffer.from([2, 1, 0x31])]),
			),
		).toThrow(/version 2/)
		expect(() => readFuses(wire(right).subarray(0, 42))).toThrow(/only version 1/)
	})
	it.each(order.map((fuse, at) => [at, fuse.why] as const))(
		'a wrong fuse %d is named with its reason',
		(at, why) => {
			const wrong = right.slice(0, at) + (right[at] === '1' ? '0' : '1') + right.slice(at + 1)
			expect(wrongFuses(readFuses(wire(wrong)))).toEqual([expect.stringContaining(why)])
		},
	)
	it('a fuse that is missing, taken out or unknown is named', () => {
		expect(wrongFuses(readFuses(wire(right.slice(0, 5))))).toHaveLength(3)
		expect(wrongFuses(readFuses(wire(`r${right.slice(1)}`)))).toEqual([
			expect.stringContaining('is removed'),
		])
		expect(wrongFuses(readFuses(wire(`${right}1`)))).toEqual([
			expect.stringContaining('fuse 9: is on'),
		])
	})
	it('the read-back command ends with 0, 1 or 2', () => {
		const here = mkdtempSync(join(tmpdir(), 'lastwright-fuses-'))
		const run = (...args: string[]) =>
			spawnSync(
				process.execPath,
				['--disable-warning=ExperimentalWarning', join(folder, 'read-fuses.ts'), ...args],
				{ encoding: 'utf8' },
			)
		writeFileSync(join(here, 'good'), wire(right))
		writeFileSync(join(here, 'bad'), wire(`1${right.slice(1)}`))
		expect([
			run(join(here, 'good')).status,
			run(join(here, 'bad')).status,
			run(join(here, 'none')).status,
			run(here).status,
			run().status,
		]).toEqual([0, 1, 2, 2, 2])
	})
	const installed = join(
		root,
		'node_modules/electron/dist',
		process.platform === 'win32' ? 'electron.exe' : 'electron',
	)
	test.skipIf(
		process.platform === 'darwin' ||
			!readdirSync(join(root, 'node_modules/electron')).includes('dist'),
	)("the runtime's own wire can be read", () =>
		expect(readFuses(readFileSync(installed))[0]?.length).toBeGreaterThanOrEqual(8),
	)
})
