/**
 * The one way out of the window: an address shown in the browser of the PC. Nothing else calls the
 * system's opener.
 */

/** Places that may be opened, with the reason. */
const outside: Readonly<Record<string, string>> = {
	'doi.org': 'the source of a threshold, by its registered name',
}

/**
 * @returns the address in its parsed form, undefined for anything that is not https to a place of
 * the table
 * @internal
 */
export function safeLink(url: string): string | undefined {
	if (!URL.canParse(url)) return undefined
	const { protocol, hostname, port, username, password, href } = new URL(url)
	return protocol === 'https:' &&
		Object.hasOwn(outside, hostname) &&
		port === '' &&
		username === '' &&
		password === ''
		? href
		: undefined
}
/**
 * Asks, then opens. @param ask whether the person wants it; @param open the system's opener.
 * @returns whether it was opened
 */
export async function openOutside(
	url: string,
	ask: (link: string) => Promise<boolean>,
	open: (link: string) => Promise<void>,
): Promise<boolean> {
	const link = safeLink(url)
	if (link === undefined || !(await ask(link))) return false
	await open(link)
	return true
}
