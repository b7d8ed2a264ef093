/** Renders in a thread of its own: pdfmake blocks the one it runs in. */
import { randomBytes } from 'node:crypto'
import { parentPort } from 'node:worker_threads'
import pdfmake from 'pdfmake'
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
}
parentPort?.on('message', async ({ id, document, password }: Task) => {
	try {
		checkGlyphs(document)
		const protection =
			password === undefined ? undefined : { password, owner: randomBytes(24).toString('hex') }
		const printer = pdfmake.createPdf(definitionOf(document, protection))
		parentPort?.postMessage({ id, bytes: new Uint8Array(await printer.getBuffer()) })
	} catch (error) {
		parentPort?.postMessage({
			id,
			name: error instanceof Error ? error.name : 'Error',
			message: error instanceof Error ? error.message : String(error),
		})
	}
})
