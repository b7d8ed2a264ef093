/**
 * Decide by its questions, by keyboard: all seen at once, one answer settles one question, a change
 * keeps what is typed and turns what rests on it, what is set aside has a reason, an unsteady one
 * leads to its measure, Sign leads back to what is open, danger holds the rest.
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
		await expect(row(page, 'complaint')).toBeFocused()
		await page.keyboard.press('ArrowUp')
		await expect(row(page, 'gate')).toBeFocused()
		await page.keyboard.press('Space')
		await expect(row(page, 'gate')).toHaveAttribute('aria-expanded', 'false')
		await page.keyboard.press('a')
		await expect(row(page, 'gate')).toContainText('open')
		await page.keyboard.press('a')
		await expect(row(page, 'gate')).toContainText('as proposed')
		await expect(row(page, 'complaint')).toBeFocused()
		await expect(page.getByText(`1 of ${ids.length} settled`)).toBeVisible()
		await page.keyboard.press('a')
		await expect(row(page, 'size')).toBeFocused()

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
		await expect(row(page, 'size')).toContainText('changed')
		// what rests on it is another proposal at once, and says why
		await expect(row(page, 'pair.match')).toContainText('changed by your answer to size')
		await expect(row(page, 'raise')).not.toContainText('changed by')
		// Escape leads out of the fields
		await shortest.press('Escape')
		await expect(row(page, 'size')).toBeFocused()

		// a reason is needed to set aside
		await page.keyboard.press('s')
		const why = page.getByLabel('Why it is set aside')
		await expect(why).toBeFocused()
		await page.keyboard.type('measured again next week')
		await expect(row(page, 'size')).toContainText('set aside')
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

test('all questions are seen while one is open, and the unsteady one leads to its measure', async ({
	page,
}) => {
	await page.setViewportSize({ width: 1280, height: 720 })
	const host = await startOnDemo(page)
	try {
		const { cards } = await hostCall(page, 'players.search', { query: 'tui', limit: 1 })
		await toDecide(page, cards[0].playerId)
		await row(page, 'size').click()
		await expect(page.getByRole('region', { name: 'Size', exact: true })).toBeVisible()
		const places = await page
			.locator('button[data-question]')
			.evaluateAll((all) => all.map((one) => one.getBoundingClientRect()))
		for (const { top, bottom, height } of places) {
			expect(top).toBeGreaterThanOrEqual(0)
			expect(bottom).toBeLessThanOrEqual(720)
			expect(height).toBeGreaterThanOrEqual(44)
		}
		// the line says what is proposed, why and how surely
		await expect(row(page, 'size')).toContainText(/mm inside; about EU .+near a limit/)
		await expect(row(page, 'pair.match')).toContainText('raised heel')
		await expect(row(page, 'size')).toContainText('length to fit, right')

		const readings = page.locator('[data-path="feet.right.heelToToeMm"]')
		await row(page, 'size').focus()
		await page.keyboard.press('m')
		await expect(page.getByRole('heading', { level: 1, name: 'Feet' })).toBeAttached()
		await expect(readings).toBeFocused()
		const before = (await readings.inputValue()).trim()
		await page.keyboard.type('248.5')
		await expect(readings).toHaveValue(`${before} 248.5`)
		await page.keyboard.press('Alt+7')
		await expect(row(page, 'size')).toBeFocused()
		await expect(row(page, 'size')).toHaveAttribute('aria-expanded', 'true')
	} finally {
		await host.kill()
	}
})

test('what is done about the complaint is set by fields', async ({ page }) => {
	const host = await startOnDemo(page)
	try {
		const { cards } = await hostCall(page, 'players.search', { query: 'tui', limit: 1 })
		await toDecide(page, cards[0].playerId)
		await expect(row(page, 'complaint')).toContainText('growing heel')
		await row(page, 'complaint').click()
		await page.keyboard.press('c')
		const sessions = page.getByLabel('Sessions a week, at most')
		await expect(sessions).toBeFocused()
		await page.keyboard.type('two')
		await expect(page.getByText("'two' is not allowed; give a whole number")).toBeVisible()
		await sessions.fill('2')
		await page.getByLabel('Steps back, one a line, in your words').fill('Jog on grass first\n')
		await expect(row(page, 'complaint')).toContainText('changed')
		await expect(page.getByText('Play or train 2 sessions a week at most.')).toBeAttached()
		expect(await axe(page, 'load')).toEqual([])
		// Enter goes on from a field of a change
		await sessions.press('Enter')
		await expect(page.getByLabel('Sessions a week, at most')).toHaveCount(0)
	} finally {
		await host.kill()
	}
})

/** Presses until every question is settled; each press opens the next one that is not. */
async function answerAll(page: Page, key: (id: string) => string): Promise<number> {
	const open = page.locator('button[data-question]:is([data-state=open], [data-state=overtaken])')
	let keys = 0
	while ((await open.count()) > 0) {
		const inHand = page.locator('button[data-question][aria-expanded=true]')
		const id = (await inHand.getAttribute('data-question')) ?? ''
		await page.keyboard.press(key(id))
		keys += 1
		await expect(open.and(page.locator(`[data-question="${id}"]`))).toHaveCount(0)
	}
	return keys
}

test('an adult visit is decided by under 20 keys, a returning one by one key a question', async ({
	page,
}) => {
	const host = await startOnDemo(page)
	try {
		const { cards } = await hostCall(page, 'players.search', { query: 'zoe', limit: 1 })
		await toDecide(page, cards[0].playerId)
		await page.keyboard.press('Alt+n')
		const keys = await answerAll(page, () => 'a')
		expect(keys + 'Alt+n'.split('+').length).toBeLessThan(20)

		const { playerId } = (await hostCall(page, 'players.search', { query: 'tui', limit: 1 }))
			.cards[0]
		const { draft, earlier } = await hostCall(page, 'drafts.open', {
			playerId,
			visitDate: '2027-01-20',
		})
		const last = earlier.at(-1)
		await hostCall(page, 'drafts.save', {
			draftId: draft.draftId,
			content: {
				...draft.content,
				visit: { ...last, visitDate: draft.content.visit.visitDate },
			},
		})
		await toDecide(page, playerId)
		await page.keyboard.press('Alt+n')
		const ids = await page.locator('button[data-question]').count()
		expect(await answerAll(page, (id) => (id === 'gate' ? 'a' : 'u'))).toBe(ids)
		await expect(row(page, 'size')).toContainText('unchanged')
		await expect(row(page, 'gate')).toContainText('as proposed')
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
		await expect(row(page, 'gate')).toContainText('Stop. Imaging before impact sport; held: sport')
		await expect(row(page, 'gate')).toContainText('Now: Ask for imaging before any impact sport.')
		await expect(page.getByText('Act on this before footwear.')).toBeVisible()
		await page.getByLabel('What was done about it').fill('Sent to Dr Marlowe for imaging today')
		expect(await axe(page, 'held')).toEqual([])
		await shot(page, 'question-held')
		// the outcomes are one key away, and coming back is at the gate
		await row(page, 'gate').focus()
		await page.keyboard.press('o')
		await expect(page.getByRole('heading', { level: 1, name: 'Flags' })).toBeFocused()
		await page.keyboard.press('Alt+7')
		await expect(row(page, 'gate')).toBeFocused()
	} finally {
		await host.kill()
	}
})
