/**
 * What several browser tests do with a page: ask its host, take a picture, walk to a control by
 * Tab.
 */
import { mkdirSync } from 'node:fs'
import { expect, type Locator, type Page } from '@playwright/test'
import type { DraftContent } from '../../shared/contract.ts'
import { assess } from '../../shared/engine/assess.ts'
import { openProtocol } from '../../shared/engine/protocol/protocol.ts'
import { signingBlocks } from '../../shared/engine/report/signing.ts'
import type { Visit } from '../../shared/engine/visit/visit.ts'
import { agreed } from '../agreed.ts'
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
 * What the clinician at the screen would do one by one: every question of the open draft is settled
 * as proposed. @returns the draft's id
 */
export const decideOn = (page: Page, playerId: string, visitDate: string): Promise<string> =>
	decideAll((name, input) => hostCall(page, name, input), playerId, visitDate)
const why = 'Asked by telephone before the visit'
/**
 * On Decide by keys alone: each question that is open is taken as proposed; safety that is not
 * established is set aside with why. @param press how a key is pressed
 */
export async function settleQuestions(
	page: Page,
	press: (key: string) => Promise<unknown> = (key) => page.keyboard.press(key),
): Promise<void> {
	const open = page.locator('button[data-question]:is([data-state=open], [data-state=overtaken])')
	await expect(page.locator('button[data-question]').first()).toBeVisible()
	while ((await open.count()) > 0) {
		await press('Alt+n')
		const inHand = page.locator('button[data-question][aria-expanded=true]')
		await expect(inHand).toBeFocused()
		const question = await inHand.getAttribute('data-question')
		// the first answer that is offered, by the key that stands on it; read once it is there
		const first = page
			.getByRole('group', { name: /^Answer:/ })
			.getByRole('button')
			.first()
		const key = (await first.getAttribute('aria-keyshortcuts')) ?? ''
		await press(key.toLowerCase())
		if (key === 'S') {
			await expect(page.getByLabel('Why it is set aside')).toBeFocused()
			await page.keyboard.type(why)
		}
		// by its own state: how many are open may still change with an answer that was just given
		await expect(open.and(page.locator(`[data-question="${question}"]`))).toHaveCount(0)
	}
}
/** What signs the visit on the page, apart from the step of that name. */
export const signButton = (page: Page): Locator =>
	page.getByRole('button', { name: 'Sign the visit' })
/**
 * On Sign by keys alone: the usual answers are put down, no interpreter was needed, a chaperone was
 * declined, and where it is asked the guardian came too; then the signature has the focus.
 */
export async function agreeOnSign(
	page: Page,
	press: (key: string) => Promise<unknown> = (key) => page.keyboard.press(key),
): Promise<void> {
	await press('Alt+n')
	await expect(
		page.getByRole('button', { name: /^Explained to .* with all options/ }),
	).toBeFocused()
	await press('Enter')
	const radio = (group: string, name: string | RegExp) =>
		page.getByRole('group', { name: group }).getByRole('radio', { name })
	await expect(radio('Interpreter', 'Not needed')).toBeFocused()
	await press('Space')
	await press('Alt+n')
	await expect(radio('Chaperone', 'Offered, accepted')).toBeFocused()
	await press('ArrowRight')
	await expect(radio('Chaperone', 'Offered, declined')).toBeChecked()
	await press('Alt+n')
	if (await page.getByRole('group', { name: 'Came with' }).isVisible()) {
		await expect(radio('Came with', /guardian$/)).toBeFocused()
		await press('Space')
		await press('Alt+n')
	}
	await expect(signButton(page)).toBeFocused()
}
/** The player whose assessment is on the page. */
const playerOf = (page: Page): string => new URL(page.url()).hash.split('/')[2] ?? ''
interface OpenDraft {
	draft: { content: DraftContent }
	earlier: Visit[]
}
/** The open draft as the host has it. @param visitDate of a draft there is none of yet */
const draftAtHost = (page: Page, visitDate = '2027-01-20') =>
	hostCall<OpenDraft>(page, 'drafts.open', { playerId: playerOf(page), visitDate })

/** Waits until the host has this in the visit of the draft on the page. */
export const visitSaved = (page: Page, part: (visit: Visit) => unknown, value: unknown) =>
	expect.poll(async () => part((await draftAtHost(page)).draft.content.visit)).toEqual(value)

/** Waits until the host has all decisions of the draft on the page that its signature needs. */
export const decisionsSaved = (page: Page) =>
	expect
		.poll(async () => {
			const { draft, earlier } = await draftAtHost(page)
			const { visit, raw, decisions } = draft.content
			const { file } = await hostCall(page, 'protocol.get', {})
			const { shelf } = await hostCall(page, 'shelf.get', {})
			return signingBlocks(
				{ visit, raw, decisions: { ...decisions, ...agreed } },
				assess(visit, earlier, file, shelf),
				openProtocol(file),
			)
		})
		.toEqual([])
/**
 * Waits until nothing moves on the page: letters are there, what slides or fades has ended, and the
 * browser has drawn twice since.
 */
export const still = (page: Page): Promise<void> =>
	page.evaluate(async () => {
		await document.fonts.ready
		const ending = document
			.getAnimations()
			.filter(({ effect }) => effect?.getComputedTiming().endTime !== Number.POSITIVE_INFINITY)
		await Promise.all(ending.map(({ finished }) => finished.catch(() => {})))
		await new Promise((drawn) => requestAnimationFrame(() => requestAnimationFrame(drawn)))
	})
/** Waits until the page of an address stands: what it opens is there, and nothing moves. */
export async function settled(page: Page): Promise<void> {
	await still(page)
	await expect(page.getByRole('status').filter({ hasText: /^(Opening|Searching)/ })).toHaveCount(0)
	await expect(page.getByRole('heading', { level: 1 }).first()).toBeVisible()
	await still(page)
}
const shots = process.env.LASTWRIGHT_SHOTS
/**
 * A picture of the page, where a folder for pictures is named. @param how of the whole page or of
 * what is in view
 */
export async function shot(
	page: Page,
	name: string,
	{ fullPage = true }: { fullPage?: boolean } = {},
): Promise<void> {
	if (!shots) return
	mkdirSync(shots, { recursive: true })
	await still(page)
	await page.screenshot({ path: `${shots}/${name}.png`, fullPage })
}
/** Walks by Tab alone until the control has the focus. */
export async function tabTo(page: Page, control: Locator, most = 260): Promise<void> {
	await expect(control).toBeVisible()
	for (let presses = 0; presses < most; presses++) {
		if (await control.evaluate((node) => node === document.activeElement)) return
		await page.keyboard.press('Tab')
	}
	throw new Error(`not reached by Tab: ${control}`)
}
