/** The thresholds as they are found, typed and read back in the settings. */
import { protocolProblems } from '../../../shared/engine/protocol/check.ts'
import type { ProtocolFile, ThresholdKey } from '../../../shared/engine/protocol/protocol.ts'
import { rows } from '../../../shared/engine/protocol/rows.ts'
import { parseNumber } from '../../parts/parseNumber.ts'

export type Scheme = NonNullable<ProtocolFile['fpiScheme']>
export const keys = Object.keys(rows) as ThresholdKey[]
export const rooms = [...new Set(keys.map((key) => key.slice(0, key.indexOf('.'))))]
export const roomWords: Record<string, string> = {
	player: 'Player',
	sizing: 'Sizing',
	ankle: 'Ankle',
	posture: 'Posture',
	growth: 'Growth',
	screening: 'Screening',
	footwear: 'Footwear',
	loading: 'Load',
	insert: 'Insert',
	season: 'Season',
	squad: 'Squad day',
	conditions: 'Conditions: usual ages',
}
/** 'toeRoomAdultMinMm' in words; the unit stands beside the field. */
export const nameOf = (key: string): string => {
	const words = key
		.slice(key.indexOf('.') + 1)
		.replace(/(Mm|Cm|Deg|Kg|Years|Days|Percent)$/, '')
		.replace(/([a-z0-9])([A-Z])/g, '$1 $2')
		.replace(/[-.]/g, ' ')
		.toLowerCase()
	return words.charAt(0).toUpperCase() + words.slice(1)
}
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
	const known = `${key} ${nameOf(key)} ${unit} ${source} ${population}`.toLowerCase()
	return find
		.toLowerCase()
		.split(/\s+/)
		.every((word) => known.includes(word))
}
