/** A name that stands in one cell, parted into given and family name. */

/**
 * 'Ashdown, Tui' and 'Tui Ashdown'. Of three words nobody can tell which are the family name.
 * @returns undefined where it cannot be told
 */
export function nameParts(whole: string): { givenName: string; familyName: string } | undefined {
	const [family = '', given = '', ...more] = whole.split(',').map((part) => part.trim())
	if (given !== '' && family !== '' && more.length === 0)
		return { givenName: given, familyName: family }
	const [first = '', second = '', ...others] = whole.split(/\s+/)
	if (whole.includes(',') || second === '' || others.length > 0) return undefined
	return { givenName: first, familyName: second }
}
/** What a program writes for a letter that it could not read. */
const lost = '\ufffd'
export const hasLostLetters = (text: string): boolean => text.includes(lost)
