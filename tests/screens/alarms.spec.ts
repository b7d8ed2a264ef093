/**
 * Somebody changed the records behind the workstation's back: it is said at each unlock, until the
 * owner has looked into it and written what was found.
 */
import { join } from 'node:path'
import { DatabaseSync } from 'node:sqlite'
import { expect, type Page, test } from '@playwright/test'
import { passphrase, signed, withPlayer } from '../host/bench-app.ts'
import { axe } from './axe.ts'
import { settled, shot } from './drive.ts'
import { startHost } from './host.ts'

/** Records whose audit trail lost its newest rows by somebody's hand. */
async function robbed(): Promise<string> {
	const { app, here, playerId } = await withPlayer()
	await signed(app, playerId)
	app.close()
	const database = new DatabaseSync(join(here, 'lastwright.db'))
	for (const { name } of database
		.prepare("SELECT name FROM sqlite_master WHERE type = 'trigger'")
		.all() as { name: string }[])
		database.exec(`DROP TRIGGER ${name}`)
	const { changes } = database
		.prepare('DELETE FROM audit WHERE seq > (SELECT max(seq) FROM audit) - 2')
		.run()
	expect(changes, 'two rows were taken out').toBe(2)
	database.close()
	return here
}
const unlock = async (page: Page) => {
	await page.getByLabel('Passphrase', { exact: true }).fill(passphrase)
	await page.keyboard.press('Enter')
	await expect(page.getByRole('heading', { level: 1, name: 'Players' })).toBeVisible()
}
const told = (page: Page) =>
	page.getByRole('region', { name: 'Ways in' }).getByRole('link', { name: /under Audit trail/ })
const goToTrail = async (page: Page) => {
	await page.evaluate(() => {
		location.hash = '#/records/audit'
	})
	await settled(page)
}

test('what was altered is said until the owner has looked into it, with what was found', async ({
	page,
}) => {
	await page.setViewportSize({ width: 1280, height: 720 })
	const host = await startHost('--data', await robbed())
	const alarms = page.getByRole('region', { name: 'Something is wrong with the records' })
	const settle = page.getByRole('button', { name: 'I have looked into it' })
	try {
		await page.goto(host.url)
		await unlock(page)
		await shot(page, 'alarms-unlocked')
		await told(page).press('Enter')
		await settled(page)
		await expect(alarms.getByRole('listitem')).not.toHaveCount(0)
		await expect(settle).toBeDisabled()
		expect(await axe(page, 'alarms', true)).toEqual([])
		await shot(page, 'alarms')

		// locked and opened again, it is said again
		await page.getByRole('button', { name: 'Lock' }).click()
		await unlock(page)
		await goToTrail(page)
		await expect(alarms).toBeVisible()

		await page.getByLabel('What you found').fill('The file was put on another disk by hand.')
		await settle.press('Enter')
		await expect(alarms).toHaveCount(0)
		await expect(told(page)).toHaveCount(0)
		await page.getByRole('button', { name: 'Lock' }).click()
		await unlock(page)
		await goToTrail(page)
		await expect(page.getByRole('table', { name: 'Audit rows' })).toBeVisible()
		await expect(alarms).toHaveCount(0)
		await shot(page, 'alarms-settled')
	} finally {
		await host.kill()
	}
})
