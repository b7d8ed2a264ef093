/**
 * A growing boy through two outgrown pairs: the first two visits are on record, the third is walked:
 * the new pair is put on his feet, judged, signed, and the shelf asks what it may learn of it.
 */
import { expect, type Page, test } from '@playwright/test'
import { agreeOnSign, decideOn, hostCall, settleQuestions, shot, signButton } from './drive.ts'
import { onDemoDay, type RunningHost, startHost } from './host.ts'
import { answerAllNo, hand } from './walking.ts'

test.describe.configure({ mode: 'serial', timeout: 120_000 })
let host: RunningHost
let page: Page
const faults: string[] = []
test.beforeAll(async ({ browser }) => {
	host = await startHost('--demo')
	page = await browser.newPage({ viewport: { width: 1440, height: 900 } })
	page.on('pageerror', (error) => faults.push(error.message))
	await onDemoDay(page)
	await page.goto(host.url)
	await expect(page.getByRole('textbox', { name: 'Search players' })).toBeFocused()
})
test.afterEach(() => expect(faults).toEqual([]))
test.afterAll(async () => {
	await page.close()
	await host.kill()
})
const boy = {
	givenName: 'Perrin',
	familyName: 'Holloway',
	birthDate: '2014-04-02',
	sex: 'male',
	guardian: { name: 'Sal Holloway', relation: 'parent' },
}
const feetOf = (mm: number) => ({
	stance: 'standing',
	left: { heelToToeMm: mm, ballWidthMm: 92 },
	right: { heelToToeMm: mm + 1, ballWidthMm: 92 },
})
const pairOf = (id: string, name: string, insideLengthMm: number) => ({
	...{ id, name, insideLengthMm, sole: 'firm-ground', roles: ['match'] },
})
const play = { code: 'association', surfaces: ['natural-firm'], matchesPerWeek: 1 }
const screening = { nightPain: false, fever: false, reducedSensation: false }
async function signed(playerId: string, visitDate: string, parts: object): Promise<void> {
	const { draft } = await hostCall(page, 'drafts.open', { playerId, visitDate })
	const visit = { ...draft.content.visit, play, screening, means: 'one-pair', ...parts }
	await hostCall(page, 'drafts.save', {
		draftId: draft.draftId,
		content: { ...draft.content, visit },
	})
	await hostCall(page, 'visits.sign', { draftId: await decideOn(page, playerId, visitDate) })
}
const field = (name: string) => page.getByRole('textbox', { name, exact: true })
const box = (name: string) => page.getByRole('combobox', { name, exact: true })
const button = (name: string | RegExp) => page.getByRole('button', { name, exact: true })

test('his third pair is put on his feet, and the shelf learns of it when told to', async () => {
	const { playerId } = await hostCall<{ playerId: string }>(page, 'players.save', { player: boy })
	const first = pairOf('p1', 'first boots', 233)
	const second = pairOf('p2', 'second boots', 243)
	await signed(playerId, '2026-03-10', { feet: feetOf(230), footwear: [first] })
	await signed(playerId, '2026-10-05', { feet: feetOf(239), footwear: [first, second] })
	await page.goto(`${new URL(host.url).origin}/#/players/${playerId}`)
	await button('Re-check').click()
	await expect(page.getByRole('heading', { level: 1, name: 'Since then' })).toBeAttached()
	const pairs = page.getByRole('region', { name: 'Pairs the player owns' })
	await expect(pairs.getByText('first boots', { exact: true })).toBeVisible()
	await page.keyboard.press('Alt+a')
	await expect(pairs.getByRole('textbox', { name: 'Name', exact: true }).last()).toBeFocused()
	const third = pairs.getByRole('region', { name: 'Pair 3' })
	await third.getByRole('button', { name: 'On the foot: Pair 3' }).press('Enter')
	await third.getByRole('combobox', { name: 'Model of the shelf' }).selectOption('Tern Firm')
	const tern = pairs.getByRole('region', { name: 'Tern Firm' })
	await expect(tern).toBeVisible()
	await tern.getByRole('combobox', { name: 'Size system' }).selectOption('uk')
	await tern.getByRole('textbox', { name: 'Size', exact: true }).fill('6')
	await tern.getByRole('textbox', { name: 'Inside length', exact: true }).fill('254')
	await tern.getByRole('combobox', { name: 'Inside length by' }).selectOption('gauge')
	await tern.getByRole('textbox', { name: 'Inside width' }).fill('92')
	for (const side of ['left', 'right']) {
		await tern.getByRole('textbox', { name: `Room standing, ${side}` }).fill('9')
		await tern.getByRole('combobox', { name: `Width, ${side}` }).selectOption('good')
		await tern.getByRole('combobox', { name: `Heel, ${side}` }).selectOption('holds')
	}
	const presses = tern.getByRole('group', { name: 'Presses, left' })
	await presses.getByRole('button', { name: 'Heel' }).press('Space')
	await tern.getByRole('textbox', { name: 'Comfort at first wear' }).fill('8')
	await box('Bought').selectOption('bought')
	await box('Which pair').selectOption('Tern Firm')
	await page.getByRole('group', { name: 'Trouble' }).getByRole('button', { name: 'None' }).click()
	// measured today: what may still press is put right first
	await page.keyboard.press('Alt+3')
	await expect(page.getByRole('heading', { level: 1, name: 'Feet' })).toBeAttached()
	for (const side of ['left', 'right'])
		await field(`Heel to toe, ${side}`).fill(side === 'left' ? '245' : '246')
	await page.keyboard.press('Alt+1')
	await expect(tern).toContainText('New pair: wear it in with a change')
	await expect(pairs.getByRole('region', { name: 'first boots' })).toContainText('stop wearing')
	await expect(pairs.getByRole('region', { name: 'second boots' })).toContainText('stop wearing')
	await tern.getByRole('button', { name: 'On the foot: Tern Firm' }).press('Enter')
	await tern.scrollIntoViewIfNeeded()
	await shot(page, 'onfoot-1-pressed')
	await presses.getByRole('button', { name: 'None' }).press('Space')
	await expect(tern).not.toContainText('with a change')
	await expect(tern).toContainText('New pair: wear it in')
	await shot(page, 'onfoot-2-fits')
	await page.keyboard.press('Alt+2')
	expect(await answerAllNo(page, hand(page), 'onfoot-flags')).toBeGreaterThan(5)
	await page.keyboard.press('Alt+7')
	await settleQuestions(page)
	await shot(page, 'onfoot-3-decide')
	await button('On to Sign').click()
	await expect(page.getByRole('heading', { level: 1, name: 'Sign' })).toBeVisible()
	await agreeOnSign(page)
	await signButton(page).press('Enter')
	await expect(page.getByText(/^Signed as/)).toBeVisible({ timeout: 30_000 })
	const learns = page.getByRole('region', { name: 'The shelf may learn' })
	await expect(learns).toContainText('Measured 254 mm inside; the shelf says 257 mm.')
	await shot(page, 'onfoot-4-signed')
	await learns.getByRole('button', { name: 'Take over: 254 mm' }).press('Enter')
	await expect(learns).toHaveCount(0)
	await page.goto(`${new URL(host.url).origin}/#/shelf`)
	const row = page.getByRole('row', { name: /^Tern Firm/ })
	await expect(row).toContainText('1 pair measured, 1 of them differs, -3 mm in the middle')
	await shot(page, 'onfoot-5-shelf')
	const { shelf } = await hostCall(page, 'shelf.get', {})
	const tern6 = shelf.models
		.find(({ id }: { id: string }) => id === 'tern-firm')
		.sizes.find(({ label }: { label: number }) => label === 6)
	expect(tern6).toMatchObject({ insideLengthMm: 254, ballWidthMm: 92 })
	expect(tern6.listed).toEqual({ insideLengthMm: 257, ballWidthMm: 94 })
})
