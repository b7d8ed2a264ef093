/**
 * Two courses to their end: heel pain over four visits, and an insert that is adjusted twice. The
 * visits before are signed through the host; the last is walked.
 */
import { expect, type Page, test } from '@playwright/test'
import { signedRecheck, signedWithInsert } from './course-before.ts'
import { agreeOnSign, settleQuestions, shot, signButton } from './drive.ts'
import { type RunningHost, startHost } from './host.ts'

test.describe.configure({ timeout: 180_000 })
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
const open = (playerId: string) => page.goto(`${new URL(host.url).origin}/#/players/${playerId}`)
const toggle = (group: string, name: string) =>
	page.getByRole('group', { name: group, exact: true }).getByRole('button', { name, exact: true })
/** Begins the re-check and tells of what is worn. */
async function beginRecheck(playerId: string): Promise<void> {
	await open(playerId)
	await page.getByRole('button', { name: 'Re-check', exact: true }).click()
	await expect(page.getByRole('heading', { level: 1, name: 'Since then' })).toBeAttached()
}
const insertPart = () => page.getByRole('region', { name: /^Insert, / })
/** How it is today, in the only condition that was recorded. */
async function tellToday(worst: string, now: string, missed: string): Promise<void> {
	const today = page.getByRole('region', { name: 'How it is today' })
	await toggle('Status', 'Current').click()
	await today.getByLabel(/^Worst pain/).fill(worst)
	await today.getByLabel(/^Pain now/).fill(now)
	await today.getByLabel(/^Sessions missed/).fill(missed)
}
/** The core warning questions, all no; then to Decide. */
async function toDecide(): Promise<void> {
	await page.keyboard.press('Alt+2')
	const first = page.locator('[data-asked] button[value=not-asked][aria-pressed=true]')
	await expect(first.first()).toBeFocused()
	while (await page.evaluate(() => document.activeElement?.closest('[data-asked]') !== null))
		await page.keyboard.press('n')
	await page.getByRole('button', { name: 'On to Decide' }).click()
}
async function sign(): Promise<void> {
	await page.getByRole('button', { name: 'On to Sign' }).click()
	await agreeOnSign(page)
	await signButton(page).click()
	await expect(page.getByText(/^Signed as/)).toBeVisible({ timeout: 60_000 })
}
test('heel pain over four visits stands in one picture, each change against its error', async () => {
	const playerId = await signedWithInsert(
		page,
		{ givenName: 'Basil', familyName: 'Corrow' },
		'2026-06-10',
	)
	await signedRecheck(page, playerId, '2026-07-15', { painWorst: 6, painNow: 4, sessionsMissed: 5 })
	await signedRecheck(page, playerId, '2026-09-01', { painWorst: 4 })
	await beginRecheck(playerId)
	await insertPart().getByLabel('How it goes on').selectOption('still-worn')
	await toggle('Trouble', 'None').first().click()
	await expect(page.getByRole('group', { name: /^Trouble with the left insert/ })).toHaveCount(0)
	await tellToday('2', '1', '0')
	await page.keyboard.press('Alt+t')
	await toDecide()
	await settleQuestions(page)
	await sign()
	await open(playerId)
	const course = page.getByRole('region', { name: 'Course' })
	await expect(course.getByRole('img', { name: /^Pain over 4 visits/ })).toBeVisible()
	await expect(
		course.getByText(/Worst pain 4 on 1 September 2026, 2 on .*: beyond error/),
	).toBeVisible()
	await expect(course.getByText(/Pain now 4 on 15 July 2026, 1 on .*: beyond error/)).toBeVisible()
	await course.getByRole('button', { name: /^Numbers/ }).click()
	const rows = course.getByRole('row')
	await expect(rows.filter({ hasText: '15 July 2026' })).toContainText('6, within error')
	await expect(rows.filter({ hasText: '1 September 2026' })).toContainText('not asked')
	await shot(page, 'C01-course')
	await page.setViewportSize({ width: 360, height: 740 })
	await expect(course.getByRole('img', { name: /^Pain over 4 visits/ })).toBeVisible()
	expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(360)
	await shot(page, 'C02-course-narrow')
	await page.setViewportSize({ width: 1440, height: 900 })
})
test('an insert is adjusted twice: the second knows the first', async () => {
	const playerId = await signedWithInsert(
		page,
		{ givenName: 'Orrin', familyName: 'Vesley' },
		'2026-06-11',
	)
	await signedRecheck(page, playerId, '2026-08-12', { painWorst: 5 }, ['heel', 'edge'])
	await beginRecheck(playerId)
	await insertPart().getByLabel('How it goes on').selectOption('still-worn')
	await toggle('Trouble', 'Too tight').first().click()
	await toggle('Trouble with the left insert', 'Heel').click()
	await toggle('Trouble with the left insert', 'Slips in shoe').click()
	await tellToday('4', '2', '1')
	await shot(page, 'C03-since')
	await toDecide()
	await page.locator('button[data-question=insert]').click()
	const panel = page.getByRole('region', { name: 'Insert', exact: true }).first()
	await expect(panel.getByText(/^Adjust the insert of 11 June 2026/)).toBeVisible()
	await expect(panel.getByText(/Adjusted on 12 August 2026/)).toBeVisible()
	await expect(panel.getByText(/Done there on 12 August 2026/)).toBeVisible()
	await shot(page, 'C04-decide')
	const slips = panel.getByRole('group', { name: /slips in the shoe/ })
	await slips.getByLabel(/^How much/).fill('50')
	await expect(slips.getByText(/'50' is not allowed; give one number, 0 to 30 mm/)).toBeVisible()
	await slips.getByLabel(/^How much/).fill('1')
	await slips.getByLabel(/^In words/).fill('rougher on top')
	await expect(panel.getByRole('button', { name: /Change/ }).first()).toHaveAttribute(
		'aria-pressed',
		'true',
	)
	await settleQuestions(page)
	await sign()
	await open(playerId)
	const insert = page.getByRole('region', { name: 'Insert that is worn' })
	await expect(insert).toContainText('Asked for on 11 June 2026')
	await expect(insert).toContainText('To be adjusted, 12 August 2026')
	await expect(insert).toContainText('rougher on top')
	await shot(page, 'C05-insert')
})
