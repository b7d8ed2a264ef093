/**
 * The demo's records: filled once, copied afterwards, and filled again where the copy is not what
 * it should be; and that they show a clinic at work.
 */
import { mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { App } from '../../electron/app.ts'
import { type Ask, asking } from '../../electron/command/demo/asking.ts'
import { clockFrom } from '../../electron/command/demo/clock.ts'
import { openDemo } from '../../electron/command/demo/records.ts'
import { weekOf } from '../../electron/command/demo/scenario.ts'
import type { Assessment } from '../../shared/engine/findings/assessment.ts'
import { demoDay } from '../demo.ts'

const kept = fileURLToPath(new URL('../../build/demo/', import.meta.url))
const folders: string[] = []
afterAll(() => {
	for (const folder of folders) rmSync(folder, { recursive: true, force: true })
})
const fillsWithinMs = 180_000
async function opened(
	day = demoDay,
): Promise<{ app: App; ask: Ask; folder: string; told: string[] }> {
	const folder = mkdtempSync(join(tmpdir(), 'lastwright-demo-'))
	folders.push(folder)
	const told: string[] = []
	const app = await openDemo({
		folder,
		now: clockFrom(day),
		note: (text) => told.push(`fault: ${text}`),
		tell: (text) => told.push(text),
	})
	return { app, ask: asking(app), folder, told }
}
const whole = { query: '', limit: 50 }
async function names(day?: string): Promise<{ cards: string[]; filled: boolean }> {
	const { app, ask, told } = await opened(day)
	try {
		const { cards } = await ask('players.search', whole)
		const filled = told.some((text) => text.startsWith('The demo is filled'))
		return { cards: cards.map((card) => `${card.familyName} ${card.birthDate}`), filled }
	} finally {
		app.close()
	}
}
it(
	'is filled once, copied afterwards, and mended from the past of the week',
	async () => {
		rmSync(kept, { recursive: true, force: true })
		const { cards, filled } = await names()
		expect(filled).toBe(true)
		expect(cards).toHaveLength(25)
		expect(await names()).toEqual({ cards, filled: false })
		const [day = ''] = readdirSync(kept).filter((name) => name.startsWith('day-'))
		writeFileSync(join(kept, day, 'records/lastwright.db'), 'no records at all')
		expect(await names()).toEqual({ cards, filled: false })
		// another day of the same week has the same past and its own day
		expect(await names('2027-01-29')).toEqual({ cards, filled: false })
		// of days that were asked for the latest stay
		await names('2027-01-28')
		expect(readdirSync(kept).filter((name) => name.startsWith('day-'))).toHaveLength(2)
	},
	2 * fillsWithinMs,
)
it('tells the past on the weekday on which its files stand, at most six days back', () => {
	for (const [today, week] of [
		['2027-01-27', '2027-01-27'],
		['2027-02-02', '2027-01-27'],
		['2027-02-03', '2027-02-03'],
		['2026-11-27', '2026-11-25'],
	] as const)
		expect(weekOf(today)).toBe(week)
})

describe('shows a clinic at work:', () => {
	let app: App
	let ask: Ask
	let folder: string
	beforeAll(async () => {
		;({ app, ask, folder } = await opened())
	}, fillsWithinMs)
	afterAll(() => app.close())
	const playerNamed = async (query: string) => {
		const { cards } = await ask('players.search', { query, limit: 1 })
		return ask('players.open', { playerId: cards[0]!.playerId }).then((one) => ({
			...one,
			playerId: cards[0]!.playerId,
		}))
	}
	const lastSigned = async (query: string) => {
		const { visits } = await playerNamed(query)
		return ask('visits.open', { visitId: visits[0]!.visitId })
	}
	it('visits over months, and drafts that wait', async () => {
		const { cards } = await ask('players.search', whole)
		const players = await Promise.all(
			cards.map(({ playerId }) => ask('players.open', { playerId })),
		)
		const courses = players.filter(({ visits }) => visits.length >= 2)
		expect(courses.length).toBeGreaterThanOrEqual(6)
		expect((await playerNamed('silas')).visits.map(({ visitDate }) => visitDate)).toEqual([
			'2027-01-25',
			'2026-11-02',
			'2026-09-07',
		])
		const drafts = players.flatMap(({ drafts }) => drafts.map(({ visitDate }) => visitDate))
		expect(drafts.filter((date) => date < demoDay)).toHaveLength(3)
		for (const { visits } of players)
			for (const { visitDate, signedAt } of visits) {
				expect(visitDate <= demoDay, visitDate).toBe(true)
				expect(signedAt.slice(0, 10)).toBe(visitDate)
			}
	})
	it.each([
		['Łucja', 'emergency'],
		['Ørjan', 'same-day'],
		['Marit', 'imaging'],
		['Bastien', 'same-day'],
		['Mairéad', 'letter'],
		['Kofi', 'proceed'],
	])('the last visit of %s asks for: %s', async (name, action) => {
		const { screening, prescription } = (await lastSigned(name)).assessment as Assessment
		expect(screening.action).toBe(action)
		const { person, left, right } = prescription.gate
		const states = [person, left, right].map(({ state }) => state)
		if (action === 'proceed') expect(new Set(states)).toEqual(new Set(['nothing-found']))
		else expect(states).toContain('held')
	})
	it('a season that is planned, and up to date in its signed visit', async () => {
		const { playerId, visits } = await playerNamed('freya')
		const { planned, blocked, basis } = await ask('season.open', { playerId })
		expect(blocked).toBeUndefined()
		expect(basis).toEqual({ from: 'visit', visitDate: visits[0]!.visitDate })
		expect(planned).toMatchObject({ basisChanged: false, version: 1 })
		expect(planned!.plan.sessions.length).toBeGreaterThan(50)
		expect((await ask('season.chart', { playerId, paper: 'A4' })).fileName).toMatch(/^season-chart/)
	})
	it('an outbox with each state but the one that needs a mail server', async () => {
		const { items } = await ask('outbox.list', {})
		expect(new Set(items.map(({ state }) => state))).toEqual(
			new Set(['to-check', 'ready', 'sent', 'delivered', 'returned', 'closed']),
		)
		expect(items.some(({ overdue }) => overdue)).toBe(true)
		const withdrawn = items.find(({ playerName }) => playerName === 'Marit Hale')!
		expect((await ask('outbox.look', { itemId: withdrawn.itemId })).missing).toHaveLength(1)
	})
	it('a screening day under way, with a visit to be countersigned', async () => {
		const { days } = await ask('squad.list', {})
		expect(days).toMatchObject([{ day: demoDay, players: 11 }])
		const { rows } = await ask('squad.open', { squadId: days[0]!.squadId })
		expect(new Set(rows.map(({ state }) => state))).toEqual(
			new Set(['expected', 'open', 'ready', 'signed', 'absent', 'refused']),
		)
		expect(new Set(rows.flatMap(({ at }) => at ?? [])).size).toBe(5)
		const { visits } = await playerNamed('vaughan')
		expect(visits[0]!.awaitsCountersign).toBe(true)
	})
	it('a pack that is away', async () => {
		const { out } = await ask('outreach.list', {})
		expect(out).toMatchObject([{ home: false }])
		expect(out[0]!.players).toHaveLength(3)
		expect(readdirSync(join(folder, 'packs'))).toEqual([out[0]!.file])
	})
	it('rooms in which reception sees what is for reception', async () => {
		await ask('session.lock', {})
		await ask('session.unlock', { passphrase: 'kettle violin moss paper' })
		const { person } = await ask('session.status', {})
		expect(person?.role).toBe('reception')
		expect((await ask('players.search', whole)).total).toBe(25)
		expect((await ask('outbox.list', {})).items).toHaveLength(8)
		expect((await ask('squad.list', {})).days).toHaveLength(1)
		const { playerId } = await playerNamed('mairéad')
		await ask('players.summary', { playerId })
	})
})
