/** An acknowledged save outlives kill -9 at any moment. */
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { expect, test } from 'vitest'
import { clinic, draftOf, noPage, openNow, passphrase, player } from './clock-app.ts'
import { runUntilKilled } from './killed.ts'

const script = fileURLToPath(new URL('./fixtures/save-drafts.ts', import.meta.url))
const rounds = 6
const open = (dataFolder: string) => openNow(dataFolder, noPage)

/**
 * @returns the process id and the last number that was acknowledged before the kill, `delayMs`
 * after the first one
 */
async function saveUntilKilled(
	dataFolder: string,
	playerId: string,
	delayMs: number,
): Promise<{ pid: number; acknowledged: number }> {
	const { pid, lines } = await runUntilKilled(script, [dataFolder, playerId, passphrase], delayMs)
	return { pid, acknowledged: Number(lines.at(-1)) }
}

test('every acknowledged draft is there after kill -9, and the dead process leaves no lock behind', {
	timeout: 60_000,
}, async () => {
	const here = mkdtempSync(join(tmpdir(), 'lastwright-kill-'))
	const lock = join(here, 'lastwright.lock')
	const first = open(here)
	await first.ask('session.setUp', { clinic, passphrase })
	const playerId = String((await first.ask('players.save', { player })).playerId)
	first.close()
	expect(existsSync(lock)).toBe(false)

	let before = 0
	for (let round = 1; round <= rounds; round++) {
		const delayMs = Math.floor(Math.random() * 250)
		const { pid, acknowledged } = await saveUntilKilled(here, playerId, delayMs)
		const where = `round ${round}, killed ${delayMs} ms after the first save`
		expect(acknowledged, where).toBeGreaterThan(before)
		expect(readFileSync(lock, 'utf8'), where).toBe(String(pid))

		const app = open(here)
		expect(readFileSync(lock, 'utf8'), where).toBe(String(process.pid))
		await app.ask('session.unlock', { passphrase })
		expect((await app.ask('session.status', {})).warnings, where).toEqual([])
		const stored = Number((await draftOf(app, playerId)).content.visit.notes)
		// the kill may fall between the commit and the print: then one more than was printed is stored
		expect(stored, where).toBeGreaterThanOrEqual(acknowledged)
		expect(stored, where).toBeLessThanOrEqual(acknowledged + 1)
		before = stored
		app.close()
		expect(existsSync(lock), where).toBe(false)
	}
	rmSync(here, { recursive: true, force: true })
})
