/**
 * The bytes of a text file as text: UTF-16 where its mark says so, UTF-8, or the code page that
 * spreadsheets still write. Pure.
 */
export function decodedText(bytes: Uint8Array): string {
	const [first, second] = bytes
	if (first === 0xff && second === 0xfe) return new TextDecoder('utf-16le').decode(bytes)
	if (first === 0xfe && second === 0xff) return new TextDecoder('utf-16be').decode(bytes)
	try {
		return new TextDecoder('utf-8', { fatal: true }).decode(bytes)
	} catch {
		return new TextDecoder('windows-1252').decode(bytes)
	}
}
