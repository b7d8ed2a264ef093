/**
 * What may be wrong with an address: one letter off another one on record, or a domain that only
 * looks like a known one.
 */
export interface KnownAddress {
	email: string
	/** whose it is */
	name: string
	/** and in which role, in words */
	of: string
}

/** Letters and digits that are taken for one another by eye; common practice, no source. */
const lookAlike: Record<string, string> = {
	0: 'o',
	1: 'l',
	i: 'l',
	5: 's',
	3: 'e',
	а: 'a',
	е: 'e',
	о: 'o',
	р: 'p',
	с: 'c',
	х: 'x',
	у: 'y',
	і: 'l',
	ѕ: 's',
	ο: 'o',
	α: 'a',
	ν: 'v',
}
const pairs: readonly (readonly [RegExp, string])[] = [
	[/rn/g, 'm'],
	[/vv/g, 'w'],
	[/cl/g, 'd'],
	[/-/g, ''],
]

export const tidyAddress = (email: string): string => email.normalize('NFKC').trim().toLowerCase()
const domainOf = (email: string): string => email.slice(email.lastIndexOf('@') + 1)
/** How a domain looks to a hurried eye. @internal */
export function skeleton(domain: string): string {
	const letters = [...domain.normalize('NFKC').toLowerCase()]
		.map((letter) => lookAlike[letter] ?? letter)
		.join('')
	return pairs.reduce((text, [from, to]) => text.replace(from, to), letters)
}
/** What is left of two texts once their common beginning and end are taken off. */
function differing(left: string, right: string): [string, string] {
	const shorter = Math.min(left.length, right.length)
	let start = 0
	while (start < shorter && left[start] === right[start]) start++
	let end = 0
	while (end < shorter - start && left.at(-1 - end) === right.at(-1 - end)) end++
	return [left.slice(start, left.length - end), right.slice(start, right.length - end)]
}
/** One letter added, left out, changed, or two neighbours swapped; the same text is not one off. */
export function oneLetterOff(left: string, right: string): boolean {
	if (left === right || Math.abs(left.length - right.length) > 1) return false
	const [inLeft, inRight] = differing(left, right)
	if (inLeft.length <= 1 && inRight.length <= 1) return true
	const isPair = inLeft.length === 2 && inRight.length === 2
	return isPair && inLeft[0] === inRight[1] && inLeft[1] === inRight[0]
}
/** The part before the last dot: `clinic` of `clinic.org`. */
const stemOf = (domain: string): string => domain.slice(0, domain.lastIndexOf('.'))
/** How a domain could be taken for another one; undefined where it could not. */
function likeness(domain: string, known: string): string | undefined {
	if (skeleton(known) === skeleton(domain)) return 'looks like'
	if (oneLetterOff(known, domain)) return 'is one letter off'
	const stem = stemOf(known)
	return stem !== '' && stem === stemOf(domain) ? 'ends otherwise than' : undefined
}
const holdsOtherScript = (email: string): boolean =>
	// biome-ignore lint/suspicious/noControlCharactersInRegex: plain ASCII is what is asked for
	!/^[\x00-\x7f]*$/.test(email) ||
	domainOf(email)
		.split('.')
		.some((label) => label.startsWith('xn--'))

/** Others who use the very same address: one person's on several records is one person. */
function sharedWith(email: string, whose: string, known: readonly KnownAddress[]): string[] {
	const others = known.filter((other) => other.email === email && !isSameName(other.name, whose))
	const named = [...new Set(others.map(({ name, of }) => `${name} (${of})`))]
	if (named.length === 0) return []
	const shown = named.slice(0, mostNamed)
	const more = named.length > shown.length ? ` and ${named.length - shown.length} more` : ''
	return [
		`${email} is on record for ${shown.join(', ')}${more} too. Ask ${whose || 'the recipient'} ` +
			'whose it is before anything is sent there.',
	]
}
/** People who are named at once: a choice of this program. */
const mostNamed = 3
const isSameName = (one: string, other: string): boolean =>
	wordsOfName(one).join(' ') === wordsOfName(other).join(' ')
const wordsOfName = (name: string): string[] =>
	name
		.normalize('NFKC')
		.toLowerCase()
		.split(/[\s,]+/)
		.filter(Boolean)
		.sort()

/**
 * Warnings to read before an address is used. A domain that others on record use too is trusted.
 * @param whose the name of the person it is to be used for
 * @param known every address on record; the same address may stand among them
 */
export function addressWarnings(
	typed: string,
	whose: string,
	known: readonly KnownAddress[],
): string[] {
	const email = tidyAddress(typed)
	const all = known.map((address) => ({ ...address, email: tidyAddress(address.email) }))
	const others = all.filter((other) => other.email !== email)
	const warnings = sharedWith(email, whose, all)
	const near = others.find((other) => oneLetterOff(other.email, email))
	if (near)
		warnings.push(
			`${email} is one letter off ${near.email} (${near.name}, ${near.of}). Read it aloud to ` +
				'the recipient.',
		)
	if (holdsOtherScript(email))
		warnings.push(
			`${email} holds letters of another script that can look like plain ones. Have it spelled.`,
		)
	if (!near) warnings.push(...domainWarning(domainOf(email), others))
	return warnings
}
/** At most one: about the first domain on record that this one could be taken for. */
function domainWarning(domain: string, others: readonly KnownAddress[]): string[] {
	const domains = new Map(others.map((other) => [domainOf(other.email), other]))
	if (domains.has(domain)) return []
	for (const [known, { name, of }] of domains) {
		const why = likeness(domain, known)
		if (why)
			return [
				`The part after @, ${domain}, ${why} ${known}, which is on record (${name}, ${of}). Have ` +
					'it spelled.',
			]
	}
	return []
}
