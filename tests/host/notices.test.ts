/** What the owner is told of: once, with who marked it as seen and when, and nothing of a patient. */
import { rmSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { createApp } from '../../electron/app.ts'
import { isNearlyFull } from '../../electron/services/backups/watch.ts'
import { clinic, folder, open, passphrase, pdf, player, signed, withPlayer } from './bench-app.ts'

interface Told {
	what: string
	whom?: string
	by?: string
	seen?: { by: string; at: string }
}
const desk = { name: 'Invented reception', registration: '', role: 'reception' }
const brief = ({ notices }: { notices: Told[] }) =>
	notices.map(({ what, whom, by }) => [what, whom, by].filter(Boolean).join(' '))

test('what happens to people, keys and papers is told, and marked as seen by whom and when', async () => {
	const { app, here, playerId, recoveryKey } = await withPlayer()
	const { ask, clock } = app
	const { personId } = await ask('people.save', { ...desk, passphrase: 'reception words' })
	clock.ms += 1000
	await ask('people.save', { ...desk, personId, passphrase: 'garden lantern moss' })
	clock.ms += 1000
	await ask('people.retire', { personId, reason: 'left' })
	clock.ms += 1000
	const visitId = await signed(app, playerId)
	const { itemId } = await ask('outbox.add', {
		...{ visitId, kind: 'player', recipientId: 'player', channel: 'print', due: '2027-01-25' },
	})
	const { sha256 } = await ask('outbox.look', { itemId })
	await ask('outbox.release', { itemId, sha256, compared: true, warningsRead: true })
	await ask('outbox.take', { itemId })
	await ask('outbox.sentInError', {
		...{ itemId, what: 'the wrong envelope', noticedAt: '2027-01-20T08:00:00.000Z' },
	})
	clock.ms += 1000
	await ask('session.lock')
	await ask('session.unlockWithRecoveryKey', { recoveryKey, newPassphrase: 'amber kite over moss' })
	clock.ms += 1000
	const issued = await ask('session.newRecoveryKey', { passphrase: 'amber kite over moss' })
	const groups: string[] = issued.recoveryKey.split('-')
	await ask('session.confirmRecoveryKey', {
		groups: [2, 4].map((group) => ({ group, typed: groups[group - 1] })),
	})
	const list = await ask('notices.list')
	expect(brief(list)).toEqual([
		'recovery-key-issued A. Example',
		'recovery-key-used',
		'sent-in-error A. Example',
		'person-off Invented reception A. Example',
		'passphrase-given Invented reception A. Example',
		'person-added Invented reception A. Example',
	])
	for (const words of [player.givenName, player.familyName, playerId, 'envelope'])
		expect(JSON.stringify(list)).not.toContain(words)
	expect((await ask('session.status')).told.notices).toBe(list.notices.length)

	clock.ms += 60_000
	const at = new Date(clock.ms).toISOString()
	await ask('notices.seen', { upTo: list.upTo })
	expect((await ask('session.status')).told?.notices).toBeUndefined()
	expect((await app.refused('notices.seen', { upTo: list.upTo })).code).toBe(
		'people.nothing-to-mark',
	)
	await ask('session.lock')
	await app.refused('session.unlock', { passphrase: 'not these words' })
	app.close()
	const again = open(here, at)
	await again.ask('session.unlock', { passphrase: 'amber kite over moss' })
	expect((await again.ask('session.status')).told.notices, 'told once').toBe(1)
	const { notices } = await again.ask('notices.list')
	expect(notices[0]).toMatchObject({ what: 'unlock', times: 1 })
	for (const { seen } of notices.slice(1)) expect(seen).toEqual({ by: 'A. Example', at })
	const { rows } = await again.ask('audit.page', { limit: 500 })
	expect(rows).toContainEqual(
		expect.objectContaining({ purpose: 'notices seen', person: 'A. Example', utcTime: at }),
	)
	expect((await again.ask('audit.verify')).problems).toEqual([])
	again.close()
})
test('a restore is told', async () => {
	const { app } = await withPlayer()
	const { file } = await app.ask('backups.make')
	await app.ask('backups.restore', { file })
	await app.ask('session.unlock', { passphrase })
	expect(brief(await app.ask('notices.list'))).toContain('restored')
	app.close()
})
test('a backup that is late and a disk that is nearly full are told once for each time', async () => {
	const [dataFolder, free, clock] = [
		folder(),
		{ bytes: 2 ** 40 },
		{ ms: Date.parse('2027-01-20T09:00:00.000Z') },
	]
	const app = createApp({
		...{ dataFolder, scryptCost: 1024, renderPdf: async () => pdf },
		freeBytes: () => free.bytes,
		now: () => new Date(clock.ms),
	})
	// biome-ignore lint/suspicious/noExplicitAny: answers are looked at field by field
	const ask = async (name: string, input: unknown = {}): Promise<any> => {
		const answer = await app.call(name, input)
		if (!answer.ok) throw new Error(`${name}: ${answer.message}`)
		return answer.value
	}
	const told = async () => brief(await ask('notices.list'))
	const unlockAgain = async () => {
		await ask('session.lock')
		await ask('session.unlock', { passphrase })
	}
	await ask('session.setUp', { clinic, passphrase })
	await ask('backups.make')
	await unlockAgain()
	expect(await told()).toEqual([])
	free.bytes = 2 ** 20
	await unlockAgain()
	await expect.poll(told, { interval: 5 }).toEqual(['disk-nearly-full'])
	// the stick is not there any more: the daily backup fails, and the last one grows old
	const stick = folder()
	await ask('backups.setFolder', { folder: join(stick, 'lastwright') })
	rmSync(stick, { recursive: true })
	clock.ms += 8 * 86_400_000
	await ask('session.unlock', { passphrase })
	await expect.poll(told, { interval: 5 }).toEqual(['backup-late', 'disk-nearly-full'])
	await unlockAgain()
	await ask('backups.make', { folder: dataFolder })
	free.bytes = 2 ** 40
	await unlockAgain()
	expect(await told(), 'each once').toHaveLength(2)
	clock.ms += 8 * 86_400_000
	await ask('session.unlock', { passphrase })
	await expect.poll(told, { interval: 5 }).toHaveLength(3)
	app.close()
})
test('nearly full is less than 1 GiB, or than five times the records', () => {
	const gib = 2 ** 30
	expect(isNearlyFull({ free: gib, records: 1 })).toBe(false)
	expect(isNearlyFull({ free: gib - 1, records: 1 })).toBe(true)
	expect(isNearlyFull({ free: 4 * gib, records: gib })).toBe(true)
	expect(isNearlyFull({ free: 5 * gib, records: gib })).toBe(false)
})
