/** A folder is chosen by keys alone, and the dialog gives the focus back. */
import { mkdirSync, mkdtempSync, readdirSync, rmSync, symlinkSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, type Page, test } from '@playwright/test'
import { axe } from './axe.ts'
import { openDialog, placeField } from './choosing.ts'
import { shot, tabTo } from './drive.ts'
import { onDemoDay, type RunningHost, startHostOf } from './host.ts'

test.describe.configure({ mode: 'serial' })
let host: RunningHost
let home: string
let page: Page
test.beforeAll(async ({ browser }) => {
	home = mkdtempSync(join(tmpdir(), 'lastwright-home-'))
	const long = `Reports ${'of a season '.repeat(12)}end`
	for (const name of ['Documents', 'Packs/week 2', 'Packs/week 10', 'Photographs', long])
		mkdirSync(join(home, name), { recursive: true })
	for (let number = 1; number <= 300; number++)
		mkdirSync(join(home, 'Photographs', `day ${number}`))
	symlinkSync('/etc', join(home, 'Packs', 'settings of the system'))
	host = await startHostOf({ HOME: home }, '--demo')
	page = await (await browser.newContext()).newPage()
	await onDemoDay(page)
	await page.goto(host.url)
	await expect(page.getByRole('heading', { level: 1, name: 'Players' })).toBeVisible()
})
test.afterAll(async () => {
	await host.kill()
	rmSync(home, { recursive: true, force: true })
})
const label = 'Other folder or stick'
async function toBackups() {
	await page.goto(`${new URL(page.url()).origin}/#/records/backups`)
	await page.reload()
	await expect(placeField(page, label)).toBeVisible()
}
const marked = () => page.getByRole('option', { selected: true })

test('a folder for backups is found, made and used by keys alone', async () => {
	await toBackups()
	const opener = placeField(page, label).getByRole('button')
	const dialog = await openDialog(page, page, label)
	await expect(dialog).toHaveAccessibleName('Folder for backups')
	expect(await axe(page, 'places', true)).toEqual([])
	await shot(page, 'places')
	// Escape gives the focus back, and nothing is chosen
	await page.keyboard.press('Escape')
	await expect(dialog).toBeHidden()
	await expect(opener).toBeFocused()
	await page.keyboard.press('Enter')
	const list = dialog.getByRole('listbox')
	await expect(list).toBeFocused()

	// letters lead to a name, Enter opens, Backspace goes up and marks where it came from
	await page.keyboard.type('home')
	await expect(marked()).toContainText('Home folder')
	await page.keyboard.press('Enter')
	await expect(list).toHaveAccessibleName('In Home folder')
	await page.keyboard.press('End')
	await expect(marked()).toContainText('Reports of a season')
	await page.keyboard.press('Home')
	await page.keyboard.press('ArrowDown')
	await expect(marked()).toHaveText('Packs/')
	await page.keyboard.press('Enter')
	await expect(list).toHaveAccessibleName('In Packs')
	// by number, and without the link that leads out
	await expect(dialog.getByRole('option')).toHaveText(['week 2/', 'week 10/'])
	await page.keyboard.press('Backspace')
	await expect(marked()).toHaveText('Packs/')
	await page.keyboard.type('ph')
	await page.keyboard.press('Enter')
	await expect(dialog.getByRole('option')).toHaveCount(300)
	await page.keyboard.type('day 30')
	await expect(marked()).toHaveText('day 30/')
	await expect(marked()).toBeInViewport()
	await page.keyboard.press('Backspace')
	await expect(list).toHaveAccessibleName('In Home folder')
	await page.keyboard.type('packs')
	await page.keyboard.press('Enter')
	await expect(list).toHaveAccessibleName('In Packs')
	await expect(dialog.getByText(/^2 folders\. Can be written to\. .* free\.$/)).toBeVisible()
	expect(await axe(page, 'folder', true)).toEqual([])
	await shot(page, 'folder')

	// a new folder; a name that cannot stand is said, and stays
	await tabTo(page, dialog.getByRole('button', { name: 'New folder' }))
	await page.keyboard.press('Enter')
	const name = dialog.getByRole('textbox', { name: 'Name of the new folder' })
	await expect(name).toBeFocused()
	await page.keyboard.type('May/June')
	await page.keyboard.press('Enter')
	await expect(name).toHaveAccessibleDescription(/May\/June holds \/\. Leave out/)
	await expect(name).toHaveValue('May/June')
	// the form behind the dialog was not sent
	await expect(page.getByText('Some entries cannot stand', { exact: false })).toHaveCount(0)
	await shot(page, 'folder-name')
	await page.keyboard.press('Control+a')
	await page.keyboard.type('Backups 2027')
	await page.keyboard.press('Enter')
	await expect(list).toHaveAccessibleName('In Backups 2027')
	await expect(list).toBeFocused()
	await tabTo(page, dialog.getByRole('button', { name: 'Use this folder', exact: true }))
	await page.keyboard.press('Enter')
	await expect(dialog).toBeHidden()
	await expect(opener).toBeFocused()
	const made = join(home, 'Packs', 'Backups 2027')
	await expect(placeField(page, label).getByText(made, { exact: true })).toBeVisible()
	await tabTo(page, page.getByRole('button', { name: 'Send backups there' }))
	await page.keyboard.press('Enter')
	await expect(
		page.getByText('Backups go to this folder from now on', { exact: false }),
	).toBeVisible()
	expect(readdirSync(made)).toEqual([expect.stringMatching(/^lastwright-backup-.*\.db$/)])
	await shot(page, 'chosen')

	// it is remembered; a folder that went meanwhile is said, and the way goes on
	await opener.press('Enter')
	await expect(list).toHaveAccessibleName('In Backups 2027')
	await page.keyboard.press('Backspace')
	await expect(marked()).toHaveText('Backups 2027/')
	rmSync(made, { recursive: true })
	await page.keyboard.press('Enter')
	await expect(dialog.getByRole('alert')).toContainText(`${made} is not there any more.`)
	await shot(page, 'gone')
	await dialog.getByRole('button', { name: 'Look again' }).press('Enter')
	await expect(dialog.getByRole('option')).toHaveText(['week 2/', 'week 10/'])
	await expect(dialog.getByRole('alert')).toHaveCount(0)
})
for (const [look, width] of [
	['light', 360],
	['dark', 360],
	['light', 1440],
	['dark', 1440],
] as const)
	test(`the dialog fits ${width} px in the ${look} look`, async () => {
		await page.emulateMedia({ colorScheme: look })
		await page.setViewportSize({ width, height: 780 })
		await toBackups()
		const dialog = await openDialog(page, page, label)
		await dialog.getByRole('option', { name: /Home folder/ }).dblclick()
		await expect(dialog.getByRole('listbox')).toHaveAccessibleName('In Home folder')
		await page.keyboard.press('End')
		await dialog.getByRole('button', { name: 'Write the path instead' }).click()
		await expect(dialog.getByRole('textbox', { name: /^Whole path/ })).toBeVisible()
		const wide = await dialog.evaluate((box) => box.scrollWidth - box.clientWidth)
		expect(wide).toBe(0)
		expect(await axe(page, `dialog ${look}`, true)).toEqual([])
		await shot(page, `dialog-${look}-${width}`, { fullPage: false })
	})
