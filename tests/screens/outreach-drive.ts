/** Hands of an outreach day: going about, and the work that is done both away and at home. */
import { AxeBuilder } from '@axe-core/playwright'
import { expect, type Locator, type Page } from '@playwright/test'

export const packPassphrase = 'three mild otters'
export async function accessible(page: Page): Promise<void> {
	const { violations } = await new AxeBuilder({ page }).setLegacyMode().analyze()
	expect(
		violations.map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.target).join(' ')}`),
	).toEqual([])
}
export const to = (page: Page, name: string) =>
	page
		.getByRole('navigation', { name: 'Workstation' })
		.getByRole('link', { name, exact: true })
		.press('Enter')
export const button = (within: Page | Locator, name: string) =>
	within.getByRole('button', { name, exact: true })
export const panel = (page: Page, title: string) =>
	page
		.locator('section')
		.filter({ has: page.getByRole('heading', { level: 2, name: title, exact: true }) })
export async function openPlayer(page: Page, search: string, name: string): Promise<void> {
	await to(page, 'Players')
	await page.getByRole('textbox', { name: 'Search players' }).fill(search)
	await expect(page.getByRole('row')).toHaveCount(2)
	await page.keyboard.press('Enter')
	await expect(page.getByRole('heading', { level: 1, name })).toBeVisible()
}
async function setClub(page: Page, club: string): Promise<void> {
	await button(page, 'Edit details').press('Enter')
	await page.getByRole('textbox', { name: 'Club' }).fill(club)
	await button(page, 'Save player').press('Enter')
	await expect(page.getByRole('status').filter({ hasText: 'Saved.' })).toBeVisible()
}
/** The consent of a parent to the letter for the club. */
async function consent(page: Page, decision: string): Promise<void> {
	await page.getByRole('link', { name: 'Consents of this player' }).press('Enter')
	await page.getByLabel('Purpose').selectOption('share-with-coach')
	await page.getByLabel('Recipient').fill('Coach Invented')
	await page.getByLabel('Decision').selectOption(decision)
	await page.getByLabel('Given by').fill('Rae Ashdown')
	await page.getByLabel('Relation').selectOption('parent')
	await button(page, 'Record consent').press('Enter')
	await expect(page.getByRole('status').filter({ hasText: 'Recorded.' })).toBeVisible()
}
export async function feet(page: Page, resume: RegExp, ...values: string[]): Promise<void> {
	await page.getByRole('button', { name: resume }).press('Enter')
	await page
		.getByRole('navigation', { name: 'Steps' })
		.getByRole('button', { name: 'Feet', exact: true })
		.press('Enter')
	await page.getByRole('textbox', { name: 'Heel to toe, left', exact: true }).focus()
	for (const value of values) {
		await page.keyboard.press('Control+a')
		await page.keyboard.insertText(value)
		await page.keyboard.press('Enter')
	}
	await expect(page.getByText(/^Saved/).first()).toBeVisible()
}
async function newPlayer(page: Page, givenName: string): Promise<void> {
	await to(page, 'Players')
	await page
		.getByRole('button', { name: 'New player' })
		.or(page.getByRole('link', { name: 'New player' }))
		.first()
		.press('Enter')
	await page.getByRole('textbox', { name: 'Given name' }).fill(givenName)
	await page.getByRole('textbox', { name: 'Family name' }).fill('Fieldling')
	await page.getByLabel('Birth date').fill('3 March 2001')
	await page.getByLabel('Sex').selectOption('female')
	await button(page, 'Save player').press('Enter')
	await expect(
		page.getByRole('heading', { level: 1, name: `${givenName} Fieldling` }),
	).toBeVisible()
}
/** The same player and the same newcomer in either place, with what each place says of them. */
export async function workAt(
	page: Page,
	club: string,
	decision: string,
	left: string,
): Promise<void> {
	await openPlayer(page, 'tui', 'Tui Ashdown')
	await setClub(page, club)
	await consent(page, decision)
	await openPlayer(page, 'tui', 'Tui Ashdown')
	await feet(page, /assessment$/, left, '249')
	await newPlayer(page, 'Ida')
}
