/** Sign: what the letter to the doctor and the order of an insert say beyond what was found. */
import { expect, type Page, test } from '@playwright/test'
import type { DraftContent } from '../../shared/contract.ts'
import { axe } from './axe.ts'
import { hostCall, shot } from './drive.ts'
import { onDemoDay, type RunningHost, startHost } from './host.ts'

const step = (page: Page, name: string) =>
	page.getByRole('navigation', { name: 'Steps' }).getByRole('button', { name, exact: true })
const letter = (page: Page) => page.getByRole('region', { name: 'Letter to the doctor' })
interface Opened {
	draft: { draftId: string; content: DraftContent }
}
/** Opens Sign of a player's draft, with answers put into it. */
async function toSign(
	page: Page,
	query: string,
	screening: object,
): Promise<() => Promise<Opened>> {
	const { cards } = await hostCall(page, 'players.search', { query, limit: 1 })
	const { playerId } = cards[0]
	const { drafts } = await hostCall(page, 'players.open', { playerId })
	const { visitDate } = drafts[0]
	const open = () => hostCall<Opened>(page, 'drafts.open', { playerId, visitDate })
	const { draft } = await open()
	const { content, draftId } = draft
	await hostCall(page, 'drafts.save', {
		draftId,
		content: { ...content, visit: { ...content.visit, screening } },
	})
	await page.evaluate((to) => {
		location.hash = to
	}, `#/assessment/${playerId}`)
	await step(page, 'Sign').press('Enter')
	await expect(page.getByRole('heading', { level: 1, name: 'Sign' })).toBeFocused()
	return open
}

test.describe('papers', () => {
	test.setTimeout(120_000)
	let host: RunningHost
	test.beforeEach(async ({ page }) => {
		host = await startHost('--demo')
		await onDemoDay(page)
		await page.goto(host.url)
		await expect(page.getByRole('heading', { level: 1 })).toBeVisible()
	})
	test.afterEach(() => host.kill())

	test('an urgent letter asks as proposed until something else is typed, and keeps it', async ({
		page,
	}) => {
		const open = await toSign(page, 'zoë', { coldPaleFoot: true })
		const proposed = letter(page).getByRole('radio', { name: 'Emergency, now' })
		await expect(proposed).toBeChecked()
		await expect(
			letter(page).getByText('Asked for by what was found: emergency, now.'),
		).toBeVisible()
		const question = letter(page).getByRole('textbox', { name: 'Question' })
		await expect(question).toHaveAttribute('placeholder', /when may sport start again\?$/)
		await question.focus()
		await page.keyboard.type('Is the blood supply to the left foot safe?')
		await letter(page).getByRole('textbox', { name: 'In your own words' }).focus()
		await page.keyboard.type('Her coach drives her to you now.')
		// less urgent is the clinician's to choose, and is said
		await proposed.focus()
		await page.keyboard.press('ArrowLeft')
		await expect(letter(page).getByRole('radio', { name: 'Same day' })).toBeChecked()
		await expect(letter(page).getByText(/^Less urgent than what was found asks for/)).toBeVisible()
		expect(await axe(page, 'letter')).toEqual([])
		await shot(page, 'sign-letter')
		await page.keyboard.press('ArrowRight')
		await expect(letter(page).getByText(/^Less urgent/)).toHaveCount(0)
		await expect
			.poll(async () => (await open()).draft.content.decisions.letter)
			.toEqual({
				question: 'Is the blood supply to the left foot safe?',
				words: 'Her coach drives her to you now.',
			})
		await page.reload()
		await step(page, 'Sign').press('Enter')
		await expect(question).toHaveValue('Is the blood supply to the left foot safe?')
	})
	test('without a sign a letter is offered, and the order of an insert has its fields', async ({
		page,
	}) => {
		const open = await toSign(page, 'zoë', {})
		await expect(letter(page)).toHaveCount(0)
		await page.getByRole('button', { name: 'Write to the doctor' }).press('Enter')
		await expect(letter(page).getByRole('radio', { name: 'Routine' })).toBeChecked()
		const order = page.getByRole('region', { name: 'Insert order' })
		for (const [name, typed] of [
			['Order number', 'B-17'],
			['Laboratory', 'Bench Lane Orthotics'],
			['Needed by', '12 February'],
		] as const) {
			await order.getByRole('textbox', { name }).focus()
			await page.keyboard.type(typed)
		}
		await expect
			.poll(async () => (await open()).draft.content.decisions.order)
			.toEqual({ number: 'B-17', laboratory: 'Bench Lane Orthotics', neededBy: '12 February' })
		await shot(page, 'sign-order')
	})
})
