/** Works in a thread of its own: pdfmake blocks the one it runs in. */
import { randomBytes } from 'node:crypto'
import { parentPort } from 'node:worker_threads'
import pdfmake from 'pdfmake'
import { fontFiles } from './fonts.ts'
import { checkGlyphs } from './glyphs.ts'
import { definitionOf } from './layout.ts'
import type { Task, TaskAnswer, TaskResult } from './tasks.ts'

const allowed = new Set<string>(Object.values(fontFiles))
pdfmake.setUrlAccessPolicy(() => false)
pdfmake.setLocalAccessPolicy((path) => allowed.has(path))
pdfmake.addFonts({ Noto: fontFiles })

const ownerPassword = (): string => randomBytes(24).toString('hex')

async function draw({ document, password }: Extract<Task, { does: 'draw' }>): Promise<TaskResult> {
	checkGlyphs(document)
	const protection = password === undefined ? undefined : { password, owner: ownerPassword() }
	const printer = pdfmake.createPdf(definitionOf(document, protection))
	return { bytes: new Uint8Array(await printer.getBuffer()) }
}
/** What encrypts and reads is large and seldom needed: it is loaded when first asked for. */
async function answerTo(task: Task): Promise<TaskResult> {
	if (task.does === 'draw') return draw(task)
	if (task.does === 'protect') {
		const { encrypted } = await import('./encrypt.ts')
		return { bytes: await encrypted(task.bytes, task.password, ownerPassword()) }
	}
	const { paragraphsOf } = await import('./read-text.ts')
	return { pages: await paragraphsOf(task.bytes) }
}
parentPort?.on('message', async ({ id, task }: { id: number; task: Task }) => {
	const tell = (answer: TaskAnswer) => parentPort?.postMessage(answer)
	try {
		tell({ id, ok: true, result: await answerTo(task) })
	} catch (error) {
		tell({
			id,
			ok: false,
			name: error instanceof Error ? error.name : 'Error',
			message: error instanceof Error ? error.message : String(error),
		})
	}
})
