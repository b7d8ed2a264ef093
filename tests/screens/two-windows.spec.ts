/**
 * Two windows on one draft: who has it is said, what the other typed comes without a reload and
 * never under the hand, both entries are kept where both typed, and one is told when it was signed.
 */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { type BrowserContext, expect, type Page, test } from '@playwright/test'
import { axe } from './axe.ts'
import { decideOn, hostCall, shot, visitSaved } from './drive.ts'
import { type RunningHost, startHost } from './host.ts'

const clinic = {
	format: 'lastwright-clinic',
	version: 1,
	name: 'Harrow Lane Foot Clinic',
	address: [],
	colour: '#1f5f5b',
	clinician: { name: 'Imke Darrow', registration: 'DEMO-00417' },
}
const data = mkdtempSync(join(tmpdir(), 'lastwright-two-windows-'))
let host: RunningHost
let isSetUp = false
test.beforeAll(async () => {
	host = await startHost('--data', data)
})
test.afterAll(async () => {
	await host.kill()
	rmSync(data, { recursive: true, force: true })
})
let players = 0
const field = (page: Page, name: string) => page.getByRole('textbox', { name, exact: true })
const step = (page: Page, name: string) =>
	page.getByRole('navigation', { name: 'Steps' }).getByRole('button', { name, exact: true })
const saved = (page: Page) => page.getByRole('status').filter({ hasText: /^Saved / })
const alsoOpen = (page: Page) => page.getByRole('status').filter({ hasText: 'Also open' })

/** A player with an open draft on Feet in two windows of one browser. */
async function twoWindows(context: BrowserContext) {
	const first = await context.newPage()
	await first.goto(isSetUp ? new URL(host.url).origin : host.url)
	if (!isSetUp) await hostCall(first, 'session.setUp', { clinic, passphrase: 'seven grey herons' })
	isSetUp = true
	players++
	const { playerId } = await hostCall<{ playerId: string }>(first, 'players.save', {
		player: {
			givenName: 'Wren',
			familyName: `Holloway ${players}`,
			birthDate: '1998-03-04',
			sex: 'female',
		},
	})
	const address = `${new URL(host.url).origin}/#/assessment/${playerId}`
	await first.goto(address)
	await first.reload()
	await step(first, 'Feet').press('Enter')
	await expect(field(first, 'Heel to ball, left')).toBeVisible()
	const second = await context.newPage()
	await second.goto(address)
	await step(second, 'Feet').press('Enter')
	await expect(field(second, 'Heel to ball, left')).toBeVisible()
	return { first, second, playerId }
}
/** The window hears nothing of the others by itself until it is let. @returns how it is let */
async function deaf(page: Page): Promise<() => Promise<void>> {
	await page.route('**/call/drafts.look', (route) => route.abort())
	return () => page.unroute('**/call/drafts.look')
}

/** One browser for all: the address of the host opens its door once. */
test.describe.configure({ mode: 'serial' })
let context: BrowserContext
test.beforeAll(async ({ browser }) => {
	context = await browser.newContext({ viewport: { width: 1440, height: 900 } })
})
test.afterAll(() => context.close())

test('what each typed without knowing of the other stands after a reload', async () => {
	const { first, second } = await twoWindows(context)
	await deaf(first)
	await field(second, 'Heel to ball, left').fill('200')
	await visitSaved(second, ({ feet }) => feet?.left?.heelToBallMm, 200)
	await field(first, 'Ball width, left').fill('104')
	await visitSaved(first, ({ feet }) => feet?.left, { heelToBallMm: 200, ballWidthMm: 104 })
	for (const page of [first, second]) {
		await expect(saved(page)).toBeVisible()
		await page.reload()
		await expect(field(page, 'Heel to ball, left')).toHaveValue('200')
		await expect(field(page, 'Ball width, left')).toHaveValue('104')
		await page.close()
	}
})
test('who has it is said; entries come by themselves, never under the hand; undo is one’s own', async () => {
	const { first, second } = await twoWindows(context)
	await expect(alsoOpen(first)).toContainText('Imke Darrow')
	await expect(alsoOpen(first)).toContainText('nothing typed there yet')
	await field(first, 'Ball width, left').focus()
	await field(second, 'Ball width, left').fill('99')
	await field(second, 'Heel to ball, left').fill('200')
	await expect(field(first, 'Heel to ball, left')).toHaveValue('200')
	await expect(field(first, 'Ball width, left')).toHaveValue('')
	await expect(alsoOpen(first)).toContainText('last entry')
	await shot(first, 'two-windows-also-open')
	await field(first, 'Ball width, right').focus()
	await expect(field(first, 'Ball width, left')).toHaveValue('99')
	await first.keyboard.type('101')
	await expect(field(second, 'Ball width, right')).toHaveValue('101')
	await first.keyboard.press('Control+z')
	await expect(field(first, 'Ball width, right')).toHaveValue('')
	await first.keyboard.press('Control+z')
	await expect(first.getByText('Nothing to take back.')).toBeVisible()
	await expect(field(first, 'Heel to ball, left')).toHaveValue('200')
	await expect(field(second, 'Ball width, right')).toHaveValue('')
	await second.close()
	await expect(alsoOpen(first)).toHaveCount(0)
	await first.close()
})
test('what both typed into one field is kept of both until one is chosen', async () => {
	const { first, second } = await twoWindows(context)
	const hear = await deaf(first)
	await field(second, 'Ball width, left').fill('102')
	await visitSaved(second, ({ feet }) => feet?.left?.ballWidthMm, 102)
	await field(first, 'Ball width, left').fill('104')
	const twice = (page: Page) => page.getByRole('region', { name: 'Typed twice' })
	await expect(twice(first)).toContainText('Ball width, left: 104 mm stands (Imke Darrow,')
	await expect(twice(first)).toContainText('102 mm was typed too (Imke Darrow,')
	await hear()
	await expect(field(second, 'Ball width, left')).toBeFocused()
	await field(second, 'Ball width, right').focus()
	await expect(field(second, 'Ball width, left')).toHaveValue('104')
	await expect(twice(second)).toContainText('102 mm was typed too')
	for (const colorScheme of ['light', 'dark'] as const) {
		await first.emulateMedia({ colorScheme })
		expect(await axe(first, `typed twice, ${colorScheme}`)).toEqual([])
		await shot(first, `two-windows-typed-twice-${colorScheme}`)
	}
	await step(first, 'Sign').press('Enter')
	await expect(
		first.getByText('Ball width, left was typed twice: 104 mm stands, 102 mm was typed too.'),
	).toBeVisible()
	await twice(first)
		.getByRole('button', { name: 'Take 102 mm: Ball width, left', exact: true })
		.press('Enter')
	await expect(twice(first)).toHaveCount(0)
	await expect(field(second, 'Ball width, left')).toHaveValue('102')
	await expect(twice(second)).toHaveCount(0)
	await first.close()
	await second.close()
})
test('signed in another window: it is said at once, and what was typed here is kept as text', async () => {
	const { first, second, playerId } = await twoWindows(context)
	await first.route('**/call/drafts.save', (route) => route.abort())
	await field(first, 'Ball width, left').fill('104')
	await expect(first.getByText(/^Not saved/)).toBeVisible()
	const draftId = await decideOn(second, playerId, '2027-01-20')
	await hostCall(second, 'visits.sign', { draftId })
	const told = first.getByRole('alert').filter({ hasText: 'was signed in another window' })
	await expect(told).toContainText('by Imke Darrow at')
	await expect(first.getByLabel('Typed here, not saved')).toHaveValue('Ball width, left: 104 mm')
	await field(first, 'Heel to ball, left').fill('200')
	await expect(first.getByLabel('Typed here, not saved')).toHaveValue(
		/Ball width, left: 104 mm\nHeel to ball, left: 200 mm|Heel to ball, left: 200 mm\nBall width, left: 104 mm/,
	)
	await expect(first.getByText('Signed elsewhere: nothing more is saved here')).toBeVisible()
	expect(await axe(first, 'signed elsewhere')).toEqual([])
	await shot(first, 'two-windows-signed')
	await expect(
		second.getByRole('alert').filter({ hasText: 'was signed in another window' }),
	).toContainText('Everything that was typed here is in it.')
	await told.getByRole('link', { name: 'Go to the player' }).press('Enter')
	await expect(first.getByRole('heading', { level: 1 })).toContainText('Wren Holloway')
})
