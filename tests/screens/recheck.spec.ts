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
const radioOf = (group: string, name: string) =>
	page.getByRole('group', { name: group }).getByRole('button', { name, exact: true })
const button = (name: string | RegExp) => page.getByRole('button', { name, exact: true })

test('a whole re-check in under 60 keys beyond the values', async () => {
	const playerId = await signedWithPain(page)
	await page.goto(`${new URL(host.url).origin}/#/players/${playerId}`)
	await expect(page.getByRole('heading', { level: 1, name: 'Rory Tansley' })).toBeVisible()
	await button('Re-check').focus()
	const walked = hand(page)
	const { press, enter, read } = walked
	await press('Enter')
	await expect(page.getByRole('heading', { level: 1, name: 'Since then' })).toBeAttached()
	await expect(page.getByRole('combobox', { name: 'Bought', exact: true })).toBeFocused()
	await read('R01-since')
	await shot(page, 'R01-since-whole')
	// what was got and worn, without trouble
	await enter('not b', 'cost', 'wean', '8', '6')
	await press('Space', 'Enter')
	await enter('kept')
	const since = () => walked.keys
	await expect(radioOf('Status', 'Current')).toBeVisible()
	await press('Enter', 'ArrowRight', 'Space', 'Enter')
	await enter('3', '1', '4', '2')
	await press('Alt+t')
	await expect(radioOf('Unchanged', 'Feet')).toHaveAttribute('aria-pressed', 'true')
	await read('R02-answered')
	await shot(page, 'R02-answered-whole')
	const asked = since()
	await press('Alt+2')
	expect(await answerAllNo(page, walked, 'R03-flags')).toBeGreaterThan(8)
	await expect(button('On to Decide')).toBeFocused()
	await press('Enter')
	const before = walked.keys
	await settleAll(page, walked, 'R04')
	await expect(button('On to Sign')).toBeFocused()
	await press('Enter')
	const decided = walked.keys - before
	await expect(page.getByRole('heading', { level: 1, name: 'Sign' })).toBeFocused()
	await press('Alt+n')
	await expect(button(/^Explained to .* with all options/)).toBeFocused()
	await press('Enter')
	await expect(radio('Interpreter', 'Not needed')).toBeFocused()
	await press('Space', 'Alt+n')
	await expect(radio('Chaperone', 'Offered, accepted')).toBeFocused()
	await press('ArrowRight', 'Alt+n')
	await expect(signButton(page)).toBeFocused()
	await press('Enter')
	await expect(page.getByText(/^Signed as/)).toBeVisible({ timeout: 30_000 })
	await read('R05-signed')
	console.log(`re-check: ${walked.keys} keys beyond the values, ${asked} since, ${decided} decided`)
	expect(walked.keys).toBeLessThan(60)
})
