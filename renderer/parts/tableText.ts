/** The bytes of a text file as text: UTF-8, or the code page that spreadsheets still write. Pure. */
export function decodedText(bytes: Uint8Array): string {
	try {
		return new TextDecoder('utf-8', { fatal: true }).decode(bytes)
	} catch {
		return new TextDecoder('windows-1252').decode(bytes)
	}
}
