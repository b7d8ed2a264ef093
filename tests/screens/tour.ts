/** Every screen of the workstation in one list, for the checks and pictures that go through all of them. */
import { expect, type Page } from '@playwright/test'

export interface Stop { name: string; open: (page: Page) => Promise<void> }
const quiet = async (page: Page) => {
	await expect(page.getByRole('heading', { level: 1 }).first()).toBeVisible()
	await expect(page.getByRole('status').filter({ hasText: /^Opening/ })).toHaveCount(0)
	await page.waitForTimeout(150)
}
async function hostCall(page: Page, name: string, input: object) {
	const answer = await page.evaluate(async ([name, input]) => (await fetch(`/call/${name}`, { method: 'POST', headers: { 'content-type': 'application/json' }, body: JSON.stringify(input) })).json(), [name, input] as const)
	expect(answer, `${name} ${answer.message ?? ''}`).toMatchObject({ ok: true })
	return answer.value
}
const at = (name: string, address: string): Stop => ({ name, open: async (page) => { await page.evaluate((to) => { location.hash = to }, address); await quiet(page) } })
const step = (playerId: string, name: string): Stop => ({
	name: `assessment ${name.toLowerCase()}`,
	open: async (page) => {
		await page.evaluate((to) => { location.hash = to }, `#/assessment/${playerId}`)
		await page.getByRole('navigation', { name: 'Steps' }).getByRole('button', { name, exact: true }).click()
		await quiet(page)
	},
})
/** The screens of an open demo, in the order of a day. The player is an adolescent, so that every step is there. */
export async function tour(page: Page): Promise<Stop[]> {
	const { cards } = await hostCall(page, 'players.search', { query: 'tui', limit: 1 })
	const id = String(cards[0].playerId)
	const { shelf } = await hostCall(page, 'shelf.get', {})
	const model = shelf?.models[0]?.id as string | undefined
	const squads = await hostCall(page, 'squad.create', { text: 'Number,Given name,Family name,Birth date,Sex\n1,Ada,Invented,2011-03-02,f\n2,Bo,Invented,2010-05-09,m', team: 'Invented Rovers', day: '2027-01-20', same: {} }).catch(() => undefined)
	return [
		at('players', '#/players'), at('new player', '#/players/new'), at('player', `#/players/${id}`),
		...['Player and play', 'Feet', 'Ankles', 'Posture', 'Growth', 'Flags', 'Decide', 'Sign and report'].map((name) => step(id, name)),
		at('season', `#/season/${id}`), at('consents', `#/consents/${id}`),
		at('shelf', '#/shelf'), at('shelf new', '#/shelf/new'), at('shelf import', '#/shelf/import'), at('shelf guide', '#/shelf/guide'), ...(model ? [at('shelf model', `#/shelf/model/${model}`)] : []),
		at('outbox', '#/outbox'), at('outbox player', `#/outbox/player/${id}`), at('outreach', '#/outreach'), at('squad', '#/squad'), ...(squads ? [at('squad board', `#/squad/${squads.squadId}`)] : []),
		...['access', 'backups', 'people', 'audit', 'retention', 'settings'].map((name) => at(`records ${name}`, `#/records/${name}`)),
	]
}
/** Ways of looking at a screen. */
export const looks = {
	light: { media: { colorScheme: 'light', forcedColors: 'none' }, letters: 1 },
	dark: { media: { colorScheme: 'dark', forcedColors: 'none' }, letters: 1 },
	'high contrast': { media: { colorScheme: 'dark', forcedColors: 'active' }, letters: 1 },
	'text of 200 %': { media: { colorScheme: 'light', forcedColors: 'none' }, letters: 2 },
} as const
export type Look = keyof typeof looks
/** Letters are enlarged as the browser does it: by the size of the root. */
export async function put(page: Page, look: Look): Promise<void> {
	const { media, letters } = looks[look]
	await page.emulateMedia(media)
	await page.evaluate((times) => { document.documentElement.style.fontSize = `${times * 100}%` }, letters)
}
