/** Packs and laptops for tests of the host. */
import { mkdtempSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect } from 'vitest'
import { folder, type Opened, open, withPlayer } from './bench-app.ts'

export const packPassphrase = 'three mild otters'
export const stick = () => mkdtempSync(join(tmpdir(), 'lastwright-stick-'))
export async function packed(app: Opened, playerIds: string[], over: object = {}): Promise<string> {
	return (
		await app.ask('outreach.makePack', {
			playerIds,
			history: 'all',
			folder: stick(),
			passphrase: packPassphrase,
			expires: '2027-02-10',
			...over,
		})
	).file
}
export async function laptopOf(file: string, start?: string) {
	const here = folder()
	const app = open(here, start)
	await app.ask('session.moveHere', { file, passphrase: packPassphrase })
	await app.ask('session.unlock', { passphrase: packPassphrase })
	return { app, here }
}
/** The file of the way back. */
export const back = async (laptop: Opened): Promise<string> =>
	(await laptop.ask('outreach.makeReturn', { folder: stick(), passphrase: packPassphrase })).file
export const bring = (app: Opened, file: string) =>
	app.ask('outreach.merge', { file, passphrase: packPassphrase })
export const measured = { feet: { left: { heelToToeMm: 246 }, right: { heelToToeMm: 249 } } }
/** A player at home, and laptops that each opened the same pack with that player. */
export async function apart(laptops = 1) {
	const { app, here, playerId } = await withPlayer()
	const file = await packed(app, [playerId])
	const away: Opened[] = []
	for (let at = 0; at < laptops; at++) away.push((await laptopOf(file)).app)
	return { app, here, playerId, away }
}
/** The counts of a merge add up. */
export const balanced = ({ counts }: { counts: Record<string, number> }) => {
	expect(counts.in).toBe(counts.added! + counts.already! + counts.quarantined! + counts.heldBack!)
	expect(counts.after).toBe(counts.before! + counts.added!)
}
