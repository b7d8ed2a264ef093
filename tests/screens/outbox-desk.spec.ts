/**
 * Reception at the outbox without a mail server: paper and drafts leave and come back, and the
 * desk of a screening day.
 */
import { expect, test } from '@playwright/test'
import { agreed } from '../agreed.ts'
import { decideOn, hostCall, shot } from './drive.ts'
import { onDemoDay, startHost } from './host.ts'
import { accessible, button, closeAll, link } from './outbox-drive.ts'

test(
	'reception at the desk: what waits is counted, paper and drafts leave and come back, and ' +
		'no button only refuses',
	async ({ page }) => {
		const desk = 'reception at the desk'
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
			await onDemoDay(page)
			await page.goto(own.url)
			await closeAll(page)
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
			await expect(page.getByText('Two households: nothing goes to the other')).toBeVisible()
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
			await page.getByLabel('Find in the queue').fill('pía nobody')
			await expect(page.getByText('Nothing here fits what is looked for.')).toBeVisible()
			await page.getByLabel('Find in the queue').fill('ashdown PIA guardian')
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
					decisions: { ...amended.content.decisions, ...agreed },
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
			await page.getByLabel('Why it is sent once more').fill('by e-mail as well, as she asked')
			await button(page, 'Put into the outbox').press('Enter')
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
					`Reporting-MTA: dns; relay.example\nOriginal-Envelope-Id: ${itemId}\n\n` +
						'Final-Recipient: rfc822; rae@example.org\nAction: failed\nStatus: 5.1.1\n',
				)
			await button(page, 'Read report').press('Enter')
			await expect(waits.getByRole('button', { name: '1 returned' })).toBeVisible()
			await shot(page, 'desk-report')

			// paper to the wrong house: the steps
			await at(paper)
			await page.getByLabel('Note or reason').fill('posted to the other household')
			await button(page, 'Sent in error').press('Enter')
			await expect(page.getByText(/Noticed .*(72|71) hours left/)).toBeVisible()
			// its clock stands among what waits
			await expect(button(page, /^Sent in error, LW-.*: (72|71) hours left$/)).toBeVisible()
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
			await button(page, 'Import and open the board').press('Enter')
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
