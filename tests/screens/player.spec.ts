/** A player's page: the summary first, details on demand, nothing that was typed is lost. */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, type Page, test } from '@playwright/test'
import { json } from '../demo.ts'
import { axe } from './axe.ts'
import { decideOn, hostCall, settled, shot } from './drive.ts'
import { type RunningHost, startHost } from './host.ts'
import { put } from './tour.ts'

const clinic = {
	format: 'lastwright-clinic',
	version: 1,
	name: 'Harrow Lane Foot Clinic',
	address: [],
	colour: '#1f5f5b',
	clinician: { name: 'Imke Darrow', registration: 'DEMO-00417' },
}
const passphrase = 'seven grey herons'
const desk = 'nine quiet otters'
test.use({ viewport: { width: 1280, height: 720 } })
let host: RunningHost
let data: string
test.beforeEach(async ({ page }) => {
	data = mkdtempSync(join(tmpdir(), 'lastwright-player-'))
	host = await startHost('--data', data)
	await page.goto(host.url)
	await hostCall(page, 'session.setUp', { clinic, passphrase })
})
test.afterEach(async () => {
	await host.kill()
	rmSync(data, { recursive: true, force: true })
})
/** A page of the workstation, read anew: the host was changed behind it. */
async function anew(page: Page, address: string): Promise<void> {
	await page.goto(`${new URL(host.url).origin}/#${address}`)
	await page.reload()
	await settled(page)
}
/** Another page, as a link leads to it. */
async function at(page: Page, address: string): Promise<void> {
	await page.evaluate((to) => {
		location.hash = to
	}, address)
	await settled(page)
}
const field = (page: Page, name: string) => page.getByRole('textbox', { name, exact: true })
const part = (page: Page, name: string) => page.getByRole('region', { name, exact: true }).first()
const unlock = async (page: Page, words: string) => {
	await page.getByLabel('Passphrase').fill(words)
	await page.keyboard.press('Enter')
}
const { player, visitDate, ...recorded } = json('visit-adolescent.json')
async function signedPlayer(page: Page): Promise<string> {
	const { playerId } = await hostCall(page, 'players.save', {
		player: { ...player, guardian: { ...player.guardian, phone: '555 0142' } },
	})
	const { draft } = await hostCall(page, 'drafts.open', { playerId, visitDate })
	const { content, draftId } = draft
	await hostCall(page, 'drafts.save', {
		draftId,
		content: {
			...content,
			visit: { ...content.visit, ...recorded },
			decisions: { ...content.decisions, consentNoted: true },
		},
	})
	await decideOn(page, playerId, visitDate)
	const { visitId } = await hostCall(page, 'visits.sign', { draftId })
	await hostCall(page, 'outbox.add', {
		visitId,
		kind: 'guardian',
		recipientId: 'guardian',
		channel: 'print',
		due: '2027-01-25',
	})
	return String(playerId)
}
test('what holds now, what is due, what was sent and the pairs stand on the first screen', async ({
	page,
}) => {
	const playerId = await signedPlayer(page)
	await anew(page, `/players/${playerId}`)
	await expect(page.getByRole('heading', { level: 1, name: 'Tui Ashdown' })).toBeVisible()
	await expect(page.getByText('Guardian Rae Ashdown, parent, 555 0142')).toBeVisible()
	const said = {
		Now: ['256.5 to 260.5 mm inside', 'Match boots by 3 February 2027'],
		Due: ['3 February 2027', 'the pairs at hand'],
		Sent: ['Guardian summary to Rae Ashdown', 'To check'],
		'Pairs owned': ['Match boots', '4.5', 'Replace'],
	}
	for (const [name, words] of Object.entries(said)) {
		for (const word of words) await expect(part(page, name)).toContainText(word)
		const box = await part(page, name).boundingBox()
		expect(Math.round((box?.y ?? 999) + (box?.height ?? 999)), name).toBeLessThan(720)
	}
	await expect(page.getByLabel('Given name')).toHaveCount(0)
	await shot(page, 'player-1280', { fullPage: false })
	for (const look of ['light', 'dark', 'text of 200 %'] as const) {
		await put(page, look)
		expect(await axe(page, look, look === 'light')).toEqual([])
		expect(
			await page.evaluate(() => document.documentElement.scrollWidth - innerWidth),
			look,
		).toBeLessThanOrEqual(1)
	}
})
test('reception reads the day and the sendings, nothing of why', async ({ page }) => {
	const playerId = await signedPlayer(page)
	await hostCall(page, 'people.save', {
		name: 'Wim Aalders',
		registration: '',
		role: 'reception',
		passphrase: desk,
	})
	await hostCall(page, 'session.lock', {})
	await anew(page, '/players')
	await unlock(page, desk)
	await expect(page.getByRole('button', { name: 'Lock' })).toBeVisible()
	await at(page, `/players/${playerId}`)
	await expect(part(page, 'Due')).toContainText('3 February 2027')
	await expect(part(page, 'Sent')).toContainText('Guardian summary to Rae Ashdown')
	for (const name of ['Now', 'Pairs owned', 'Sizes over time'])
		await expect(page.getByRole('heading', { name, exact: true })).toHaveCount(0)
	const main = await page.locator('main').textContent()
	for (const clinical of ['inside', 'raise', 'Replace', 'Asked for'])
		expect(main).not.toContain(clinical)
})
test('details that were typed stand there again after locking and leaving, until they are discarded', async ({
	page,
}) => {
	const { playerId } = await hostCall(page, 'players.save', { player })
	await anew(page, `/players/${playerId}`)
	await page.getByRole('button', { name: 'Edit details' }).press('Enter')
	await expect(field(page, 'Given name')).toBeFocused()
	await field(page, 'Phone').fill('555 0163')
	await expect(page.getByRole('status').filter({ hasText: 'Not saved yet: Phone' })).toBeVisible()

	// locked with the very next key
	await page.keyboard.press('Control+Shift+L')
	await unlock(page, passphrase)
	await expect(page.getByRole('button', { name: 'Lock' })).toBeVisible()
	await at(page, `/players/${playerId}`)
	await expect(field(page, 'Phone')).toHaveValue('555 0163')
	await expect(page.getByRole('status').filter({ hasText: 'Not saved yet, typed' })).toBeVisible()

	// closed, it is still said; discarded it can be brought back; saved it is on record
	await field(page, 'Club').fill('Reedmoor Rovers')
	await page.getByRole('button', { name: 'Close details' }).press('Enter')
	await expect(page.getByText('Details typed and not saved yet')).toBeVisible()
	await page.getByRole('button', { name: 'Go on with it' }).press('Enter')
	await page.getByRole('button', { name: 'Discard what was typed' }).press('Enter')
	await expect(field(page, 'Club')).toHaveValue(player.club)
	await page.getByRole('button', { name: 'Bring it back' }).press('Enter')
	await expect(field(page, 'Club')).toHaveValue('Reedmoor Rovers')
	await field(page, 'Phone').press('Control+Enter')
	await expect(page.getByText('Saved.')).toBeVisible()
	await expect(page.getByRole('button', { name: 'Edit details' })).toBeFocused()
	await expect(part(page, 'Details')).toContainText('555 0163')
	expect(await hostCall(page, 'players.typed', { playerId })).toEqual({})
})
test('details that were typed outlive the end of the process', async ({ page }) => {
	const { playerId } = await hostCall(page, 'players.save', { player })
	await anew(page, `/players/${playerId}`)
	await page.getByRole('button', { name: 'Edit details' }).press('Enter')
	await field(page, 'Club').fill('Reedmoor Rovers')
	await expect
		.poll(async () => (await hostCall(page, 'players.typed', { playerId })).typed)
		.toMatchObject({ club: 'Reedmoor Rovers' })
	await host.kill('SIGKILL')
	host = await startHost('--data', data)
	await page.goto(host.url)
	await unlock(page, passphrase)
	await expect(page.getByRole('button', { name: 'Lock' })).toBeVisible()
	await at(page, `/players/${playerId}`)
	await expect(field(page, 'Club')).toHaveValue('Reedmoor Rovers')
	await expect(page.getByRole('status').filter({ hasText: 'Not saved yet, typed' })).toBeVisible()
})
test('a new player: Enter walks on, what cannot be is told at its field, nothing is lost', async ({
	page,
}) => {
	const press = page.keyboard.press.bind(page.keyboard)
	const type = page.keyboard.type.bind(page.keyboard)
	await anew(page, '/players/new')
	await expect(field(page, 'Given name')).toBeFocused()
	await type('נועה')
	await press('Enter')
	await expect(field(page, 'Family name')).toBeFocused()
	await type('Levi 😀')
	await expect(field(page, 'Family name')).toHaveAccessibleDescription(
		/😀 \(U\+1F600\). Take it out/,
	)
	await press('Backspace')
	await press('Backspace')
	await expect(field(page, 'Family name')).not.toHaveAttribute('aria-invalid', 'true')
	await expect(field(page, 'Given name')).toHaveAccessibleDescription(
		/No page can print Hebrew letters: write it in Latin letters too/,
	)
	await press('Enter')
	await expect(field(page, 'Given name in Latin letters')).toBeFocused()
	await type('Noa')
	await expect(field(page, 'Given name')).not.toHaveAttribute('aria-invalid', 'true')
	await press('Enter')
	await type('Levi')
	await press('Enter')
	await expect(field(page, 'Birth date')).toBeFocused()
	await type('2 March 1850')
	await expect(field(page, 'Birth date')).toHaveAccessibleDescription(/more than 110 years ago/)
	await field(page, 'Birth date').fill('2 March 2099')
	await expect(field(page, 'Birth date')).toHaveAccessibleDescription(/still to come/)
	await field(page, 'Birth date').fill('2 March 1950')
	await press('Enter')
	await expect(field(page, 'Birth date')).toHaveAccessibleDescription(
		/7\d years old. Check the year/,
	)
	expect(await axe(page, 'new player')).toEqual([])
	await shot(page, 'player-new')

	// left without a word, and come back to
	await at(page, '/players')
	expect((await hostCall(page, 'players.search', { query: '', limit: 9 })).total).toBe(0)
	await at(page, '/players/new')
	await expect(field(page, 'Given name')).toHaveValue('נועה')
	await page.getByRole('combobox', { name: 'Sex' }).selectOption('female')
	await press('Control+Enter')
	await expect(page.getByRole('heading', { level: 1, name: 'נועה Levi' })).toBeVisible()
	await expect(part(page, 'Details')).toContainText('Noa Levi')
	await at(page, '/players/new')
	await expect(field(page, 'Given name')).toHaveValue('')

	// found by either spelling
	await at(page, '/players')
	for (const query of ['noa', 'נועה']) {
		await page
			.getByLabel(/search/i)
			.first()
			.fill(query)
		await expect(page.getByText('נועה Levi').first()).toBeVisible()
	}
})

test('a preferred language is typed by its name, read on the page and over the visit, asked on Sign', async ({
	page,
}) => {
	const { playerId } = await hostCall(page, 'players.save', { player })
	await anew(page, `/players/${playerId}`)
	await page.getByRole('button', { name: 'Edit details' }).click()
	const language = page.getByRole('combobox', { name: 'Preferred language', exact: true })
	await language.fill('Elvish')
	await expect(language).toHaveAccessibleDescription(/Elvish is not on the list/)
	await language.fill('maori')
	await expect(language).not.toHaveAttribute('aria-invalid', 'true')
	const guardians = page.getByRole('combobox', { name: 'Preferred language of the guardian' })
	await guardians.fill('Samoan')
	expect(await axe(page, 'details with languages')).toEqual([])
	await page.getByRole('button', { name: 'Save player' }).click()
	await expect(page.getByText(/male, .*prefers Māori/)).toBeVisible()
	await expect(page.getByText(/Guardian Rae Ashdown, .*prefers Samoan/)).toBeVisible()
	await shot(page, 'player-language', { fullPage: false })
	await hostCall(page, 'drafts.open', { playerId, visitDate })
	await at(page, `/assessment/${playerId}`)
	await expect(page.getByText('prefers Māori, guardian prefers Samoan')).toBeVisible()
	await page
		.getByRole('navigation', { name: 'Steps' })
		.getByRole('button', { name: 'Sign' })
		.click()
	await expect(
		page.getByText('Preferred: Māori and Samoan. The papers are in English.'),
	).toBeVisible()
	const interpreter = page.getByRole('radiogroup', { name: 'Interpreter', exact: true })
	await interpreter.getByRole('radio', { name: 'Not needed' }).check()
	await expect(page.getByRole('textbox', { name: 'How it was explained' })).toBeVisible()
	expect(await axe(page, 'Sign with languages')).toEqual([])
	await shot(page, 'sign-language', { fullPage: true })
})
