/**
 * Reception at the outbox, by keyboard alone, with a real mail server: prepare, check beside the
 * recipient, send, lose the wire, settle, read a report, sent in error.
 */
import { AxeBuilder } from '@axe-core/playwright'
import { expect, type Locator, type Page, test } from '@playwright/test'
import { startSmtp, startWire } from '../host/mail-bench.ts'
import { decideOn, hostCall, shot, tabTo } from './drive.ts'
import { type RunningHost, startHost } from './host.ts'

const press = async (page: Page, control: Locator, key = 'Enter') => {
	await tabTo(page, control, 160)
	await page.keyboard.press(key)
}
async function type(page: Page, label: string, text: string): Promise<void> {
	const field = page.getByLabel(label, { exact: true })
	await tabTo(page, field, 160)
	await page.keyboard.press('Control+A')
	await page.keyboard.type(text)
}
/** A native list: the first letters choose. */
async function choose(page: Page, label: string, text: string): Promise<void> {
	const field = page.getByLabel(label, { exact: true })
	await tabTo(page, field, 160)
	await page.keyboard.type(text, { delay: 20 })
	await expect(field).toHaveValue(new RegExp(`^${text}`, 'i'))
}
const button = (page: Page, name: string) => page.getByRole('button', { name, exact: true })
const link = (page: Page, name: string | RegExp) =>
	page.getByRole('main').getByRole('link', { name })
async function accessible(page: Page): Promise<void> {
	const { violations } = await new AxeBuilder({ page }).exclude('iframe').analyze()
	expect(
		violations.map((one) => `${one.id}: ${one.nodes.map((node) => node.target).join(' ')}`),
	).toEqual([])
}
let host: RunningHost
test.beforeAll(async () => {
	host = await startHost('--demo')
})
test.afterAll(async () => {
	await host.kill()
})

test('from the signed report to the delivery report', async ({ page }) => {
	const smtp = await startSmtp()
	const wire = await startWire(smtp.port)
	const faults: string[] = []
	page.on('console', (message) => {
		if (/Content Security Policy|unique "key"/i.test(message.text())) faults.push(message.text())
	})
	page.on('pageerror', (error) => faults.push(error.message))
	try {
		await page.goto(host.url)
		await press(
			page,
			page.getByRole('navigation', { name: 'Workstation' }).getByRole('link', { name: 'Outbox' }),
		)
		await expect(page.getByRole('heading', { level: 1, name: 'Outbox' })).toBeFocused()
		await expect(page.getByText('Nothing here.')).toBeVisible()

		// the mail server: without encryption only in so many words
		await press(page, link(page, 'Mail settings'))
		await type(page, 'Server', '127.0.0.1')
		await type(page, 'Port', String(wire.port))
		await choose(page, 'Security', 'no enc')
		await type(page, 'User', 'desk')
		await type(page, 'Password of the mail server', 'right words')
		await type(page, "Sender's name", 'Harrow Lane')
		await type(page, "Sender's address", 'desk@harrowlane.example')
		await press(page, button(page, 'Save mail settings'))
		await expect(page.getByRole('alert')).toContainText('send without encryption')
		await type(page, 'In so many words', 'send without encryption')
		await press(page, button(page, 'Save mail settings'))
		await expect(page.getByRole('status')).toContainText('Saved')
		await press(page, button(page, 'Send a test message'))
		await expect(page.getByRole('status')).toContainText('took a test message')
		await shot(page, 'outbox-mail')
		await accessible(page)

		// prepare for the guardian of a minor
		await press(page, link(page, 'Prepare a document'))
		await type(page, 'Search by name or birth date', 'tui')
		await expect(link(page, /Owain/)).toHaveCount(0)
		await press(page, link(page, /Tui Ashdown/))
		await expect(page.getByText('The player is a minor')).toBeVisible()
		await choose(page, 'Recipient', 'Tui')
		await choose(page, 'Document', 'Player')
		await choose(page, 'Way', 'E-mail')
		await press(page, button(page, 'Put into the outbox'))
		await expect(
			page.getByRole('alert').filter({ hasText: /No e-mail address of Tui/ }),
		).toBeVisible()
		await choose(page, 'Recipient', 'Rae')
		await choose(page, 'Document', 'Guardian')
		await shot(page, 'outbox-prepare')
		await accessible(page)

		// a typed address: twice, and its warning read
		await type(page, 'Name of the recipient', 'Coach Invented')
		await choose(page, 'Role', 'coach')
		await type(page, 'E-mail address', 'raee@example.org')
		await type(page, 'E-mail address once more', 'rae@example.org')
		await press(page, button(page, 'Add to the record'))
		await expect(page.getByRole('alert').filter({ hasText: 'not the same' })).toBeVisible()
		await type(page, 'E-mail address once more', 'raee@example.org')
		await press(page, button(page, 'Add to the record'))
		await expect(
			page.getByRole('alert').filter({ hasText: 'one letter off rae@example.org' }),
		).toBeVisible()
		await shot(page, 'outbox-warning')
		await press(page, button(page, 'Put into the outbox'))
		await expect(page.getByRole('heading', { name: /^First page of LW-/ })).toBeVisible()

		// the first page beside the recipient; consent is asked when it is released
		await expect(page.locator('iframe')).toHaveAttribute('src', /^blob:/)
		await expect(page.getByText('2 May 2013')).toBeVisible()
		await expect(page.getByText(/No consent to use of e-mail for Rae Ashdown/)).toBeVisible()
		await press(page, button(page, 'Release'))
		await expect(page.getByRole('alert').filter({ hasText: 'compared' })).toBeVisible()
		const itemId = page.url().split('/').at(-1) as string
		const { items } = await hostCall(page, 'outbox.list', {})
		const { playerId } = items[0]
		await press(page, page.getByLabel(/^Name and birth date/), 'Space')
		await press(page, button(page, 'Release'))
		await expect(page.getByRole('alert').filter({ hasText: 'Not sent: No consent' })).toBeVisible()
		const given = new Date().toISOString().slice(0, 10)
		// it was released: once the consent stands the queue may send it by itself at any moment. First
		// there is no network
		wire.cut = 'EHLO'
		await hostCall(page, 'consents.record', {
			playerId,
			consent: {
				purpose: 'email',
				recipient: 'Rae Ashdown',
				decision: 'permit',
				grantor: { name: 'Rae Ashdown', relation: 'parent' },
				method: 'written',
				given,
			},
		})
		await page.waitForTimeout(1500)
		await shot(page, 'outbox-item')
		await accessible(page)
		if (await button(page, 'Release').isVisible())
			await press(page, button(page, 'Release')).catch(() => undefined)
		await press(page, link(page, 'Queue'))
		const waits = page.getByRole('status').filter({ hasText: 'One message waits to be sent' })
		await expect(waits).toContainText(/Nothing was sent; it is tried again by itself\..*Next try/, {
			timeout: 15_000,
		})
		await shot(page, 'outbox-offline')
		await accessible(page)
		expect(smtp.received.filter((one) => one.to[0] === 'rae@example.org')).toHaveLength(0)
		// the network is back, and goes again in the middle of the answer
		wire.cut = 'answer'
		await press(page, button(page, 'Send now'))
		await expect(waits).toHaveCount(0)
		await press(page, link(page, /^LW-/))
		await expect(page.getByText(/connection broke after the whole message/).first()).toBeVisible({
			timeout: 15_000,
		})
		await shot(page, 'outbox-uncertain-item')
		await press(page, link(page, 'Queue'))
		await expect(
			page.getByRole('alert').filter({ hasText: 'One message is uncertain' }),
		).toBeVisible()
		await shot(page, 'outbox-queue')
		await accessible(page)
		wire.cut = undefined
		expect(smtp.received.filter((one) => one.to[0] === 'rae@example.org')).toHaveLength(1)

		// asked, noted, and the password given by another way
		await press(page, link(page, /^LW-/))
		await press(page, button(page, 'Show the password'))
		const password = (await page.locator('strong').textContent()) ?? ''
		expect(password).toMatch(/^[a-z2-9]{4}(-[a-z2-9]{4}){3}$/)
		for (const one of smtp.received) expect(one.text).not.toContain(password)
		await press(page, button(page, 'It left, arrival not known'))
		await expect(button(page, 'It came back')).toBeVisible()

		// a delivery report is pasted
		await press(page, link(page, 'Delivery reports'))
		await tabTo(page, page.getByLabel('Returned message'), 160)
		await page.keyboard.insertText(
			`Reporting-MTA: dns; relay.example\nOriginal-Envelope-Id: ${itemId}\n\nFinal-Recipient: ` +
				`rfc822; rae@example.org\nAction: delivered\nStatus: 2.1.5\n`,
		)
		await press(page, button(page, 'Read report'))
		await expect(page.getByRole('status')).toContainText('Delivered to the mailbox')
		await press(page, link(page, 'Open it'))
		await expect(page.getByText('Delivered', { exact: true }).first()).toBeVisible()

		// sent in error opens the steps with their clocks
		await type(page, 'Note or reason', 'went to the wrong parent')
		await press(page, button(page, 'Sent in error'))
		await expect(page.getByText(/72 hours left|71 hours left/)).toBeVisible()
		await type(page, 'What was done (contain)', 'telephoned, deleted unread')
		await press(page, button(page, 'Note as done').first())
		await expect(page.getByText(/telephoned, deleted unread/)).toBeVisible()
		await shot(page, 'outbox-errors')
		await accessible(page)
		expect(faults).toEqual([])
	} finally {
		await wire.stop()
		await smtp.stop()
	}
})

test(
	'reception at the desk: what waits is counted, paper and drafts leave and come back, and ' +
		'no button only refuses',
	async ({ page }) => {
		const desk = 'desk desk desk'
		const as = async (passphrase: string) => {
			await hostCall(page, 'session.lock', {})
			await hostCall(page, 'session.unlock', { passphrase })
			await page.reload()
			await expect(page.getByRole('navigation', { name: 'Workstation' })).toBeVisible()
		}
		const own = await startHost('--demo')
		const faults: string[] = []
		page.setDefaultTimeout(20_000)
		page.on('pageerror', (error) => faults.push(error.message))
		const at = (hash: string) =>
			page.evaluate((to) => {
				location.hash = to
			}, hash)
		const waits = page.getByRole('group', { name: 'What waits' })
		const save = async (name: string) => {
			const file = page.waitForEvent('download')
			await button(page, name).press('Enter')
			return (await file).suggestedFilename()
		}
		const release = async () => {
			await expect(page.getByRole('heading', { name: /^First page of LW-/ })).toBeVisible()
			await expect(button(page, 'Release')).toBeEnabled()
			await button(page, 'Release').press('Enter')
			await expect(
				page.getByRole('alert').filter({
					hasText: 'Tick first that page, name, birth date and recipient were compared.',
				}),
			).toBeVisible()
			await page.getByLabel(/^Name and birth date/).press('Space')
			const read = page.getByLabel(/^I read the warnings/)
			if ((await read.count()) > 0) await read.press('Space')
			await button(page, 'Release').press('Enter')
			await expect(button(page, 'Call back')).toBeVisible()
		}
		const prepare = async (recipient: string, document: string, way: string) => {
			for (const [label, wanted] of [
				['Recipient', recipient],
				['Document', document],
				['Way', way],
			] as const)
				await page
					.getByLabel(label, { exact: true })
					.selectOption(
						(await page
							.getByLabel(label, { exact: true })
							.locator('option')
							.filter({ hasText: wanted })
							.first()
							.getAttribute('value')) ?? '',
					)
			await button(page, 'Put into the outbox').press('Enter')
		}
		try {
			await page.goto(own.url)
			await expect(
				page
					.getByRole('navigation', { name: 'Workstation' })
					.getByRole('link', { name: 'Outreach' }),
			).toBeVisible()
			await hostCall(page, 'people.save', {
				name: 'Desk Person',
				registration: '',
				role: 'reception',
				passphrase: desk,
			})
			// a minor with one signed visit and no open draft, so that the visit can be amended later
			const { playerId } = await hostCall(page, 'players.save', {
				player: {
					givenName: 'Pia',
					familyName: 'Dunmore',
					birthDate: '2012-04-09',
					sex: 'female',
					guardian: { name: 'Rae Ashdown', relation: 'parent', email: 'rae@example.org' },
				},
			})
			const { draft } = await hostCall(page, 'drafts.open', {
				playerId,
				visitDate: new Date().toISOString().slice(0, 10),
			})
			await hostCall(page, 'drafts.save', {
				draftId: draft.draftId,
				content: {
					...draft.content,
					visit: {
						...draft.content.visit,
						feet: { left: { heelToToeMm: 246 }, right: { heelToToeMm: 248 } },
					},
					decisions: { ...draft.content.decisions, consentNoted: true },
				},
			})
			await decideOn(page, playerId, draft.content.visit.visitDate)
			await hostCall(page, 'visits.sign', { draftId: draft.draftId })
			await as(desk)

			// what is not for the desk is not offered: no packs, no assessment, no mail fields
			await expect(
				page
					.getByRole('navigation', { name: 'Workstation' })
					.getByRole('link', { name: 'Outreach' }),
			).toHaveCount(0)
			await at(`#/players/${playerId}`)
			await expect(page.getByRole('link', { name: 'Send, print or hand over' })).toBeVisible()
			await expect(
				page.getByRole('button', { name: /assessment$|^Trends$|^Season$|^Open visit/ }),
			).toHaveCount(0)
			await at('#/outbox')
			await expect(waits).toHaveText('Nothing waits: nothing to check, nothing returned.')
			await expect(
				page.getByText('No mail server is set, so nothing is e-mailed from here.', {
					exact: false,
				}),
			).toBeVisible()
			await shot(page, 'desk-empty')
			await at('#/outbox/mail')
			await expect(page.getByText('The owner changes these settings.')).toBeVisible()
			await expect(page.getByRole('main').getByRole('textbox')).toHaveCount(0)

			// a note that must be read; then paper
			await at(`#/outbox/player/${playerId}`)
			await page.getByLabel('New note').fill('Two households: nothing goes to the other address.')
			await button(page, 'Add the note').press('Enter')
			await expect(page.getByText('Two households', { exact: false })).toBeVisible()
			await expect(page.getByLabel('Way', { exact: true }).locator('option')).toHaveText([
				'Choose',
				'Draft for the mail program',
				'Print and post',
				'Hand over',
			])
			await prepare('Rae', 'Guardian', 'Print')
			await expect(page.getByText(/No consent to use of e-mail/)).toHaveCount(0)
			await expect(page.getByRole('heading', { name: /^First page of LW-/ })).toBeVisible()
			await expect(
				page.getByRole('alert').filter({ hasText: 'Two households' }).first(),
			).toBeVisible()
			await expect(button(page, 'Take over')).toHaveCount(0)
			await shot(page, 'desk-check')
			await at('#/outbox')
			await expect(waits.getByRole('button', { name: '1 to check' })).toBeVisible()
			await link(page, /^LW-/).press('Enter')
			await release()
			expect(await save('Transmission sheet')).toMatch(/\.pdf$/)
			expect(await save('Save for printing')).toMatch(/\.pdf$/)
			await button(page, 'It was posted').press('Enter')
			await button(page, 'It came back').press('Enter')
			await expect(button(page, 'Send again')).toBeDisabled()
			await expect(
				page.getByText('Write a few words before: Send again, Sent in error.'),
			).toBeVisible()
			await shot(page, 'desk-returned')
			const paper = new URL(page.url()).hash
			await at('#/outbox')
			await waits.getByRole('button', { name: '1 returned' }).press('Enter')
			await expect(page.getByRole('table', { name: 'Outbox' }).getByRole('row')).toHaveCount(2)

			// meanwhile the clinician amends the visit: the desk sends the newer version
			await as('demo demo')
			const { visits } = await hostCall(page, 'players.open', { playerId })
			const { draftId } = await hostCall(page, 'visits.amend', {
				visitId: visits[0].visitId,
				reason: 'width measured again',
			})
			const { draft: amended } = await hostCall(page, 'drafts.open', {
				playerId,
				visitDate: visits[0].visitDate,
			})
			await hostCall(page, 'drafts.save', {
				draftId,
				content: {
					...amended.content,
					decisions: { ...amended.content.decisions, consentNoted: true },
				},
			})
			await hostCall(page, 'visits.sign', { draftId })
			await as(desk)
			await at(paper)
			await expect(
				page.getByText('Version 2 of this visit is newer than the one here.'),
			).toBeVisible()
			await page.getByLabel('Note or reason').fill('came back, and there is a newer version')
			await button(page, 'Send version 2').press('Enter')
			await expect(page.getByText(/version 2, visit of/)).toBeVisible()
			await release()
			await shot(page, 'desk-newer')

			// a draft for the mail program, and the report that says it did not arrive
			await hostCall(page, 'consents.record', {
				playerId,
				consent: {
					purpose: 'email',
					recipient: 'Rae Ashdown',
					decision: 'permit',
					grantor: { name: 'Rae Ashdown', relation: 'parent' },
					method: 'written',
					given: new Date().toISOString().slice(0, 10),
				},
			})
			await at(`#/outbox/player/${playerId}`)
			await prepare('Rae', 'Guardian', 'Draft')
			await release()
			const itemId = page.url().split('/').at(-1) as string
			expect(await save('Save draft for the mail program')).toMatch(/\.eml$/)
			await button(page, 'It was sent').press('Enter')
			await expect(button(page, 'It came back')).toBeVisible()
			await at('#/outbox/reports')
			await expect(page.getByText('Paste or drop a message first.')).toBeVisible()
			await page.getByLabel('Returned message').fill('Good morning, is this the clinic?')
			await button(page, 'Read report').press('Enter')
			await expect(page.getByRole('main').getByRole('alert')).toBeVisible()
			await expect(page.getByLabel('Returned message')).toHaveValue(
				'Good morning, is this the clinic?',
			)
			await shot(page, 'desk-no-report')
			await page
				.getByLabel('Returned message')
				.fill(
					`Reporting-MTA: dns; relay.example\nOriginal-Envelope-Id: ${itemId}\n\nFinal-Recipient: ` +
						`rfc822; rae@example.org\nAction: failed\nStatus: 5.1.1\n`,
				)
			await button(page, 'Read report').press('Enter')
			await expect(waits.getByRole('button', { name: '1 returned' })).toBeVisible()
			await shot(page, 'desk-report')

			// paper to the wrong house: the steps
			await at(paper)
			await page.getByLabel('Note or reason').fill('posted to the other household')
			await button(page, 'Sent in error').press('Enter')
			await expect(page.getByText(/72 hours left|71 hours left/)).toBeVisible()
			await at(paper)
			await page.getByRole('link', { name: 'Go on with the steps' }).press('Enter')
			await expect(page.getByText('posted to the other household', { exact: false })).toBeVisible()
			await at('#/outbox')
			await shot(page, 'desk-queue')
			await accessible(page)

			// the desk of a screening day: who is here, by number
			await at('#/squad')
			await page.getByLabel('Team').fill('Harrow Rovers')
			await page
				.getByLabel('Roster', { exact: true })
				.fill(
					'Number,Given name,Family name,Birth ' +
						'date,Sex\n7,Ada,Fieldling,2010-01-02,f\n9,Bea,Moorland,2010-05-06,f',
				)
			await button(page, 'Look at the roster').press('Enter')
			await button(page, 'Take in and open the board').press('Enter')
			await expect(page.getByRole('table', { name: 'Board' })).toBeVisible()
			await expect(page.getByRole('group', { name: 'Station at this desk' })).toHaveCount(0)
			await expect(page.getByRole('button', { name: 'Write the reports' })).toHaveCount(0)
			await button(page, 'Next player here').press('Enter')
			await expect(page.getByText('Type the number of the player first.')).toBeVisible()
			await page.getByLabel('Number of the player').fill('7')
			await button(page, 'Next player here').press('Enter')
			await expect(
				page.getByRole('status').filter({ hasText: 'Ada Fieldling, number 7, is here.' }),
			).toBeVisible()
			await button(page, 'Bea Moorland is here').press('Enter')
			await expect(page.getByRole('button', { name: 'Bea Moorland is here' })).toHaveCount(0)
			await expect(
				page.getByText('2 players: 2 expected (2 of them here)', { exact: false }),
			).toBeVisible()
			await shot(page, 'desk-squad')
			await accessible(page)
			expect(faults).toEqual([])
		} finally {
			await own.kill()
		}
	},
)
