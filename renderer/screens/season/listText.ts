/** The text of a fixture list from its file. Pure. */
import { isCalendarBytes, unfolded } from '../../../shared/engine/season/decode-list.ts'
import { decodedText } from '../../parts/tableText.ts'

/** A calendar says so at its beginning; anything else is read as a table. */
export const isCalendar = (text: string): boolean => /BEGIN:VCALENDAR/i.test(text.slice(0, 2000))
/**
 * UTF-8, or the bytes of older spreadsheets. A calendar's folds come out first: one may stand
 * inside a character.
 */
export function textOf(file: ArrayBuffer): string {
	const raw = new Uint8Array(file)
	return decodedText(isCalendarBytes(raw) ? unfolded(raw) : raw)
}
