/**
 * The page of parts: each part in each state stands, in light, in dark and with large letters, with
 * nothing for axe to report; and no clinic finds it.
 */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, type Page, test } from '@playwright/test'
import { axe } from './axe.ts'
import { hostCall, shot, still } from './drive.ts'
import { startHost } from './host.ts'
import { put } from './tour.ts'

const to = async (page: Page) => {
	await page.evaluate(() => {
		location.hash = '#/parts'
	})
	await still(page)
}
const heading = (page: Page, name: string) => page.getByRole('heading', { level: 1, name })

test('every part in every state, in light, dark and large letters', async ({ page }) => {
	test.setTimeout(240_000)
	const faults: string[] = []
	page.on('pageerror', (error) => faults.push(error.message))
	page.on('console', (message) => {
		if (/Content Security Policy|unique "key"/i.test(message.text())) faults.push(message.text())
	})
	const host = await startHost('--demo')
	try {
		await page.goto(host.url)
		await to(page)
		await expect(heading(page, 'Parts')).toBeVisible()
		// the states of an answer: loading, refused with a way on, old with what was read before
		const answered = page.getByRole('region', { name: 'Answered', exact: true })
		await expect(answered.getByRole('status')).toHaveText('Opening the sample.')
		await expect(answered.getByRole('alert')).toHaveCount(3)
		await expect(answered.getByText('What is shown was read before.')).toBeVisible()
		await expect(answered.getByRole('button', { name: 'Try again', disabled: false })).toHaveCount(
			2,
		)
		for (const name of ['How it was worked out', 'Numbers'])
			await page
				.getByRole('button', { name: new RegExp(`^${name}`) })
				.first()
				.press('Enter')
		await page.getByText('Preview of the report', { exact: true }).first().press('Enter')
		await expect(page.getByRole('article').first()).toContainText('Sample Player')
		for (const look of ['light', 'dark', 'text of 200 %'] as const) {
			await put(page, look)
			await still(page)
			faults.push(...(await axe(page, `parts, ${look}`, look === 'light')))
			const over = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)
			expect(over, `${look}: px that stand out to the right`).toBeLessThanOrEqual(1)
			await shot(page, `parts ${look}`)
		}
		expect(faults.join('\n')).toBe('')
	} finally {
		await host.kill()
	}
})
test('in a clinic the address leads to the players', async ({ page }) => {
	const data = mkdtempSync(join(tmpdir(), 'lastwright-parts-'))
	const host = await startHost('--data', data)
	try {
		await page.goto(host.url)
		await hostCall(page, 'session.setUp', {
			clinic: {
				format: 'lastwright-clinic',
				version: 1,
				name: 'Harrow Lane Foot Clinic',
				address: [],
				colour: '#1f5f5b',
				clinician: { name: 'Imke Darrow', registration: 'DEMO-00417' },
			},
			passphrase: 'seven grey herons',
		})
		await page.reload()
		await to(page)
		await expect(heading(page, 'Players')).toBeVisible()
		await expect(heading(page, 'Parts')).toHaveCount(0)
	} finally {
		await host.kill()
		rmSync(data, { recursive: true, force: true })
	}
})
