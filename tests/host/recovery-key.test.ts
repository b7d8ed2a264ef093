/** The recovery key: unconfirmed until part of it is typed, issued anew, the old paper then opens nothing. */
import { expect, test } from 'vitest'
import { type Opened, open, passphrase, withPlayer } from './bench-app.ts'

const next = 'other good words'
const groups = (key: string, ...numbers: number[]) =>
	numbers.map((group) => ({ group, typed: key.split('-')[group - 1] }))
const unconfirmed = async (app: Opened) =>
	(await app.ask('session.status')).told?.recoveryKeyUnconfirmed === true
/** @returns whether a printed key opens the records of a folder that no host has open */
async function opens(here: string, recoveryKey: string): Promise<boolean> {
	const app = open(here)
	const answer = await app.call('session.unlockWithRecoveryKey', {
		recoveryKey,
		newPassphrase: next,
	})
	app.close()
	return answer.ok
}

test('until part of it is typed the owner hears of it at each unlock, and nobody else', async () => {
	const { app, here, recoveryKey } = await withPlayer()
	expect(await unconfirmed(app)).toBe(true)
	await app.ask('people.save', {
		name: 'Invented reception',
		registration: '',
		role: 'reception',
		passphrase: 'reception words',
	})
	app.close()
	const again = open(here)
	await again.ask('session.unlock', { passphrase: 'reception words' })
	expect(await unconfirmed(again)).toBe(false)
	await again.ask('session.lock')
	await again.ask('session.unlock', { passphrase })
	expect(await unconfirmed(again)).toBe(true)
	expect(
		(await again.refused('session.confirmRecoveryKey', { groups: groups(recoveryKey, 2, 4) })).code,
	).toBe('people.recovery-key-gone')
	again.close()
	expect(await opens(here, recoveryKey), 'whoever wrote it down can use it').toBe(true)
	const later = open(here)
	await later.ask('session.unlock', { passphrase: next })
	expect(await unconfirmed(later), 'who opens with it holds it').toBe(false)
	later.close()
})
test('two groups as they stand on the paper confirm it; a mistyped one is named', async () => {
	const { app, here, recoveryKey } = await withPlayer()
	const wrong = groups(recoveryKey, 1, 3)
	wrong[1]!.typed = `${wrong[1]!.typed?.slice(0, 8)}${wrong[1]!.typed?.endsWith('A') ? 'B' : 'A'}`
	const refused = await app.refused('session.confirmRecoveryKey', { groups: wrong })
	expect(refused.code).toBe('people.recovery-key-differs')
	expect(refused.problems?.map(({ path }) => path)).toEqual(['groups.1.typed'])
	expect(await unconfirmed(app)).toBe(true)
	expect(
		await app.refused('session.confirmRecoveryKey', { groups: groups(recoveryKey, 2, 2) }),
	).toMatchObject({ code: 'call.input-cannot-stand', problems: [{ path: 'groups' }] })
	await app.ask('session.confirmRecoveryKey', {
		groups: groups(recoveryKey, 4, 1).map(({ group, typed }) => ({
			group,
			typed: ` ${typed?.toLowerCase()} `,
		})),
	})
	expect(await unconfirmed(app)).toBe(false)
	app.close()
	const again = open(here)
	await again.ask('session.unlock', { passphrase })
	expect(await unconfirmed(again)).toBe(false)
	again.close()
	expect(await opens(here, recoveryKey)).toBe(true)
})
test('after a set-up that was cut off another key is issued at once, and the first opens nothing', async () => {
	const { app, here, recoveryKey } = await withPlayer()
	app.close()
	const again = open(here)
	await again.ask('session.unlock', { passphrase })
	expect(
		(await again.refused('session.newRecoveryKey', { passphrase: 'not these words' })).code,
	).toBe('people.wrong-passphrase')
	const issued = await again.ask('session.newRecoveryKey', { passphrase })
	expect(issued.recoveryKey).not.toBe(recoveryKey)
	expect(await unconfirmed(again)).toBe(true)
	again.close()
	expect(await opens(here, recoveryKey)).toBe(false)
	expect(await opens(here, issued.recoveryKey)).toBe(true)
})
test('a paper that somebody holds opens until the next one is confirmed', async () => {
	const { app, here, recoveryKey: first } = await withPlayer()
	await app.ask('session.confirmRecoveryKey', { groups: groups(first, 1, 2) })
	const { recoveryKey: dropped } = await app.ask('session.newRecoveryKey', { passphrase })
	app.close()
	expect(await opens(here, dropped)).toBe(false)
	expect(await opens(here, first)).toBe(true)
	const again = open(here)
	await again.ask('session.unlock', { passphrase: next })
	const { recoveryKey: second } = await again.ask('session.newRecoveryKey', { passphrase: next })
	await again.ask('session.confirmRecoveryKey', { groups: groups(second, 3, 4) })
	again.close()
	expect(await opens(here, first)).toBe(false)
	expect(await opens(here, second)).toBe(true)
})
test('only the owner issues and confirms', async () => {
	const { app, recoveryKey } = await withPlayer()
	await app.ask('people.save', {
		name: 'Invented clinician',
		registration: 'X2',
		role: 'clinician',
		passphrase: 'clinician words',
	})
	await app.ask('session.lock')
	await app.ask('session.unlock', { passphrase: 'clinician words' })
	for (const [name, input] of [
		['session.newRecoveryKey', { passphrase: 'clinician words' }],
		['session.confirmRecoveryKey', { groups: groups(recoveryKey, 1, 2) }],
		['people.changeDataKey', {}],
	] as const)
		expect((await app.refused(name, input)).code).toBe('call.not-for-this-role')
	app.close()
})
