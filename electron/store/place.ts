/** Where these records lie: a copy of the folder is noticed by it. */
import { realpathSync, statSync } from 'node:fs'
import { hostname } from 'node:os'
import { dirname } from 'node:path'
import { z } from 'zod'
import type { Settings } from './settings.ts'

const setting = 'place'
const placeSchema = z.object({
	host: z.string(),
	folder: z.string(),
	/** the number of the file on its disk: a copy gets another one */
	file: z.string(),
})
export type Place = z.infer<typeof placeSchema>

/** @param records the records file, which must be there */
export function placeOf(records: string): Place {
	const { ino } = statSync(records, { bigint: true })
	return { host: hostname(), folder: realpathSync(dirname(records)), file: String(ino) }
}
/** Where the records lay when they were last opened; undefined where that was never noted. */
export function notedPlace(settings: Settings): Place | undefined {
	try {
		return placeSchema.parse(JSON.parse(settings.text(setting) ?? ''))
	} catch {
		return undefined
	}
}
export const notePlace = (settings: Settings, place: Place): void =>
	settings.put(setting, JSON.stringify(place))
export const isSamePlace = (first: Place, second: Place): boolean =>
	first.host === second.host && first.folder === second.folder && first.file === second.file

/** What the person should know of a copy, in words. */
export const copiedWords = (from: Place, here: Place): string =>
	`These records were copied or moved: they were last opened in ${from.folder} on ${from.host}, and ` +
	`now lie in ${here.folder} on ${here.host}. From now on what is written here bears a name of its ` +
	'own. Work in one of the two places only: what is entered in the other one does not come here.'
