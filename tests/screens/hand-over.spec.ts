/**
 * Another person takes over in the middle of the work: one key, who, their PIN; by the keyboard
 * alone. What was typed is there when the first one comes back.
 */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, type Page, test } from '@playwright/test'
import { passphrase, signed, withPlayer } from '../host/bench-app.ts'
import { axe } from './axe.ts'
import { hostCall, settled, shot } from './drive.ts'
import { type RunningHost, startHost } from './host.ts'

const desk = { name: 'Fenna Oduya', registration: '', role: 'reception' }
const deskPassphrase = 'winter tulip harbour'
const pins = { owner: '7391', desk: '2468' }

/** Records with an owner and a receptionist, each with a PIN, and an open draft. */
async function ready(): Promise<{ here: string; playerId: string; visitId: string }> {
	const here = mkdtempSync(join(tmpdir(), 'lastwright-hand-over-'))
	const { app, playerId } = await withPlayer(here)
	await app.ask('session.setPin', { passphrase, pin: pins.owner })
	await app.ask('people.save', { ...desk, passphrase: deskPassphrase })
	const visitId = await signed(app, playerId)
	await app.ask('session.lock')
	await app.ask('session.unlock', { passphrase: deskPassphrase })
	await app.ask('session.setPin', { passphrase: deskPassphrase, pin: pins.desk })
	app.close()
	return { here, playerId, visitId }
}
const banner = (page: Page) => page.getByRole('banner')
const dialog = (page: Page) => page.getByRole('dialog', { name: 'Hand over' })
const at = async (page: Page, address: string) => {
	await page.evaluate((to) => {
		location.hash = to
	}, address)
	await settled(page)
}
/** One key, the PIN, Enter: there is one other person, who is chosen already. */
async function takeOver(page: Page, pin: string): Promise<void> {
	await page.keyboard.press('F2')
	await expect(dialog(page).getByRole('radio')).toBeFocused()
	await page.keyboard.press('Tab')
	await page.keyboard.type(pin)
	await page.keyboard.press('Enter')
	await expect(dialog(page)).toHaveCount(0)
}

test.describe('handing over', () => {
	test.describe.configure({ timeout: 120_000 })
	let host: RunningHost
	let here: string
	let playerId: string
	let visitId: string
	test.beforeEach(async ({ page }) => {
		;({ here, playerId, visitId } = await ready())
		host = await startHost('--data', here)
		await page.goto(host.url)
		await page.getByLabel('Passphrase', { exact: true }).fill(passphrase)
		await page.keyboard.press('Enter')
		await expect(page.getByRole('heading', { level: 1, name: 'Players' })).toBeVisible()
	})
	test.afterEach(async () => {
		await host.kill()
		rmSync(here, { recursive: true, force: true })
	})

	test('out of a field of the assessment, and back to it: nothing typed is lost', async ({
		page,
	}) => {
		await at(page, `#/assessment/${playerId}`)
		await page.keyboard.press('Alt+3')
		const field = page.getByRole('textbox', { name: 'Heel to toe, left', exact: true })
		await field.fill('251.5')
		await page.keyboard.press('F2')
		await expect(dialog(page)).toContainText('A. Example works here now.')
		await expect(dialog(page).getByRole('radio', { name: 'Fenna Oduya, reception' })).toBeFocused()
		expect(await axe(page, 'hand over', true)).toEqual([])
		await shot(page, 'hand-over', { fullPage: false })
		await page.keyboard.press('Escape')
		await expect(field, 'back where it was opened').toBeFocused()
		await takeOver(page, pins.desk)
		await expect(banner(page)).toContainText('Fenna Oduya, reception')
		await expect(page.getByRole('heading', { level: 1, name: 'Players' })).toBeVisible()
		await expect(page.getByLabel('Search players')).toBeFocused()
		await expect(page.getByText('251.5')).toHaveCount(0)

		await takeOver(page, pins.owner)
		await expect(banner(page)).toContainText('A. Example, owner')
		await at(page, `#/assessment/${playerId}`)
		await page.keyboard.press('Alt+3')
		await expect(field).toHaveValue('251.5')
		const { rows } = await hostCall(page, 'audit.page', { limit: 100 })
		expect(
			rows.filter(({ function: does }: { function: string }) => does === 'refused'),
			'the page of the one asks nothing as the other',
		).toEqual([])
	})
	test('who works here stays in sight while a page scrolls', async ({ page }) => {
		await page.setViewportSize({ width: 1440, height: 700 })
		await at(page, '#/help/measures')
		await page.keyboard.press('End')
		await page.evaluate(() => scrollTo(0, document.body.scrollHeight))
		expect(await page.evaluate(() => scrollY)).toBeGreaterThan(400)
		await expect(banner(page).getByText('A. Example, owner')).toBeInViewport()
		await expect(banner(page).getByRole('button', { name: 'Hand over' })).toBeInViewport()
	})
	test('what keeps itself is there again, and what was not sent off is named before', async ({
		page,
	}) => {
		await at(page, '#/players/new')
		await page.getByLabel('Given name', { exact: true }).fill('Half')
		await takeOver(page, pins.desk)
		await expect(page.getByLabel('Given name', { exact: true })).toHaveValue('')
		await takeOver(page, pins.owner)
		await expect(page.getByLabel('Given name', { exact: true })).toHaveValue('Half')

		await at(page, '#/records/people')
		await page.getByLabel('Registration').fill('X7')
		await page.keyboard.press('F2')
		await expect(dialog(page)).toContainText('Typed on this page and not sent off: Registration.')
		await shot(page, 'hand-over-not-sent', { fullPage: false })
		await dialog(page).getByRole('button', { name: 'Go on as before' }).click()
		await expect(page.getByLabel('Registration')).toHaveValue('X7')
	})
	test('whoever is taken off leaves documents: the question says so, and to whom they go', async ({
		page,
	}) => {
		await takeOver(page, pins.desk)
		const { itemId } = await hostCall(page, 'outbox.add', {
			...{ visitId, kind: 'player', recipientId: 'player', channel: 'print', due: '2027-01-25' },
		})
		await takeOver(page, pins.owner)
		await at(page, '#/records/people')
		await page.getByRole('button', { name: 'Take Fenna Oduya off' }).press('Enter')
		const question = page.getByRole('form', { name: 'Take Fenna Oduya off' })
		await expect(question).toContainText('1 document in the outbox that Fenna Oduya looks after')
		await question.getByRole('button', { name: 'Take off' }).press('Enter')
		await expect(
			page.getByRole('alert').filter({ hasText: 'Who looks after the documents is not chosen.' }),
		).toBeVisible()
		await question.getByLabel('Who looks after the documents').selectOption('A. Example')
		await shot(page, 'taking-off-outbox')
		await question.getByRole('button', { name: 'Take off' }).press('Enter')
		await expect(page.getByText(/1 document in the outbox went to A\. Example\./)).toBeVisible()
		const { items } = await hostCall(page, 'outbox.list', {})
		expect(items).toMatchObject([{ itemId, owner: { name: 'A. Example' } }])
	})
	test('by passphrase, from the button in the head, where a PIN is forgotten', async ({ page }) => {
		await banner(page).getByRole('button', { name: 'Hand over' }).click()
		await expect(dialog(page).getByRole('radio')).toBeFocused()
		await page.keyboard.press('Tab')
		await page.keyboard.type('9999')
		await page.keyboard.press('Enter')
		await expect(dialog(page).getByRole('alert')).toContainText('The PIN is not right.')
		await dialog(page).getByLabel('PIN or passphrase').fill(deskPassphrase)
		await page.keyboard.press('Enter')
		await expect(banner(page)).toContainText('Fenna Oduya, reception')
		await page.keyboard.press('Control+/')
		await expect(page.getByRole('dialog', { name: 'Shortcuts' })).toContainText('F2Hand over')
	})
})
