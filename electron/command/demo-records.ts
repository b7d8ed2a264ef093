/**
 * The demo's records: filled once, kept beside the built screens, and copied at each later start,
 * since opening takes less time than filling.
 */
import { createHash } from 'node:crypto'
import {
	cpSync,
	mkdirSync,
	mkdtempSync,
	readdirSync,
	readFileSync,
	renameSync,
	rmSync,
	statSync,
	writeFileSync,
} from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { type App, createApp } from '../app.ts'
import { renderPdf } from '../pdf/render.ts'
import { demoPassphrase, seedDemo } from './demo.ts'

const root = fileURLToPath(new URL('../../', import.meta.url))
const build = join(root, 'build')
const kept = join(build, 'demo')
/** What the records were made of, and on which day: any change has them made anew. */
const madeOf = ['electron', 'shared', 'assets/demo', 'package-lock.json']

function fingerprint(day: string): string {
	const hash = createHash('sha256').update(day)
	const add = (path: string) => {
		const { mtimeMs, size } = statSync(path)
		hash.update(`${path} ${mtimeMs} ${size}\n`)
		if (statSync(path).isDirectory())
			for (const name of readdirSync(path).toSorted()) add(join(path, name))
	}
	for (const place of madeOf) add(join(root, place))
	return hash.digest('hex')
}
function copied(mark: string, folder: string): boolean {
	try {
		if (readFileSync(join(kept, 'made-of'), 'utf8') !== mark) return false
		cpSync(join(kept, 'records'), folder, { recursive: true })
		return true
	} catch {
		return false
	}
}
/** Keeps a copy for the next start. Where that cannot be done the next start fills them again. */
function keep(mark: string, folder: string): void {
	try {
		mkdirSync(build, { recursive: true })
		const making = mkdtempSync(join(build, 'demo-'))
		cpSync(folder, join(making, 'records'), { recursive: true })
		writeFileSync(join(making, 'made-of'), mark)
		rmSync(kept, { recursive: true, force: true })
		// of two that start at once one is first
		try {
			renameSync(making, kept)
		} catch {
			rmSync(making, { recursive: true, force: true })
		}
	} catch {
		/* a folder that cannot be written: nothing is kept */
	}
}
/**
 * @param folder an empty folder that is thrown away at the end @param day today, in any form
 * @returns the workstation, unlocked. @throws Error naming the call that refused
 */
export async function openDemo(
	folder: string,
	day: string,
	note: (text: string) => void,
): Promise<App> {
	const open = () =>
		createApp({ dataFolder: folder, renderPdf, demo: true, scryptCost: 1024, note })
	const unlocked = async (): Promise<App | undefined> => {
		const app = open()
		if ((await app.call('session.unlock', { passphrase: demoPassphrase })).ok) return app
		app.close()
		return undefined
	}
	const mark = fingerprint(day)
	const app = copied(mark, folder) ? await unlocked() : undefined
	if (app) return app
	rmSync(folder, { recursive: true, force: true })
	mkdirSync(folder, { recursive: true })
	const filling = open()
	await seedDemo(filling)
	filling.close()
	keep(mark, folder)
	const filled = await unlocked()
	if (!filled) throw new Error('demo: session.unlock refused')
	return filled
}
