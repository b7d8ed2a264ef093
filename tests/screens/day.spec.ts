/**
 * A clinician's day by the keyboard alone on the demo: nothing is clicked, and the focus is never
 * lost on the way.
 */
import { expect, type Page, test } from '@playwright/test'
import { agreeOnSign, settleQuestions, shot } from './drive.ts'
import { startHost } from './host.ts'

/** The focus stands on something of the page. */
const held = (page: Page, where: string) =>
	expect
		.poll(
			() =>
				page.evaluate(() => {
					const now = document.activeElement
					return now !== null && now !== document.body && now !== document.documentElement
				}),
			{ message: `${where}: the focus is lost` },
		)
		.toBe(true)
const field = (page: Page, name: string) => page.getByRole('textbox', { name, exact: true })

test('find a player, read, compare, assess, decide beside the page, sign, print, plan', async ({
	page,
}) => {
	test.setTimeout(300_000)
	const faults: string[] = []
	page.on('pageerror', (error) => faults.push(error.message))
	page.on('console', (message) => {
		if (/Content Security Policy/i.test(message.text())) faults.push(message.text())
	})
	const seen = (name: string) => shot(page, `day-${name}`, { fullPage: false })
	const { press, type } = {
		press: async (...chords: string[]) => {
			for (const chord of chords) await page.keyboard.press(chord)
		},
		type: (text: string) => page.keyboard.type(text),
	}
	const enter = async (...values: string[]) => {
		for (const text of values) {
			await type(text)
			await press('Enter')
		}
	}
	const palette = async (words: string, first: RegExp) => {
		await press('Control+k')
		await type(words)
		await expect(page.getByRole('option', { selected: true })).toContainText(first)
		await press('Enter')
	}
	/** Tabs to what has this name; a person would not press more often than this. */
	const tabTo = async (wanted: ReturnType<Page['getByRole']>, most = 15) => {
		for (
			let at = 0;
			at < most && !(await wanted.evaluate((node) => node === document.activeElement));
			at++
		)
			await press('Tab')
		await expect(wanted).toBeFocused()
	}
	const host = await startHost('--demo')
	try {
		await page.goto(host.url)
		await expect(field(page, 'Search players')).toBeFocused()
		await type('tui')
		await press('Enter')
		await expect(page.getByRole('heading', { level: 1, name: 'Tui Ashdown' })).toBeVisible()
		await held(page, 'the player')

		// the last visit, by the palette: it stands behind the form for the Tab key
		await palette('open visit', /^Open visit of 15 July 2026/)
		await expect(page.getByRole('heading', { name: 'Visit of 15 July 2026' })).toBeFocused()
		await seen('visit')
		await palette('trends', /trends/)
		await expect(page.getByRole('heading', { name: 'What really changed' })).toBeVisible()
		await held(page, 'trends')

		await palette('this player: assessment', /assessment/)
		await expect(page.getByRole('navigation', { name: 'Steps' })).toBeVisible()
		await press('Alt+3')
		await tabTo(field(page, 'Heel to toe, left'))
		await press('Control+a')
		await enter('247 248')
		await press('Control+a')
		await enter('24.9 cm 249')
		await expect(field(page, 'Heel to toe, right')).not.toHaveAttribute('aria-invalid', 'true')
		await seen('feet')
		await press('Alt+2')
		await tabTo(page.getByRole('button', { name: 'I asked them all: the rest are no' }))
		await press('Enter')
		await press('Alt+7')
		await expect(page.locator('button[data-question][aria-expanded=true]')).toBeFocused()
		await held(page, 'at the first question')

		// the page beside the decisions, and back
		const preview = page.getByRole('region', { name: 'Page one of the report' })
		await expect(preview).toContainText('Tui Ashdown')
		await press('Alt+p')
		await expect(page.getByRole('region', { name: 'The pages that follow' })).toBeVisible()
		await held(page, 'the preview')
		await seen('preview')
		const [decisions, paper] = await Promise.all([
			page.getByRole('region', { name: 'Questions', exact: true }).boundingBox(),
			preview.boundingBox(),
		])
		expect(paper!.x, 'the page stands beside the decisions').toBeGreaterThanOrEqual(
			decisions!.x + decisions!.width,
		)
		await settleQuestions(page, press)
		await press('Alt+8')
		await expect(page.getByRole('heading', { level: 1, name: 'Sign' })).toBeFocused()
		await seen('sign')
		await agreeOnSign(page, press)
		await press('Enter')
		await expect(page.locator('iframe[title="Signed report"]')).toBeVisible({ timeout: 60_000 })
		await held(page, 'after signing')
		await tabTo(page.getByRole('button', { name: 'Print', exact: true }), 3)
		await seen('signed')

		await palette('this player: season', /season/)
		await expect(
			page.getByRole('heading', { level: 1, name: 'Season of Tui Ashdown' }),
		).toBeVisible()
		await tabTo(field(page, 'Season from'), 20)
		await type('1 February 2027')
		await press('Tab')
		await type('30 April 2027')
		await press('Enter')
		await expect(
			page.getByText('The season runs from 1 February 2027 to 30 April 2027.'),
		).toBeVisible()
		await held(page, 'after the dates')
		const weekly = page.getByRole('form', { name: 'Weekly session' })
		await tabTo(weekly.getByLabel('Weekday'), 20)
		await type('tue')
		await tabTo(weekly.getByLabel('Start'), 3)
		await type('18:00')
		await tabTo(weekly.getByLabel('Surface'), 5)
		await type('natural f')
		await press('Enter')
		await tabTo(page.getByRole('button', { name: 'Add weekly session' }), 6)
		await press('Enter')
		await expect(page.getByRole('list', { name: 'Weekly sessions' })).toContainText('Tuesday 18:00')
		await held(page, 'after the weekly session')
		await seen('season')
		await press('Alt+n')
		const plan = page.getByRole('button', { name: 'Plan the season' })
		for (
			let at = 0;
			at < 20 && !(await plan.evaluate((node) => node === document.activeElement));
			at++
		)
			await press('Shift+Tab')
		await expect(plan).toBeFocused()
		await press('Enter')
		await expect(page.getByText(/^Planned:/)).toBeVisible({ timeout: 60_000 })
		await expect(plan).toBeFocused()
		await seen('planned')
		expect(faults).toEqual([])
	} finally {
		await host.kill()
	}
})
