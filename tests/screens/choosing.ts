/** Chooses a folder or a file in the dialog of the browser window. */
import { expect, type Locator, type Page } from '@playwright/test'

export const placeField = (within: Page | Locator, label: string) =>
	within.getByRole('group', { name: label, exact: true })
/** Opens the dialog of a field by keys. @returns it, once its first list is there */
export async function openDialog(page: Page, within: Page | Locator, label: string) {
	await placeField(within, label)
		.getByRole('button', { name: /^Choose a/ })
		.press('Enter')
	const dialog = page.getByRole('dialog')
	await expect(dialog.getByRole('listbox')).toBeFocused()
	return dialog
}
/** Writes a path in the dialog; what is refused is said there. */
export async function writePath(dialog: Locator, path: string): Promise<void> {
	const field = dialog.getByRole('textbox', { name: /^Whole path of/ })
	const written = dialog.getByRole('button', { name: 'Write the path instead' })
	if ((await written.getAttribute('aria-expanded')) === 'false') await written.press('Enter')
	await field.fill(path)
	await field.press('Enter')
}
/** For folders of a test, which lie in no place of this PC. */
export async function choosePath(
	page: Page,
	within: Page | Locator,
	label: string,
	path: string,
): Promise<void> {
	await writePath(await openDialog(page, within, label), path)
	await expect(page.getByRole('dialog')).toBeHidden()
	await expect(placeField(within, label).getByText(path, { exact: true })).toBeVisible()
}
