/** A store of the first schema, killed while it is brought up to date, opens whole afterwards. */
import { spawn } from 'node:child_process'
import { copyFileSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { openNow, passphrase } from '../host/clock-app.ts'

const oldStore = fileURLToPath(
	new URL('../compatibility/fixtures/before-0.1.0/home/lastwright.db', import.meta.url),
)
const storeModule = new URL('../../electron/store/store.ts', import.meta.url).href
const playersThere = 2

/** Opens the store of a folder in a program of its own, and stays. */
const scriptFor = (folder: string): string =>
	`import(${JSON.stringify(storeModule)}).then(({ Store }) => { process.stdout.write('go'); ` +
	`new Store(${JSON.stringify(folder)}, { cost: 1024 }); setInterval(() => {}, 1000) })`

/** @returns a sentence for each fault */
export async function upgradeUntilKilled(delayMs: number): Promise<string[]> {
	const here = mkdtempSync(join(tmpdir(), 'lastwright-upgrade-'))
	copyFileSync(oldStore, join(here, 'lastwright.db'))
	await new Promise<void>((resolve) => {
		const child = spawn(
			process.execPath,
			['--disable-warning=ExperimentalWarning', '--input-type=module', '-e', scriptFor(here)],
			{ stdio: ['ignore', 'pipe', 'ignore'] },
		)
		child.stdout.once('data', () => setTimeout(() => child.kill('SIGKILL'), delayMs))
		child.once('close', () => resolve())
	})
	const app = openNow(here)
	try {
		await app.ask('session.unlock', { passphrase })
		const { total } = await app.ask('players.search', { query: '', limit: 5 })
		const { problems } = await app.ask('audit.verify')
		return total === playersThere
			? problems
			: [`upgrade killed after ${delayMs} ms: ${total} players of ${playersThere}`, ...problems]
	} finally {
		app.close()
		rmSync(here, { recursive: true, force: true })
	}
}
