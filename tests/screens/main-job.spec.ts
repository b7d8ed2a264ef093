/**
 * The whole main job in a real browser: set up, find nobody, add a player, measure, lose the host,
 * resume, decide, sign, read the PDF back.
 */
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, type Page, test } from '@playwright/test'
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs'
import { agreeOnSign, hostCall, settleQuestions, signButton, visitSaved } from './drive.ts'
import { startHost } from './host.ts'

const passphrase = 'seven grey herons'
async function pdfText(base64: string): Promise<string> {
	const pdf = await getDocument({
		data: new Uint8Array(Buffer.from(base64, 'base64')),
		useSystemFonts: false,
	}).promise
	const pages: string[] = []
	for (let number = 1; number <= pdf.numPages; number++)
		pages.push(
			(await (await pdf.getPage(number)).getTextContent()).items
				.map((item) => ('str' in item ? item.str : ''))
				.join(' '),
		)
	expect(pages.length).toBeGreaterThanOrEqual(2)
	return pages.join(' ').replace(/\s+/g, ' ')
}
const step = (page: Page, name: string) =>
	page.getByRole('navigation', { name: 'Steps' }).getByRole('button', { name, exact: true })
const field = (page: Page, name: string) => page.getByRole('textbox', { name, exact: true })

test('from the measuring device to the signed report', async ({ page }) => {
	const data = mkdtempSync(join(tmpdir(), 'lastwright-job-'))
	const violations: string[] = []
	page.on('console', (message) => {
		if (/Content Security Policy/i.test(message.text())) violations.push(message.text())
	})
	page.on('pageerror', (error) => violations.push(error.message))
	let host = await startHost('--data', data)
	try {
		await page.goto(host.url)
		await page.getByLabel('Clinic name').fill('Harrow Lane Foot Clinic')
		await page.getByLabel('Clinician name').fill('Imke Darrow')
		await page.getByLabel('Registration number').fill('DEMO-00417')
		await page
			.getByLabel(/^Passphrase/)
			.nth(0)
			.fill(passphrase)
		await page
			.getByLabel(/^Passphrase/)
			.nth(1)
			.fill(passphrase)
		await page.getByRole('button', { name: 'Set up' }).click()
		await page.getByLabel('I have it on paper').check()
		await page.getByRole('button', { name: /Continue|Go on/ }).click()

		await page.getByRole('button', { name: 'New player' }).click()
		await page.getByLabel('Given name').fill('Zoë')
		await page.getByLabel('Family name').fill('Marlowe-Nguyễn')
		await page.getByLabel('Birth date').fill('1999-11-08')
		await page.getByLabel('Sex').selectOption('female')
		await page.getByRole('button', { name: 'Save player' }).click()
		await page.getByRole('button', { name: 'Start assessment' }).click()

		// the measures by keyboard alone: Enter walks left, right, next row
		await step(page, 'Feet').press('Enter')
		await field(page, 'Heel to toe, left').focus()
		for (const typed of ['264 265', '26,3 cm', '195', '196', '104', '105', '254', '256']) {
			await page.keyboard.type(typed)
			await page.keyboard.press('Enter')
		}
		await expect(field(page, 'Toe depth, left')).toBeFocused()
		await expect(page.getByText('mean 264.5')).toBeVisible()
		const result = page.getByRole('complementary', { name: 'Result' })
		await expect(result.getByRole('group', { name: 'Feet' })).toContainText('Inside length')
		await expect(result.getByRole('img', { name: /^Both feet from above/ })).toHaveAccessibleName(
			/left 264.5 mm long, heel to ball 195 mm, 104 mm wide; right 263 mm long/,
		)

		// refused in words, kept as typed, and gone once right
		await field(page, 'Heel width, left').fill('655')
		await expect(
			page.getByRole('alert').filter({ hasText: '655 is outside what can be measured' }),
		).toBeVisible()
		await field(page, 'Heel width, left').fill('65')

		await step(page, 'Ankles').press('Enter')
		await field(page, 'Knee to wall, left').focus()
		for (const typed of ['6.1 6.3 6.2', '8.4 8.2 8.4', '29 30 29', '36 36 37']) {
			await page.keyboard.type(typed)
			await page.keyboard.press('Enter')
		}
		await expect(page.getByText(/^Saved \d\d:/)).toBeVisible()
		await expect(page.getByText(/^Saving/)).toHaveCount(0)
		await visitSaved(page, ({ ankles }) => ankles?.right?.lungeDeg, [36, 36, 37])

		// the host dies; nothing that was shown as saved is gone
		await host.kill('SIGKILL')
		host = await startHost('--data', data)
		await page.goto(host.url)
		await page.getByLabel('Passphrase').fill(passphrase)
		await page.keyboard.press('Enter')
		const search = page.getByLabel(/search/i).first()
		await search.fill('nguyen zoe')
		await expect(page.getByText('Marlowe-Nguyễn').first()).toBeVisible()
		await search.press('Enter')
		await page.getByRole('button', { name: 'Resume assessment' }).click()
		await expect(page.getByRole('heading', { level: 1, name: 'Ankles' })).toBeVisible()
		await expect(field(page, 'Knee to wall, left')).toHaveValue('6.1 6.3 6.2')
		await step(page, 'Feet').click()
		await expect(field(page, 'Heel to toe, right')).toHaveValue('263')
		await expect(field(page, 'Heel width, left')).toHaveValue('65')

		await step(page, 'Flags').click()
		await page
			.getByRole('group', { name: 'Pain at night or at rest' })
			.getByRole('button', { name: 'No', exact: true })
			.click()
		await step(page, 'Decide').click()
		await settleQuestions(page)
		await step(page, 'Sign').click()
		await page.getByRole('button', { name: 'Preview' }).click()
		await expect(page.locator('iframe[title="Report preview"]')).toBeVisible({ timeout: 30_000 })
		await agreeOnSign(page)
		await signButton(page).click()
		await expect(page.locator('iframe[title="Signed report"]')).toBeVisible({ timeout: 30_000 })

		const { cards } = (await hostCall(page, 'players.search', {
			query: 'marlowe',
			limit: 5,
		})) as unknown as { cards: { playerId: string }[] }
		const { visits, drafts } = (await hostCall(page, 'players.open', {
			playerId: cards[0]!.playerId,
		})) as unknown as { visits: { visitId: string }[]; drafts: unknown[] }
		expect([visits.length, drafts.length]).toEqual([1, 0])
		const report = (await hostCall(page, 'reports.open', {
			visitId: visits[0]!.visitId,
		})) as unknown as { base64: string; sha256: string }
		const text = await pdfText(report.base64)
		for (const sentence of [
			'Zoë Marlowe-Nguyễn',
			'What to do now',
			'264.5 mm',
			'Your size',
			'Imke Darrow',
			'page 2 of',
			'Ask us where this comes from',
			'Both ankles bend less than most',
		])
			expect(text).toContain(sentence)
		expect(text).not.toMatch(/undefined|NaN|null|\[object/)
		expect(text).not.toContain('DRAFT')
		expect(
			(
				(await hostCall(page, 'reports.open', { visitId: visits[0]!.visitId })) as unknown as {
					sha256: string
				}
			).sha256,
		).toBe(report.sha256)
		for (const name of readdirSync(data)) {
			const bytes = readFileSync(join(data, name)).toString('latin1')
			expect(
				bytes.includes('Marlowe') || bytes.includes('1999-11-08'),
				`${name} holds a name or birth date in clear`,
			).toBe(false)
		}
		expect(violations).toEqual([])
	} finally {
		await host.kill()
		rmSync(data, { recursive: true, force: true })
	}
})

test(
	'the loopback host refuses a second use of its address, another host name, another origin ' +
		'and a path outside',
	async ({ request }) => {
		const host = await startHost('--demo')
		try {
			const { origin, port } = new URL(host.url)
			expect((await request.get(`${origin}/`)).status()).toBe(403)
			expect((await request.get(host.url)).status()).toBe(200)
			const page = await request.get(`${origin}/`)
			expect(page.status()).toBe(200)
			expect(page.headers()['content-security-policy']).toContain("default-src 'none'")
			expect(
				(await request.get(`${origin}/`, { headers: { host: `localhost:${port}` } })).status(),
			).toBe(403)
			const post = (headers: Record<string, string>) =>
				request.post(`${origin}/call/players.search`, {
					headers: { 'content-type': 'application/json', ...headers },
					data: JSON.stringify({ query: '', limit: 5 }),
				})
			expect((await post({ origin: 'http://evil.example' })).status()).toBe(403)
			expect((await post({})).status()).toBe(403)
			expect(await (await post({ origin })).json()).toMatchObject({
				ok: true,
				value: { total: 25 },
			})
			for (const path of [
				'/%2e%2e/%2e%2e/package.json',
				'/..%2f..%2fpackage.json',
				'/assets/..%5c..%5cpackage.json',
				'/%00',
			])
				expect((await request.get(`${origin}${path}`)).status(), path).toBe(404)
			expect(
				(
					await request.post(`${origin}/call/nothing`, {
						headers: { origin, 'content-type': 'application/json' },
						data: Buffer.from('{'),
					})
				).status(),
			).toBe(400)
			expect((await request.get(host.url)).status()).toBe(403)
		} finally {
			await host.kill()
		}
	},
)
