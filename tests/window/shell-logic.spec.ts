/**
 * What the shell decides, on a stand-in for Electron's runtime that shows its pages in Chromium:
 * `main.ts` and `preload.cjs` as they stand. What this cannot prove is said in `fake/README.md`.
 */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, test } from '@playwright/test'
import { runShell } from './fake/run.ts'
import { starts } from './fake/starts.table.ts'

test('the shell on a stand-in for its runtime', async () => {
	test.skip(
		process.env.LASTWRIGHT_SHELL === undefined,
		'skipped: one walk of all checks is not steady yet; LASTWRIGHT_SHELL=1 runs it',
	)
	// five starts, each with its browser
	test.setTimeout(600_000)
	let data = ''
	const made: string[] = []
	try {
		for (const [name, start] of Object.entries(starts)) {
			if (!start.continues) {
				data = mkdtempSync(join(tmpdir(), 'lastwright-shell-logic-'))
				made.push(data)
			}
			start.before?.(data)
			await test.step(name, async () => {
				const told = await runShell(data, start.checks)
				expect(told.filter(({ fault }) => fault !== '')).toEqual([])
				expect(told).toHaveLength(start.checks.length)
			})
		}
	} finally {
		for (const folder of made) rmSync(folder, { recursive: true, force: true })
	}
})
