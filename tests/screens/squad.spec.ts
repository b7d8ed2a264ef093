/**
 * A screening day of 40 in a real browser, the stations by keyboard alone: roster, swaps, gaps,
 * signing one by one, reports, the club's summary; then a pack.
 */
import { mkdtempSync, readdirSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, type Page, test } from '@playwright/test'
import { decideOn, hostCall } from './drive.ts'
import { startHost } from './host.ts'

const players = 40
const absent = 39
const refused = 40
const noWidth = 12
/** Players checked in at the desk of this screen; the second desk takes the others. */
const firstDesk = 14
/** Players on record since last year; on the day they wear one another's shirts. */
const swapped = [3, 4] as const
/** Grown players: nothing about growth is left to decide before signing. */
const adults = [13, 14, 17, 18]
const pad = (value: number) => String(value).padStart(2, '0')
const thisYear = new Date().getFullYear()
const person = (number: number) => ({
	givenName: `Given${number}`,
	familyName: `Fam${'abcdefghij'.charAt(number % 10).repeat(3)}${'klmnopqrst'.charAt(Math.floor(number / 10)).repeat(3)}`,
	birthDate: `${thisYear - (adults.includes(number) ? 24 : 16) + (number % 3)}-0${1 + (number % 9)}-${pad(1 + (number % 27))}`,
	sex: number % 2 ? 'male' : 'female',
})
const line = (number: number, shirt: string | number = number) => {
	const one = person(number)
	return (
		`${shirt},${one.givenName},${one.familyName},${one.birthDate},${one.sex},Rae ` +
		`${one.familyName},rae${number}@example.org,${number % 8 === 0 ? '' : 'squad-summary'}`
	)
}
const heads = 'Number,Given name,Family name,Birth date,Sex,Guardian,Guardian email,Consents'
const roster = [heads, ...Array.from({ length: players }, (_, at) => line(at + 1))].join('\n')
const badRoster = roster
	.replace(line(7), line(7, 6))
	.replace(line(9), line(9).replace(person(9).birthDate, '31/31/2011'))
	.replace(line(11), line(11).replace(',male,', ',boyish,'))
const walking = Array.from({ length: players }, (_, at) => at + 1).filter(
	(one) => one !== absent && one !== refused,
)
const yearAgo = new Date(Date.now() - 340 * 86_400_000).toISOString().slice(0, 10)
/** Heel to toe of a player's feet: a thing of the player, not of the shirt. */
const footMm = (number: number) => (number === swapped[1] ? 281 : 248 + (number % 12))

const board = (page: Page) => page.getByRole('table', { name: 'Board' })
/** The number typed at the desk, Enter, then the station's heading with the player. */
async function call(page: Page, number: number, station: string) {
	await page.getByLabel('Number of the player').focus()
	await page.keyboard.insertText(String(number))
	await page.keyboard.press('Enter')
	await expect(page.getByRole('heading', { name: station, exact: true })).toBeVisible()
	await expect(page.getByText(`Given${number} `, { exact: false }).first()).toBeVisible()
}
/** Values from the first field on, each left with Enter; nothing typed leaves a field empty. */
async function enter(page: Page, first: string, values: readonly string[]) {
	await page.getByRole('textbox', { name: first, exact: true }).focus()
	for (const value of values) {
		if (value) await page.keyboard.insertText(value)
		await page.keyboard.press('Enter')
	}
}
const doneButton = (page: Page) =>
	page.getByRole('button', { name: 'Done here, back to the board' })
async function done(page: Page) {
	await doneButton(page).press('Enter')
	await expect(board(page)).toBeVisible()
}
const desk = (page: Page, name: string) =>
	page
		.getByRole('group', { name: 'Station at this desk' })
		.getByRole('button', { name, exact: true })
const measures = (number: number, foot = footMm(number)) => [
	`${150 + (number % 20)},5`,
	String(44 + (number % 20)),
	String(foot),
	String(foot + 1),
	'',
	'',
	...(number === noWidth ? [] : ['94', '95']),
]

test('a day of 40 players, from the roster to the summary for the club', async ({ page }, info) => {
	test.setTimeout(300_000)
	const data = mkdtempSync(join(tmpdir(), 'lastwright-squad-'))
	const reports = mkdtempSync(join(tmpdir(), 'lastwright-squad-reports-'))
	const faults: string[] = []
	page.on('console', (message) => {
		if (/Content Security Policy|unique "key"/i.test(message.text())) faults.push(message.text())
	})
	page.on('pageerror', (error) => faults.push(error.message))
	const host = await startHost('--data', data)
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
	const shot = (name: string) =>
		page.screenshot({ path: info.outputPath(`${name}.png`), fullPage: true })
	try {
		await page.goto(host.url)
		await hostCall(page, 'session.setUp', {
			clinic: {
				format: 'lastwright-clinic',
				version: 1,
				name: 'Harrow Lane Foot Clinic',
				address: [],
				colour: '#1f5f5b',
				clinician: { name: 'Imke Darrow', registration: 'DEMO-00417' },
			},
			passphrase: 'seven grey herons',
		})
		// two of them were measured a year ago
		for (const number of swapped) {
			const { playerId } = await hostCall(page, 'players.save', { player: person(number) })
			const { draft } = await hostCall(page, 'drafts.open', { playerId, visitDate: yearAgo })
			await hostCall(page, 'drafts.save', {
				draftId: draft.draftId,
				content: {
					...draft.content,
					visit: {
						...draft.content.visit,
						feet: {
							left: { heelToToeMm: footMm(number) },
							right: { heelToToeMm: footMm(number) + 1 },
						},
					},
					decisions: { ...draft.content.decisions, consentNoted: true },
				},
			})
			await decideOn(page, playerId, yearAgo)
			await hostCall(page, 'visits.sign', { draftId: draft.draftId })
		}
		await page.reload()

		// the roster: bad rows are named by row, column, value and remedy; nothing is taken in with
		// them
		await page.getByRole('link', { name: 'Squad day' }).press('Enter')
		await page.getByLabel('Team').fill('Harrow Rovers')
		await page.getByLabel('Roster', { exact: true }).fill(badRoster)
		await page.getByRole('button', { name: 'Look at the roster' }).press('Enter')
		await expect(
			page.getByText('Row 8, number: given twice, given "6" in rows 7 and 8', { exact: false }),
		).toBeVisible()
		await expect(
			page.getByText(/Row 10, birth date: not a date of the calendar, given "31\/31\/2011"/),
		).toBeVisible()
		await expect(
			page.getByText('Row 12, sex: not known, given "boyish"', { exact: false }),
		).toBeVisible()
		await expect(page.getByText('37 players can be taken in, 3 problems.')).toBeVisible()
		await expect(page.getByRole('button', { name: 'Take in and open the board' })).toBeDisabled()
		await shot('roster-errors')
		await page.getByLabel('Roster', { exact: true }).fill(roster)
		await page.getByRole('button', { name: 'Look at the roster' }).press('Enter')
		await expect(page.getByText('40 players can be taken in, 0 problems.')).toBeVisible()
		await expect(page.getByRole('button', { name: 'Take in and open the board' })).toBeDisabled()
		for (const number of swapped)
			await page
				.getByRole('radiogroup', {
					name: `Who is ${person(number).givenName} ${person(number).familyName}`,
				})
				.getByRole('radio', { name: /^Yes, this is/ })
				.press('Space')
		await page.getByRole('button', { name: 'Take in and open the board' }).press('Enter')
		await expect(board(page)).toBeVisible()
		await expect(
			page.getByRole('status').filter({ hasText: '40 players: 40 expected' }),
		).toBeVisible()
		const squadId = page.url().split('/').at(-1) ?? ''
		lap('roster')

		const named = (number: number) => `${person(number).givenName} ${person(number).familyName}`
		await page.getByRole('button', { name: `${named(absent)} is absent` }).press('Enter')
		await page.getByRole('button', { name: `${named(refused)} refused` }).press('Enter')
		await page.getByLabel('Who refused, and what').fill('the player, all of it')
		await page.getByRole('button', { name: 'Note it' }).press('Enter')
		await expect(page.getByRole('status').filter({ hasText: '1 absent, 1 refused' })).toBeVisible()
		// a late arrival may not take a shirt that is on the board
		await page
			.getByLabel('Roster', { exact: true })
			.fill(`${heads}\n7,Late,Comer,2011-11-30,f,Rae Comer,,`)
		await page.getByRole('button', { name: 'Look at the roster' }).press('Enter')
		await page.getByRole('button', { name: 'Add to the board' }).press('Enter')
		await expect(
			page.getByText('A number is on the board already.', { exact: false }),
		).toBeVisible()

		// the second desk checks the others in: the same calls as its screen makes
		const { rows: start, day } = (await hostCall(page, 'squad.open', { squadId })) as {
			rows: { playerId: string; number: string; state: string }[]
			day: string
		}
		for (const { playerId } of start.filter(
			(one) => walking.includes(Number(one.number)) && Number(one.number) > firstDesk,
		)) {
			await hostCall(page, 'squad.mark', { squadId, playerId, presence: 'here', at: 'check-in' })
			const { draft } = await hostCall(page, 'drafts.open', { playerId, visitDate: day })
			await hostCall(page, 'drafts.save', {
				draftId: draft.draftId,
				content: {
					...draft.content,
					visit: { ...draft.content.visit, play: { code: 'association' } },
					decisions: { ...draft.content.decisions, consentNoted: true },
				},
			})
		}
		for (const number of walking.filter((one) => one <= firstDesk)) {
			await call(page, number, 'Check-in')
			await page.getByLabel('Code').selectOption('association')
			await page.getByRole('checkbox').press('Space')
			await done(page)
		}
		await expect(page.getByRole('status').filter({ hasText: '38 on the way' })).toBeVisible()
		lap('check-in of 38, 14 at the screen')

		await desk(page, 'Measures').press('Enter')
		await page.getByLabel('Number of the player').fill('77')
		await page.getByLabel('Number of the player').press('Enter')
		await expect(page.getByText('No player has the number 77.', { exact: false })).toBeVisible()
		await page.getByLabel('Number of the player').fill('')
		for (const number of walking) {
			await call(page, number, 'Measures')
			// only this station's fields
			if (number === 1)
				await expect(page.getByRole('textbox', { name: 'Knee to wall, left' })).toHaveCount(0)
			const other =
				number === swapped[0] ? swapped[1] : number === swapped[1] ? swapped[0] : undefined
			await enter(
				page,
				'Stature',
				measures(number, other === undefined ? undefined : footMm(other)),
			)
			if (other !== undefined) {
				// shirts swapped: the feet do not fit those of last year, and the station is not left
				// before it is settled
				await expect(
					page.getByText(`Is this really ${named(number)}?`, { exact: false }),
				).toBeVisible()
				await expect(
					page.getByText(
						number === swapped[0]
							? /left foot is \d+ mm longer since/
							: /left foot is \d+ mm shorter since/,
					),
				).toBeVisible()
				await shot(`swapped-${number}`)
				await doneButton(page).press('Enter')
				await expect(page.getByText('Answer the question about a swap first.')).toBeVisible()
				for (const [side, value] of [
					['left', footMm(number)],
					['right', footMm(number) + 1],
				] as const)
					await page.getByRole('textbox', { name: `Heel to toe, ${side}` }).fill(String(value))
				await expect(page.getByText('Is this really', { exact: false })).toHaveCount(0)
			}
			await done(page)
		}
		await expect(page.getByRole('row', { name: new RegExp(`${named(noWidth)} `) })).toContainText(
			'Measures 2, Footwear 1',
		)
		await expect(page.getByRole('row', { name: new RegExp(`${named(1)} `) })).toContainText(
			'Footwear 1, Ankles and posture 4',
		)
		lap('measures of 38')

		await desk(page, 'Ankles and posture').press('Enter')
		for (const number of walking.filter((one) => one <= 8)) {
			await call(page, number, 'Ankles and posture')
			await enter(page, 'Knee to wall, left', ['9.5', '10', '', '', '1 1 1 1 1 1', '0 1 1 1 1 1'])
			await done(page)
		}
		await desk(page, 'Footwear').press('Enter')
		for (const number of [1, 2]) {
			await call(page, number, 'Footwear')
			await page.getByRole('button', { name: 'Add a pair' }).press('Enter')
			await page.getByLabel('Name', { exact: true }).fill('match boots')
			await page.getByLabel('Sole', { exact: true }).selectOption('firm-ground')
			await page.getByLabel('Size system').selectOption('eu')
			await page.getByLabel('Size', { exact: true }).fill('39')
			await done(page)
		}
		await expect(page.getByRole('row', { name: new RegExp(`${named(1)} `) })).toContainText(
			'ready to sign',
		)
		await expect(page.getByRole('row', { name: new RegExp(`${named(5)} `) })).toContainText(
			'Footwear 1',
		)
		await shot('board')
		lap('ankles of 8, footwear of 2')

		// the clinician sees what is missing, and signs one by one
		await desk(page, 'Clinician').press('Enter')
		await call(page, noWidth, 'Clinician')
		await expect(
			page.getByText(/Measures\s+lacks .*Ball width, left; Ball width, right/),
		).toBeVisible()
		await page.getByRole('button', { name: 'Back to the board' }).press('Enter')
		await expect(page.getByRole('button', { name: /sign all/i })).toHaveCount(0)
		for (const [at, number] of adults.entries()) {
			await call(page, number, 'Clinician')
			await page.getByRole('button', { name: 'Open the assessment and sign' }).press('Enter')
			await expect(page.getByRole('heading', { name: 'Sign and report' })).toBeVisible()
			const sign = page.getByRole('button', { name: 'Sign', exact: true })
			await expect(sign).toBeEnabled()
			await sign.press('Enter')
			await expect(page.getByText('Signed', { exact: true }).first()).toBeVisible({
				timeout: 20_000,
			})
			await page.getByRole('link', { name: 'Squad day' }).press('Enter')
			await page.getByRole('link', { name: 'Open the board' }).press('Enter')
			await expect(page.getByRole('status').filter({ hasText: `${at + 1} signed` })).toBeVisible()
		}
		lap('signing of 4 at the screen')
		// the others as the screen does it, each draft by a signature of its own
		const { rows } = (await hostCall(page, 'squad.open', { squadId })) as { rows: typeof start }
		const rest = rows.filter(
			(one) => one.state === 'open' && Number(one.number) !== noWidth && Number(one.number) <= 24,
		)
		for (const { playerId } of rest) {
			await hostCall(page, 'visits.sign', { draftId: await decideOn(page, playerId, day) })
		}
		const signed = adults.length + rest.length
		// for each a report, for each minor the guardian's page
		const pages = signed + rest.length
		await expect(
			page.getByRole('status').filter({ hasText: `${signed} signed, 1 absent, 1 refused` }),
		).toBeVisible({ timeout: 10_000 })
		lap(`signing of ${rest.length} more`)

		// cancelled on the way, then whole
		const said = page.getByRole('status').filter({ hasText: /of \d+ players/ })
		await page.getByLabel('Folder for the reports').fill(reports)
		await page.getByRole('button', { name: 'Write the reports' }).press('Enter')
		await expect(said).toContainText(`of ${signed} players`)
		await page.getByRole('button', { name: 'Cancel' }).press('Enter')
		await expect(said).toContainText(/Cancelled\. \d+ of \d+ players are written and whole\./)
		const whole = Number(/Cancelled\. (\d+)/.exec((await said.textContent()) ?? '')?.[1])
		expect(whole).toBeLessThan(signed)
		expect(readdirSync(reports).filter((name) => name.endsWith('-report.pdf'))).toHaveLength(whole)
		await page.getByRole('button', { name: 'Write the reports' }).press('Enter')
		await expect(said).toHaveText(`${signed} of ${signed} players, ${pages} files. Done.`, {
			timeout: 60_000,
		})
		const files = readdirSync(reports)
		expect(files).toHaveLength(pages)
		expect(files.join(' ')).not.toMatch(/Given|Fam|writing/)
		lap('reports')

		// the club's summary holds those who consented, and says who was left out
		const saved = page.waitForEvent('download')
		await page.getByRole('button', { name: 'Summary for the club' }).press('Enter')
		expect((await saved).suggestedFilename()).toBe(`squad-${day}-club.pdf`)
		const left = page.getByRole('alert').filter({ hasText: 'Left out of it: 3 players.' })
		await expect(left).toContainText(named(8))
		await expect(left).not.toContainText(`${named(adults[0] ?? 0)}:`)
		await shot('after')
		lap('summary')

		await page.getByRole('link', { name: 'Outreach' }).press('Enter')
		await expect(page.getByRole('heading', { name: 'Make a pack' })).toBeVisible()
		await page.getByRole('button', { name: 'Choose all that are shown' }).press('Enter')
		await page.getByLabel('Folder or stick').fill(reports)
		await page
			.getByLabel('Passphrase of the pack', { exact: true })
			.first()
			.fill('three mild otters')
		await page.getByLabel('Passphrase of the pack again').fill('three mild otters')
		await page.getByRole('button', { name: 'Make the pack' }).press('Enter')
		await expect(page.getByText('40 players', { exact: false }).first()).toBeVisible({
			timeout: 30_000,
		})
		await shot('outreach')
		lap('pack')
		expect(faults).toEqual([])
	} finally {
		await host.kill()
		for (const folder of [data, reports]) rmSync(folder, { recursive: true, force: true })
	}
})
