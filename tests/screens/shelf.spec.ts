/**
 * The shelf in a real browser, by keyboard: add a model, take in a table with one bad row, and see
 * both matched to a player.
 */

import { expect, type Page, test } from '@playwright/test'
import { documentSentences } from '../../shared/engine/words/speak.ts'
import { shot, tabTo } from './drive.ts'
import { type RunningHost, startHost } from './host.ts'

const button = (page: Page, name: string | RegExp) =>
	page.getByRole('button', { name, exact: typeof name === 'string' })
const table = [
	'id;name;sole;toeBoxDepthMm;upperSoftness;massG;price;' +
		'system;label;insideLengthMm;ballWidthMm;fitting',
	'wren-turf;Wren Turf;firm-ground;27;soft;240;119,5;uk;5,5;255;99;F',
	'wren-turf;;;;;;;uk;6;259;100;F',
	'owl-firm;Owl Firm;firm-ground;25;soft;heavy;140;uk;5,5;255;97;',
].join('\r\n')

let host: RunningHost
const faults: string[] = []
test.beforeAll(async () => {
	host = await startHost('--demo')
})
test.afterAll(async () => {
	await host.kill()
})

test('a model is added, a table taken in, and both are matched', async ({ page }) => {
	page.on('console', (message) => {
		if (/Content Security Policy|unique "key"/i.test(message.text())) faults.push(message.text())
	})
	page.on('pageerror', (error) => faults.push(error.message))
	await page.goto(host.url)
	const rail = page
		.getByRole('navigation', { name: 'Workstation' })
		.getByRole('link', { name: 'Shelf' })
	await tabTo(page, rail)
	await page.keyboard.press('Enter')
	await expect(page.getByRole('heading', { level: 1, name: 'Shelf' })).toBeFocused()
	await expect(page.getByRole('row', { name: /Tern Firm/ })).toContainText('UK 3 to 12')
	await shot(page, 'list')

	// add a model without touching the mouse
	await tabTo(page, button(page, 'Add a model'))
	await page.keyboard.press('Enter')
	await expect(page.getByRole('heading', { level: 1, name: 'New model' })).toBeFocused()
	await tabTo(page, page.getByRole('textbox', { name: 'Name', exact: true }))
	await page.keyboard.type('Siskin Room')
	await page.keyboard.press('Enter')
	await expect(page.getByRole('combobox', { name: 'Sole', exact: true })).toBeFocused()
	await page.keyboard.type('firm')
	await page.keyboard.press('Enter')
	await page.keyboard.type('135,50')
	await tabTo(page, page.getByRole('textbox', { name: /^Toe-box depth/ }))
	for (const typed of ['27', '16', '8']) {
		await page.keyboard.type(typed)
		await page.keyboard.press('Enter')
	}
	await expect(page.getByRole('textbox', { name: 'Mass of one shoe (g)' })).toBeFocused()
	await page.keyboard.type('9')
	await expect(page.getByText('9 g cannot be: allowed 60 to 1200 g.')).toBeVisible()
	await page.keyboard.press('Control+a')
	await page.keyboard.type('230')
	await tabTo(page, page.getByRole('combobox', { name: 'Upper', exact: true }))
	await page.keyboard.type('soft')
	await tabTo(page, page.getByRole('textbox', { name: 'Size, size 1', exact: true }))
	for (const typed of ['5,5', '255']) {
		await page.keyboard.type(typed)
		await page.keyboard.press('Enter')
	}

	// saving is refused in words while something is missing, and the focus goes there
	await tabTo(page, button(page, 'Save model'))
	await page.keyboard.press('Enter')
	await expect(page.getByText(/^Not saved: 1 entry needs correcting/)).toBeVisible()
	await expect(
		page.getByRole('textbox', { name: 'Inside width at the ball, size 1' }),
	).toBeFocused()
	await page.keyboard.type('99')
	await tabTo(page, button(page, 'Add a size'))
	await page.keyboard.press('Enter')
	await tabTo(page, page.getByRole('textbox', { name: 'Size, size 2', exact: true }))
	for (const typed of ['6', '259', '100']) {
		await page.keyboard.type(typed)
		await page.keyboard.press('Enter')
	}

	// the guide is read halfway through: what was typed is still there
	await page.goBack()
	await expect(page.getByText('Entries not saved yet: a new model.')).toBeVisible()
	await tabTo(page, button(page, 'Go on'))
	await page.keyboard.press('Enter')
	await expect(page.getByRole('textbox', { name: 'Name', exact: true })).toHaveValue('Siskin Room')
	await tabTo(page, page.getByRole('combobox', { name: 'Studs', exact: true }))
	await page.keyboard.type('studs')
	await tabTo(page, page.getByRole('textbox', { name: /^Stud, from heel.*stud 1$/ }))
	await page.keyboard.type('51 mm')
	await page.keyboard.press('Enter')
	await page.keyboard.type('0,5')
	await page.keyboard.press('Enter')
	await page.keyboard.type('round')
	await page.keyboard.press('Enter')
	await page.keyboard.type('11')
	await expect(page.getByRole('img', { name: /Right sole of Siskin Room.*one stud/ })).toBeVisible()
	await shot(page, 'form')
	await tabTo(page, button(page, 'Save model'))
	await page.keyboard.press('Enter')
	await expect(page.getByText('Siskin Room is saved.')).toBeVisible()
	await expect(page.getByRole('row', { name: /Siskin Room/ })).toContainText('8 mm')

	// a table with one bad row: named before anything changes, the good rows taken in
	await tabTo(page, button(page, 'Import a table (CSV)'))
	await page.keyboard.press('Enter')
	await page.getByLabel('CSV file').setInputFiles({
		name: 'from-the-shop.csv',
		mimeType: 'text/csv',
		buffer: Buffer.from(table, 'utf8'),
	})
	await expect(page.getByRole('heading', { name: 'Looked over: from-the-shop.csv' })).toBeFocused()
	const bad = page.getByRole('table', { name: 'Bad cells' }).getByRole('row').nth(1)
	await expect(bad).toContainText('4')
	await expect(bad).toContainText('massG')
	await expect(bad).toContainText('"heavy"')
	await expect(page.getByText('Nothing has been changed yet')).toBeVisible()
	await expect(page.getByRole('table', { name: 'Models to import' })).toContainText('Wren Turf')
	await shot(page, 'import')
	await tabTo(page, button(page, 'Import these rows'))
	await page.keyboard.press('Enter')
	await expect(page.getByText('Imported from from-the-shop.csv: 1 new, 0 replaced.')).toBeVisible()
	await expect(page.getByRole('row', { name: /Wren Turf/ })).toBeVisible()
	await expect(page.getByRole('row', { name: /Owl Firm/ })).toHaveCount(0)

	// retire one, copy one
	await tabTo(page, button(page, 'Retire Tern Firm'))
	await page.keyboard.press('Enter')
	await expect(page.getByText(/Tern Firm is retired/)).toBeVisible()
	await expect(page.getByRole('row', { name: /Tern Firm/ })).toHaveCount(0)
	await tabTo(page, button(page, 'Copy Wren Turf'))
	await page.keyboard.press('Enter')
	await expect(page.getByRole('textbox', { name: 'Name', exact: true })).toHaveValue(
		'Wren Turf copy',
	)
	await tabTo(page, button(page, 'Save model'))
	await page.keyboard.press('Enter')
	await expect(page.getByRole('row', { name: /Wren Turf copy/ })).toBeVisible()

	// the table as it goes out holds what came in
	const [download] = await Promise.all([
		page.waitForEvent('download'),
		button(page, 'Save as table (CSV)').press('Enter'),
	])
	const chunks: Buffer[] = []
	for await (const chunk of await download.createReadStream()) chunks.push(chunk as Buffer)
	const csv = Buffer.concat(chunks).toString('utf8')
	expect(csv).toContain('siskin-room,Siskin Room,firm-ground')
	expect(csv).toContain('0.2 0.5 round 11 no')
	expect(csv).toContain('wren-turf-copy')

	await page.getByRole('link', { name: 'How to measure' }).press('Enter')
	await expect(page.getByRole('heading', { level: 1, name: 'Shelf' })).toBeFocused()
	await expect(page.getByRole('link', { name: 'How to measure' })).toHaveAttribute(
		'aria-current',
		'page',
	)
	expect(await page.getByRole('img', { name: /inside, along the liner/ }).count()).toBe(1)
	await shot(page, 'guide')

	// matched to a player of the demo
	await page.getByRole('link', { name: 'Players' }).press('Enter')
	await page.getByRole('searchbox').or(page.getByRole('textbox')).first().fill('ashdown')
	await page.keyboard.press('Enter')
	await button(page, /(Start|Resume) assessment/).press('Enter')
	await page
		.getByRole('navigation', { name: 'Steps' })
		.getByRole('button', { name: 'Decide', exact: true })
		.press('Enter')
	const question = (id: string) => page.locator(`button[data-question="${id}"]`)
	await question('pair.match').press('Enter')
	const match = page.getByRole('region', { name: /^On the shelf/ })
	await match.getByRole('button', { name: /^The whole shelf/ }).press('Enter')
	await expect(match).toContainText('models pass')
	const passing = match.getByRole('list', { name: 'Models that pass' })
	const own = passing
		.getByRole('listitem')
		.filter({ has: page.getByRole('heading', { name: /Siskin Room/ }) })
	await expect(own).toContainText('6 UK')
	await expect(own).toContainText('Toe room')
	await expect(match.getByRole('list', { name: 'Models that are stopped' })).toContainText(
		'Stopped:',
	)
	await expect(match).not.toContainText('Tern Firm')
	await tabTo(page, own.getByRole('button', { name: 'Reasons and sole of Siskin Room' }))
	await page.keyboard.press('Enter')
	await expect(
		own.getByRole('img', { name: /Left sole of Siskin Room.*heel centre: nearest stud/ }),
	).toBeVisible()
	await expect(own.getByRole('heading', { name: 'For' })).toBeVisible()
	await shot(page, 'match')

	// up to three to try; another waits until one is taken off
	const box = (checked: boolean) => passing.getByRole('checkbox', { checked }).first()
	while ((await passing.getByRole('checkbox', { checked: true }).count()) < 3)
		await box(false).press('Space')
	await expect(match).toContainText('3 of 3 to try. Take one off to choose another.')
	await expect(box(false)).toBeDisabled()
	await box(true).press('Space')
	await expect(match).toContainText('2 of 3 to try')
	await box(false).press('Space')
	await expect(question('pair.match')).toContainText('changed')
	const name =
		(
			await passing
				.getByRole('listitem')
				.filter({ has: page.getByRole('checkbox', { checked: true }) })
				.getByRole('heading', { level: 3 })
				.first()
				.textContent()
		)
			?.replace(/^\d+\. /, '')
			.split(',')[0] ?? ''
	await question('changes').press('Enter')
	const work = page.getByRole('region', { name: 'Changes to footwear' })
	await expect(work.getByRole('img').first()).toBeVisible()
	await work.getByRole('checkbox', { checked: true }).first().press('Space')
	await expect(question('changes')).toContainText('changed')
	await page.locator('summary', { hasText: 'The pages that follow' }).press('Enter')
	const paper = page.getByRole('region', { name: 'The pages that follow' })
	await expect(paper).toContainText(documentSentences['player.toTry'])
	await expect(paper).toContainText(`${name}, size`)
	await shot(page, 'decide')

	// it is in the draft: still there after coming back
	await expect(page.getByText(/^Saved /)).toBeVisible()
	await page.reload()
	await expect(question('pair.match')).toContainText('changed')
	await question('pair.match').press('Enter')
	await expect(page.getByRole('region', { name: /^On the shelf/ })).toContainText('3 of 3 to try')
	expect(faults).toEqual([])
})
