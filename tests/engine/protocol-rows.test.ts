/** Every threshold that a clinic can set decides something: a row that nothing reads is none. */
import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { digestOf } from '../../shared/engine/plain/canonical.ts'
import { holdRows } from '../../shared/engine/protocol/holds.table.ts'
import {
	openProtocol,
	protocolSchema,
	shippedProtocol,
} from '../../shared/engine/protocol/protocol.ts'
import { droppedKeys } from '../../shared/engine/protocol/retired.table.ts'
import { rows } from '../../shared/engine/protocol/rows.ts'
import { settlingOrder } from '../../shared/engine/protocol/settling.table.ts'

const root = new URL('../../', import.meta.url)
const folders = ['shared', 'electron', 'renderer']
/** Where rows are made, bounded and given up: a key that stands there alone decides nothing. */
const tables = /\/protocol\/(rows\/.*|limits\.table|retired\.table)\.ts$/
const files = folders.flatMap((folder) =>
	readdirSync(new URL(folder, root), { recursive: true, withFileTypes: true })
		.filter((file) => file.isFile() && /\.tsx?$/.test(file.name))
		.map((file) => `${file.parentPath}/${file.name}`),
)
const read = (path: string): string => readFileSync(path, 'utf8')
const code = files
	.filter((path) => !tables.test(path))
	.map(read)
	.join('\n')
/** Keys that are put together where they are read, by what stands there. */
const composed: readonly [key: RegExp, reads: string][] = [
	[/^posture\.rise(Men|Women)\d0$/, 'posture.rise$' + '{'],
	[/^conditions\..+\.ageMinYears$/, '.ageMinYears`'],
	[/^conditions\..+\.ageMaxYears$/, '.ageMaxYears`'],
]
const isRead = (key: string): boolean =>
	code.includes(`'${key}'`) ||
	composed.some(([keys, reads]) => keys.test(key) && code.includes(reads))

describe('a row of the protocol', () => {
	it('is read by a rule', () => expect(Object.keys(rows).filter((key) => !isRead(key))).toEqual([]))
	it('that was given up is no row, and a file that sets it is read without it', () => {
		expect(droppedKeys.filter((key) => key in rows)).toEqual([])
		const values = Object.fromEntries(droppedKeys.map((key) => [key, 1]))
		expect(protocolSchema.parse({ ...shippedProtocol, values }).values).toEqual({})
	})
	it('is told from one that nothing reads', () => expect(isRead('squad.clubCellLeast')).toBe(false))
})
describe('the identity of a protocol', () => {
	it('turns with what is held and with the order of settling', () => {
		const { digest } = openProtocol().identity()
		const of = (parts: object) => digestOf({ rows, file: shippedProtocol, ...parts })
		expect(digest).toBe(of({ holdRows, settlingOrder }))
		expect(digest).not.toBe(of({ holdRows: holdRows.slice(1), settlingOrder }))
		expect(digest).not.toBe(of({ holdRows, settlingOrder: settlingOrder.toReversed() }))
	})
})
