/** Renders in a thread of its own: pdfmake blocks the one it runs in. */
import { randomBytes } from 'node:crypto'
import { parentPort } from 'node:worker_threads'
import pdfmake from 'pdfmake'
import { BadLogo } from '../../shared/engine/report/bad-logo.ts'
import type { LwDocument } from '../../shared/engine/report/document.ts'
import { fontFiles } from './fonts.ts'
import { checkGlyphs } from './glyphs.ts'
import { definitionOf } from './layout.ts'

const allowed = new Set<string>(Object.values(fontFiles))
pdfmake.setUrlAccessPolicy(() => false)
pdfmake.setLocalAccessPolicy((path) => allowed.has(path))
pdfmake.addFonts({ Noto: fontFiles })

interface Task {
	id: number
	document: LwDocument
	password?: string
	/** a page without its logo will not do */
	logoMustShow?: boolean
}
type Protection = Parameters<typeof definitionOf>[1]
async function drawn(document: LwDocument, protection: Protection): Promise<Uint8Array> {
	const printer = pdfmake.createPdf(definitionOf(document, protection))
	return new Uint8Array(await printer.getBuffer())
}
const withoutLogo = ({ letterhead: { logo: _logo, ...letterhead }, ...document }: LwDocument) => ({
	...document,
	letterhead,
})
/**
 * The page; where its logo cannot be drawn, the page without it: a letterhead never holds up a
 * report. @throws BadLogo where the logo must show and cannot
 */
async function bytesOf({ document, logoMustShow }: Task, protection: Protection) {
	if (!document.letterhead.logo) return drawn(document, protection)
	try {
		return await drawn(document, protection)
	} catch (error) {
		const plain = await drawn(withoutLogo(document), protection)
		if (!logoMustShow) return plain
		if (error instanceof BadLogo) throw error
		throw new BadLogo(
			`logo: it cannot be drawn, given a picture that stops the page (${wordsOf(error)}), ` +
				'allowed: a PNG or JPEG picture. Save the picture anew',
		)
	}
}
/** What draws the page also throws plain texts. */
const wordsOf = (error: unknown): string =>
	(error instanceof Error ? error.message : String(error)).slice(0, 200)
parentPort?.on('message', async (task: Task) => {
	const { id, document, password } = task
	try {
		checkGlyphs(document)
		const protection =
			password === undefined ? undefined : { password, owner: randomBytes(24).toString('hex') }
		parentPort?.postMessage({ id, bytes: await bytesOf(task, protection) })
	} catch (error) {
		parentPort?.postMessage({
			id,
			name: error instanceof Error ? error.name : 'Error',
			message: wordsOf(error),
		})
	}
})
