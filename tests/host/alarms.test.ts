/** What was found amiss is said at each unlock until the owner looks into it, and then never again. */
import { join } from 'node:path'
import { DatabaseSync } from 'node:sqlite'
import { expect, test } from 'vitest'
import { open, passphrase, signed, withPlayer } from './bench-app.ts'

const cut = 'They were cut off at the end.'

test('rows cut off the trail are said once a session, and no more once they were looked into', async () => {
	const { app, here, playerId } = await withPlayer()
	await signed(app, playerId)
	app.close()
	const database = new DatabaseSync(join(here, 'lastwright.db'))
	database.exec('DROP TRIGGER audit_kept')
	database.exec('DELETE FROM audit WHERE seq > (SELECT max(seq) FROM audit) - 2')
	database.close()

	let again = open(here)
	const said = async (): Promise<string[]> => (await again.ask('session.status')).warnings
	const alarms = async (): Promise<string[]> =>
		(await again.ask('audit.alarms')).alarms.map(({ says }: { says: string }) => says)
	await again.ask('session.unlock', { passphrase })
	expect(await said()).toEqual([expect.stringContaining(cut)])
	await again.ask('players.search', { query: '', limit: 5 })
	// locked, or closed: it is the same finding, said once
	await again.ask('session.lock')
	await again.ask('session.unlock', { passphrase })
	expect(await said()).toEqual([expect.stringContaining(cut)])
	again.close()
	again = open(here)
	await again.ask('session.unlock', { passphrase })
	expect(await alarms()).toEqual(await said())
	expect(await alarms()).toEqual([expect.stringContaining(cut)])

	expect((await again.ask('session.status')).told.alarms).toBe(true)
	await again.ask('audit.settle', { reason: 'the file was copied by hand' })
	expect(await said()).toEqual([])
	expect((await again.ask('session.status')).told?.alarms).toBeUndefined()
	await again.ask('players.search', { query: '', limit: 5 })
	await again.ask('session.lock')
	await again.ask('session.unlock', { passphrase })
	expect(await said()).toEqual([])
	again.close()
	again = open(here)
	await again.ask('session.unlock', { passphrase })
	expect([await said(), await alarms()]).toEqual([[], []])
	again.close()
})
