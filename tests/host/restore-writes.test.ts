/** What is written while a restore runs is refused, or stands in what stood before: never lost. */
import { existsSync, readdirSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { type Opened, open, passphrase, player, withPlayer } from './bench-app.ts'
import { later, restored } from './restore-bench.ts'

/** Saves players one after another until told to stop. @returns the names that were acknowledged */
async function saveUntil(app: Opened, isOver: () => boolean, tag: string): Promise<string[]> {
	const acknowledged: string[] = []
	for (let number = 0; !isOver(); number++) {
		const familyName = `${tag}${number}`
		const answer = await app.call('players.save', {
			player: { ...player, givenName: 'Saved', familyName, birthDate: '1999-07-01' },
		})
		if (answer.ok) acknowledged.push(familyName)
		await new Promise((resolve) => setImmediate(resolve))
	}
	return acknowledged
}
/** So many that a copy of them is not checked at one stroke: others get their turn meanwhile. */
async function manyPlayers() {
	const made = await withPlayer()
	for (let number = 0; number < 230; number++)
		await made.app.ask('players.save', {
			player: {
				...player,
				givenName: 'Many',
				familyName: `Many${number}`,
				birthDate: '1998-01-01',
			},
		})
	return made
}
const namesIn = async (app: Opened): Promise<Set<string>> =>
	new Set(
		(await app.ask('players.search', { query: 'saved', limit: 500 })).cards.map(
			(card: { familyName: string }) => card.familyName,
		),
	)

test('each save that was acknowledged while restores ran stands in the store or in what stood before', async () => {
	const { app } = await manyPlayers()
	const { file } = await app.ask('backups.make')
	let saved = 0
	for (let round = 0; round < 2; round++) {
		later(app)
		let isOver = false
		const saving = Promise.all(
			['A', 'B', 'C'].map((one) => saveUntil(app, () => isOver, `${one}${round}x`)),
		)
		for (let turns = 0; turns < round * 3; turns++)
			await new Promise((resolve) => setImmediate(resolve))
		const { before } = await app.ask('backups.restore', { file })
		isOver = true
		const acknowledged = (await saving).flat()
		saved += acknowledged.length
		await app.ask('session.unlock', { passphrase })
		const now = await namesIn(app)
		later(app)
		await restored(app, before)
		const then = await namesIn(app)
		for (const name of acknowledged) expect(now.has(name) || then.has(name), name).toBe(true)
		later(app)
		await restored(app, file)
	}
	expect(saved).toBeGreaterThan(5)
	expect((await app.ask('audit.verify')).problems).toEqual([])
	app.close()
})
test('a call that comes while a restore runs is refused in words that say what happens', async () => {
	const { app } = await manyPlayers()
	const { file } = await app.ask('backups.make')
	later(app)
	const restoring = app.ask('backups.restore', { file })
	const codes = new Set<string>()
	let isOver = false
	const asking = (async () => {
		while (!isOver) {
			const answer = await app.call('players.save', { player })
			if (!answer.ok) codes.add(answer.code)
			await new Promise((resolve) => setImmediate(resolve))
		}
	})()
	await restoring
	isOver = true
	await asking
	expect([...codes]).toEqual(['call.held'])
	app.close()
})
test('a restore that cannot be done leaves everything as it is, open and writable', async () => {
	const { app, here, playerId } = await withPlayer()
	const { file } = await app.ask('backups.make')
	await app.ask('backups.setFolder', { folder: join(here, 'stick') })
	later(app)
	// what stands now can go nowhere
	app.close()
	const again = open(here)
	again.clock.ms += 60_000
	await again.ask('session.unlock', { passphrase })
	rmSync(join(here, 'stick'), { recursive: true })
	writeFileSync(join(here, 'stick'), 'no folder any more')
	const refusal = await again.refused('backups.restore', { file: join(here, file) })
	expect(refusal.code).toBe('places.not-writable')
	expect((await again.ask('session.status')).state).toBe('open')
	await again.ask('players.save', { playerId, player: { ...player, givenName: 'Zoe' } })
	expect(readdirSync(here).filter((name) => name.includes('restoring'))).toEqual([])
	again.close()
	expect(existsSync(join(here, 'lastwright.db'))).toBe(true)
})
