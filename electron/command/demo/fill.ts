/** Fills a fresh, throw-away store with the invented clinic of assets/demo, day after day. */
import { mkdirSync } from 'node:fs'
import { join } from 'node:path'
import type { App } from '../../app.ts'
import { type Ask, asking } from './asking.ts'
import type { PastClock } from './clock.ts'
import { demoPassphrase } from './passphrase.ts'
import { readScenario, type Scenario } from './scenario.ts'
import { outboxEntries } from './sendings.ts'
import { enterSquadDay } from './squad-day.ts'
import { Known, takeIn, visitsOf } from './visits.ts'

/** What was entered on a day. */
export interface Entry {
	day: string
	enter: () => Promise<void>
}
async function setUp(ask: Ask, { clinic, rooms, shelf }: Scenario): Promise<void> {
	const { recoveryKey } = await ask('session.setUp', { clinic, passphrase: demoPassphrase })
	// nobody prints the key of a demo
	const [first = '', second = ''] = recoveryKey.split('-')
	const groups = [first, second].map((typed, index) => ({ group: index + 1, typed }))
	await ask('session.confirmRecoveryKey', { groups })
	await ask('shelf.save', { shelf })
	for (const person of rooms.people) await ask('people.save', person)
	// the owner knows whom they took on
	const { upTo } = await ask('notices.list', {})
	await ask('notices.seen', { upTo })
}
/** One pack that is away. @param dataFolder where its file is left */
const packEntry = (ask: Ask, known: Known, { rooms }: Scenario, dataFolder: string): Entry => ({
	day: rooms.pack.on,
	enter: async () => {
		const { players, on: _, ...wish } = rooms.pack
		const folder = join(dataFolder, 'packs')
		mkdirSync(folder, { recursive: true })
		const playerIds = players.map((name) => known.player(name))
		await ask('outreach.makePack', { ...wish, folder, playerIds })
	},
})
/** What a store is filled with. */
export interface Filling {
	app: App
	clock: PastClock
	/** ISO date on which it is told */
	today: string
	/** with those who were seen again */
	isFull: boolean
	/** the folder of the records */
	dataFolder: string
}
/**
 * Fills an empty store with all that was before today, by the same calls as the screens.
 * @throws Error naming the call that refused
 */
export async function fillPast({ app, clock, today, isFull, dataFolder }: Filling): Promise<void> {
	const scenario = readScenario(today, isFull)
	const ask = asking(app)
	const known = new Known()
	const { players } = scenario
	const entries: Entry[] = [
		...players.flatMap((told) => visitsOf(ask, known, scenario, told)),
		...outboxEntries(ask, known, scenario),
		packEntry(ask, known, scenario, dataFolder),
	].toSorted((one, other) => one.day.localeCompare(other.day))
	clock.goTo(entries[0]?.day ?? today)
	await setUp(ask, scenario)
	for (const { player, visits } of players)
		if (visits.length === 0) await takeIn(ask, known, player)
	for (const { day, enter } of entries) {
		// left alone since the day before, the records are locked
		if (clock.goTo(day)) await ask('session.unlock', { passphrase: demoPassphrase })
		await enter()
	}
}
/** Adds what goes on today. @throws Error naming the call that refused */
export async function fillToday({ app, clock, today }: Filling): Promise<void> {
	const ask = asking(app)
	clock.goTo(today)
	await ask('session.unlock', { passphrase: demoPassphrase })
	await enterSquadDay(ask, readScenario(today, false))
}
