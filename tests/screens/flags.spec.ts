/**
 * The flags step: what stands open by itself, what is asked in private and of whom, what is held, and
 * which tests wait with it.
 */
import { expect, type Locator, type Page, test } from '@playwright/test'
import type { Visit } from '../../shared/engine/visit/visit.ts'
import { hostCall, visitSaved } from './drive.ts'
import { startHost } from './host.ts'

const player = (givenName: string, sex: 'female' | 'male') => ({
	givenName,
	familyName: 'Flagwick',
	birthDate: '1999-04-10',
	sex,
})
const step = (page: Page, name: string) =>
	page.getByRole('navigation', { name: 'Steps' }).getByRole('button', { name, exact: true }).click()
/** @param recorded what stands in the visit already */
async function flagsOf(
	page: Page,
	givenName: string,
	sex: 'female' | 'male',
	recorded: Partial<Visit> = {},
) {
	const { playerId } = await hostCall(page, 'players.save', { player: player(givenName, sex) })
	const { draft } = await hostCall(page, 'drafts.open', { playerId, visitDate: '2027-01-20' })
	const { content } = draft
	await hostCall(page, 'drafts.save', {
		draftId: draft.draftId,
		content: { ...content, visit: { ...content.visit, ...recorded } },
	})
	await page.evaluate((to) => {
		location.hash = to
	}, `#/assessment/${playerId}`)
	await step(page, 'Flags')
}
const question = (page: Page | Locator, name: string) =>
	page.getByRole('group', { name, exact: true })

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
		await core.getByRole('button', { name: 'Say why not asked: feeling in the feet' }).click()
		await core.getByRole('textbox', { name: 'Why not asked: feeling in the feet' }).fill('cast on')
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
		await step(page, 'Feet')
		await step(page, 'Flags')
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

test('a recorded condition opens its questions by itself, and y and n answer and go on', async ({
	page,
}) => {
	page.setDefaultTimeout(15_000)
	const host = await startHost('--demo')
	try {
		await page.goto(host.url)
		await expect(page.getByRole('heading', { level: 1 })).toBeVisible()
		await flagsOf(page, 'Sesily', 'female', {
			conditions: [{ condition: 'sesamoid-pain', side: 'left', status: 'current' }],
		})
		const opened = page.getByRole('region', { name: 'Asked for what is recorded' })
		await expect(opened.getByText('Sesamoid pain, left')).toBeVisible()
		await expect(opened.getByText('Asked of the left side, as recorded.')).toBeVisible()

		// the gate names what is not asked, each one press away
		const gate = page.getByRole('region', { name: 'The gate' })
		await gate.getByRole('button', { name: 'Pain at night or at rest' }).click()
		const focused = (name: string) =>
			expect(question(page, name).getByRole('button', { pressed: true })).toBeFocused()
		await focused('Pain at night or at rest')
		await page.keyboard.press('n')
		await focused('Fever, or generally unwell')
		await page.keyboard.press('n')
		await focused('Reduced sensation or tingling in the feet')
		await page.keyboard.press('n')
		await expect(gate.getByText('Nothing found')).toHaveCount(3)

		// the first answer of a group brings the side of the condition with it
		await question(opened, 'Tender at one point on the bone')
			.getByRole('button', { pressed: true })
			.focus()
		await page.keyboard.press('n')
		await expect(
			question(opened, 'Pain that comes with load and eases with rest').getByRole('button', {
				pressed: true,
			}),
		).toBeFocused()
		await visitSaved(page, ({ screening }) => screening?.boneStress, {
			side: 'left',
			focalTenderness: false,
		})
	} finally {
		await host.kill()
	}
})

test('tests of a held limb read not today; the clinician may measure all the same', async ({
	page,
}) => {
	page.setDefaultTimeout(15_000)
	const host = await startHost('--demo')
	try {
		await page.goto(host.url)
		await expect(page.getByRole('heading', { level: 1 })).toBeVisible()
		await flagsOf(page, 'Broderick', 'male', {
			screening: {
				injury: { side: 'left', daysAgo: 1, malleolarZonePain: true, tenderLateralMalleolus: true },
			},
			ankles: { left: { lungeCm: 6 }, right: {} },
		})
		const gate = page.getByRole('region', { name: 'The gate' })
		await expect(gate.getByText('Now: medical review the same day')).toBeVisible()
		await gate.getByRole('button', { name: 'To its outcome: Ottawa rule met, left' }).click()
		await expect(
			page.getByRole('button', { name: 'Record an outcome: Ottawa rule met, left' }),
		).toBeFocused()

		await step(page, 'Ankles')
		const field = (name: string) => page.getByRole('textbox', { name, exact: true })
		// what was typed stays readable, and says that it waits
		await expect(field('Knee to wall, left')).toHaveValue('6')
		await expect(page.getByText('Not today: Ottawa rule met')).toHaveCount(3)
		await expect(field('Lunge angle, left')).toHaveCount(0)
		await expect(field('Lunge angle, right')).toBeVisible()
		await expect(field('Knee bent, left')).toBeVisible()
		await expect(page.getByText(/^Missing:/)).toContainText('Lunge angle, right')
		await expect(page.getByText(/^Missing:/)).not.toContainText(/left|both/)

		// Enter walks past what waits; it is opened on purpose
		await field('Knee to wall, right').focus()
		await page.keyboard.press('Enter')
		await expect(field('Lunge angle, right')).toBeFocused()
		await page.getByRole('button', { name: 'Measure all the same: Lunge angle, left' }).click()
		await expect(field('Lunge angle, left')).toBeFocused()
		await page.keyboard.type('33')
		await visitSaved(page, ({ ankles }) => ankles?.left?.lungeDeg, 33)
		await step(page, 'Posture')
		await expect(field('Heel rises, left')).toHaveCount(0)
		await expect(field('Navicular drop, left')).toBeVisible()
		await step(page, 'Ankles')
		await expect(field('Lunge angle, left')).toHaveValue('33')
		const result = page.getByRole('region', { name: 'Ankles, left and right' })
		await expect(result.getByText('Not judged today')).toHaveCount(1)
	} finally {
		await host.kill()
	}
})
