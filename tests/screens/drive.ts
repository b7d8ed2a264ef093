/**
 * What several browser tests do with a page: ask its host, take a picture, walk to a control by
 * Tab.
 */
import { mkdirSync } from 'node:fs'
import { expect, type Locator, type Page } from '@playwright/test'
import { decideAll } from '../decide.ts'

/** A call of the contract made by the page itself, with its cookie; it must be answered. */
// biome-ignore lint/suspicious/noExplicitAny: answers are looked at field by field
export async function hostCall<T = any>(page: Page, name: string, input: object): Promise<T> {
	const answer = await page.evaluate(
		async ([name, input]) =>
			(
				await fetch(`/call/${name}`, {
					method: 'POST',
					headers: { 'content-type': 'application/json' },
					body: JSON.stringify(input),
				})
			).json(),
		[name, input] as const,
	)
	expect(
		answer,
		`${name} ${answer.message ?? ''} ${JSON.stringify(answer.problems ?? '')}`,
	).toMatchObject({ ok: true })
	return answer.value
}
/**
 * What the clinician at the screen would do one by one: every caution and stop of the open draft is
 * accepted. @returns the draft's id
 */
export const decideOn = (page: Page, playerId: string, visitDate: string): Promise<string> =>
	decideAll((name, input) => hostCall(page, name, input), playerId, visitDate)
const shots = process.env.LASTWRIGHT_SHOTS
/**
 * A picture of the page, where a folder for pictures is named. @param how of the whole page or of
 * what is in view, and how long it may settle first
 */
export async function shot(
	page: Page,
	name: string,
	{ fullPage = true, settleMs = 0 }: { fullPage?: boolean; settleMs?: number } = {},
): Promise<void> {
	if (!shots) return
	mkdirSync(shots, { recursive: true })
	await page.waitForTimeout(settleMs)
	await page.screenshot({ path: `${shots}/${name}.png`, fullPage })
}
/** Walks by Tab alone until the control has the focus. */
export async function tabTo(page: Page, control: Locator, most = 260): Promise<void> {
	await expect(control).toBeVisible()
	for (let presses = 0; presses < most; presses++) {
		if (await control.evaluate((one) => one === document.activeElement)) return
		await page.keyboard.press('Tab')
	}
	throw new Error(`not reached by Tab: ${control}`)
}
