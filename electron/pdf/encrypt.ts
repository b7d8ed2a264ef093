/**
 * A PDF that exists, put under a password or cut to its first page: its pages stay as they are,
 * stream by stream. Revision 6 of the standard security handler (AES-256, ISO 32000-2, 7.6.4).
 */
import { createRequire } from 'node:module'
import startQpdf from '@neslinesli93/qpdf-wasm/dist/qpdf.js'
import { UnreadablePdf } from './unreadable.ts'

const program = createRequire(import.meta.url).resolve('@neslinesli93/qpdf-wasm/dist/qpdf.wasm')
const newLine = 10
const [given, made] = ['/kept.pdf', '/copy.pdf']
/** Printing and reading aloud are allowed; copying and changing are not. */
const permissions = ['--print=full', '--modify=none', '--extract=n', '--accessibility=y']
/** A warning, too, means that the file is not what this program or another one wrote. */
const wentWell = 0

/** @throws UnreadablePdf where the bytes are no whole PDF */
export const encrypted = (
	bytes: Uint8Array,
	password: string,
	ownerPassword: string,
): Promise<Uint8Array> =>
	copied(bytes, ['--encrypt', password, ownerPassword, '256', ...permissions, '--', given, made])

/** Its first page as a file of its own. @throws UnreadablePdf where the bytes are no whole PDF */
export const firstPageOf = (bytes: Uint8Array): Promise<Uint8Array> =>
	copied(bytes, ['--deterministic-id', given, '--pages', '.', '1', '--', made])

/** @throws UnreadablePdf where the bytes are no whole PDF */
async function copied(bytes: Uint8Array, how: string[]): Promise<Uint8Array> {
	const printed: number[] = []
	const print = (byte: number | null) => printed.push(byte ?? newLine)
	const qpdf = await startQpdf({
		locateFile: () => program,
		preRun: [({ FS }) => FS.init(() => null, print, print)],
	})
	qpdf.FS.writeFile(given, bytes)
	if (qpdf.callMain(how) !== wentWell) {
		const [first] = Buffer.from(printed).toString('utf8').split('\n')
		throw new UnreadablePdf(`The bytes are no PDF that can be read (${first}).`)
	}
	return qpdf.FS.readFile(made)
}
