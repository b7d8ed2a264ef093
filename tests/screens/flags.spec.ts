/** The flags step: what is asked in private stands apart and marked, of whom it is asked, who reads the note. */
import { expect, type Page, test } from '@playwright/test'
import { hostCall, visitSaved } from './drive.ts'
import { startHost } from './host.ts'

const player = (givenName: string, sex: 'female' | 'male') => ({
	givenName,
	familyName: 'Flagwick',
	birthDate: '1999-04-10',
	sex,
})
async function flagsOf(page: Page, givenName: string, sex: 'female' | 'male') {
	const { playerId } = await hostCall(page, 'players.save', { player: player(givenName, sex) })
	await hostCall(page, 'drafts.open', { playerId, visitDate: '2027-01-20' })
	await page.evaluate((to) => {
		location.hash = to
	}, `#/assessment/${playerId}`)
	await page
		.getByRole('navigation', { name: 'Steps' })
		.getByRole('button', { name: 'Flags', exact: true })
		.click()
}
const question = (page: Page, name: string) => page.getByRole('group', { name, exact: true })

test('medicines, periods and pregnancy are asked of whom they concern, and marked private', async ({
	page,
}) => {
	page.setDefaultTimeout(15_000)
	const host = await startHost('--demo')
	try {
		await page.goto(host.url)
		await expect(page.getByRole('heading', { level: 1 })).toBeVisible()

		await flagsOf(page, 'Perrin', 'male')
		await expect(question(page, 'Anticoagulant (blood thinner)')).toBeVisible()
		await expect(question(page, 'Pregnant')).toHaveCount(0)

		await flagsOf(page, 'Maud', 'female')
		await expect(page.getByText('Private: not on pages for guardian, coach or club.')).toBeVisible()
		const yes = { name: 'Yes', exact: true }
		await question(page, 'Pregnant').getByRole('button', yes).click()
		await page.getByRole('button', { name: 'Asked alone: the rest are no' }).click()
		await visitSaved(page, ({ screening }) => [screening?.pregnant, screening?.anticoagulant], [
			true,
			false,
		])
		// the injury does not ask a second time, and a private question in a group is marked
		await page.getByRole('button', { name: 'Twisted or hurt the ankle or foot' }).click()
		await page.getByRole('button', { name: 'Left side' }).first().click()
		await expect(question(page, 'Pregnant')).toHaveCount(1)
		await page.getByRole('button', { name: 'Tired, or repeated stress fractures' }).click()
		await expect(page.getByText('Private', { exact: true })).toHaveCount(2)

		const note = page.getByLabel('Safeguarding note')
		await note.fill('an invented concern')
		await visitSaved(page, ({ screening }) => screening?.safeguardingNote, 'an invented concern')
		await page.screenshot({ path: 'build/pictures/flags-private.png', fullPage: true })
	} finally {
		await host.kill()
	}
})

test('what is held is shown with what ends it, and an outcome ends just what it lifts', async ({
	page,
}) => {
	page.setDefaultTimeout(15_000)
	const host = await startHost('--demo')
	try {
		await page.goto(host.url)
		await expect(page.getByRole('heading', { level: 1 })).toBeVisible()
		await flagsOf(page, 'Wendell', 'male')
		const core = page.getByRole('region', { name: 'Core questions' })
		await core.getByRole('button', { name: 'Not asked, say why: feeling in the feet' }).click()
		await core.getByLabel('Why not asked: feeling in the feet').fill('cast on')
		await core.getByRole('button', { name: 'Set aside' }).and(page.locator(':enabled')).click()
		await visitSaved(page, ({ coreSetAside }) => coreSetAside, [
			{ question: 'reduced-sensation', why: 'cast on' },
		])
		await expect(core.getByText('Set aside: cast on')).toBeVisible()

		await question(page, 'Fever, or generally unwell').getByRole('button', { name: 'Yes' }).click()
		const held = page.getByRole('region', { name: 'What is held' })
		await expect(held.getByText('Found today.')).toBeVisible()
		await held.getByRole('button', { name: /^Record an outcome:/ }).click()
		await held.getByRole('button', { name: 'Record the outcome' }).click()
		await expect(held.getByRole('alert')).toHaveText(/Choose the result/)
		await held.getByRole('button', { name: 'Excluded' }).click()
		await held.getByLabel('What was found or excluded').fill('no infection')
		await held.getByLabel('How, such as a film, a scan, an examination').fill('examination')
		await held.getByLabel('By whom').fill('the family doctor')
		await held.getByRole('checkbox', { name: 'Sport' }).check()
		// leaving the step loses nothing of a form that is not finished
		const steps = page.getByRole('navigation', { name: 'Steps' })
		await steps.getByRole('button', { name: 'Feet', exact: true }).click()
		await steps.getByRole('button', { name: 'Flags', exact: true }).click()
		await expect(held.getByLabel('By whom')).toHaveValue('the family doctor')
		await expect(held.getByRole('checkbox', { name: 'Sport' })).toBeChecked()
		await page.screenshot({ path: 'build/pictures/flags-held.png', fullPage: true })
		await held.getByRole('button', { name: 'Record the outcome' }).click()
		await visitSaved(page, ({ outcomes }) => outcomes?.map(({ lifts }) => lifts), [['sport']])
		await expect(held.getByText(/^Sport,/)).toHaveCount(0)
		await expect(held.getByText(/Matches, running and jumping/)).toBeVisible()

		await held.getByRole('button', { name: /^Remove the outcome:/ }).click()
		await visitSaved(page, ({ outcomes }) => outcomes, undefined)
		await expect(held.getByText(/^Sport,/)).toBeVisible()
	} finally {
		await host.kill()
	}
})
