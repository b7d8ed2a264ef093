/** A set-up is whole or did not happen, and a weak passphrase begins none. */
import { rmSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { expect, test } from 'vitest'
import { clinic, folder, open, passphrase } from './bench-app.ts'
import { runUntilKilled } from './killed.ts'

const script = fileURLToPath(new URL('./fixtures/set-up.ts', import.meta.url))
const rounds = 4

test('a weak passphrase, or one made of the names of the clinic, sets nothing up', async () => {
	const app = open(folder())
	for (const weak of ['aaaaaaaa', 'Invented Clinic', 'a.example1', 'password1'])
		expect(await app.refused('session.setUp', { clinic, passphrase: weak })).toMatchObject({
			code: 'people.easy-passphrase',
			problems: [{ path: 'passphrase' }],
		})
	expect((await app.ask('session.status')).state).toBe('needs-setup')
	await app.ask('session.setUp', { clinic, passphrase })
	app.close()
})
test('killed at any moment it left nothing, or records that open and miss only a confirmed key', {
	timeout: 180_000,
}, async () => {
	for (let round = 1; round <= rounds; round++) {
		const here = folder()
		const delayMs = Math.floor(Math.random() * 60)
		const { lines } = await runUntilKilled(script, [here], delayMs)
		const where = `round ${round}, killed ${delayMs} ms after it began`
		const app = open(here)
		const { state, warnings } = await app.ask('session.status')
		if (state === 'needs-setup') {
			expect(lines, where).toEqual(['begins'])
			await app.ask('session.setUp', { clinic, passphrase })
		} else await app.ask('session.unlock', { passphrase })
		expect(warnings, where).toEqual([])
		expect(await app.ask('session.status'), where).toMatchObject({
			state: 'open',
			clinicName: clinic.name,
			person: { personId: 'owner', name: clinic.clinician.name, role: 'owner' },
			told: { recoveryKeyUnconfirmed: true },
		})
		const { recoveryKey } = await app.ask('session.newRecoveryKey', { passphrase })
		await app.ask('session.lock')
		await app.ask('session.unlockWithRecoveryKey', {
			recoveryKey,
			newPassphrase: 'other good words',
		})
		app.close()
		rmSync(here, { recursive: true, force: true })
	}
})
