/**
 * What may be saved from the window: files our own pages made, of known kinds, under a name that
 * cannot lead elsewhere.
 */
import { isOwnBlob } from './security.ts'

/** Kinds by their ending, with the words of the save dialog. @internal */
export const kinds: Readonly<Record<string, string>> = {
	pdf: 'Report',
	csv: 'Table',
	ics: 'Calendar',
	json: 'Lastwright file',
	eml: 'Message',
	html: 'Page to print',
	zip: 'Packed files',
	txt: 'Text',
}
/** The largest file in bytes; common practice, no source. */
const largest = 200 * 1024 * 1024
const longest = 120
/** Names Windows keeps for devices, from memory. */
const device = /^(?:con|prn|aux|nul|com\d|lpt\d)(?:\.|$)/i

/** @returns the name and kind to offer, undefined where the file may not be saved at all */
export function saveAs(
	url: string,
	fileName: string,
	bytes: number,
): { name: string; ending: string; kind: string } | undefined {
	if (!isOwnBlob(url) || bytes > largest) return undefined
	const plain = (fileName.split(/[\\/]/).at(-1) ?? '')
		// biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is taken out
		.replace(/[\u0000-\u001f\u007f\u200e\u200f\u202a-\u202e\u2066-\u2069<>:"|?*]/g, '')
		.replace(/^[.\s]+|[.\s]+$/g, '')
	const ending = /\.([a-z]+)$/i.exec(plain)?.[1]?.toLowerCase() ?? ''
	if (!Object.hasOwn(kinds, ending)) return undefined
	const stem = plain.slice(0, -(ending.length + 1)).slice(0, longest) || 'lastwright'
	const safe = device.test(`${stem}.`) ? `file ${stem}` : stem
	return { name: `${safe}.${ending}`, ending, kind: kinds[ending] ?? '' }
}
