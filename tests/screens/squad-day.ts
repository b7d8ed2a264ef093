/**
 * The 40 players of the screening day that the test runs through, their roster, and how a desk
 * calls a player, enters measures and goes back to the board.
 */
import { expect, type Page } from '@playwright/test'
import { hostCall } from './drive.ts'

interface Placed {
	playerId: string
	number: string
	state: string
}
export interface BoardNow {
	squadId: string
	day: string
	rows: Placed[]
}
/** Takes a picture of the page. */
export type Shot = (name: string) => Promise<unknown>
/** The board as the host has it. */
export const boardOf = (page: Page, squadId: string) =>
	hostCall<BoardNow>(page, 'squad.open', { squadId })

const players = 40
export const absent = 39
export const refused = 40
export const noWidth = 12
/** Players checked in at the desk of this screen; the second desk takes the others. */
export const firstDesk = 14
/** Players on record since last year; on the day they wear one another's shirts. */
export const swapped = [3, 4] as const
/** Grown players: nothing about growth is left to decide before signing. */
export const adults = [13, 14, 17, 18]
const pad = (value: number) => String(value).padStart(2, '0')
const thisYear = new Date().getFullYear()
export const person = (number: number) => {
	const ones = 'abcdefghij'.charAt(number % 10).repeat(3)
	const tens = 'klmnopqrst'.charAt(Math.floor(number / 10)).repeat(3)
	const year = thisYear - (adults.includes(number) ? 24 : 16) + (number % 3)
	return {
		givenName: `Given${number}`,
		familyName: `Fam${ones}${tens}`,
		birthDate: `${year}-0${1 + (number % 9)}-${pad(1 + (number % 27))}`,
		sex: number % 2 ? 'male' : 'female',
	}
}
export const named = (number: number) => `${person(number).givenName} ${person(number).familyName}`
const line = (number: number, shirt: string | number = number) => {
	const { givenName, familyName, birthDate, sex } = person(number)
	const consents = number % 8 === 0 ? '' : 'squad-summary'
	return (
		`${shirt},${givenName},${familyName},${birthDate},${sex},Rae ${familyName},` +
		`rae${number}@example.org,${consents}`
	)
}
export const heads = 'Number,Given name,Family name,Birth date,Sex,Guardian,Guardian email,Consents'
const roster = [heads, ...Array.from({ length: players }, (_, at) => line(at + 1))].join('\n')
export const badRoster = roster
	.replace(line(7), line(7, 6))
	.replace(line(9), line(9).replace(person(9).birthDate, '31/31/2011'))
	.replace(line(11), line(11).replace(',male,', ',boyish,'))
export const walking = Array.from({ length: players }, (_, at) => at + 1).filter(
	(number) => number !== absent && number !== refused,
)
export const yearAgo = new Date(Date.now() - 340 * 86_400_000).toISOString().slice(0, 10)
/** Heel to toe of a player's feet: a thing of the player, not of the shirt. */
export const footMm = (number: number) => (number === swapped[1] ? 281 : 248 + (number % 12))

export const board = (page: Page) => page.getByRole('table', { name: 'Board' })
/** The number typed at the desk, Enter, then the station's heading with the player. */
export async function call(page: Page, number: number, station: string) {
	await page.getByLabel('Number of the player').focus()
	await page.keyboard.insertText(String(number))
	await page.keyboard.press('Enter')
	await expect(page.getByRole('heading', { name: station, exact: true })).toBeVisible()
	await expect(page.getByText(`Given${number} `, { exact: false }).first()).toBeVisible()
}
/** Values from the first field on, each left with Enter; nothing typed leaves a field empty. */
export async function enter(page: Page, first: string, values: readonly string[]) {
	await page.getByRole('textbox', { name: first, exact: true }).focus()
	for (const value of values) {
		if (value) await page.keyboard.insertText(value)
		await page.keyboard.press('Enter')
	}
}
export const doneButton = (page: Page) =>
	page.getByRole('button', { name: 'Done here, back to the board' })
export async function done(page: Page) {
	await doneButton(page).press('Enter')
	await expect(board(page)).toBeVisible()
}
export const desk = (page: Page, name: string) =>
	page
		.getByRole('group', { name: 'Station at this desk' })
		.getByRole('button', { name, exact: true })
export const measures = (number: number, foot = footMm(number)) => [
	`${150 + (number % 20)},5`,
	String(44 + (number % 20)),
	String(foot),
	String(foot + 1),
	'',
	'',
	...(number === noWidth ? [] : ['94', '95']),
]
