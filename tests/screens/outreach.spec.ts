/**
 * An outreach day at the real screen: the clinic packs, a laptop without records opens the pack and
 * works, both change the same things, and all of it comes home.
 */
import { mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { AxeBuilder } from '@axe-core/playwright'
import { expect, type Locator, type Page, test } from '@playwright/test'
import { shot } from './drive.ts'
import { startHost } from './host.ts'

const packPassphrase = 'three mild otters'
async function accessible(page: Page): Promise<void> {
	const { violations } = await new AxeBuilder({ page }).setLegacyMode().analyze()
	expect(
		violations.map((one) => `${one.id}: ${one.nodes.map((node) => node.target).join(' ')}`),
	).toEqual([])
}
const to = (page: Page, name: string) =>
	page
		.getByRole('navigation', { name: 'Workstation' })
		.getByRole('link', { name, exact: true })
		.press('Enter')
const button = (within: Page | Locator, name: string) =>
	within.getByRole('button', { name, exact: true })
const panel = (page: Page, title: string) =>
	page
		.locator('section')
		.filter({ has: page.getByRole('heading', { level: 2, name: title, exact: true }) })
async function openPlayer(page: Page, search: string, name: string): Promise<void> {
	await to(page, 'Players')
	await page.getByRole('textbox', { name: 'Search players' }).fill(search)
	await expect(page.getByRole('row')).toHaveCount(2)
	await page.keyboard.press('Enter')
	await expect(page.getByRole('heading', { level: 1, name })).toBeVisible()
}
async function setClub(page: Page, club: string): Promise<void> {
	await page.getByRole('textbox', { name: 'Club' }).fill(club)
	await button(page, 'Save player').press('Enter')
	await expect(page.getByRole('status').filter({ hasText: 'Saved.' })).toBeVisible()
}
/** The consent of a parent to the letter for the club. */
async function consent(page: Page, decision: string): Promise<void> {
	await page.getByRole('link', { name: 'Consents of this player' }).press('Enter')
	await page.getByLabel('Purpose').selectOption('share-with-coach')
	await page.getByLabel('Recipient').fill('Coach Invented')
	await page.getByLabel('Decision').selectOption(decision)
	await page.getByLabel('Given by').fill('Rae Ashdown')
	await page.getByLabel('Relation').selectOption('parent')
	await button(page, 'Record consent').press('Enter')
	await expect(page.getByRole('status').filter({ hasText: 'Recorded.' })).toBeVisible()
}
async function feet(page: Page, resume: RegExp, ...values: string[]): Promise<void> {
	await page.getByRole('button', { name: resume }).press('Enter')
	await page
		.getByRole('navigation', { name: 'Steps' })
		.getByRole('button', { name: 'Feet', exact: true })
		.press('Enter')
	await page.getByRole('textbox', { name: 'Heel to toe, left', exact: true }).focus()
	for (const value of values) {
		await page.keyboard.press('Control+a')
		await page.keyboard.insertText(value)
		await page.keyboard.press('Enter')
	}
	await expect(page.getByText(/^Saved/).first()).toBeVisible()
}
async function newPlayer(page: Page, givenName: string): Promise<void> {
	await to(page, 'Players')
	await page
		.getByRole('button', { name: 'New player' })
		.or(page.getByRole('link', { name: 'New player' }))
		.first()
		.press('Enter')
	await page.getByRole('textbox', { name: 'Given name' }).fill(givenName)
	await page.getByRole('textbox', { name: 'Family name' }).fill('Fieldling')
	await page.getByLabel('Birth date').fill('3 March 2001')
	await page.getByLabel('Sex').selectOption('female')
	await button(page, 'Save player').press('Enter')
	await expect(
		page.getByRole('heading', { level: 1, name: `${givenName} Fieldling` }),
	).toBeVisible()
}
/** The same player and the same newcomer in either place, with what each place says of them. */
async function workAt(page: Page, club: string, decision: string, left: string): Promise<void> {
	await openPlayer(page, 'tui', 'Tui Ashdown')
	await setClub(page, club)
	await consent(page, decision)
	await openPlayer(page, 'tui', 'Tui Ashdown')
	await feet(page, /assessment$/, left, '249')
	await newPlayer(page, 'Ida')
}

test(
	'a pack goes out with two players, the laptop works without the clinic, and everything ' +
		'comes home once',
	async ({ browser }, info) => {
		test.setTimeout(240_000)
		const data = mkdtempSync(join(tmpdir(), 'lastwright-laptop-'))
		const stick = mkdtempSync(join(tmpdir(), 'lastwright-stick-'))
		writeFileSync(join(stick, 'note.txt'), 'a file, not a folder')
		const faults: string[] = []
		let from = Date.now()
		const lap = (what: string) => {
			info.annotations.push({
				type: 'seconds',
				description: `${what}: ${((Date.now() - from) / 1000).toFixed(1)}`,
			})
			if (process.env.LASTWRIGHT_LAPS)
				console.log(`${what}: ${((Date.now() - from) / 1000).toFixed(1)} s`)
			from = Date.now()
		}
		// one cookie jar each: a jar does not tell ports apart
		const pageOf = async () => {
			const page = await (
				await browser.newContext({ viewport: { width: 1440, height: 900 } })
			).newPage()
			// a wrong step is named at once, not after the whole time of the test
			page.setDefaultTimeout(20_000)
			page.on('console', (message) => {
				if (/Content Security Policy|unique "key"/i.test(message.text()))
					faults.push(message.text())
			})
			page.on('pageerror', (error) => faults.push(error.message))
			return page
		}
		const [clinicHost, laptopHost] = await Promise.all([
			startHost('--demo'),
			startHost('--data', data),
		])
		const [clinic, laptop] = await Promise.all([pageOf(), pageOf()])
		try {
			// the clinic makes the pack; a folder that cannot be used is named, and nothing typed is lost
			await clinic.goto(clinicHost.url)
			await to(clinic, 'Outreach')
			const making = panel(clinic, 'Make a pack')
			await expect(
				making.getByText(
					'Still to fill in: folder or stick, passphrase of the pack, the passphrase again.',
				),
			).toBeVisible()
			await making.getByLabel('Find players').fill('trescott')
			await making.getByRole('checkbox', { name: /Owain Trescott/ }).press('Space')
			await making.getByLabel('Find players').fill('ashdown')
			await making.getByRole('checkbox', { name: /Tui Ashdown/ }).press('Space')
			await expect(making.getByText('2 chosen.', { exact: false })).toBeVisible()
			await making.getByLabel('Passphrase of the pack', { exact: true }).fill('short')
			await making.getByLabel('Passphrase of the pack again').fill('short')
			for (const [folder, words] of [
				[stick, 'Passphrase of the pack has 5 characters. Choose one of 8 or more.'],
				['stick', 'The folder "stick" is not a whole path.'],
				[join(stick, 'none'), `There is no folder ${stick}/none.`],
				[join(stick, 'note.txt'), 'is a file, not a folder.'],
				['/proc/self', 'cannot be written to'],
			] as const) {
				await making.getByLabel('Folder or stick').fill(folder)
				await button(making, 'Make the pack').press('Enter')
				await expect(making.getByRole('alert').filter({ hasText: words })).toBeVisible()
				await expect(making.getByRole('checkbox', { name: /Tui Ashdown/ })).toBeChecked()
				await expect(making.getByLabel('Folder or stick')).toHaveValue(folder)
				if (folder === stick)
					for (const label of ['Passphrase of the pack', 'Passphrase of the pack again'])
						await making.getByLabel(label, { exact: true }).fill(packPassphrase)
			}
			await shot(clinic, 'trouble')
			await making.getByLabel('Folder or stick').fill(stick)
			await button(making, 'Make the pack').press('Enter')
			await expect(making.getByRole('status').filter({ hasText: '2 players' })).toBeVisible()
			await expect(
				panel(clinic, 'Packs that went out').getByRole('row', { name: /Tui Ashdown/ }),
			).toContainText('Not yet')
			const pack = join(stick, readdirSync(stick).find((name) => name.startsWith('pack-')) ?? '')
			expect(readdirSync(stick).sort()).toEqual(['note.txt', pack.slice(stick.length + 1)])
			await shot(clinic, 'made')
			await accessible(clinic)
			lap('pack made')

			// the laptop: first screen, wrong path and wrong passphrase first
			await laptop.goto(laptopHost.url)
			await laptop.getByLabel('Backup or pack file').fill(`${pack}x`)
			await laptop.getByLabel('Pack passphrase').fill('not this one at all')
			await button(laptop, 'Bring these records here').press('Enter')
			await expect(
				laptop.getByRole('alert').filter({ hasText: `There is no file ${pack}x.` }),
			).toBeVisible()
			await laptop.getByLabel('Backup or pack file').fill(pack)
			await button(laptop, 'Bring these records here').press('Enter')
			await expect(
				laptop.getByRole('alert').filter({ hasText: 'The passphrase does not open this pack.' }),
			).toBeVisible()
			await shot(laptop, 'first-screen')
			await laptop.getByLabel('Pack passphrase').fill(packPassphrase)
			await button(laptop, 'Bring these records here').press('Enter')
			await expect(laptop.getByRole('heading', { name: 'The pack was opened' })).toBeVisible()
			await expect(laptop.getByRole('heading', { name: 'Set up the clinic' })).toHaveCount(0)
			await shot(laptop, 'opened')
			await button(laptop, 'Go on to unlock').press('Enter')
			await laptop.getByLabel('Passphrase', { exact: true }).fill(packPassphrase)
			await laptop.keyboard.press('Enter')
			await to(laptop, 'Outreach')
			await expect(
				laptop.getByRole('table', { name: 'Players on this laptop' }).getByRole('row'),
			).toHaveCount(3)
			await expect(
				laptop.getByText(
					/^2 players; .*Shelf: yes\. Protocol .*Entered here: 0 records, 2 open drafts\.$/,
				),
			).toBeVisible()
			await shot(laptop, 'carries')
			await accessible(laptop)
			lap('pack opened')

			// away: details and a consent of one player, a short assessment, a player entered on the spot
			await workAt(laptop, 'Tidewater United U14', 'deny', '247')
			await openPlayer(laptop, 'owain', 'Owain Trescott')
			await feet(laptop, /assessment$/, '271', '272')
			lap('worked away')

			// meanwhile at the clinic: the same fields of the same player, and the same newcomer
			await workAt(clinic, 'Saltmarsh Rovers U15', 'permit', '245')
			lap('worked at home')

			// the way back
			await to(laptop, 'Outreach')
			const back = panel(laptop, 'The way back')
			await back.getByLabel('Folder or stick').fill(join(stick, 'none'))
			await back.getByLabel('Passphrase of the pack').fill(packPassphrase)
			await button(back, 'Make the file for the way back').press('Enter')
			await expect(back.getByRole('alert').filter({ hasText: 'There is no folder' })).toBeVisible()
			await expect(back.getByLabel('Passphrase of the pack')).toHaveValue(packPassphrase)
			await back.getByLabel('Folder or stick').fill(stick)
			await button(back, 'Make the file for the way back').press('Enter')
			await expect(back.getByRole('status').filter({ hasText: 'was written' })).toBeVisible()
			const returned = join(
				stick,
				readdirSync(stick).find((name) => name.startsWith('return-')) ?? '',
			)
			await shot(laptop, 'way-back')

			// come home: look first, then bring it in, and once more
			await to(clinic, 'Outreach')
			const home = panel(clinic, 'Come home')
			await home.getByLabel('Passphrase of the pack').fill(packPassphrase)
			for (const [file, words] of [
				[stick, 'is a folder, not a file'],
				[pack, 'This is a pack that goes out.'],
				[join(stick, 'note.txt'), 'not a whole Lastwright pack'],
			] as const) {
				await home.getByLabel('File for the way back').fill(file)
				await button(home, 'Look into the file').press('Enter')
				await expect(home.getByRole('alert').filter({ hasText: words })).toBeVisible()
			}
			await home.getByLabel('File for the way back').fill(returned)
			await button(home, 'Look into the file').press('Enter')
			const looked = home.getByRole('status')
			await expect(looked).toContainText(
				'2 questions to answer afterwards. Drafts changed in both places, both kept: Tui Ashdown.',
			)
			await expect(looked).toContainText('perhaps one person entered twice')
			const numbers =
				/Records before (\d+), after (\d+)\. In the file (\d+): (\d+) added, (\d+) here already, 0 put aside/
					.exec((await looked.textContent()) ?? '')
					?.slice(1)
					.map(Number)
			expect(numbers?.[1], `before and added: ${numbers}`).toBe(
				(numbers?.[0] ?? 0) + (numbers?.[3] ?? 0),
			)
			await shot(clinic, 'look')
			await button(home, 'Bring it in').press('Enter')
			const done = home.getByRole('status').filter({ hasText: 'Receipt for the laptop' })
			await expect(done).toContainText(
				`Brought in: ${numbers?.[3]} records added, before ${numbers?.[0]}, after ${numbers?.[1]}.`,
			)
			const receipt =
				/Receipt for the laptop: (\S+)\./.exec((await done.textContent()) ?? '')?.[1] ?? ''
			await home.getByLabel('Passphrase of the pack').fill(packPassphrase)
			await button(home, 'Look into the file').press('Enter')
			await expect(looked).toContainText('It was brought in before.')
			await button(home, 'Bring it in').press('Enter')
			await expect(done).toContainText('This file was brought in before. Nothing was added twice.')
			const kept = panel(clinic, 'What came home')
			await expect(
				kept.getByText(/brought in by Imke Darrow\. Receipt for the laptop/),
			).toHaveCount(1)
			await expect(
				kept.getByText(`Records before ${numbers?.[0]}, after ${numbers?.[1]}.`, { exact: false }),
			).toBeVisible()
			await expect(
				panel(clinic, 'Packs that went out').getByRole('row', { name: /Tui Ashdown/ }),
			).toContainText('Yes')
			await shot(clinic, 'questions')
			await accessible(clinic)
			lap('brought home')

			// both values of each question; the answers stand
			const asked = panel(clinic, 'To answer')
			const clubs = asked.getByRole('radiogroup', { name: 'Club of Tui Ashdown', exact: true })
			await expect(clubs.getByRole('radio')).toHaveCount(2)
			await expect(clubs.getByRole('radio', { name: /Saltmarsh Rovers U15 \(here/ })).toBeVisible()
			await clubs.getByRole('radio', { name: /Tidewater United U14 \(away/ }).press('Space')
			await asked
				.locator('form')
				.filter({
					has: clinic.getByRole('radiogroup', { name: 'Club of Tui Ashdown', exact: true }),
				})
				.getByRole('button', { name: 'This one counts' })
				.press('Enter')
			await expect(clubs).toHaveCount(0)
			const coach = asked.getByRole('radiogroup', {
				name: 'Consent to sharing with a coach or club of Tui Ashdown',
			})
			await expect(coach.getByRole('radio', { name: /given \(here/ })).toBeVisible()
			await coach.getByRole('radio', { name: /refused \(away/ }).press('Space')
			await button(asked, 'This one counts').press('Enter')
			await expect(asked).toHaveCount(0)

			// two drafts of one player become one: what differs is chosen
			const drafts = kept.getByRole('table', { name: 'Drafts of Tui Ashdown' })
			await expect(drafts.getByRole('row', { name: /^Heel to toe, left \(mm\)/ })).toBeVisible()
			await expect(button(kept, 'Join the two')).toBeDisabled()
			await expect(kept.getByText(/^To join, choose first: .*Heel to toe, left/)).toBeVisible()
			await shot(clinic, 'two-drafts')
			for (const row of await drafts.getByRole('row').all()) {
				const radios = row.getByRole('radio')
				if ((await radios.count()) === 0) continue
				const wanted = row.getByRole('radio', { name: 'Heel to toe, left (mm): 247' })
				await ((await wanted.count()) === 1 ? wanted : radios.first()).press('Space')
			}
			await button(kept, 'Join the two').press('Enter')
			await expect(drafts).toHaveCount(0)

			// the newcomer of both places: joined by a person, apart again, and joined
			await expect(
				kept.getByText('Ida Fieldling came home and Ida Fieldling stands here', { exact: false }),
			).toBeVisible()
			for (const name of [
				'One person: join them',
				'Take them apart again',
				'One person: join them',
			])
				await button(kept, name).press('Enter')
			await expect(kept.getByText('they are shown as one player', { exact: false })).toBeVisible()
			await shot(clinic, 'joined')
			await to(clinic, 'Players')
			await clinic.getByRole('textbox', { name: 'Search players' }).fill('fieldling')
			await expect(clinic.getByRole('row')).toHaveCount(2)
			await openPlayer(clinic, 'tui', 'Tui Ashdown')
			await expect(clinic.getByRole('textbox', { name: 'Club' })).toHaveValue(
				'Tidewater United U14',
			)
			await clinic.getByRole('button', { name: /assessment$/ }).press('Enter')
			await clinic
				.getByRole('navigation', { name: 'Steps' })
				.getByRole('button', { name: 'Feet', exact: true })
				.press('Enter')
			await expect(
				clinic.getByRole('textbox', { name: 'Heel to toe, left', exact: true }),
			).toHaveValue('247')
			lap('answered and joined')

			// the laptop's trail stands beside the clinic's own, and both are whole
			await to(clinic, 'Outreach')
			await panel(clinic, 'What came home')
				.getByRole('link', { name: 'Read the trail' })
				.press('Enter')
			await clinic.getByLabel('Trail of').selectOption({ index: 2 })
			await expect(
				clinic.getByRole('table', { name: 'Audit rows' }).getByRole('row').nth(3),
			).toBeVisible()
			await expect(clinic.getByRole('table', { name: 'Audit rows' })).toContainText('Imke Darrow')
			await button(clinic, 'Check the trail').press('Enter')
			await expect(
				clinic.getByText(
					/rows checked, and \d+ that laptops brought home: none is missing, none was altered/,
				),
			).toBeVisible()
			await shot(clinic, 'trail')

			// with the receipt the laptop's copy goes, and a register line stays
			const off = panel(laptop, 'Take the records off this laptop')
			await off.getByLabel('Receipt from home').fill('1a2b-3c4d-5e6f')
			await button(off, 'Remove the copy here').press('Enter')
			await expect(off.getByRole('alert').filter({ hasText: 'not the receipt' })).toBeVisible()
			await off.getByLabel('Receipt from home').fill(receipt)
			await button(off, 'Remove the copy here').press('Enter')
			await expect(
				laptop.getByRole('status').filter({ hasText: 'were taken off this laptop' }),
			).toBeVisible()
			await shot(laptop, 'removed')
			await laptop.getByRole('link', { name: 'under Retention' }).press('Enter')
			await expect(
				laptop.getByRole('table', { name: 'Register' }).getByRole('row', { name: /Tui Ashdown/ }),
			).toContainText(`merged at home, receipt ${receipt}`)
			await shot(laptop, 'register')
			lap('laptop emptied')
			expect(faults).toEqual([])
		} finally {
			await Promise.all([clinicHost.kill(), laptopHost.kill()])
			for (const folder of [data, stick]) rmSync(folder, { recursive: true, force: true })
		}
	},
)
