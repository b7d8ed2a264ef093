/**
 * What is worked with stays in sight: on a small window the first field stands in the upper third,
 * and head, foot and result are there wherever the page is scrolled to; both feet are drawn to
 * scale as the keys fall, and what is held is said at once.
 */
import { expect, type Locator, type Page, test } from '@playwright/test'
import { decideOn, hostCall, settled, still } from './drive.ts'
import { onDemoDay, type RunningHost, startHost } from './host.ts'

const window = { width: 1280, height: 720 }
const upperThird = window.height / 3
const measuring = ['Play', 'Feet', 'Ankles', 'Posture', 'Growth'] as const
const field = (page: Page, name: string) => page.getByRole('textbox', { name, exact: true })
const step = (page: Page, name: string) =>
	page.getByRole('navigation', { name: 'Steps' }).getByRole('button', { name, exact: true })

async function open(page: Page, query: string): Promise<string> {
	const { cards } = await hostCall(page, 'players.search', { query, limit: 1 })
	const id = String(cards[0].playerId)
	await page.evaluate((to) => {
		location.hash = to
	}, `#/assessment/${id}`)
	await settled(page)
	return id
}
/** px from the top of the window to the top and to the bottom of a part. */
const span = (part: Locator) =>
	part.evaluate((element) => {
		const { top, bottom } = element.getBoundingClientRect()
		return { top, bottom }
	})

test.describe('in sight', () => {
	test.use({ viewport: window })
	let host: RunningHost
	test.beforeEach(async ({ page }) => {
		host = await startHost('--demo')
		await onDemoDay(page)
		await page.goto(host.url)
		await expect(page.getByRole('heading', { level: 1 })).toBeVisible()
	})
	test.afterEach(() => host.kill())

	test('the first field is in the upper third; head, foot and result never leave', async ({
		page,
	}) => {
		await open(page, 'tui')
		for (const name of measuring) {
			await step(page, name).press('Enter')
			await still(page)
			await page.evaluate(() => scrollTo(0, 0))
			const first = page.locator(':is(input, select)[data-path]').first()
			expect((await span(first)).top, `${name}: first field`).toBeLessThan(upperThird)
			await page.evaluate(() => scrollTo(0, document.documentElement.scrollHeight))
			await still(page)
			const result = page.getByRole('complementary', { name: 'Result' })
			for (const [what, part] of [
				['steps', step(page, name)],
				['name', page.getByText('Tui Ashdown', { exact: true })],
				['result', result],
				['findings', result.getByRole('region', { name: 'Findings' })],
				['the way on', page.getByRole('button', { name: /^On to / })],
			] as const) {
				const { top, bottom } = await span(part)
				expect(top, `${name}, scrolled: top of ${what}`).toBeGreaterThanOrEqual(-1)
				expect(bottom, `${name}, scrolled: end of ${what}`).toBeLessThanOrEqual(window.height + 1)
			}
		}
	})
	test('both feet are drawn at one scale as the keys fall, the measure in hand lit', async ({
		page,
	}) => {
		await open(page, 'tui')
		await step(page, 'Feet').press('Enter')
		const drawing = page.getByRole('img', { name: /^Both feet from above/ })
		await field(page, 'Heel to toe, left').fill('200')
		await field(page, 'Heel to toe, right').fill('250')
		await expect(drawing).toHaveAccessibleName(/left 200 mm long.*right 250 mm long/)
		const feet = drawing.locator('path.foot')
		await expect(feet).toHaveCount(2)
		const [left, right] = await Promise.all(
			[feet.nth(0), feet.nth(1)].map((foot) =>
				foot.evaluate((path) => path.getBoundingClientRect()),
			),
		)
		expect(left!.height / right!.height).toBeCloseTo(200 / 250, 2)
		// left stands on the left
		expect(left!.right).toBeLessThan(right!.left)
		await expect(page.getByText('Right 50 mm longer')).toBeVisible()
		await expect(drawing.locator('.lit')).toHaveText('250 mm')
		await field(page, 'Ball width, left').focus()
		await expect(drawing.locator('.lit')).toHaveText('95')
		// one foot alone is drawn alone, and the other says why
		await field(page, 'Heel to toe, left').fill('np')
		await expect(feet).toHaveCount(1)
		await expect(page.getByText('Left not measured: pain')).toBeVisible()
	})
	test('a row keeps its height and its place whatever is told in it', async ({ page }) => {
		await open(page, 'rowan')
		await step(page, 'Feet').press('Enter')
		const below = field(page, 'Heel width, left')
		const before = await span(below)
		const left = field(page, 'Ball width, left')
		for (const typed of ['104', '104 105', '999', '']) {
			await left.fill(typed)
			expect(await span(below), typed).toEqual(before)
		}
		await left.fill('999')
		await expect(page.getByRole('alert')).toContainText('999 is outside what can be measured')
		// a field that cannot be read is named in the foot, and is gone to from there
		await field(page, 'Heel to ball, left').focus()
		await page.keyboard.press('Alt+l')
		await page.getByRole('button', { name: 'Ball width, left: not a value yet' }).press('Enter')
		await expect(left).toBeFocused()
		// Enter on the last field goes on, and keeps what was typed
		await field(page, 'Examiner').focus()
		await page.keyboard.press('Enter')
		await expect(field(page, 'Knee to wall, left')).toBeFocused()
		await step(page, 'Feet').press('Enter')
		await expect(left).toHaveValue('999')
	})
	test('findings, course and workings are one key away', async ({ page }) => {
		await open(page, 'tui')
		await step(page, 'Feet').press('Enter')
		const findings = page.getByRole('region', { name: 'Findings' })
		await expect(findings.getByRole('listitem')).toHaveCount(2)
		await page.keyboard.press('Alt+m')
		await expect(findings.getByRole('listitem')).toHaveCount(4)
		await page.keyboard.press('Alt+c')
		await expect(findings.getByRole('img', { name: /^Foot length over time/ })).toBeVisible()
		await page.keyboard.press('Alt+w')
		await expect(findings).toContainText('Mean of 2 readings')
		await expect(findings.getByRole('img')).toHaveCount(0)
		await page.keyboard.press('Alt+w')
		await expect(findings).not.toContainText('Mean of 2 readings')
	})
	test('what is held is said in the head of every step, and leads to the gate', async ({
		page,
	}) => {
		await open(page, 'tui')
		await expect(page.getByRole('button', { name: 'Nothing held: to the gate' })).toBeVisible()
		const playerId = await open(page, 'bastien')
		const held = page.getByRole('button', { name: /^Held: .*sport, matches.*: to the gate$/ })
		for (const name of measuring) {
			await step(page, name).press('Enter')
			await expect(held).toBeVisible()
		}
		// a foot that is hurt today is measured for the record alone
		const { drafts } = await hostCall(page, 'players.open', { playerId })
		const { visitDate } = drafts[0]
		const { draft } = await hostCall(page, 'drafts.open', { playerId, visitDate })
		const visit = {
			...draft.content.visit,
			feet: { left: { heelToToeMm: 266 }, right: { heelToToeMm: 265 } },
			screening: { injury: { side: 'left', daysAgo: 1 } },
		}
		const content = { ...draft.content, visit }
		await hostCall(page, 'drafts.save', { draftId: draft.draftId, content })
		await page.reload()
		await step(page, 'Feet').press('Enter')
		await expect(page.getByText(/^Not usable for buying/)).toBeVisible()
		for (let times = 0; times < 2; times++) {
			await page.keyboard.press('Alt+g')
			const gate = page.locator('button[data-question=gate]')
			await expect(gate).toBeFocused()
			await expect(gate).toHaveAttribute('aria-expanded', 'true')
		}
	})
	test('an amended draft says that it amends, and why', async ({ page }) => {
		const player = {
			givenName: 'Isolde',
			familyName: 'Quarrington',
			birthDate: '1998-03-04',
			sex: 'female',
		}
		const { playerId } = await hostCall(page, 'players.save', { player })
		const { draft } = await hostCall(page, 'drafts.open', { playerId, visitDate: '2027-01-20' })
		const { content, draftId } = draft
		const decisions = { ...content.decisions, consentNoted: true }
		await hostCall(page, 'drafts.save', { draftId, content: { ...content, decisions } })
		await decideOn(page, playerId, '2027-01-20')
		const { visitId } = await hostCall(page, 'visits.sign', { draftId })
		await hostCall(page, 'visits.amend', { visitId, reason: 'The sides were swapped' })
		await open(page, 'quarrington')
		await expect(
			page.getByText('Amends the signed visit: The sides were swapped', { exact: true }),
		).toBeVisible()
	})
})
