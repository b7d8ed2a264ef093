/** A visit that is damaged on the disk is named on the screens that lack it; they go on without it. */
import { expect, test } from '@playwright/test'
import { passphrase } from '../host/bench-app.ts'
import { damagedRecords } from '../host/damage-bench.ts'
import { hostCall } from './drive.ts'
import { startHost } from './host.ts'

test('a draft and the trends go on without a damaged visit, and name it', async ({ page }) => {
	page.setDefaultTimeout(15_000)
	const { here, playerId } = await damagedRecords('visit')
	const host = await startHost('--data', here)
	const goTo = (hash: string) =>
		page.evaluate((to) => {
			location.hash = to
		}, hash)
	const named = page.getByRole('region', { name: 'Visits that cannot be read' })
	try {
		await page.goto(host.url)
		await expect(page.getByRole('heading').first()).toBeVisible()
		await hostCall(page, 'session.unlock', { passphrase })
		await page.reload()
		await goTo(`#/assessment/${playerId}`)
		await expect(named).toContainText(/The visit of 18 January 2027 cannot be read/)
		await expect(page.getByRole('button', { name: 'On to Flags' })).toBeVisible()
		await goTo(`#/trends/${playerId}`)
		await expect(named).toContainText(/The visit of 18 January 2027 cannot be read/)
		await expect(page.getByRole('heading', { name: 'Trends of Zoë Marlowe-Nguyễn' })).toBeVisible()
		await expect(page.getByText(/^2 visits/)).toBeVisible()
	} finally {
		await host.kill()
	}
})
