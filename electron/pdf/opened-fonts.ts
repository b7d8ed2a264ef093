/**
 * The fonts, opened once for a thread. What draws the pages opens a font anew for each document, and
 * reading its tables again took more than half of the time of a page. So it is given a key in place
 * of a font's bytes: fontkit asks each of its formats by the first bytes, and ours knows the key.
 */
import { createRequire } from 'node:module'

type Fontkit = typeof import('fontkit')
/** The copy that draws the pages; an import would be given another one. */
const { openSync, registerFormat } = createRequire(import.meta.url)('fontkit') as Fontkit

/** No format of fontkit begins so. */
const mark = Buffer.from('LwOF')
const opened: object[] = []
/** Stands for fonts that are open: what is 'read' is the open font itself. */
class OpenFont {
	static probe(bytes: Uint8Array): boolean {
		return mark.equals(bytes.subarray(0, mark.length))
	}
	constructor({ buffer }: { buffer: Uint8Array }) {
		// biome-ignore lint/correctness/noConstructorReturn: fontkit asks for a font by `new`
		return opened[buffer[mark.length] ?? 0] ?? this
	}
}
registerFormat(OpenFont)

/** pdfmake's files by name, which go before those on the disk. */
interface NamedFiles {
	writeFileSync(name: string, bytes: Buffer): void
}
/** Opens the files, and puts the key of each in its place. */
export function openFonts(paths: readonly string[], named: NamedFiles): void {
	for (const path of paths) {
		const place = opened.push(openSync(path) as object) - 1
		named.writeFileSync(path, Buffer.from([...mark, place]))
	}
}
