/** The board of the screening day: clinic, roster, who is absent, and check-in at two desks. */
import { expect, type Page } from '@playwright/test'
import { decideOn, hostCall } from './drive.ts'
import {
	absent,
	type BoardNow,
	badRoster,
	board,
	call,
	done,
	firstDesk,
	footMm,
	heads,
	named,
	person,
	refused,
	type Shot,
	swapped,
	walking,
	yearAgo,
} from './squad-day.ts'

/** A clinic, and two players of the day measured a year ago. */
export async function setUp(page: Page) {
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
			},
		})
		await decideOn(page, playerId, yearAgo)
		await hostCall(page, 'visits.sign', { draftId: draft.draftId })
	}
}
/** Bad rows are named by row, column, value and remedy; nothing is taken in with them. */
export async function takeRoster(page: Page, shot: Shot): Promise<string> {
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
	await shot('roster-errors')
	// repaired in place, each read again as the field is left; the text stays as it was pasted
	for (const [cell, words] of [
		['Row 8, number', '7'],
		['Row 10, birth date', person(9).birthDate],
		['Row 12, sex', 'boy'],
	] as const) {
		await page.getByLabel(cell).fill(words)
		await page.getByLabel(cell).press('Enter')
		await expect(page.getByLabel(cell)).toHaveCount(0)
	}
	await expect(page.getByText('40 players can be taken in, 0 problems.')).toBeVisible()
	await expect(page.getByRole('button', { name: 'Import and open the board' })).toBeDisabled()
	for (const number of swapped)
		await page
			.getByRole('radiogroup', {
				name: `Who is ${named(number)}`,
			})
			.getByRole('radio', { name: /^Yes, this is/ })
			.press('Space')
	await page.getByRole('button', { name: 'Import and open the board' }).press('Enter')
	await expect(board(page)).toBeVisible()
	await expect(
		page.getByRole('status').filter({ hasText: '40 players: 40 expected' }),
	).toBeVisible()
	return page.url().split('/').at(-1) ?? ''
}
export async function noteAbsentAndRefused(page: Page) {
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
	await expect(
		page.getByText('given twice, given "7" on the board already', { exact: false }),
	).toBeVisible()
	await expect(
		page.getByRole('button', { name: 'Take in 0 players without 1 more' }),
	).toBeDisabled()
	await page.getByRole('button', { name: 'Leave out row 2' }).press('Enter')
	await expect(page.getByText('There is no player in the roster.')).toBeVisible()
}
/** The second desk checks the others in: the same calls as its screen makes. */
export async function checkInElsewhere(page: Page, { squadId, rows, day }: BoardNow) {
	for (const { playerId } of rows.filter(
		({ number }) => walking.includes(Number(number)) && Number(number) > firstDesk,
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
}
export async function checkInHere(page: Page) {
	for (const number of walking.filter((number) => number <= firstDesk)) {
		await call(page, number, 'Check-in')
		await page.getByLabel('Code').selectOption('association')
		await page.getByRole('checkbox').press('Space')
		await done(page)
	}
	await expect(page.getByRole('status').filter({ hasText: '38 on the way' })).toBeVisible()
}
