/**
 * Sign: what was explained and agreed to. An adult and a minor with the guardian in few keys, a minor
 * who decides alone, an interpreter who is a child, a plan that is declined; and where it is read.
 */
import { expect, type Page, test } from '@playwright/test'
import type { DraftContent } from '../../shared/contract.ts'
import { settledBy } from '../decide.ts'
import { axe } from './axe.ts'
import { agreeOnSign, hostCall, shot, signButton } from './drive.ts'
import { startHost } from './host.ts'
import { put } from './tour.ts'

const step = (page: Page, name: string) =>
	page.getByRole('navigation', { name: 'Steps' }).getByRole('button', { name, exact: true })
const group = (page: Page, name: string) => page.getByRole('group', { name, exact: true })
const openHere = (page: Page) => page.getByRole('note').filter({ hasText: 'Open on this step' })
const signed = (page: Page) => page.locator('iframe[title="Signed report"]')
/** The demo's draft of a player with every question settled, and nothing noted of an agreement. */
async function toSign(page: Page, query: string): Promise<string> {
	const { cards } = await hostCall(page, 'players.search', { query, limit: 1 })
	const { playerId } = cards[0]
	const { drafts } = await hostCall(page, 'players.open', { playerId })
	const { draft, earlier } = await hostCall<{
		draft: { draftId: string; content: DraftContent }
		earlier: DraftContent['visit'][]
	}>(page, 'drafts.open', { playerId, visitDate: drafts[0].visitDate })
	const ask = (name: string, input: object) => hostCall(page, name, input)
	const decisions = await settledBy(ask, draft.content, earlier)
	await hostCall(page, 'drafts.save', {
		draftId: draft.draftId,
		content: { ...draft.content, decisions },
	})
	await page.evaluate((to) => {
		location.hash = to
	}, `#/assessment/${playerId}`)
	await step(page, 'Sign').press('Enter')
	await expect(page.getByRole('heading', { level: 1, name: 'Sign' })).toBeFocused()
	await expect(openHere(page)).toBeVisible()
	return playerId
}
const agreementOf = async (page: Page, playerId: string) => {
	const { visits } = await hostCall(page, 'players.open', { playerId })
	const { decisions } = await hostCall(page, 'visits.open', { visitId: visits[0].visitId })
	return decisions.agreement
}
const onDemo = async (page: Page, doing: () => Promise<void>) => {
	page.setDefaultTimeout(30_000)
	const host = await startHost('--demo')
	try {
		await page.goto(host.url)
		await expect(page.getByRole('heading', { level: 1 })).toBeVisible()
		await doing()
	} finally {
		await host.kill()
	}
}
test.describe.configure({ timeout: 180_000 })

test('an adult, and a minor with the guardian, are signed in few keys', async ({ page }) => {
	let keys = 0
	const press = (key: string) => {
		keys++
		return page.keyboard.press(key)
	}
	await onDemo(page, async () => {
		const adult = await toSign(page, 'zoe')
		// Enter signs nothing before it is a deliberate press of the button
		await page.keyboard.press('Enter')
		await expect(signButton(page)).toBeDisabled()
		expect(await axe(page, 'sign')).toEqual([])
		await agreeOnSign(page, press)
		await press('Enter')
		await expect(signed(page)).toBeVisible({ timeout: 60_000 })
		expect(keys).toBeLessThanOrEqual(8)
		expect(await agreementOf(page, adult)).toEqual({
			explainedTo: { player: true },
			explained: { plan: true, otherOptions: true, doingNothing: true, risks: true },
			answer: 'agreed',
			by: { player: true },
			interpreter: { need: 'not-needed' },
			chaperone: { offer: 'declined' },
		})
		await expect(page.getByRole('link', { name: 'Send or hand over' })).toHaveAttribute(
			'href',
			`#/outbox/player/${adult}`,
		)
		for (const name of ['Save PDF', 'Back to player', 'Next player'])
			await expect(page.getByRole('link', { name })).toBeVisible()

		keys = 0
		const minor = await toSign(page, 'tui')
		await agreeOnSign(page, press)
		await press('Enter')
		await expect(signed(page)).toBeVisible({ timeout: 60_000 })
		expect(keys).toBeLessThanOrEqual(10)
		expect(await agreementOf(page, minor)).toMatchObject({
			explainedTo: { player: true, guardian: true },
			by: { player: true, guardian: true },
			guardianName: 'Rae Ashdown',
			cameWith: 'guardian',
		})
	})
})

test('a minor alone is judged, and a child never interprets', async ({ page }) => {
	await onDemo(page, async () => {
		const playerId = await toSign(page, 'anouk')
		await group(page, 'Explained to').getByLabel('Anouk, player').press('Space')
		await group(page, 'Explained').getByLabel('The plan').press('Space')
		await group(page, 'Explained').getByLabel('Doing nothing').press('Space')
		await group(page, 'Answer').getByLabel('Agreed', { exact: true }).press('Space')
		await expect(group(page, 'Competence')).toHaveCount(0)
		await group(page, 'Answered by').getByLabel('Anouk, player').press('Space')
		await expect(openHere(page)).toContainText('competence for this decision is not judged')
		const competence = group(page, 'Competence')
		await competence.getByLabel('Not competent for this decision').press('Space')
		await competence.getByLabel('Grounds').fill('says back plan, options and risks')
		await expect(openHere(page)).toContainText('judged not competent')
		await competence.getByLabel('Competent for this decision', { exact: true }).press('Space')
		await expect(openHere(page)).toHaveCount(0)

		const interpreter = group(page, 'Interpreter')
		await interpreter.getByLabel('Present').press('Space')
		await interpreter.getByLabel('Name or number').fill('Remy')
		const who = interpreter.getByLabel('Who the interpreter is')
		await who.selectOption('child-brother-or-sister-of-the-player')
		await expect(interpreter.getByRole('alert')).toContainText('never under 18')
		await expect(signButton(page)).toBeDisabled()
		expect(await axe(page, 'sign with a child as interpreter')).toEqual([])
		await shot(page, 'sign-child')
		await who.selectOption('professional')
		await interpreter.getByLabel('Language').fill('Portuguese')
		await interpreter.getByLabel('By telephone').press('Space')
		await expect(interpreter.getByRole('alert')).toHaveCount(0)
		await signButton(page).press('Enter')
		await expect(signed(page)).toBeVisible({ timeout: 60_000 })
		expect(await agreementOf(page, playerId)).toMatchObject({
			by: { player: true },
			competence: { judged: 'competent', grounds: 'says back plan, options and risks' },
			interpreter: {
				need: 'present',
				who: 'Remy',
				relation: 'professional',
				language: 'Portuguese',
				way: 'by-telephone',
			},
		})
	})
})

test('a plan that is declined is signed as declined, and read so', async ({ page }) => {
	await page.setViewportSize({ width: 1280, height: 720 })
	await onDemo(page, async () => {
		await toSign(page, 'zoe')
		await page.getByRole('button', { name: /^Explained to .* with all options/ }).press('Enter')
		await group(page, 'Answer').getByLabel('Declined the plan').press('Space')
		await expect(openHere(page)).toContainText('Write what was declined')
		await group(page, 'Answer').getByLabel('Not agreed to').fill('the insert')
		await expect(openHere(page)).toHaveCount(0)
		for (const look of ['dark', 'text of 200 %'] as const) {
			await put(page, look)
			expect(await axe(page, look, false)).toEqual([])
			const wide = await page.evaluate(
				() => document.documentElement.scrollWidth - document.documentElement.clientWidth,
			)
			expect(wide, look).toBe(0)
			await shot(page, `sign-${look}`)
		}
		await put(page, 'light')
		await signButton(page).press('Enter')
		await expect(signed(page)).toBeVisible({ timeout: 60_000 })
		await page.getByRole('link', { name: 'Back to player' }).press('Enter')
		await page
			.getByRole('button', { name: /^Open visit of/ })
			.first()
			.press('Enter')
		const noted = page.getByRole('table', { name: 'Explained and agreed' })
		await expect(noted.getByRole('row', { name: 'Answer Declined the plan' })).toBeVisible()
		await expect(noted.getByRole('row', { name: 'Not agreed to The insert' })).toBeVisible()
		await shot(page, 'visit-declined')
	})
})
