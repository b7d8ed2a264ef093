/**
 * Decide by its questions, by keyboard: one answer settles one question, a change keeps what is
 * typed, what is set aside has a reason, Sign leads back to what is open, danger holds the rest.
 */
import { expect, type Page, test } from '@playwright/test'
import { visitSchema } from '../../shared/engine/visit/visit.ts'
import { axe } from './axe.ts'
import { hostCall, settleQuestions, shot, still } from './drive.ts'
import { startHost } from './host.ts'

const row = (page: Page, id: string) => page.locator(`button[data-question="${id}"]`)
const answers = (page: Page) => page.getByRole('group', { name: /^Answer:/ })
const step = (page: Page, name: string) =>
	page.getByRole('navigation', { name: 'Steps' }).getByRole('button', { name, exact: true })
async function toDecide(page: Page, playerId: string): Promise<void> {
	await page.evaluate((to) => {
		location.hash = to
	}, `#/assessment/${playerId}`)
	await step(page, 'Decide').press('Enter')
	await expect(page.getByRole('heading', { level: 1, name: 'Decide' })).toBeFocused()
	await expect(row(page, 'gate')).toBeVisible()
}
const isWide = (page: Page) =>
	page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)
const startOnDemo = async (page: Page) => {
	page.setDefaultTimeout(15_000)
	const host = await startHost('--demo')
	await page.goto(host.url)
	await expect(page.getByRole('heading', { level: 1 })).toBeVisible()
	return host
}

test('each question is opened, read, and settled by its own answer', async ({ page }) => {
	await page.setViewportSize({ width: 1280, height: 720 })
	const host = await startOnDemo(page)
	try {
		const { cards } = await hostCall(page, 'players.search', { query: 'tui', limit: 1 })
		await toDecide(page, cards[0].playerId)
		const ids = await page
			.locator('button[data-question]')
			.evaluateAll((all) => all.map((one) => one.getAttribute('data-question') ?? ''))
		expect(ids.length).toBeGreaterThan(4)
		expect(ids.length).toBeLessThanOrEqual(12)

		// each question open, with the fields of its change: in reach of everyone, in the window
		const wrong: string[] = []
		for (const id of ids) {
			await row(page, id).focus()
			if ((await row(page, id).getAttribute('aria-expanded')) === 'false')
				await page.keyboard.press('Enter')
			await page.keyboard.press('c')
			await still(page)
			wrong.push(...(await axe(page, id)))
			if ((await isWide(page)) > 0) wrong.push(`${id}: wider than the window`)
			await shot(page, `question-${id}`)
		}
		expect(wrong).toEqual([])
		await expect(page.getByText(`0 of ${ids.length} settled`)).toBeVisible()

		// up and down walk; a letter on what is closed opens it and settles nothing
		await row(page, 'gate').focus()
		await page.keyboard.press('ArrowDown')
		await expect(row(page, 'size')).toBeFocused()
		await page.keyboard.press('ArrowUp')
		await expect(row(page, 'gate')).toBeFocused()
		await page.keyboard.press('Space')
		await expect(row(page, 'gate')).toHaveAttribute('aria-expanded', 'false')
		await page.keyboard.press('a')
		await expect(row(page, 'gate')).toContainText('open')
		await page.keyboard.press('a')
		await expect(row(page, 'gate')).toContainText('settled: as proposed')
		await expect(row(page, 'size')).toBeFocused()
		await expect(page.getByText(`1 of ${ids.length} settled`)).toBeVisible()

		// a change begins with the proposal; what is no value yet stays as typed and holds the rest
		await page.keyboard.press('c')
		const shortest = page.getByLabel('Shortest inside length (mm)')
		await expect(shortest).toBeFocused()
		await expect(shortest).not.toHaveValue('')
		await shortest.fill('25?')
		await expect(page.getByText("'25?' is not a number")).toBeVisible()
		await expect(row(page, 'size')).toContainText('open')
		await expect(page.getByText(/^Saved /)).toBeVisible()
		await step(page, 'Sign').press('Enter')
		await expect(page.getByText("Size: '25?'")).toBeVisible()
		expect(await axe(page, 'sign')).toEqual([])
		await page.getByRole('button', { name: 'Go to Size' }).first().press('Enter')
		await expect(row(page, 'size')).toBeFocused()
		await page.keyboard.press('c')
		await expect(shortest).toHaveValue('25?')
		await shortest.fill('250')
		await expect(row(page, 'size')).toContainText('settled: changed')

		// a reason is needed to set aside
		await row(page, 'size').focus()
		await page.keyboard.press('s')
		const why = page.getByLabel('Why it is set aside')
		await expect(why).toBeFocused()
		await page.keyboard.type('measured again next week')
		await expect(row(page, 'size')).toContainText('settled: set aside')
		await why.fill('')
		await expect(row(page, 'size')).toContainText('open')
		await answers(page).getByRole('button', { name: 'Take back' }).press('Enter')

		await settleQuestions(page)
		await expect(page.getByText(`${ids.length} of ${ids.length} settled`)).toBeVisible()
		await step(page, 'Sign').press('Enter')
		await expect(page.getByText('Open on this step')).toBeVisible()
		await expect(page.getByText('Open on other steps')).toHaveCount(0)
	} finally {
		await host.kill()
	}
})

test('what danger holds is a grey line and asks nothing; the gate is signed alone', async ({
	page,
}) => {
	const host = await startOnDemo(page)
	try {
		const { playerId } = await hostCall(page, 'players.save', {
			player: {
				givenName: 'Perrin',
				familyName: 'Heldwick',
				birthDate: '1999-04-10',
				sex: 'male',
			},
		})
		const { draft } = await hostCall(page, 'drafts.open', { playerId, visitDate: '2027-01-20' })
		const visit = visitSchema.parse({
			...draft.content.visit,
			feet: {
				stance: 'standing',
				left: { heelToToeMm: [264, 265], ballWidthMm: 104 },
				right: { heelToToeMm: [263, 263], ballWidthMm: 105 },
			},
			ankles: { left: { lungeCm: [6.1, 6.3] }, right: { lungeCm: [6.2, 6.2] } },
			conditions: [{ condition: 'calcaneal-apophysitis', side: 'left', status: 'current' }],
			screening: {
				nightPain: false,
				fever: false,
				reducedSensation: false,
				boneStress: {
					side: 'left',
					site: 'navicular',
					focalTenderness: true,
					nightPain: true,
				},
			},
		})
		await hostCall(page, 'drafts.save', {
			draftId: draft.draftId,
			content: { ...draft.content, visit },
		})
		await toDecide(page, playerId)
		const held = page.locator('li[data-state=held]')
		await expect(held.first()).toContainText(/held: .+, left; lifted when/)
		await expect(held.getByRole('button')).toHaveCount(0)
		await expect(row(page, 'pair.match')).toHaveCount(0)
		await row(page, 'gate').focus()
		await expect(page.getByText('Act on this before footwear.')).toBeVisible()
		await page.getByLabel('What was done about it').fill('Sent to Dr Marlowe for imaging today')
		expect(await axe(page, 'held')).toEqual([])
		await shot(page, 'question-held')
		await page.getByRole('button', { name: 'Questions and outcomes on Flags' }).press('Enter')
		await expect(page.getByRole('heading', { level: 1, name: 'Flags' })).toBeFocused()
	} finally {
		await host.kill()
	}
})
