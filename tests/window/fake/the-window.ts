/** The window of the shell that is on the screen now, and its page. */
import { expect, type Page } from '@playwright/test'
import { openWindows } from './window.ts'

/** A slow machine is slower, not wrong. */
export const patience = { timeout: 20_000 }
export async function theWindow() {
	await expect.poll(() => openWindows().length, patience).toBe(1)
	const [window] = openWindows()
	if (!window) throw new Error('No window is open.')
	return window
}
/** The page once something stands on it. */
export async function thePage(): Promise<Page> {
	const { webContents } = await theWindow()
	await expect.poll(() => webContents.getURL(), patience).toContain('app://')
	await expect(webContents.page.locator('h1').first()).toBeVisible(patience)
	return webContents.page
}
type Given = Readonly<Record<string, (...given: unknown[]) => Promise<unknown>>>
/** A function of the bridge, called by the page. */
export const called = (page: Page, name: string, ...given: unknown[]): Promise<unknown> =>
	page.evaluate(
		([of, list]) => (globalThis as unknown as { lastwright: Given }).lastwright[of]?.(...list),
		[name, given] as const,
	)
