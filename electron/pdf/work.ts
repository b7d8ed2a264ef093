/** Works in a thread of its own: pdfmake blocks the one it runs in. */
import { randomBytes } from 'node:crypto'
import { parentPort } from 'node:worker_threads'
import { BadLogo } from '../../shared/engine/report/bad-logo.ts'
import type { LwDocument } from '../../shared/engine/report/document.ts'
import { fitted } from './fitted.ts'
import { checkGlyphs } from './glyphs.ts'
import type { Protection } from './layout.ts'
import type { Task, TaskAnswer, TaskResult } from './tasks.ts'

const ownerPassword = (): string => randomBytes(24).toString('hex')

type Drawing = Extract<Task, { does: 'draw' }>
const drawn = async (
	document: LwDocument,
	protection: Protection | undefined,
): Promise<Uint8Array> => fitted(document, protection).draw()
const withoutLogo = ({ letterhead: { logo: _logo, ...letterhead }, ...document }: LwDocument) => ({
	...document,
	letterhead,
})
/**
 * The page; where its logo cannot be drawn, the page without it: a letterhead never holds up a
 * report. @throws BadLogo where the logo must show and cannot
 */
async function bytesOf({ document, logoMustShow }: Drawing, protection: Protection | undefined) {
	if (!document.letterhead.logo) return drawn(document, protection)
	try {
		return await drawn(document, protection)
	} catch (error) {
		const plain = await drawn(withoutLogo(document), protection)
		if (!logoMustShow) return plain
		if (error instanceof BadLogo) throw error
		throw new BadLogo(
			`it cannot be drawn, given a picture that stops the page (${wordsOf(error)}), ` +
				'allowed: a PNG or JPEG picture. Save the picture anew',
		)
	}
}
/** What draws the page also throws plain texts. */
const wordsOf = (error: unknown): string =>
	(error instanceof Error ? error.message : String(error)).slice(0, 200)
async function draw(task: Drawing): Promise<TaskResult> {
	const { document, password } = task
	checkGlyphs(document)
	const protection = password === undefined ? undefined : { password, owner: ownerPassword() }
	return { bytes: await bytesOf(task, protection) }
}
/** What encrypts and reads is large and seldom needed: it is loaded when first asked for. */
async function answerTo(task: Task): Promise<TaskResult> {
	if (task.does === 'draw') return draw(task)
	if (task.does === 'protect') {
		const { encrypted } = await import('./encrypt.ts')
		return { bytes: await encrypted(task.bytes, task.password, ownerPassword()) }
	}
	if (task.does === 'cut') {
		const { firstPageOf } = await import('./encrypt.ts')
		return { bytes: await firstPageOf(task.bytes) }
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
			// what the caller's own class is made of
			message: error instanceof BadLogo ? error.flaw : wordsOf(error),
		})
	}
})
