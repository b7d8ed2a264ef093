/**
 * One hand on the keyboard, no mouse: a complete adult assessment, and how many keys it takes
 * beyond the values.
 */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, type Page, test } from '@playwright/test'
import { agreeOnSign, hostCall, settleQuestions, shot } from './drive.ts'
import { startHost } from './host.ts'
import { hand } from './walking.ts'

const passphrase = 'seven grey herons'
const field = (page: Page, name: string) => page.getByRole('textbox', { name, exact: true })
const clinic = {
	format: 'lastwright-clinic',
	version: 1,
	name: 'Harrow Lane Foot Clinic',
	address: [],
	colour: '#1f5f5b',
	clinician: { name: 'Imke Darrow', registration: 'DEMO-00417' },
}
const step = (page: Page, name: string) =>
	page.getByRole('heading', { level: 1, name, exact: true })

test('a complete adult assessment in under 130 keys beyond the values, no mouse', async ({
	page,
}) => {
	const data = mkdtempSync(join(tmpdir(), 'lastwright-hand-'))
	const faults: string[] = []
	page.on('pageerror', (error) => faults.push(error.message))
	page.on('console', (message) => {
		if (/Content Security Policy/i.test(message.text())) faults.push(message.text())
	})
	const host = await startHost('--data', data)
	try {
		await page.goto(host.url)
		await hostCall(page, 'session.setUp', { clinic, passphrase })
		const { playerId } = await hostCall<{ playerId: string }>(page, 'players.save', {
			player: { givenName: 'Wren', familyName: 'Holloway', birthDate: '1998-03-04', sex: 'female' },
		})
		await page.goto(`${new URL(host.url).origin}/#/assessment/${playerId}`)
		await page.reload()
		await expect(step(page, 'Play')).toBeVisible()
		const counted = hand(page)
		const { press, value, enter } = counted
		const seen = (name: string) => shot(page, name, { fullPage: false })

		// Play: Alt+N goes to what is missing
		await press('Alt+n')
		await expect(page.getByRole('combobox', { name: 'Football code', exact: true })).toBeFocused()
		await enter('as', 'full-back', 'senior', 'rig', '1', '3', '7', '172', '68')
		await expect(page.getByRole('button', { name: 'Natural soft' })).toBeFocused()
		await press('ArrowRight', 'Space', 'Alt+a')
		// a pair that was added begins with its name
		await expect(field(page, 'Name')).toBeFocused()
		await enter('match boots', 'firm', 'uk', '5.5')

		await press('Alt+2')
		// begun at the first question, never at the button that answers them all
		await expect(page.locator('[data-asked] button').first()).toBeFocused()
		await press('Shift+Tab')
		const asked = page.getByRole('button', { name: 'I asked them all: the rest are no' })
		await expect(asked).toBeFocused()
		await press('Enter')
		await expect(asked).toBeDisabled()

		// a later step begins at its first field
		await press('Alt+3')
		await expect(field(page, 'Heel to toe, left')).toBeFocused()
		await enter('246 247', '249 248', '178', '180', '95', '97', '238', '241', '24')
		await press('=')
		await expect(field(page, 'Toe depth, right')).toHaveValue('24')
		await press('Enter')
		await enter('62')
		await press('=', 'Enter')
		await value('nd')
		await press('Enter')
		await expect(field(page, 'Heel width, left')).toHaveValue('no device at hand')
		await enter('64', 'sta', '0', 'ID')

		// Enter on the last field goes on
		await expect(field(page, 'Knee to wall, left')).toBeFocused()
		await press('Alt+3')
		await seen('hand-feet')
		await press('Alt+4')
		await enter('7.0 7.2 7.1', '9.4 9.6 9.5', '31 32 31', '37 38 38', '2', '8', '14', '18', 'calf')
		await press('=')
		await expect(page.getByRole('combobox', { name: 'End feel, right' })).toHaveValue(
			'calf-stretch',
		)

		await press('Enter')
		await expect(field(page, 'Foot posture index, six items, left')).toBeFocused()
		await enter('1 1 1 1 2 1')
		await press('=', 'Enter')
		await enter('8', '7', 'neu')
		await press('=', 'Enter')
		await enter('70', '68', '20', '18', '22', '24')

		// the number of a step stays the same where Growth is left out
		await press('Alt+7')
		await expect(page.locator('button[data-question]').first()).toBeFocused()
		await settleQuestions(page, press)
		await seen('hand-decide')

		await press('Alt+8')
		await expect(step(page, 'Sign')).toBeFocused()
		await seen('hand-sign')
		await agreeOnSign(page, press)
		await expect(page.getByText('Not measured', { exact: true })).toHaveCount(0)
		await press('Enter')
		await expect(page.locator('iframe[title="Signed report"]')).toBeVisible({ timeout: 30_000 })
		console.log(`keys beyond the values: ${counted.keys}`)
		expect(counted.keys).toBeLessThan(130)
		const { visits } = await hostCall<{ visits: unknown[] }>(page, 'players.open', { playerId })
		expect(visits).toHaveLength(1)
	} finally {
		await host.kill()
		rmSync(data, { recursive: true, force: true })
	}
	expect(faults).toEqual([])
})

test.describe.configure({ timeout: 240_000 })
test('undo, paste with preview, the palette, help and the protocol, by keyboard', async ({
	page,
}) => {
	const faults: string[] = []
	page.on('pageerror', (error) => faults.push(error.message))
	page.on('console', (message) => {
		if (/Content Security Policy/i.test(message.text())) faults.push(message.text())
	})
	const host = await startHost('--demo')
	const seen = (name: string) => shot(page, name, { fullPage: false })
	const palette = async (words: string) => {
		await page.keyboard.press('Control+k')
		await page.keyboard.type(words)
		await expect(page.getByRole('option').first()).toContainText(
			new RegExp(words.split(' ')[0] ?? '', 'i'),
		)
		await page.keyboard.press('Enter')
	}
	try {
		await page.goto(host.url)
		await expect(page.getByRole('region', { name: 'First steps' })).toBeVisible()
		await seen('players')
		await page.getByRole('button', { name: 'Skip the tips' }).press('Enter')
		await expect(page.getByRole('region', { name: 'First steps' })).toHaveCount(0)
		await palette('ashdown')
		await expect(page.getByRole('heading', { level: 1 })).toContainText('Ashdown')
		await palette('this player: assessment')
		await expect(page.getByRole('navigation', { name: 'Steps' })).toBeVisible()
		await palette('step: feet')
		// by path: behind the open preview the page is hidden from the accessibility tree
		const left = page.locator('[data-path="feet.left.heelToToeMm"]'),
			right = page.locator('[data-path="feet.right.heelToToeMm"]')
		await left.focus()
		await page.keyboard.press('F1')
		await expect(page.getByRole('region', { name: 'How to measure' })).toContainText('Error.')
		await expect(page.getByText(/last \d/).first()).toBeVisible()
		const was = [await left.inputValue(), await right.inputValue()]
		await page.evaluate(() => {
			const data = new DataTransfer()
			data.setData('text/plain', '251\t252\n181\t999')
			document.activeElement?.dispatchEvent(
				new ClipboardEvent('paste', { clipboardData: data, bubbles: true, cancelable: true }),
			)
		})
		const dialog = page.getByRole('dialog')
		await expect(dialog).toContainText('999 is outside what can be measured')
		await seen('paste')
		expect(await left.inputValue()).toBe(was[0])
		await page.keyboard.press('Enter')
		await expect(left).toHaveValue('251')
		await expect(right).toHaveValue('252')
		await seen('feet')
		await page.keyboard.press('Control+z')
		await expect(left).toHaveValue(was[0] ?? '')
		await expect(right).toHaveValue(was[1] ?? '')
		await page.keyboard.press('Control+Shift+z')
		await expect(left).toHaveValue('251')
		await page.keyboard.press('Control+z')
		for (const at of [4, 5, 6]) {
			await page.keyboard.press(`Alt+${at}`)
			await page.keyboard.press('Tab')
			await seen(`step-${at}`)
		}

		await palette('this player: trends')
		await expect(page.getByRole('heading', { name: 'What really changed' })).toBeVisible()
		await expect(page.getByText('Smallest real change').first()).toBeVisible()
		await seen('trends')

		await palette('settings: protocol')
		await page.getByLabel('Find a threshold').fill('restrictedDeg')
		const value = page.getByRole('textbox', { name: /ankle\.restrictedDeg/ })
		await value.fill('30')
		await expect(page.getByText(/Findings change in \d+ of \d+ demo visits/)).toBeVisible()
		await seen('protocol')
		await page.getByLabel('Why it is changed').fill('our own cut-off')
		await page.getByRole('button', { name: 'Save as a new version' }).press('Enter')
		await expect(page.getByText('Protocol of this clinic, version 1')).toBeVisible()
		await page.getByRole('button', { name: /Restore the shipped value, 36.5/ }).press('Enter')
		await expect(value).toHaveValue('36.5')

		await palette('settings: letterhead')
		await page.getByLabel('Clinic name').fill('North Quay Feet')
		await expect(page.getByRole('region', { name: 'Sample page' })).toContainText('North Quay Feet')
		await seen('letterhead')
		await palette('settings: look')
		for (const [name, colour] of [
			['Dark', 'rgb(18, 29, 31)'],
			['High contrast', 'rgb(0, 0, 0)'],
			['Light', 'rgb(246, 241, 231)'],
		] as const) {
			await page.getByRole('button', { name, exact: true }).press('Enter')
			await expect(page.locator('body')).toHaveCSS('background-color', colour)
			await seen(`look-${name}`)
		}
		await page.getByRole('button', { name: '200 %' }).press('Enter')
		await expect(page.locator('html')).toHaveCSS('font-size', '32px')
		await seen('look-200')
		await page.getByRole('button', { name: '100 %' }).press('Enter')
		await palette('help: how')
		await expect(page.getByRole('heading', { name: 'Knee to wall' })).toBeVisible()
		await seen('help')
		expect(faults).toEqual([])
	} finally {
		await host.kill()
	}
})
