/** A screening day of six in a real browser, the stations by keyboard alone; then the outreach page. */
import { mkdtempSync, readdirSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, type Page, test } from '@playwright/test'
import { startHost } from './host.ts'

const players = 6
const roster = ['Number,Given name,Family name,Birth date,Sex', ...Array.from({ length: players }, (_, at) => `${at + 1},Given${at},Family${String.fromCharCode(65 + at)}x,199${at}-0${at + 1}-17,${at % 2 ? 'f' : 'm'}`)].join('\n')
async function hostCall(page: Page, name: string, input: object) {
	const answer = await page.evaluate(async ([name, input]) => (await fetch(`/call/${name}`, { method: 'POST', headers: { 'content-type': 'application/json' }, body: JSON.stringify(input) })).json(), [name, input] as const)
	expect(answer, `${name} ${answer.message ?? ''}`).toMatchObject({ ok: true })
	return answer.value
}
/** The number typed at the desk, Enter, then the station's heading. */
async function call(page: Page, number: number, station: string) {
	await page.getByLabel('Number of the player').focus()
	await page.keyboard.type(String(number))
	await page.keyboard.press('Enter')
	await expect(page.getByRole('heading', { name: station, exact: true })).toBeVisible()
	await expect(page.getByText(`Given${number - 1} `, { exact: false }).first()).toBeVisible()
}
async function done(page: Page) {
	await page.getByRole('button', { name: 'Done here, back to the board' }).press('Enter')
	await expect(page.getByRole('table', { name: 'Board' })).toBeVisible()
}
const desk = (page: Page, name: string) => page.getByRole('group', { name: 'Station at this desk' }).getByRole('button', { name, exact: true })

test('six players through the stations, signed one by one, reports together', async ({ page }, info) => {
	test.setTimeout(180_000)
	const data = mkdtempSync(join(tmpdir(), 'lastwright-squad-'))
	const reports = mkdtempSync(join(tmpdir(), 'lastwright-squad-reports-'))
	const faults: string[] = []
	page.on('console', (message) => { if (/Content Security Policy/i.test(message.text())) faults.push(message.text()) })
	page.on('pageerror', (error) => faults.push(error.message))
	const host = await startHost('--data', data)
	try {
		await page.goto(host.url)
		await hostCall(page, 'session.setUp', { clinic: { format: 'lastwright-clinic', version: 1, name: 'Harrow Lane Foot Clinic', address: [], colour: '#1f5f5b', clinician: { name: 'Imke Darrow', registration: 'DEMO-00417' } }, passphrase: 'seven grey herons' })
		await page.reload()
		await page.getByRole('link', { name: 'Squad day' }).press('Enter')
		await page.getByLabel('Team').fill('Harrow Rovers')
		await page.getByLabel('Roster', { exact: true }).fill(roster.replace('\n2,', '\n1,'))
		await page.getByRole('button', { name: 'Look at the roster' }).press('Enter')
		await expect(page.getByText('Row 3, number: given twice', { exact: false })).toBeVisible()
		await expect(page.getByRole('button', { name: 'Take in and open the board' })).toBeDisabled()
		await page.getByLabel('Roster', { exact: true }).fill(roster)
		await page.getByRole('button', { name: 'Look at the roster' }).press('Enter')
		await expect(page.getByText('6 players can be taken in, 0 problems.')).toBeVisible()
		await page.getByRole('button', { name: 'Take in and open the board' }).press('Enter')
		await expect(page.getByRole('table', { name: 'Board' })).toBeVisible()

		await page.getByRole('button', { name: 'Given5 FamilyFx is absent' }).press('Enter')
		await expect(page.getByText('1 absent', { exact: false })).toBeVisible()
		for (let number = 1; number < players; number++) {
			await call(page, number, 'Check-in')
			await page.getByLabel('Code').selectOption('association')
			await page.getByRole('checkbox').press('Space')
			await done(page)
		}
		await desk(page, 'Measures').press('Enter')
		for (let number = 1; number < players; number++) {
			await call(page, number, 'Measures')
			// only this station's fields
			await expect(page.getByRole('textbox', { name: 'Knee to wall, left' })).toHaveCount(0)
			await page.getByRole('textbox', { name: 'Stature' }).focus()
			for (const typed of ['178,5', '74', '264', number === 1 ? '281' : '265', '', '', '104', '105']) {
				if (typed) await page.keyboard.type(typed)
				await page.keyboard.press('Enter')
			}
			if (number === 1) {
				// left and right far apart: asked before going on
				await expect(page.getByText('Is this really Given0', { exact: false })).toBeVisible()
				await page.screenshot({ path: info.outputPath('station.png'), fullPage: true })
				await page.getByRole('button', { name: 'Done here, back to the board' }).press('Enter')
				await expect(page.getByText('Answer the question about a swap first.')).toBeVisible()
				await page.getByRole('textbox', { name: 'Heel to toe, right' }).fill('265')
			}
			await done(page)
		}
		await desk(page, 'Ankles and posture').press('Enter')
		await call(page, 1, 'Ankles and posture')
		await page.getByRole('textbox', { name: 'Knee to wall, left' }).focus()
		for (const typed of ['9.5', '10']) { await page.keyboard.type(typed); await page.keyboard.press('Enter') }
		await done(page)
		await page.screenshot({ path: info.outputPath('board.png'), fullPage: true })
		await expect(page.getByRole('row', { name: /Given0/ })).toContainText('Footwear 1')

		await desk(page, 'Clinician').press('Enter')
		for (let number = 1; number < players; number++) {
			await call(page, number, 'Clinician')
			await page.getByRole('button', { name: 'Open the assessment and sign' }).press('Enter')
			await expect(page.getByRole('heading', { name: 'Sign and report' })).toBeVisible()
			await page.getByRole('button', { name: /^Sign/ }).last().press('Enter')
			await expect(page.getByText('Signed', { exact: true }).first()).toBeVisible({ timeout: 20_000 })
			await page.getByRole('link', { name: 'Squad day' }).press('Enter')
			await page.getByRole('link', { name: 'Open the board' }).press('Enter')
			await expect(page.getByRole('status').filter({ hasText: `${number} signed` })).toBeVisible()
		}
		await page.getByLabel('Folder for the reports').fill(reports)
		await page.getByRole('button', { name: 'Write the reports' }).press('Enter')
		await expect(page.getByText('5 of 5 players, 5 files. Done.')).toBeVisible({ timeout: 30_000 })
		expect(readdirSync(reports)).toHaveLength(5)
		await page.getByRole('link', { name: 'Outreach' }).press('Enter')
		await expect(page.getByRole('heading', { name: 'Make a pack' })).toBeVisible()
		await page.getByRole('button', { name: 'Choose all that are shown' }).press('Enter')
		await page.getByLabel('Folder or stick').fill(reports)
		await page.getByLabel('Passphrase of the pack', { exact: true }).first().fill('three mild otters')
		await page.getByLabel('Passphrase of the pack again').fill('three mild otters')
		await page.getByRole('button', { name: 'Make the pack' }).press('Enter')
		await expect(page.getByText('6 players', { exact: false }).first()).toBeVisible()
		await page.screenshot({ path: info.outputPath('outreach.png'), fullPage: true })
		expect(faults).toEqual([])
	} finally {
		await host.kill()
		for (const folder of [data, reports]) rmSync(folder, { recursive: true, force: true })
	}
})
