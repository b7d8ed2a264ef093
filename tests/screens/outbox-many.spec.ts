/** Reception's morning by keyboard alone: several documents prepared, looked through, released, printed. */
import { expect, type Page, test } from '@playwright/test'
import { hostCall, settled, shot } from './drive.ts'
import { onDemoDay, startHost } from './host.ts'
import { accessible, button, link, press } from './outbox-drive.ts'

const desk = 'reception at the desk'
/**
 * The printer of the browser is not to be had here, and without a window it stops the page: what is
 * given to it is kept instead.
 */
const keepPrinted = (page: Page) =>
	page.addInitScript(() => {
		const made = new Map<string, Blob>()
		const printed: (Blob | undefined)[] = []
		Object.assign(window, { printed })
		const address = URL.createObjectURL.bind(URL)
		URL.createObjectURL = (blob: Blob) => {
			const url = address(blob)
			made.set(url, blob)
			return url
		}
		const real = Object.getOwnPropertyDescriptor(HTMLIFrameElement.prototype, 'contentWindow')
		Object.defineProperty(HTMLIFrameElement.prototype, 'contentWindow', {
			get(this: HTMLIFrameElement) {
				if (this.title !== 'Pages for the printer') return real?.get?.call(this)
				return { focus() {}, print: () => printed.push(made.get(this.src)) }
			},
		})
	})
/** The first bytes of each PDF that was given to the printer. */
const printed = (page: Page): Promise<string[]> =>
	page.evaluate(() =>
		Promise.all(
			(window as unknown as { printed: Blob[] }).printed.map((blob) => blob.slice(0, 5).text()),
		),
	)
/** One of the walk: its warnings ticked, found right; left where it must not go. */
async function onward(page: Page, place: string, next: string): Promise<void> {
	await expect(page.getByRole('heading', { name: place })).toBeVisible()
	const right = button(page, /^Right: /)
	await expect(right).toBeVisible()
	// the key that leads on is at hand as soon as the page stands there
	const tick = page.getByLabel(/^I read the warnings/)
	await expect(right.or(tick).first()).toBeFocused()
	if (await tick.isVisible()) {
		await page.keyboard.press('Space')
		await page.keyboard.press('Tab')
	}
	await page.keyboard.press('Enter')
	const refused = page.getByRole('alert').filter({ hasText: /^Not sent: / })
	await expect(refused.or(page.getByRole('heading', { name: next })).first()).toBeVisible()
	if (await refused.isVisible()) await button(page, /^Leave it: /).press('Enter')
}

test('prepared, looked through, released and printed, several at once and by keyboard', async ({
	page,
}) => {
	const own = await startHost('--demo')
	const faults: string[] = []
	page.on('pageerror', (error) => faults.push(error.message))
	page.setDefaultTimeout(20_000)
	await keepPrinted(page)
	try {
		await onDemoDay(page)
		await page.goto(own.url)
		await expect(page.getByRole('navigation', { name: 'Workstation' })).toBeVisible()
		await hostCall(page, 'people.save', {
			name: 'Desk Person',
			registration: '',
			role: 'reception',
			passphrase: desk,
		})
		await hostCall(page, 'session.lock', {})
		await hostCall(page, 'session.unlock', { passphrase: desk })
		await page.reload()

		// from the players: signed, and nobody was given anything
		await press(page, link(page, /^Signed, and nobody was given anything: 4$/))
		await expect(page.getByText('Have it countersigned before')).toBeVisible()
		await expect(
			page
				.getByRole('alert')
				.filter({ hasText: /^Urgent, and nobody was given anything yet:.*Bastien Quill/ }),
		).toBeVisible()
		await shot(page, 'many-unsent')
		await accessible(page)
		const silas = page.getByRole('region', { name: 'Silas Penhale' })
		await press(page, silas.getByRole('button', { name: /^Change Player report/ }))
		await silas.getByLabel('Way', { exact: true }).selectOption('E-mail')
		await expect(silas.getByText('No mail server is set.', { exact: false })).toBeVisible()
		await expect(silas.getByRole('checkbox')).toBeDisabled()
		await silas.getByLabel('Way', { exact: true }).selectOption('Hand over')
		await expect(silas.getByRole('checkbox')).toBeChecked()
		await press(page, button(page, 'Put 3 documents into the outbox'))
		await expect(page.getByText('3 of 3 documents put into the outbox')).toBeVisible()
		await expect(page.getByRole('region', { name: 'Silas Penhale' })).toHaveCount(0)

		// all that wait to be checked: Space, and Shift with Space
		await press(page, page.getByRole('link', { name: 'Queue', exact: true }))
		await page.getByLabel('Show', { exact: true }).selectOption('To check')
		const ticks = page.getByRole('checkbox', { name: /^Choose LW-/ })
		await expect(ticks).toHaveCount(5)
		await press(page, ticks.nth(0), 'Space')
		await press(page, ticks.nth(4), 'Shift+Space')
		await expect(page.getByText('5 of 5 shown are chosen')).toBeVisible()
		const acts = page.getByRole('group', { name: 'With those chosen' })
		await expect(acts.getByRole('button', { name: 'Release 0 of 5' })).toBeDisabled()
		await expect(acts.getByText('5 cannot (5 not looked at yet)')).toBeVisible()
		await expect(
			acts.getByText('5 documents of those that can be closed have not left'),
		).toBeVisible()
		await shot(page, 'many-chosen')
		await accessible(page)
		await press(page, acts.getByRole('button', { name: 'Look through 5' }))
		await expect(button(page, 'Right: on to the next')).toBeFocused()
		await settled(page)
		await accessible(page)
		const places = [1, 2, 3, 4, 5].map((place) => `Look through: ${place} of 5`)
		for (const [index, place] of places.entries())
			await onward(page, place, places[index + 1] ?? 'Looked through')
		await expect(page.getByText('4 documents found right, 1 left to be checked.')).toBeVisible()
		await expect(button(page, 'Release 4 documents')).toBeFocused()
		await page.keyboard.press('Enter')
		await expect(page.getByText('4 of 4 released.')).toBeVisible()
		await shot(page, 'many-released')

		// what was called back is still known to be right; what left cannot be
		await press(page, link(page, 'Back to the queue'))
		await page.getByLabel('Show', { exact: true }).selectOption('All but closed')
		await press(page, page.getByLabel(/^Choose all 10$/), 'Space')
		await expect(acts.getByRole('button', { name: 'Call back 6 of 10' })).toBeDisabled()
		await acts.getByLabel('Note or reason for all of them').fill('not before noon')
		await press(page, acts.getByRole('button', { name: 'Call back 6 of 10' }))
		await expect(page.getByText('6 of 6 called back.')).toBeVisible()
		await expect(page.getByText('compared, not released')).toHaveCount(4)

		// paper: printed from here, and noted once it was handed over
		await page.getByLabel('Find in the queue').fill('okafor')
		await press(page, link(page, /^LW-/))
		await press(page, page.getByLabel(/^Name and birth date/), 'Space')
		await press(page, button(page, 'Print and hand over, not by mail'))
		await expect(button(page, 'Print again')).toBeVisible()
		await expect.poll(() => printed(page)).toEqual(['%PDF-'])
		await expect(page.getByText('It goes on paper, not by mail.')).toBeVisible()
		await press(page, button(page, 'It was handed over'))
		await press(page, button(page, 'Print a copy to hand over'))
		await expect(page.getByText('it counts as handed over on paper.')).toBeVisible()
		await expect.poll(() => printed(page)).toEqual(['%PDF-', '%PDF-'])
		await shot(page, 'many-printed')
		const { items } = await hostCall(page, 'outbox.list', {})
		const { playerId } = items.find(
			(item: { recipient: { name: string } }) => item.recipient.name === 'Ngozi Okafor',
		)
		await page.evaluate((to) => {
			location.hash = to
		}, `#/players/${playerId}`)
		const sent = page.getByRole('region', { name: 'Sent' })
		await expect(sent.getByText('Guardian summary to Ngozi Okafor (guardian)')).toHaveCount(2)
		await expect(sent.getByText(/by hand, left .*, by Desk Person/)).toBeVisible()
		await shot(page, 'many-player')
		await accessible(page)
		expect(faults).toEqual([])
	} finally {
		await own.kill()
	}
})
