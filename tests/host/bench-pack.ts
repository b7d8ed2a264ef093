/** Packs and laptops for tests of the host. */
import { mkdtempSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { folder, type Opened, open } from './bench-app.ts'

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
