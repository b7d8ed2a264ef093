/**
 * The ways into the records on the screen: a weak passphrase, the recovery key confirmed from paper
 * or lost with the page, a person who forgot, and one who leaves.
 */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, type Page, test } from '@playwright/test'
import { axe } from './axe.ts'
import { hostCall, settled, shot } from './drive.ts'
import { type RunningHost, startHost } from './host.ts'

const owner = 'seven grey herons'
const button = (page: Page, name: string | RegExp) =>
	page.getByRole('button', { name, exact: true })
const alert = (page: Page, words: string | RegExp) =>
	page.getByRole('alert').filter({ hasText: words })
const ways = (page: Page) => page.getByRole('region', { name: 'Ways in' })
const twice = async (page: Page, title: string, secret: string, again = secret) => {
	await page.getByLabel(title, { exact: true }).fill(secret)
	await page.getByLabel(`${title} again`).fill(again)
}
const at = async (page: Page, name: string) => {
	await page.evaluate((to) => {
		location.hash = to
	}, `#/records/${name}`)
	await settled(page)
}
const unlock = async (page: Page, secret: string) => {
	await page.getByLabel('Passphrase', { exact: true }).fill(secret)
	await page.keyboard.press('Enter')
}

test.describe('on records of their own', () => {
	test.describe.configure({ timeout: 180_000 })
	let data: string
	let host: RunningHost
	test.beforeEach(async ({ page }) => {
		data = mkdtempSync(join(tmpdir(), 'lastwright-ways-'))
		host = await startHost('--data', data)
		await page.goto(host.url)
	})
	test.afterEach(async () => {
		await host.kill()
		rmSync(data, { recursive: true, force: true })
	})
	const setUp = async (page: Page) => {
		await page.getByLabel('Clinic name').fill('Harrow Lane Foot Clinic')
		await page.getByLabel('Clinician name').fill('Imke Darrow')
		await page.getByLabel('Registration number').fill('DEMO-00417')
		await twice(page, 'Passphrase', owner)
		await button(page, 'Set up').click()
		await expect(page.getByRole('heading', { level: 1, name: 'Recovery key' })).toBeFocused()
		return ((await page.getByLabel('The key').textContent()) ?? '').split('-')
	}
	/** Ticks that it is on paper and types the two groups that are asked. */
	const typeFromPaper = async (page: Page, key: readonly string[], second: string) => {
		await page.getByLabel('I have it on paper').check()
		await expect(page.getByLabel('The key')).not.toContainText(key[0] ?? '')
		await page.getByLabel('Group 2 on the paper').fill(key[1] ?? '')
		await page.getByLabel('Group 4 on the paper').fill(second)
		await button(page, 'Go on').click()
	}

	test('set-up: a guessable passphrase is said to be one, the key is confirmed from the paper', async ({
		page,
	}) => {
		await page.getByLabel('Clinic name').fill('Harrow Lane Foot Clinic')
		await twice(page, 'Passphrase', 'HarrowLane2026')
		await expect(page.getByText(/name of the clinic or of a person here\. Add words/)).toBeVisible()
		await twice(page, 'Passphrase', 'harrow lane foot clinic')
		await page.getByLabel('Clinician name').fill('Imke Darrow')
		await page.getByLabel('Registration number').fill('DEMO-00417')
		await button(page, 'Set up').click()
		await expect(
			alert(page, 'This passphrase is easy to guess. Nothing was changed.'),
		).toBeVisible()

		const key = await setUp(page)
		expect(key).toHaveLength(4)
		await expect(page.getByLabel('Backup or pack file'), 'nothing else is set up').toHaveCount(0)
		expect(await axe(page, 'recovery key', true)).toEqual([])
		await shot(page, 'recovery-key')
		await typeFromPaper(page, key, key[0] ?? '')
		await expect(alert(page, 'Group 4 differs from the one that was shown.')).toBeVisible()
		await page.getByLabel('Group 4 on the paper').fill((key[3] ?? '').toLowerCase())
		await button(page, 'Go on').click()
		await expect(page.getByRole('heading', { level: 1, name: 'Players' })).toBeVisible()
		await expect(page.getByRole('banner')).toContainText('Imke Darrow, owner')
		await expect(ways(page)).toHaveCount(0)
	})
	test('the page of the key is left: the owner hears of it and prints another', async ({
		page,
	}) => {
		await setUp(page)
		await page.reload()
		await expect(ways(page)).toContainText('Nobody has confirmed the recovery key yet.')
		await button(page, 'Lock').click()
		await unlock(page, owner)
		await expect(ways(page)).toContainText('Nobody has confirmed the recovery key yet.')
		expect(await axe(page, 'ways in', true)).toEqual([])
		await page.getByRole('link', { name: 'Issue it, print it, and type part of it' }).click()
		await page.getByLabel('Your passphrase').fill(owner)
		await button(page, 'Issue a new recovery key').click()
		await expect(page.getByRole('heading', { name: 'Recovery key' })).toBeVisible()
		const key = ((await page.getByLabel('The key').textContent()) ?? '').split('-')
		await typeFromPaper(page, key, key[3] ?? '')
		await expect(page.getByRole('heading', { name: 'My passphrase' })).toBeVisible()
		await expect(ways(page)).toHaveCount(0)

		await button(page, 'Lock').click()
		await button(page, 'Use the recovery key').click()
		await page.getByLabel('Recovery key', { exact: true }).fill(key.join(' '))
		await twice(page, 'New passphrase', 'amber kite over moss', 'amber kite over mast')
		await button(page, 'Unlock').click()
		await expect(
			alert(page, 'New passphrase again differs. Type the same one twice.'),
		).toBeVisible()
		await twice(page, 'New passphrase', 'amber kite over moss')
		await button(page, 'Unlock').click()
		await expect(page.getByRole('heading', { level: 1, name: 'Players' })).toBeVisible()
	})
	test('people: a forgotten passphrase, wrong PINs, and one who leaves', async ({ page }) => {
		await setUp(page)
		await page.reload()
		await settled(page)
		await at(page, 'people')
		await page.getByLabel('Name').fill('Fenna Oduya')
		await page.getByLabel('Role').selectOption('reception')
		await twice(page, 'First passphrase', 'winter tulip harbour')
		await button(page, 'Add this person').click()
		await expect(page.getByText('Saved. Fenna Oduya unlocks with the passphrase')).toBeVisible()
		await button(page, 'New passphrase for Fenna Oduya').click()
		await twice(page, 'New passphrase', 'garden lantern moss')
		await button(page, 'Give this passphrase').click()
		await expect(page.getByText('Fenna Oduya unlocks with the new passphrase')).toBeVisible()

		await at(page, 'access')
		const pin = page.getByRole('form', { name: 'My PIN' })
		await pin.getByLabel('Present passphrase').fill(owner)
		await twice(page, 'New PIN', '1234')
		await pin.getByRole('button').click()
		await expect(alert(page, 'New PIN is easy to guess: its digits count up.')).toBeVisible()
		await twice(page, 'New PIN', '7391')
		await pin.getByRole('button').click()
		await expect(page.getByText('The PIN was set.')).toBeVisible()

		await button(page, 'Lock').click()
		await unlock(page, 'garden lantern moss')
		await expect(ways(page)).toContainText('The owner gave you your passphrase.')
		await expect(page.getByRole('banner')).toContainText('Fenna Oduya, reception')
		await page.keyboard.press('F2')
		const handOver = page.getByRole('dialog', { name: 'Hand over' })
		await expect(handOver).toContainText('Fenna Oduya works here now.')
		for (let tried = 0; tried < 5; tried++) {
			await handOver.getByLabel('PIN or passphrase').fill('8264')
			await page.keyboard.press('Enter')
			await expect(handOver.getByLabel('PIN or passphrase')).toHaveValue('')
		}
		await expect(alert(page, 'Only their own passphrase lets them in now')).toBeVisible()
		await shot(page, 'hand-over-barred')
		await page.keyboard.press('Escape')
		await at(page, 'access')
		const mine = page.getByRole('form', { name: 'My passphrase' })
		await mine.getByLabel('Present passphrase').fill('garden lantern moss')
		await twice(page, 'New passphrase', 'copper ribbon field')
		await mine.getByRole('button').click()
		await expect(page.getByText('The passphrase was changed.')).toBeVisible()
		await expect(ways(page)).toHaveCount(0)

		await button(page, 'Lock').click()
		await expect(page.getByText(/Forgotten your passphrase\? The owner gives you/)).toBeVisible()
		await shot(page, 'locked')
		await unlock(page, owner)
		await page.getByRole('banner').getByRole('link', { name: '3 notices' }).click()
		await settled(page)
		const notices = page.getByRole('table', { name: 'Notices' })
		await expect(notices).toContainText('5 wrong PINs for Imke Darrow')
		await expect(notices).toContainText('Fenna Oduya was given a new passphrase by Imke Darrow')
		await expect(notices).toContainText('Fenna Oduya was added by Imke Darrow')
		expect(await axe(page, 'notices', true)).toEqual([])
		await shot(page, 'notices')
		await button(page, 'I have seen all of these').click()
		await expect(page.getByRole('banner').getByRole('link', { name: /notices?$/ })).toHaveCount(0)
		await expect(notices.getByText(/^Imke Darrow, /)).toHaveCount(3)
		await shot(page, 'notices-seen')
		await at(page, 'people')
		await button(page, 'Take Fenna Oduya off').click()
		const leaving = page.getByRole('form', { name: 'Take Fenna Oduya off' })
		await expect(leaving).toContainText(
			'Whoever has an older copy or backup of the records, and a passphrase of that time, can ' +
				'still read what stands in it.',
		)
		expect(await axe(page, 'taking off', true)).toEqual([])
		await expect(leaving).toContainText('No draft, no document and no countersignature waits')
		await shot(page, 'taking-off')
		await leaving.getByRole('button', { name: 'Take off' }).click()
		await expect(page.getByText('Fenna Oduya can no longer unlock.')).toBeVisible()
		await button(page, 'Change the key of the records').click()
		await expect(page.getByText('The key of the records was changed. Everybody')).toBeVisible()
		const { people } = await hostCall(page, 'people.list', {})
		expect(people.map(({ active }: { active: boolean }) => active)).toEqual([true, false])
	})
})
