/**
 * Reception at the outbox, by keyboard alone, with a real mail server: prepare, check beside the
 * recipient, send, lose the wire, settle, read a report, sent in error.
 */
import { expect, test } from '@playwright/test'
import { startSmtp, startWire } from '../host/mail-bench.ts'
import { hostCall, shot, tabTo } from './drive.ts'
import { onDemoDay, type RunningHost, startHost } from './host.ts'
import { accessible, button, choose, closeAll, link, press, type } from './outbox-drive.ts'

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
		await onDemoDay(page)
		await page.goto(host.url)
		await closeAll(page)
		await press(
			page,
			page.getByRole('navigation', { name: 'Workstation' }).getByRole('link', { name: 'Outbox' }),
		)
		await expect(page.getByRole('heading', { level: 1, name: 'Outbox' })).toBeFocused()
		await expect(page.getByText(/^No document is on its way/)).toBeVisible()

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
		const { playerId } = items.find((item: { itemId: string }) => item.itemId === itemId)
		await press(page, page.getByLabel(/^Name and birth date/), 'Space')
		await press(page, button(page, 'Release'))
		await expect(page.getByRole('alert').filter({ hasText: 'Not sent: No consent' })).toBeVisible()
		const given = new Date().toISOString().slice(0, 10)
		// with the consent it may go: there is no network at first
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
		await expect(button(page, 'Release')).toBeEnabled()
		await shot(page, 'outbox-item')
		await accessible(page)
		await press(page, button(page, 'Release'))
		await expect(button(page, 'Release')).toHaveCount(0)
		await press(page, link(page, 'Queue'))
		const waits = page.getByRole('status').filter({ hasText: 'One message waits to be sent' })
		await expect(waits).toContainText(/Nothing was sent; it is tried again by itself\..*Next try/, {
			timeout: 15_000,
		})
		await shot(page, 'outbox-offline')
		await accessible(page)
		expect(smtp.received.filter(({ to }) => to[0] === 'rae@example.org')).toHaveLength(0)
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
		expect(smtp.received.filter(({ to }) => to[0] === 'rae@example.org')).toHaveLength(1)

		// asked, noted, and the password given by another way
		await press(page, link(page, /^LW-/))
		await press(page, button(page, 'Show the password'))
		const password = (await page.locator('strong').textContent()) ?? ''
		expect(password).toMatch(/^[a-z2-9]{4}(-[a-z2-9]{4}){3}$/)
		for (const { text } of smtp.received) expect(text).not.toContain(password)
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
		await expect(page.getByText(/Noticed .*(72|71) hours left/)).toBeVisible()
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
