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
