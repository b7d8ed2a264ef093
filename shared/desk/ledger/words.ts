/** Records that cannot be read, or not wholly, named in words with what to do. */
import { ledger } from './ledger.ts'
import type { Unreadable } from './read.ts'

/** A record as a person can tell it from others. */
export interface Named {
	id: string
	kind: string
	/** ISO 8601 */
	at: string
}
export const kindWords = (kind: string): string => ledger.get(kind)?.words.one ?? `"${kind}"`
const manyWords = (kind: string): string => ledger.get(kind)?.words.many ?? `"${kind}"`
const written = ({ id, at }: Named): string =>
	`written ${at.slice(0, 16).replace('T', ' ')} UTC (record ${id})`
const nothingLost = 'Nothing is lost, and everything else goes on.'
/** most entries that one sentence names */
const mostNamed = 5

/** Why a record cannot be read, and the remedy. */
export function unreadableWords(
	record: Named,
	reading: Unreadable | { state: 'unknown-kind' },
): string {
	if (reading.state === 'unknown-kind')
		return (
			`A record of a kind that this version does not know, "${record.kind}", ${written(record)}, ` +
			`comes from a newer version. Install the newer version to read it. ${nothingLost}`
		)
	const name = `The ${kindWords(record.kind)} ${written(record)}`
	if (reading.newer)
		return (
			`${name} comes from a newer version and cannot be read by this one. Install the newer ` +
			`version to read it. ${nothingLost}`
		)
	const problems = reading.problems.map(({ path, message }) => `${path}: ${message}`)
	return (
		`${name} cannot be read: ${listed(problems, '; ')}. All other records are unaffected; restore ` +
		'it from a backup.'
	)
}
/** What records of a kind say that this version does not know. @param paths of the entries */
export function unknownWords(kind: string, records: number, paths: readonly string[]): string {
	const [what, hold] =
		records === 1
			? [`The ${kindWords(kind)}`, 'holds']
			: [`${records} records (${manyWords(kind)})`, 'hold']
	return (
		`${what} ${hold} entries that this version does not know: ${listed(paths, ', ')}. They are ` +
		'kept, and shown again by the version that wrote them.'
	)
}
/** The first of them, and how many more there are. */
function listed(all: readonly string[], between: string): string {
	const more = all.length - mostNamed
	const named = all.slice(0, mostNamed).join(between)
	return more > 0 ? `${named}${between}and ${more} more` : named
}
