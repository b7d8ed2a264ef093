/**
 * The life of a visit after signing, by keyboard: read, amended with a reason, both versions there,
 * entered in error; consents given and withdrawn; the trail verified.
 */
import { readFileSync } from 'node:fs'
import { expect, type Locator, type Page, test } from '@playwright/test'
import { agreeOnSign, decisionsSaved, settleQuestions, shot, signButton } from './drive.ts'
import { startHost } from './host.ts'

/** A button that is not ready yet takes no key. */
const press = async (target: Locator) => {
	await expect(target).toBeEnabled()
	await target.focus()
	await target.press('Enter')
}
const type = async (page: Page, target: Locator, text: string) => {
	await target.focus()
	await page.keyboard.press('Control+A')
	await page.keyboard.type(text)
}
const choose = async (target: Locator, option: string) => {
	await target.focus()
	await target.selectOption(option)
}
const button = (page: Page, name: string | RegExp) =>
	page.getByRole('button', typeof name === 'string' ? { name, exact: true } : { name })
const step = (page: Page, name: string) =>
	page.getByRole('navigation', { name: 'Steps' }).getByRole('button', { name, exact: true })
/** Decides what the clinician must decide, then the step that signs. */
async function decideAll(page: Page): Promise<void> {
	await press(step(page, 'Decide'))
	await expect(page.getByRole('heading', { level: 1, name: 'Decide' })).toBeVisible()
	await settleQuestions(page)
}
async function toTui(page: Page): Promise<void> {
	await page.evaluate(() => {
		location.hash = '#/players'
	})
	const search = page.getByLabel(/search/i).first()
	await type(page, search, 'tui')
	await expect(page.getByText('One player found.')).toBeVisible()
	await search.press('Enter')
	await expect(page.getByRole('heading', { level: 1, name: 'Tui Ashdown' })).toBeVisible()
}

test('a signed visit is amended, both versions stay, and one is marked as entered in error', async ({
	page,
}) => {
	const wrong: string[] = []
	page.on('console', (message) => {
		if (/Content Security Policy/i.test(message.text())) wrong.push(message.text())
	})
	page.on('pageerror', (error) => wrong.push(error.message))
	const host = await startHost('--demo')
	try {
		await page.goto(host.url)
		await toTui(page)
		// one draft is open at a time: the second visit is signed first
		await press(button(page, 'Resume assessment'))
		await decideAll(page)
		await press(step(page, 'Sign'))
		await agreeOnSign(page)
		await press(signButton(page))
		await expect(page.locator('iframe[title="Signed report"]')).toBeVisible({ timeout: 60_000 })

		await toTui(page)
		await press(button(page, 'Open visit of 20 January 2027'))
		await expect(page.getByRole('heading', { name: 'Visit of 20 January 2027' })).toBeFocused()
		await expect(page.getByText(/^Version 1, signed/)).toBeVisible()
		const feet = page.getByRole('table', { name: 'Feet' })
		await expect(feet.getByRole('row', { name: /Heel to toe/ })).toContainText('mm')
		// every field is for reading: the only fields on the page are the player's own details
		await expect(feet.getByRole('textbox')).toHaveCount(0)
		await expect(
			page
				.getByRole('table', { name: 'Answers to the questions' })
				.getByRole('row', { name: /^Size as proposed/ }),
		).toBeVisible()
		await shot(page, 'visit-open')
		await press(button(page, 'Show its report'))
		await expect(page.locator('iframe[title="Report of 20 January 2027"]')).toBeVisible()
		// the same report as one page with headings and tables, for a player who reads with a screen
		// reader
		await shot(page, 'visit-report')
		const coming = page.waitForEvent('download')
		await press(button(page, 'Save as a page for a screen reader'))
		const saved = await coming
		expect(saved.suggestedFilename()).toBe('report-2027-01-20.html')
		const html = readFileSync(await saved.path(), 'utf8')
		expect(html).toContain('<html lang="en">')
		expect(html).toContain('Tui Ashdown')
		await press(button(page, 'Close report'))

		// who got it, so that there is somebody to be told
		await press(button(page, 'Report was handed over'))
		await type(page, page.getByLabel('Recipient'), 'Rae Ashdown')
		await choose(page.getByLabel('Way'), 'by-hand')
		await press(button(page, 'Note it'))
		await expect(page.getByText('Noted.')).toBeVisible()
		await expect(page.getByRole('region', { name: 'Who must be told' })).toHaveCount(0)

		// without a reason nothing is amended
		await press(button(page, 'Amend'))
		await press(button(page, 'Open the amendment'))
		await expect(page.getByRole('alert')).toContainText('The reason for the amendment is empty')
		await type(
			page,
			page.getByLabel('Reason for the amendment'),
			'Left foot was read off the wrong line',
		)
		await page.keyboard.press('Enter')
		await press(step(page, 'Feet'))
		const heel = page.getByRole('textbox', { name: 'Heel to toe, left', exact: true })
		await expect(heel).not.toHaveValue('')
		await type(page, heel, '251 252')
		await page.keyboard.press('Enter')
		// where something else is proposed after the correction it is asked again
		await press(step(page, 'Decide'))
		const again = page.getByRole('note').filter({
			hasText: 'Something else is proposed than when you answered “as proposed”. Answer again.',
		})
		await expect(again.first()).toBeVisible()
		await shot(page, 'decide-again')
		await decideAll(page)
		await expect(again).toHaveCount(0)
		await expect(page.getByText(/^Saved \d\d:/)).toBeVisible()
		await decisionsSaved(page)
		await expect(page.getByText(/^Saved \d\d:/)).toBeVisible()
		// what was agreed to is asked anew
		await press(step(page, 'Sign'))
		await expect(page.getByText('Open on this step')).toBeVisible()
		await agreeOnSign(page)
		await expect(page.getByText(/^Saved \d\d:/)).toBeVisible()

		await toTui(page)
		await press(button(page, 'Open visit of 20 January 2027'))
		const differences = page.getByRole('table', { name: 'Differences of version 2' })
		await expect(
			differences.getByRole('row', { name: 'Heel to toe 1, left 246 251' }),
		).toBeVisible()
		await expect(
			differences.getByRole('row', { name: 'Heel to toe 2, left 247 252' }),
		).toBeVisible()
		await expect(page.getByText(/^Version 1, signed/)).toBeVisible()
		await shot(page, 'visit-amending')
		const signTwo = button(page, 'Sign version 2')
		await press(signTwo)
		await expect(page.getByText(/^Version 2, signed/)).toBeVisible({ timeout: 60_000 })
		await expect(page.getByRole('region', { name: 'Who must be told' })).toContainText(
			'Rae Ashdown: holds version 1',
		)

		await press(button(page, 'History of versions'))
		await expect(page.getByRole('article', { name: 'Version 1' })).toBeVisible()
		const two = page.getByRole('article', { name: 'Version 2' })
		await expect(two).toContainText('Left foot was read off the wrong line')
		await expect(
			two
				.getByRole('table', { name: 'Changed in version 2', exact: true })
				.getByRole('row', { name: 'Heel to toe 1, left 246 251' }),
		).toBeVisible()
		await shot(page, 'visit-history')

		await press(button(page, 'Late entry'))
		await type(page, page.getByLabel('It happened on'), '2026-11-01')
		await type(page, page.getByLabel('What happened'), 'Guardian rang about a sore heel')
		await press(button(page, 'Add this entry'))
		await expect(page.getByRole('table', { name: 'Added afterwards' })).toContainText(
			'1 November 2026',
		)

		// the other visit was somebody else's
		await press(button(page, 'Close visit'))
		await press(button(page, 'Open visit of 15 July 2026'))
		await press(button(page, 'Entered in error'))
		await type(
			page,
			page.getByLabel('Reason why it was entered in error'),
			'Measures of another player',
		)
		await press(button(page, 'Mark as entered in error'))
		await expect(
			page.getByText(/It is left out of summaries and of later assessments/),
		).toBeVisible()
		await expect(button(page, 'Amend')).toHaveCount(0)
		await press(button(page, 'Close visit'))
		await expect(button(page, 'Open visit of 15 July 2026')).toBeHidden()
		await press(page.getByText('Entered in error (1)'))
		await expect(button(page, 'Open visit of 15 July 2026')).toBeVisible()

		await press(page.getByText('Hold this record'))
		await type(page, page.getByLabel('Reason for the hold or its release'), 'Complaint of November')
		await press(button(page, 'Put on hold'))
		await expect(page.getByText('On hold: nothing of this record can be destroyed.')).toBeVisible()
		await shot(page, 'player-after')
		await page.evaluate(() => {
			location.hash = '#/records/retention'
		})
		await expect(page.getByRole('table', { name: 'Records on hold' })).toContainText(
			'Complaint of November',
		)
		await press(button(page, 'Release the hold of Tui Ashdown'))
		await type(page, page.getByLabel('Reason for the hold or its release'), 'Complaint closed')
		await press(button(page, 'Release the hold'))
		await expect(page.getByRole('table', { name: 'Records on hold' })).toHaveCount(0)
		expect(wrong).toEqual([])
	} finally {
		await host.kill()
	}
})

test('a consent is given and withdrawn, and the audit trail says so and is whole', async ({
	page,
}) => {
	const host = await startHost('--demo')
	try {
		await page.goto(host.url)
		await toTui(page)
		await press(page.getByRole('link', { name: 'Consents of this player' }))
		await expect(page.getByText('None yet: every purpose is denied.')).toBeVisible()
		await choose(page.getByLabel('Purpose'), 'share-with-coach')
		await type(page, page.getByLabel('Recipient'), 'Saltmarsh Rovers U14')
		await type(page, page.getByLabel('Given by', { exact: true }), 'Rae Ashdown')
		await choose(page.getByLabel('Relation'), 'parent')
		await press(button(page, 'Record consent'))
		const table = page.getByRole('table', { name: 'Consents' })
		await expect(table.getByRole('row', { name: /Saltmarsh/ })).toContainText('Given')
		await press(button(page, /^Withdraw /))
		await expect(page.getByRole('alert')).toContainText('Who withdraws is empty')
		await type(page, page.getByLabel('Who withdraws'), 'Rae Ashdown')
		await press(button(page, /^Withdraw /))
		await expect(table.getByRole('row', { name: /Saltmarsh/ })).toContainText(
			/Withdrawn .* by Rae Ashdown/,
		)
		await shot(page, 'consents')

		await page.evaluate(() => {
			location.hash = '#/records/audit'
		})
		await press(button(page, 'Check the trail'))
		await expect(page.getByText(/rows checked: none is missing, none was altered/)).toBeVisible()
		await choose(page.getByLabel('Show only'), 'search')
		const rows = page.getByRole('table', { name: 'Audit rows' }).getByRole('row')
		// typing three letters is one search
		await expect(rows.filter({ hasText: 'players named like “tui”' })).toHaveCount(1)
		await expect(rows.filter({ hasText: /named like “tu?”/ })).toHaveCount(0)
		await shot(page, 'audit')
	} finally {
		await host.kill()
	}
})
