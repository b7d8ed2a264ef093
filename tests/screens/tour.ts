/**
 * Every screen of the workstation in one list, for the checks and pictures that go through all of
 * them.
 */
import { expect, type Page } from '@playwright/test'
import { hostCall, settled, still } from './drive.ts'
import { signedWithPain } from './walks-before.ts'

export interface Stop {
	name: string
	open: (page: Page) => Promise<void>
}
/** A dialog of the stop before would hide this one. */
const alone = async (page: Page) => {
	for (let tries = 0; tries < 3 && (await page.getByRole('dialog').count()) > 0; tries++) {
		await page.keyboard.press('Escape')
		await still(page)
	}
}
const at = (name: string, address: string, then?: (page: Page) => Promise<void>): Stop => ({
	name,
	open: async (page) => {
		await alone(page)
		await page.evaluate((to) => {
			location.hash = to
		}, address)
		await settled(page)
		await then?.(page)
	},
})
const feet = (playerId: string, name: string, then: (page: Page) => Promise<void>): Stop => ({
	name,
	open: async (page) => {
		await step(playerId, 'Feet').open(page)
		await then(page)
	},
})
const dialog = async (page: Page) => {
	await expect(page.getByRole('dialog')).toBeVisible()
	await still(page)
}
const paste = async (page: Page) => {
	await page.getByRole('textbox', { name: 'Heel to toe, left', exact: true }).focus()
	await page.evaluate(() => {
		const data = new DataTransfer()
		data.setData('text/plain', '251\t252\n181\t999')
		document.activeElement?.dispatchEvent(
			new ClipboardEvent('paste', { clipboardData: data, bubbles: true, cancelable: true }),
		)
	})
	await dialog(page)
}
const fieldHelp = async (page: Page) => {
	await page.getByRole('textbox', { name: 'Heel to toe, left', exact: true }).focus()
	const help = page.getByRole('region', { name: 'How to measure' })
	if ((await help.count()) === 0) await page.keyboard.press('F1')
	await expect(help).toContainText('Error.')
	await still(page)
}
const visitPage = async (page: Page) => {
	await page
		.getByRole('button', { name: /^Open visit of/ })
		.first()
		.press('Enter')
	await expect(page.getByRole('heading', { name: /^Visit of/ })).toBeVisible()
}
const audited = async (page: Page) => {
	await expect(page.getByRole('heading', { name: 'Forecasts held to account' })).toBeVisible()
	await still(page)
}
const dueAnswering = async (page: Page) => {
	await page
		.getByRole('button', { name: /^Answer for/ })
		.first()
		.press('Enter')
	await expect(page.getByRole('form', { name: /^Answer for/ })).toBeVisible()
	await still(page)
}
const rights = async (page: Page) => {
	await page.getByRole('button', { name: 'All that can be done, by role' }).press('Enter')
	await expect(page.getByRole('table', { name: 'What each role sees and may do' })).toBeVisible()
	await still(page)
}
const takingOff = async (page: Page) => {
	await page
		.getByRole('button', { name: /^Take .* off$/ })
		.first()
		.press('Enter')
	await expect(page.getByRole('form', { name: /^Take .* off$/ })).toBeVisible()
	await still(page)
}
const dueReferral = async (page: Page) => {
	await page
		.getByRole('button', { name: /^Write what came of it/ })
		.first()
		.press('Enter')
	await expect(page.getByRole('form', { name: /^What came of it/ })).toBeVisible()
	await still(page)
}
/** Of a player of its own, whose visit lies before the day of any clock. */
function recheck(): Stop {
	let known: Promise<string> | undefined
	return {
		name: 're-check',
		open: async (page) => {
			known ??= signedWithPain(page)
			await at('re-check', `#/recheck/${await known}`).open(page)
			await expect(page.getByRole('heading', { level: 1, name: 'Since then' })).toBeAttached()
		},
	}
}
const outboxChosen = async (page: Page) => {
	const all = page.getByLabel(/^Choose all|shown are chosen$/)
	if (!(await all.isChecked())) await all.press('Space')
	await expect(page.getByRole('group', { name: 'With those chosen' })).toBeVisible()
	await still(page)
}
const outboxLooking = async (page: Page) => {
	await outboxChosen(page)
	await page.getByRole('button', { name: /^Look through/ }).press('Enter')
	await expect(page.getByRole('button', { name: /^(Right|Seen): / })).toBeEnabled()
	await still(page)
}
const step = (playerId: string, name: string): Stop => ({
	name: `assessment ${name.toLowerCase()}`,
	open: async (page) => {
		await alone(page)
		await page.evaluate((to) => {
			location.hash = to
		}, `#/assessment/${playerId}`)
		await page
			.getByRole('navigation', { name: 'Steps' })
			.getByRole('button', { name, exact: true })
			.click()
		await settled(page)
	},
})
/**
 * The screens of an open demo, in the order of a day. The player is an adolescent, so that every
 * step is there.
 */
export async function tour(page: Page): Promise<Stop[]> {
	const { cards } = await hostCall(page, 'players.search', { query: 'tui', limit: 1 })
	const id = String(cards[0].playerId)
	const { shelf } = await hostCall(page, 'shelf.get', {})
	const model = shelf?.models[0]?.id as string | undefined
	const squads = await hostCall(page, 'squad.create', {
		text:
			'Number,Given name,Family name,Birth ' +
			'date,Sex\n1,Ada,Invented,2011-03-02,f\n2,Bo,Invented,2010-05-09,m',
		team: 'Invented Rovers',
		day: '2027-01-20',
		same: {},
	}).catch(() => undefined)
	return [
		at('players', '#/players'),
		at('players import', '#/players/import'),
		at('new player', '#/players/new'),
		at('player', `#/players/${id}`),
		at('visit', `#/players/${id}`, visitPage),
		at('trends', `#/trends/${id}`),
		...['Play', 'Flags', 'Feet', 'Ankles', 'Posture', 'Growth', 'Decide', 'Sign'].map((name) =>
			step(id, name),
		),
		feet(id, 'field help', fieldHelp),
		feet(id, 'paste', paste),
		at('palette', '#/players', async (page) => {
			await page.keyboard.press('Control+k')
			await dialog(page)
		}),
		at('shortcuts', '#/players', async (page) => {
			await page.keyboard.press('Control+/')
			await dialog(page)
		}),
		at('hand over', '#/players', async (page) => {
			await page.keyboard.press('F2')
			await dialog(page)
			await expect(page.getByRole('radio').first()).toBeFocused()
		}),
		at('season', `#/season/${id}`),
		at('consents', `#/consents/${id}`),
		at('shelf', '#/shelf'),
		at('shelf new', '#/shelf/new'),
		at('shelf import', '#/shelf/import'),
		at('shelf guide', '#/shelf/guide'),
		...(model ? [at('shelf model', `#/shelf/model/${model}`)] : []),
		at('outbox', '#/outbox'),
		at('outbox chosen', '#/outbox', outboxChosen),
		at('outbox looking', '#/outbox', outboxLooking),
		at('outbox unsent', '#/outbox/unsent'),
		at('outbox player', `#/outbox/player/${id}`),
		at('due', '#/due'),
		at('due answering', '#/due', dueAnswering),
		at('due referrals', '#/due/referrals', dueReferral),
		at('audit', '#/audit', audited),
		at('outreach', '#/outreach'),
		at('squad', '#/squad'),
		...(squads ? [at('squad board', `#/squad/${squads.squadId}`)] : []),
		...[
			...['access', 'notices', 'backups', 'after-restore', 'people', 'audit', 'retention'],
			'settings',
		].map((name) => at(`records ${name}`, `#/records/${name}`)),
		at('records rights', '#/records/people', rights),
		at('records taking off', '#/records/people', takingOff),
		...['letterhead', 'protocol', 'records', 'look'].map((name) =>
			at(`settings ${name}`, `#/settings/${name}`),
		),
		...['measures', 'conditions', 'glossary', 'keys', 'news'].map((name) =>
			at(`help ${name}`, `#/help/${name}`),
		),
		recheck(),
	]
}
/**
 * Ways of looking at a screen: by the wish of the browser or the system, and by the application's
 * own setting (Settings, Look).
 */
export const looks = {
	light: { media: { colorScheme: 'light', forcedColors: 'none' }, letters: 1 },
	dark: { media: { colorScheme: 'dark', forcedColors: 'none' }, letters: 1 },
	'high contrast': { media: { colorScheme: 'dark', forcedColors: 'active' }, letters: 1 },
	'text of 200 %': { media: { colorScheme: 'light', forcedColors: 'none' }, letters: 2 },
	// the setting against the wish of the system, so that nothing of the system's colours may show
	// through
	'own light': {
		media: { colorScheme: 'dark', forcedColors: 'none' },
		letters: 1,
		own: { colours: 'light', textPercent: 100 },
	},
	'own dark': {
		media: { colorScheme: 'light', forcedColors: 'none' },
		letters: 1,
		own: { colours: 'dark', textPercent: 100 },
	},
	'own high contrast': {
		media: { colorScheme: 'light', forcedColors: 'none' },
		letters: 1,
		own: { colours: 'contrast', textPercent: 100 },
	},
	'own text of 200 %': {
		media: { colorScheme: 'dark', forcedColors: 'none' },
		letters: 1,
		own: { colours: 'system', textPercent: 200 },
	},
} as const
export type Look = keyof typeof looks
/**
 * Letters are enlarged as the browser does it, by the size of the root; the application's own look
 * as its setting puts it on the page.
 */
export async function put(page: Page, look: Look): Promise<void> {
	const { media, letters, own } = looks[look] as {
		media: (typeof looks)[Look]['media']
		letters: number
		own?: { colours: string; textPercent: number }
	}
	await page.emulateMedia(media)
	await page.evaluate(
		([times, own]) => {
			const { dataset, style } = document.documentElement
			style.fontSize = times === 1 ? '' : `${times * 100}%`
			if (own && own.colours !== 'system') dataset.lwLook = own.colours
			else delete dataset.lwLook
			dataset.lwText = String(own?.textPercent ?? 100)
		},
		[letters, own] as const,
	)
}
