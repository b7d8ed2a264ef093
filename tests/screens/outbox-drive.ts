/** How the tests of the outbox drive its pages: by keyboard, by name, and looked at by axe. */
import { AxeBuilder } from '@axe-core/playwright'
import { expect, type Locator, type Page } from '@playwright/test'
import { hostCall, tabTo } from './drive.ts'

/** Walks to a control by Tab and presses a key on it. */
export const press = async (page: Page, control: Locator, key = 'Enter') => {
	await tabTo(page, control, 160)
	await page.keyboard.press(key)
}
/** Writes over what stands in a field. */
export async function type(page: Page, label: string, text: string): Promise<void> {
	const field = page.getByLabel(label, { exact: true })
	await tabTo(page, field, 160)
	await page.keyboard.press('Control+A')
	await page.keyboard.type(text)
}
/** A native list: the first letters choose. */
export async function choose(page: Page, label: string, text: string): Promise<void> {
	const field = page.getByLabel(label, { exact: true })
	await tabTo(page, field, 160)
	await page.keyboard.type(text, { delay: 20 })
	await expect(field).toHaveValue(new RegExp(`^${text}`, 'i'))
}
export const button = (page: Page, name: string | RegExp) =>
	page.getByRole('button', { name, exact: true })
export const link = (page: Page, name: string | RegExp) =>
	page.getByRole('main').getByRole('link', { name })
/** Nothing that axe finds; the pages of documents are looked at elsewhere. */
export async function accessible(page: Page): Promise<void> {
	const { violations } = await new AxeBuilder({ page }).exclude('iframe').analyze()
	expect(
		violations.map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.target).join(' ')}`),
	).toEqual([])
}
/** What the demo's outbox holds is closed, so that a test begins with a day on which nothing waits. */
export async function closeAll(page: Page): Promise<void> {
	const { items } = await hostCall(page, 'outbox.list', {})
	for (const { itemId, state } of items)
		if (state !== 'closed') await hostCall(page, 'outbox.close', { itemId, note: '' })
}
