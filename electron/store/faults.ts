/** A fault of the system or of the records file, known by its code and never by its words. */
import { type FaultRow, faultRows } from './faults.table.ts'

/** What such a fault carries: Node's code; SQLite's, whose lowest byte is the primary one. */
interface Coded {
	code?: unknown
	errcode?: unknown
	cause?: unknown
}
/** A fault may be wrapped; deeper than this nothing of ours is. */
const deepest = 5
const codedOf = (error: unknown): Coded =>
	error !== null && typeof error === 'object' ? (error as Coded) : {}

function rowOf({ code, errcode }: Coded): FaultRow | undefined {
	const primary = typeof errcode === 'number' ? errcode & 0xff : undefined
	return faultRows.find(
		({ sqlite, system }) =>
			(primary !== undefined && sqlite.includes(primary)) ||
			(typeof code === 'string' && system.includes(code)),
	)
}
/** The fault that an error is or was made of; undefined where it is none of these. */
export function knownFault(error: unknown): FaultRow | undefined {
	let at = codedOf(error)
	for (let depth = 0; depth < deepest; depth++) {
		const row = rowOf(at)
		if (row) return row
		if (at.cause === undefined) return undefined
		at = codedOf(at.cause)
	}
	return undefined
}
/** Whether an error is the system's or SQLite's, whose own words are not for a person. */
export function isSystemFault(error: unknown): boolean {
	const { code, errcode } = codedOf(error)
	return typeof errcode === 'number' || (typeof code === 'string' && /^E[A-Z0-9_]+$/.test(code))
}
/** Words at the start for a fault of a folder: what happened, and what to do. */
export function startWords(error: unknown, folder: string): string {
	const { code, errcode } = codedOf(error)
	const row = knownFault(error)
	if (row) return row.atStart.replaceAll('{place}', () => folder)
	return (
		`The records in ${folder} could not be opened (${String(code ?? errcode)}). Nothing was ` +
		'changed. Start the PC anew and try again.'
	)
}
