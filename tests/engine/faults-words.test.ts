/** Faults of the disk and the records file, in words with a remedy, by their codes alone. */
import { describe, expect, it } from 'vitest'
import { refusalOf } from '../../electron/calls/faults.ts'
import { diskTrouble, inWords, isRuined } from '../../electron/store/disk.ts'
import { faultRows } from '../../electron/store/faults.table.ts'
import { isSystemFault, knownFault } from '../../electron/store/faults.ts'

const raw = 'database disk image is malformed at /home/someone'
const sqliteFault = (errcode: number) =>
	Object.assign(new Error(raw), { code: 'ERR_SQLITE_ERROR', errcode, errstr: raw })
const systemFault = (code: string) => Object.assign(new Error(`${code}: ${raw}`), { code })
const told = (error: unknown) => {
	const notes: string[] = []
	return { ...refusalOf(error, (text) => notes.push(text)), notes }
}
const anyFault = told(new TypeError(raw)).message
const every = faultRows.flatMap(({ name, sqlite, system }) => [
	...sqlite.map((code): [string, string, Error] => [name, `SQLite ${code}`, sqliteFault(code)]),
	...sqlite.map((code): [string, string, Error] => [
		name,
		`SQLite ${code + 0x300}`,
		sqliteFault(code + 0x300),
	]),
	...system.map((code): [string, string, Error] => [name, code, systemFault(code)]),
])

describe('a fault', () => {
	it.each(every)('%s (%s) has words of its own, at work and at the start', (name, _, error) => {
		const { ok, message, notes } = told(error)
		expect([ok, knownFault(error)?.name]).toEqual([false, name])
		expect(message).not.toBe(anyFault)
		expect(inWords(error, '/data').message).not.toContain('{place}')
		for (const words of [message, inWords(error, '/data').message]) {
			expect(words).not.toMatch(/malformed|someone|E[A-Z]{3,}|SQLite/)
			expect(words).toMatch(/[.:] [A-Za-z].*\.$/)
		}
		expect(notes).toHaveLength(1)
		expect(notes[0]).not.toContain('someone')
	})
	it('stands in the table once by each code', () => {
		for (const kind of ['sqlite', 'system'] as const) {
			const codes = faultRows.flatMap((row): readonly (string | number)[] => row[kind])
			expect(new Set(codes).size).toBe(codes.length)
		}
	})
	it('that is wrapped is known by what it was made of', () => {
		const wrapped = new Error('outer', { cause: new Error('inner', { cause: sqliteFault(267) }) })
		expect([isRuined(wrapped), diskTrouble(wrapped)]).toEqual([true, false])
		const loop: Error & { cause?: unknown } = new Error('loop')
		loop.cause = loop
		expect(knownFault(loop)).toBeUndefined()
	})
	it('nobody knows says so, and never in the words of the system', () => {
		expect(told(sqliteFault(25)).message).toBe(anyFault)
		expect(inWords(sqliteFault(25), '/data').message).toMatch(/\/data could not be opened \(ERR_/)
		expect(inWords(new Error('Already open.'), '/data').message).toBe('Already open.')
		expect(isSystemFault(new TypeError('x'))).toBe(false)
		expect(told('text').message).toBe(anyFault)
	})
})
