/** Works in a thread of its own: pdfmake blocks the one it runs in. */
import { randomBytes } from 'node:crypto'
import { parentPort } from 'node:worker_threads'
import { need } from '../../shared/engine/plain/need.ts'
import { BadLogo } from '../../shared/engine/report/bad-logo.ts'
import type { LwDocument } from '../../shared/engine/report/document.ts'
import { checkGlyphs } from './glyphs.ts'
import { definitionOf, type Laid } from './layout.ts'
import { settingsOf } from './page.ts'
import { type LaidOut, laidOut } from './print/print.ts'
import type { Task, TaskAnswer, TaskResult } from './tasks.ts'

const ownerPassword = (): string => randomBytes(24).toString('hex')

type Drawing = Extract<Task, { does: 'draw' }>
type Protection = NonNullable<Parameters<typeof definitionOf>[1]>['protection']
/** What must stand on page one does, and the next page holds the rest. */
const fewPages = 2
/**
 * In the largest letters in which what must stand on one page does, in the usual setting if in none;
 * in closer lines where that spares a page.
 */
async function drawn(document: LwDocument, protection: Protection): Promise<Uint8Array> {
	let usual: LaidOut | undefined
	let fitting: LaidOut | undefined
	for (const setting of settingsOf(document)) {
		const laid: Laid = { overflows: false }
		const pages = laidOut(definitionOf(document, { protection, setting, laid }))
		usual ??= pages
		const isCloser = setting.isClose && !laid.overflows
		if (fitting) return (isCloser && pages.count < fitting.count ? pages : fitting).draw()
		if (laid.overflows) continue
		if (pages.count <= fewPages || setting.isClose) return pages.draw()
		fitting = pages
	}
	return need(fitting ?? usual, 'a setting').draw()
}
const withoutLogo = ({ letterhead: { logo: _logo, ...letterhead }, ...document }: LwDocument) => ({
	...document,
	letterhead,
})
/**
 * The page; where its logo cannot be drawn, the page without it: a letterhead never holds up a
 * report. @throws BadLogo where the logo must show and cannot
 */
async function bytesOf({ document, logoMustShow }: Drawing, protection: Protection) {
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
