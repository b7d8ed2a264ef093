/** What is recorded by hand: the safe order of Enter, rows taken out and brought back, repeats, a comma that may part two readings, pasted tables. */
import { expect, type Page, test } from '@playwright/test'
import type { DraftContent } from '../../shared/contract.ts'
import type { Visit } from '../../shared/engine/visit/visit.ts'
import { axe } from './axe.ts'
import { hostCall, shot, visitSaved } from './drive.ts'
import { type RunningHost, startHost } from './host.ts'

const conditions: Visit['conditions'] = [
	{ condition: 'calcaneal-apophysitis', side: 'left', status: 'current', painWorst: 5 },
	{ condition: 'bunionette', side: 'none' },
	{ condition: 'diabetes', side: 'none', status: 'current' },
]
const footwear: Visit['footwear'] = [
	{ id: 'p1', name: 'match boots', sole: 'firm-ground', insideLengthMm: 253, minutesWorn: 1800 },
	{ id: 'p2', name: 'school trainers', sole: 'road', insideLengthMm: 262 },
]
/** The fields of the step on screen. */
const body = '[role=group][aria-labelledby]'
let host: RunningHost
let page: Page
test.beforeAll(async ({ browser }) => {
	host = await startHost('--demo')
	page = await browser.newPage({ viewport: { width: 1280, height: 720 } })
	await page.goto(host.url)
	await expect(page.getByRole('heading', { level: 1 })).toBeVisible()
})
test.afterAll(async () => {
	await page.close()
	await host.kill()
})
/** The step of a new player whose draft holds this. */
async function stepOf(step: string, visit: Partial<Visit> = {}) {
	const player = {
		givenName: 'Perrin',
		familyName: 'Fieldwick',
		birthDate: '2013-04-10',
		sex: 'male',
	}
	const { playerId } = await hostCall(page, 'players.save', { player })
	const { draft } = await hostCall<{ draft: { draftId: string; content: DraftContent } }>(
		page,
		'drafts.open',
		{ playerId, visitDate: '2027-01-20' },
	)
	const { content } = draft
	await hostCall(page, 'drafts.save', {
		draftId: draft.draftId,
		content: { ...content, step, visit: { ...content.visit, ...visit } },
	})
	await page.evaluate((to) => {
		location.hash = to
	}, `#/assessment/${playerId}`)
	await expect(page.getByRole('heading', { level: 1, name: step })).toBeAttached()
}
const paste = (text: string) =>
	page.evaluate((block) => {
		const data = new DataTransfer()
		data.setData('text/plain', block)
		document.activeElement?.dispatchEvent(
			new ClipboardEvent('paste', { clipboardData: data, bubbles: true, cancelable: true }),
		)
	}, text)

test('Enter walks every field of Play and rests on no button', async () => {
	await stepOf('Play', { conditions, footwear, play: { code: 'association' } })
	for (const name of ['match boots', 'school trainers'])
		await page.getByRole('button', { name: `More of this pair: ${name}` }).click()
	for (const note of await page.getByRole('button', { name: 'Note', exact: true }).all())
		await note.click()
	// high enough that nothing lies under the foot
	await page.setViewportSize({ width: 1280, height: 3600 })
	expect(await axe(page, 'Play with rows unfolded', true, body)).toEqual([])
	await page.setViewportSize({ width: 1280, height: 720 })
	const play = page.getByRole('group', { name: 'Play', exact: true })
	const first = play.getByRole('textbox', { name: 'What brought the player' })
	const { y } = (await first.boundingBox()) ?? { y: Number.POSITIVE_INFINITY }
	expect(y).toBeLessThan(720 / 3)
	await first.focus()
	const resting = () =>
		page.evaluate(() => {
			const at = document.activeElement as HTMLElement
			return {
				path: at.dataset.path ?? at.getAttribute('role') ?? '',
				isButton: at instanceof HTMLButtonElement && at.closest('[data-walk]') === null,
			}
		})
	const walked: string[] = []
	const heading = page.getByRole('heading', { level: 1 })
	for (let presses = 0; presses < 120; presses++) {
		const { path, isButton } = await resting()
		expect(isButton, `a button after ${walked.at(-1)}`).toBe(false)
		walked.push(path)
		await page.keyboard.press('Enter')
		if ((await heading.textContent()) !== 'Play') break
	}
	// past the last field it goes on to the next step, and every field was passed
	await expect(heading).toHaveText('Flags')
	for (const path of [
		'play.position',
		'body.statureCm',
		'play.surfaces',
		'conditions.1.side',
		'conditions.1.status',
		'conditions.2.painWorst',
		'footwear.0.name',
		'footwear.0.roles',
		'footwear.1.damage',
		'means',
	])
		expect(walked).toContain(path)
	await visitSaved(page, (visit) => [visit.conditions, visit.footwear], [conditions, footwear])
})

test('a row is taken out by its own button alone, and Ctrl+Z brings it back', async () => {
	await stepOf('Play', { conditions, footwear })
	const heel = page.getByRole('region', { name: 'Calcaneal apophysitis (growing heel)' })
	await heel.getByRole('button', { name: 'Remove' }).focus()
	await page.keyboard.press('Enter')
	await expect(page.getByText(/^Calcaneal apophysitis .* is taken out\. Ctrl\+Z/)).toBeVisible()
	await expect(page.getByRole('combobox', { name: 'Add a condition' })).toBeFocused()
	await page.keyboard.press('Enter')
	await page.keyboard.press('Enter')
	await visitSaved(page, (visit) => visit.conditions, conditions.slice(1))
	await page.keyboard.press('Control+z')
	await visitSaved(page, (visit) => visit.conditions, conditions)

	const boots = page.getByRole('region', { name: 'match boots' })
	await expect(boots).toContainText('minutes worn 1800 min')
	await boots.getByRole('button', { name: 'Remove match boots' }).focus()
	await page.keyboard.press('Enter')
	await expect(page.getByRole('button', { name: 'Add a pair' })).toBeFocused()
	await visitSaved(page, (visit) => visit.footwear, footwear.slice(1))
	await page.keyboard.press('Control+z')
	await visitSaved(page, (visit) => visit.footwear, footwear)
})

test('what was typed to find a condition stays until one is chosen', async () => {
	await stepOf('Play')
	const add = page.getByRole('combobox', { name: 'Add a condition' })
	await add.focus()
	await page.keyboard.type('buni')
	await page.keyboard.press('Escape')
	await expect(add).toHaveValue('buni')
	await page.keyboard.press('Tab')
	await expect(add).toHaveValue('buni')
	await expect(page.getByText('Not recorded yet: choose it from the list.')).toBeVisible()
	await visitSaved(page, (visit) => visit.conditions, undefined)
})

test('statures are read twice, and a doubtful comma is asked about', async () => {
	await stepOf('Play')
	await page.getByRole('textbox', { name: 'Stature', exact: true }).fill('158.4 158.6')
	await visitSaved(page, ({ body }) => body?.statureCm, [158.4, 158.6])
	await expect(page.getByText('mean 158.5')).toBeVisible()

	await page.keyboard.press('Alt+3')
	const left = page.getByRole('textbox', { name: 'Heel to toe, left', exact: true })
	await left.focus()
	await page.keyboard.type('247,248')
	const asked = page.getByRole('group', { name: 'Heel to toe, left: which is meant' })
	await expect(asked.getByRole('alert')).toContainText("Is '247,248' one reading")
	await visitSaved(page, ({ feet }) => feet?.left?.heelToToeMm, undefined)
	expect(await axe(page, 'a doubtful comma', true, body)).toEqual([])
	await shot(page, 'doubtful-comma', { fullPage: false })
	await page.keyboard.press('Tab')
	await expect(asked.getByRole('button', { name: '247 and 248 mm' })).toBeFocused()
	await page.keyboard.press('Enter')
	await expect(left).toBeFocused()
	await expect(left).toHaveValue('247 248')
	await expect(asked).toHaveCount(0)
	await visitSaved(page, ({ feet }) => feet?.left?.heelToToeMm, [247, 248])
})

test('a pasted table goes by its names, one of values by the field that is chosen', async () => {
	await stepOf('Feet')
	const left = page.getByRole('textbox', { name: 'Heel to toe, left', exact: true })
	const dialog = page.getByRole('dialog')
	await left.focus()
	await paste('\tR\tL\nArch height\t33\t32\nFoot length (cm)\t25.2\t25.1\nHeel to ball\t181\t180')
	await expect(dialog).toContainText('Placed by the names in the block')
	await expect(dialog.getByRole('row', { name: /^Heel to toe, left .*251 mm/ })).toBeVisible()
	await expect(dialog.getByRole('row', { name: /^Arch height .*No field/ })).toHaveCount(2)
	expect(await axe(page, 'pasted names', true, '[role=dialog]')).toEqual([])
	await shot(page, 'paste-names', { fullPage: false })
	await visitSaved(page, ({ feet }) => feet, undefined)
	await dialog.getByRole('button', { name: 'Enter 4 of 6 values' }).press('Enter')
	await visitSaved(page, ({ feet }) => feet, {
		left: { heelToToeMm: 251, heelToBallMm: 180 },
		right: { heelToToeMm: 252, heelToBallMm: 181 },
	})

	await left.focus()
	await paste('95\t97\n238\t241')
	await expect(dialog).toContainText('go by their place')
	await dialog.getByLabel('The first value goes to').selectOption('Ball width, left')
	await expect(dialog.getByRole('row', { name: /^Ball girth, right .*241 mm/ })).toBeVisible()
	await shot(page, 'paste-place', { fullPage: false })
	await dialog.getByRole('button', { name: 'Enter these 4 values' }).press('Enter')
	await visitSaved(
		page,
		({ feet }) => [feet?.left?.ballWidthMm, feet?.right?.ballGirthMm],
		[95, 241],
	)
})
