/** A document as a file: its PDF or its accessible page, and where it is put. */
import { mkdirSync, writeFileSync } from 'node:fs'
import type { LwDocument } from '../../shared/engine/report/document.ts'
import { reportCss } from '../../shared/engine/report/html/style.ts'
import { toHtml } from '../../shared/engine/report/html.ts'
import type { KindInput } from '../../shared/engine/report/kinds.ts'
import { nameProblems } from '../../shared/engine/visit/names.ts'
import { problemLine } from '../../shared/engine/visit/problems.ts'
import { renderPdf } from '../pdf/render.ts'
import { BadInput } from './args.ts'

/** One page for a screen reader, a telephone or large letters, with its style sheet in it. */
export const pageOf = (document: LwDocument): string =>
	toHtml(document, { css: reportCss(document.letterhead.colour) })

/** @throws BadInput where a name or a logo cannot be drawn */
export async function drawn(document: LwDocument, input: KindInput): Promise<Uint8Array> {
	try {
		return await renderPdf(document, { logoMustShow: true })
	} catch (error) {
		if (error instanceof Error && error.name === 'UnprintableText')
			throw new BadInput(unprintableLines(input, error.message))
		if (error instanceof Error && error.name === 'BadLogo') throw new BadInput([error.message])
		throw error
	}
}
/** The names that cannot be printed with what to do; where they are not at fault, the text that is. */
function unprintableLines({ visit, members = [] }: KindInput, says: string): string[] {
	const players = [visit, ...members.map((member) => member.visit)].map(({ player }) => player)
	const names = players.flatMap(nameProblems).map(problemLine)
	return names.length > 0 ? [...new Set(names)] : [says]
}
/** @throws BadInput where it cannot be made */
export function makeFolder(folder: string): void {
	try {
		mkdirSync(folder, { recursive: true })
	} catch (error) {
		throw new BadInput([
			`--out-dir: cannot be made (${(error as NodeJS.ErrnoException).code}), given "${folder}", ` +
				'allowed: a folder that can be written to',
		])
	}
}
/** @throws BadInput where it cannot be written */
export function write(out: string, written: Uint8Array | string): void {
	try {
		writeFileSync(out, written)
	} catch (error) {
		throw new BadInput([
			`--out: cannot be written (${(error as NodeJS.ErrnoException).code}), given "${out}", ` +
				'allowed: a file in a folder that exists',
		])
	}
}
