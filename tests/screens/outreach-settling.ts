/** What is settled after coming home: questions, drafts kept twice, players entered twice. */
import { expect, type Page } from '@playwright/test'
import { shot } from './drive.ts'
import { button, openPlayer, panel, to } from './outreach-drive.ts'

/** Both values of each question; the answers stand. */
export async function answerQuestions(clinic: Page): Promise<void> {
	const asked = panel(clinic, 'To answer')
	const clubs = asked.getByRole('radiogroup', { name: 'Club of Tui Ashdown', exact: true })
	await expect(clubs.getByRole('radio')).toHaveCount(2)
	await expect(
		clubs.getByRole('radio', { name: /^At home, .*, by Imke Darrow: Saltmarsh Rovers U15$/ }),
	).toBeVisible()
	await clubs
		.getByRole('radio', {
			name: /^Away, .*, by Imke Darrow, on the laptop with the pack of .*: Tidewater United U14$/,
		})
		.press('Space')
	await asked
		.locator('form')
		.filter({
			has: clinic.getByRole('radiogroup', { name: 'Club of Tui Ashdown', exact: true }),
		})
		.getByRole('button', { name: 'This one counts' })
		.press('Enter')
	await expect(clubs).toHaveCount(0)
	const coach = asked.getByRole('radiogroup', {
		name: 'Consent to sharing with a coach or club of Tui Ashdown',
	})
	await expect(coach.getByRole('radio', { name: /^At home, .*: given$/ })).toBeVisible()
	await coach.getByRole('radio', { name: /^Away, .*: refused$/ }).press('Space')
	await button(asked, 'This one counts').press('Enter')
	await expect(asked).toHaveCount(0)
}
/** Two drafts of one player become one: what differs is chosen. */
export async function joinDrafts(clinic: Page): Promise<void> {
	const kept = panel(clinic, 'What came home')
	const drafts = kept.getByRole('table', { name: 'Drafts of Tui Ashdown' })
	await expect(drafts.getByRole('row', { name: /^Heel to toe, left \(mm\)/ })).toBeVisible()
	await expect(
		drafts.getByRole('columnheader', { name: /^At home, saved .*, by Imke Darrow$/ }),
	).toBeVisible()
	await expect(
		drafts.getByRole('columnheader', { name: /^Away, on the laptop, saved .*, by Imke Darrow$/ }),
	).toBeVisible()
	await expect(button(kept, 'Join the two')).toBeDisabled()
	await expect(kept.getByText(/^To join, choose first: .*Heel to toe, left/)).toBeVisible()
	await shot(clinic, 'two-drafts')
	// on a narrow window the table scrolls, and not the page
	const { width = 0, height = 0 } = clinic.viewportSize() ?? {}
	await clinic.setViewportSize({ width: 360, height })
	await expect
		.poll(() => clinic.evaluate(() => document.documentElement.scrollWidth))
		.toBeLessThanOrEqual(360)
	await clinic.setViewportSize({ width, height })
	for (const row of await drafts.getByRole('row').all()) {
		const radios = row.getByRole('radio')
		if ((await radios.count()) === 0) continue
		const wanted = row.getByRole('radio', { name: /^Heel to toe, left \(mm\), .*: 247\b/ })
		await ((await wanted.count()) === 1 ? wanted : radios.first()).press('Space')
	}
	await button(kept, 'Join the two').press('Enter')
	await expect(drafts).toHaveCount(0)
}
/** The newcomer of both places: joined by a person, apart again, and joined. */
export async function joinTwice(clinic: Page): Promise<void> {
	const kept = panel(clinic, 'What came home')
	await expect(
		kept.getByText('Ida Fieldling came from the laptop, and Ida Fieldling stands at home', {
			exact: false,
		}),
	).toBeVisible()
	for (const name of ['One person: join them', 'Take them apart again', 'One person: join them'])
		await button(kept, name).press('Enter')
	await expect(kept.getByText('they are shown as one player', { exact: false })).toBeVisible()
	await shot(clinic, 'joined')
	await to(clinic, 'Players')
	await clinic.getByRole('textbox', { name: 'Search players' }).fill('fieldling')
	await expect(clinic.getByRole('row')).toHaveCount(2)
	await openPlayer(clinic, 'tui', 'Tui Ashdown')
	await expect(clinic.getByRole('region', { name: 'Details', exact: true })).toContainText(
		'Tidewater United U14',
	)
	await clinic.getByRole('button', { name: /assessment$/ }).press('Enter')
	await clinic
		.getByRole('navigation', { name: 'Steps' })
		.getByRole('button', { name: 'Feet', exact: true })
		.press('Enter')
	await expect(clinic.getByRole('textbox', { name: 'Heel to toe, left', exact: true })).toHaveValue(
		'247',
	)
}
