/**
 * What may be wrong with an address: one letter off another one on record, or a domain that only
 * looks like a known one.
 */
export interface KnownAddress {
	email: string
	/** whose it is, in words */
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
/** How a domain looks to a hurried eye. */
export function skeleton(domain: string): string {
	const letters = [...domain.normalize('NFKC').toLowerCase()]
		.map((one) => lookAlike[one] ?? one)
		.join('')
	return pairs.reduce((text, [from, to]) => text.replace(from, to), letters)
}
/** One letter added, left out, changed, or two neighbours swapped; the same text is not one off. */
export function oneLetterOff(a: string, b: string): boolean {
	if (a === b || Math.abs(a.length - b.length) > 1) return false
	let start = 0
	while (start < a.length && start < b.length && a[start] === b[start]) start++
	let end = 0
	while (end < a.length - start && end < b.length - start && a.at(-1 - end) === b.at(-1 - end))
		end++
	const [x, y] = [a.slice(start, a.length - end), b.slice(start, b.length - end)]
	return (
		(x.length <= 1 && y.length <= 1) ||
		(x.length === 2 && y.length === 2 && x[0] === y[1] && x[1] === y[0])
	)
}
/**
 * Warnings to read before an address is used. A domain that others on record use too is trusted.
 * @param known every other address on record; the same address may stand among them
 */
export function addressWarnings(typed: string, known: readonly KnownAddress[]): string[] {
	const email = tidyAddress(typed)
	const domain = domainOf(email)
	const others = known
		.map((address) => ({ ...address, email: tidyAddress(address.email) }))
		.filter((one) => one.email !== email)
	const warnings: string[] = []
	const near = others.find((other) => oneLetterOff(other.email, email))
	if (near)
		warnings.push(
			`${email} is one letter off ${near.email} (${near.of}). Read it aloud to the recipient.`,
		)
	// biome-ignore lint/suspicious/noControlCharactersInRegex: plain ASCII is what is asked for
	if (!/^[\x00-\x7f]*$/.test(email) || domain.split('.').some((label) => label.startsWith('xn--')))
		warnings.push(
			`${email} holds letters of another script that can look like plain ones. Have it spelled.`,
		)
	const domains = new Map(others.map((other) => [domainOf(other.email), other]))
	if (near || domains.has(domain)) return warnings
	for (const [other, one] of domains) {
		const stem = (text: string) => text.slice(0, text.lastIndexOf('.'))
		const why =
			skeleton(other) === skeleton(domain)
				? 'looks like'
				: oneLetterOff(other, domain)
					? 'is one letter off'
					: stem(other) !== '' && stem(other) === stem(domain)
						? 'ends otherwise than'
						: undefined
		if (why) {
			warnings.push(
				`The part after @, ${domain}, ${why} ${other}, which is on record (${one.of}). Have it ` +
					'spelled.',
			)
			break
		}
	}
	return warnings
}
