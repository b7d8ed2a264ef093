/** Two Lastwrights of one user, on two ports, in one browser: neither puts the other out. */
import { mkdtempSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, type Page, test } from '@playwright/test'
import { type Loopback, openLoopback } from '../../electron/loopback/server.ts'

const pages = mkdtempSync(join(tmpdir(), 'lastwright-two-'))
writeFileSync(join(pages, 'index.html'), '<!doctype html><title>Screens</title><h1>Screens</h1>')
const programs: Loopback[] = []
test.beforeEach(async () => {
	for (const name of ['first', 'second'])
		programs.push(await openLoopback({ call: async () => ({ ok: true, value: name }) }, { pages }))
})
test.afterEach(async () => {
	for (const program of programs.splice(0)) await program.close()
})
/** What the page's own program answers it. */
const asked = (page: Page): Promise<string> =>
	page.evaluate(async () => {
		const reply = await fetch('/call/session.status', {
			method: 'POST',
			headers: { 'content-type': 'application/json' },
			body: '{}',
		})
		return `${reply.status} ${(await reply.json()).value}`
	})

test('both go on, also after a reload, and each answers for itself', async ({ context }) => {
	const shown = await Promise.all(
		programs.map(async ({ url }) => {
			const page = await context.newPage()
			await page.goto(url)
			return page
		}),
	)
	for (const page of [...shown, ...shown.toReversed()]) {
		await page.reload()
		await expect(page.getByRole('heading', { name: 'Screens' })).toBeVisible()
	}
	expect(await Promise.all(shown.map(asked))).toEqual(['200 first', '200 second'])
	const cookies = await context.cookies()
	expect(cookies.map(({ httpOnly, sameSite, domain }) => [httpOnly, sameSite, domain])).toEqual(
		programs.map(() => [true, 'Strict', '127.0.0.1']),
	)
	expect(cookies.map(({ name }) => name).toSorted()).toEqual(
		programs.map(({ port }) => `lastwright-${port}`).toSorted(),
	)
})
