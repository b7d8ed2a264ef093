/** A morning by keys alone: the clinician follows up referrals, reception answers and reminds. */
import { expect, type Page, test } from '@playwright/test'
import { hostCall, shot } from './drive.ts'
import { onDemoDay, startHost } from './host.ts'
import { accessible, button, closeAll, link } from './outbox-drive.ts'

const desk = 'reception at the desk'
const keys = async (page: Page, ...all: string[]) => {
	for (const key of all) await page.keyboard.press(key)
}
/** Chooses an option of the list in focus by the first letters of its name. */
const choose = async (page: Page, label: string, letters: string) => {
	await expect(page.getByLabel(label, { exact: true })).toBeFocused()
	await page.keyboard.type(letters)
}

test('who is due and what was not heard: followed up, answered, reminded', async ({ page }) => {
	const own = await startHost('--demo')
	const faults: string[] = []
	page.setDefaultTimeout(20_000)
	page.on('pageerror', (error) => faults.push(error.message))
	try {
		await onDemoDay(page)
		await page.goto(own.url)
		await closeAll(page)

		// the clinician's start: what danger asked for stands before all else
		const morning = page.getByRole('complementary', { name: 'This morning' })
		await expect(morning.getByRole('heading').first()).toHaveText('Referrals not heard from')
		await expect(morning).toContainText('Marit Hale: imaging before impact sport')
		await expect(morning).toContainText('4 overdue')
		await shot(page, 'recall morning of the clinician')
		await morning.getByRole('link', { name: 'Follow up all 4' }).press('Enter')

		const marit = page.getByRole('region', { name: 'Marit Hale' })
		await expect(marit).toContainText('Team doctor rung')
		await marit.getByRole('button', { name: /^Note a try/ }).press('Enter')
		await expect(page.getByLabel('What happened')).toBeFocused()
		await page.keyboard.type('Rang the team doctor, no answer')
		await keys(page, 'Tab')
		await page.keyboard.type('29 Jan 2027')
		await keys(page, 'Enter')
		await expect(marit).toContainText('no answer; again on 29 January 2027')

		const bastien = page.getByRole('region', { name: 'Bastien Quill' })
		await bastien.getByRole('button', { name: /^Write what came of it/ }).press('Enter')
		await button(page, 'Keep the outcome').press('Enter')
		await expect(page.getByRole('alert').filter({ hasText: 'Result is not chosen' })).toBeVisible()
		await page.getByLabel('Result').focus()
		await choose(page, 'Result', 'Exc')
		await keys(page, 'Tab', 'Tab')
		await page.keyboard.type('No fracture on the film')
		await keys(page, 'Tab')
		await page.keyboard.type('film')
		await keys(page, 'Tab')
		await page.keyboard.type('radiology')
		await keys(page, 'Enter')
		await expect(bastien).toHaveCount(0)
		await expect(page.getByText('Excluded: No fracture on the film')).toBeVisible()
		await accessible(page)
		await hostCall(page, 'people.save', {
			name: 'Desk Person',
			registration: '',
			role: 'reception',
			passphrase: desk,
		})

		// reception's: how many there are, and nothing of them
		await hostCall(page, 'session.lock', {})
		await hostCall(page, 'session.unlock', { passphrase: desk })
		await page.goto(`${page.url().split('#')[0]}#/players`)
		await page.reload()
		await expect(morning).toContainText('The clinician has referrals to follow up: 3')
		await expect(morning).not.toContainText('imaging')
		await shot(page, 'recall morning of reception')
		await morning.getByRole('link', { name: 'All that are due' }).press('Enter')
		await expect(page.getByRole('region', { name: 'Overdue' })).toContainText('Tui Ashdown')
		await expect(page.getByRole('main')).not.toContainText(/boots|warning sign/)

		const answer = button(page, 'Answer for Tui Ashdown')
		await answer.press('Enter')
		await choose(page, 'Answer', 'Boo')
		await keys(page, 'Tab')
		await page.keyboard.type('3 Feb 2027')
		await keys(page, 'Enter')
		const nextWeek = page.getByRole('region', { name: 'Next week' })
		await expect(nextWeek).toContainText('booked for 3 February 2027')
		// a review is the clinician's: it is not offered to end it
		await button(page, 'Answer for Ørjan Brekkevold-Tane').press('Enter')
		const offered = page.getByRole('form').getByLabel('Answer', { exact: true })
		await expect(offered).toBeFocused()
		await expect(offered.locator('option')).toHaveText([
			'Choose',
			'Booked',
			'Asked to wait',
			'Due after all',
		])
		await keys(page, 'Escape')
		await expect(button(page, 'Answer for Ørjan Brekkevold-Tane')).toBeFocused()

		for (const name of ['Mairéad Ó Dálaigh-Finch', 'Kofi Brandreth', 'Ceri Vaughan-Idle'])
			await page.getByRole('checkbox', { name: `Tick ${name}` }).press('Space')
		await button(page, 'Remind by e-mail').press('Enter')
		const reminders = page.getByRole('region', { name: 'Reminders' })
		await expect(reminders).toContainText('One reminder stands in the outbox to be checked')
		await expect(reminders.getByRole('region', { name: 'By telephone' })).toContainText('555 0132')
		await expect(reminders.getByRole('region', { name: 'By letter' })).toContainText(
			'Ama Brandreth',
		)
		await shot(page, 'recall reminders')
		await accessible(page)
		await button(page, 'Make the letter').press('Enter')
		await expect(reminders).toContainText('2 reminders stand in the outbox')
		await link(page, 'Open the outbox').press('Enter')
		await expect(page.getByRole('row').filter({ hasText: 'Reminder' })).toHaveCount(2)
		expect(faults).toEqual([])
	} finally {
		await own.kill()
	}
})
