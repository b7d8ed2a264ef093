/** Reads the value of a record: upgraded from an older version, as far as it goes from a newer. */
import type { CutPart } from './cutting.ts'
import type { KindDefinition } from './kind.ts'
import { readTolerantly } from './tolerant.ts'

/** An entry that this version does not know: where it stood, and what it says. */
export type UnknownEntry = CutPart
export interface Unreadable {
	state: 'unreadable'
	/** written by a newer version, and not damaged */
	newer: boolean
	problems: { path: string; message: string }[]
}
interface Read<Value> {
	state: 'read'
	value: Value
	/** what was cut off for reading; it stays in the record */
	unknown: UnknownEntry[]
	/** written by a newer version */
	newer: boolean
}
export type Reading<Value> = Read<Value> | Unreadable

/**
 * Reads a value by its definition. Never throws.
 * @param version the version of the kind that the value was written by
 */
export function readWith<Value>(
	definition: KindDefinition<Value>,
	version: number,
	value: unknown,
): Reading<Value> {
	const newer = version > definition.version
	try {
		if (!Number.isInteger(version) || version < 1)
			return unreadable(false, 'version', `given ${version}, allowed: 1 or more`)
		const upgraded = newer ? value : upgrade(definition, version, value)
		const read = readTolerantly(definition.schema, upgraded, newer && definition.readsPartly)
		if (!read.ok) return { state: 'unreadable', newer, problems: read.problems }
		return { state: 'read', value: read.value, unknown: read.unknown, newer }
	} catch {
		return unreadable(newer, '(value)', 'it does not have the form of its version')
	}
}
function upgrade({ upgrades }: KindDefinition<unknown>, version: number, value: unknown): unknown {
	return upgrades.slice(version - 1).reduce((before, step) => step(before), value)
}
const unreadable = (newer: boolean, path: string, message: string): Unreadable => ({
	state: 'unreadable',
	newer,
	problems: [{ path, message }],
})
