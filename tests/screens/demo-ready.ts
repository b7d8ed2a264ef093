/**
 * The demo of the browser tests is filled before the first of them, so that none waits for it: later
 * starts copy it.
 */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { clockFrom } from '../../electron/command/demo/clock.ts'
import { openDemo } from '../../electron/command/demo/records.ts'
import { demoDay } from '../demo.ts'

/** As its files stand, and of the day of this PC. */
const days = [demoDay, undefined]

export default async function demoReady(): Promise<void> {
	const note = (text: string) => process.stderr.write(`${text}\n`)
	for (const day of days) {
		const folder = mkdtempSync(join(tmpdir(), 'lastwright-demo-'))
		const app = await openDemo({ folder, now: clockFrom(day), note })
		app.close()
		rmSync(folder, { recursive: true, force: true })
	}
}
