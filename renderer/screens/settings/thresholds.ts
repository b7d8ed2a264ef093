/** The thresholds as they are found, typed and read back in the settings. */
import { protocolProblems } from '../../../shared/engine/protocol/check.ts'
import type { ProtocolFile, ThresholdKey } from '../../../shared/engine/protocol/protocol.ts'
import { rows } from '../../../shared/engine/protocol/rows.ts'
import { thresholdName } from '../../../shared/engine/words/reading.ts'
import { parseNumber } from '../../parts/parseNumber.ts'

export type Scheme = NonNullable<ProtocolFile['fpiScheme']>
export const keys = Object.keys(rows) as ThresholdKey[]
export const rooms = [...new Set(keys.map((key) => key.slice(0, key.indexOf('.'))))]
/** What was set in a file, as text by its key. */
export const textsOf = (file: ProtocolFile): Record<string, string> =>
	Object.fromEntries(Object.entries(file.values ?? {}).map(([key, value]) => [key, String(value)]))

/** The typed texts as numbers, and what is wrong with each. */
export function readTexts(texts: Readonly<Record<string, string>>): {
	values: Record<string, number>
	wrong: Record<string, string>
} {
	const values: Record<string, number> = {}
	const wrong: Record<string, string> = {}
	for (const [key, text] of Object.entries(texts)) {
		const parsed = parseNumber(text, '')
		const [value, another] = parsed.ok ? parsed.values : []
		if (!parsed.ok) wrong[key] = parsed.says
		else if (value === undefined || another !== undefined)
			wrong[key] = `'${text}' is not one number. Type one, or restore the shipped value.`
		else values[key] = value
	}
	for (const { path, message } of protocolProblems(values))
		wrong[path.replace('values.', '')] ??= `${message}.`
	return { values, wrong }
}
/** A value typed as it was shipped is no change. */
export function differs(
	values: Readonly<Record<string, number>>,
	scheme: Scheme | undefined,
	kept: ProtocolFile,
): boolean {
	const own = Object.entries(values).filter(
		([key, value]) => rows[key as ThresholdKey].value !== value,
	)
	const before = Object.entries(kept.values ?? {})
	return JSON.stringify(own.sort()) !== JSON.stringify(before.sort()) || scheme !== kept.fpiScheme
}
/** @returns whether every word stands in what is known of the threshold */
export function fitsWords(key: ThresholdKey, find: string): boolean {
	const { unit, source, population } = rows[key]
	const known = `${key} ${thresholdName(key)} ${unit} ${source} ${population}`.toLowerCase()
	return find
		.toLowerCase()
		.split(/\s+/)
		.every((word) => known.includes(word))
}
