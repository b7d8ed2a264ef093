/**
 * Locking while a secret is changed: whatever was answered is so, and neither the passphrase nor the
 * printed key is ever lost.
 */
import { cpSync } from 'node:fs'
import { expect, test } from 'vitest'
import { folder, type Opened, open, passphrase, withPlayer } from './bench-app.ts'

const moments = 20
const reset = { name: 'Invented reception', registration: '', role: 'reception' }

/** What opens the records now: the owner's passphrase and the printed key. */
interface Ways {
	passphrase: string
	recoveryKey: string
}
type Work = (app: Opened, ways: Ways, turn: number) => ReturnType<Opened['call']>
/** What is done while somebody locks, and what opens where it was answered with done. */
interface Changing {
	name: string
	work: Work
	after: (ways: Ways, turn: number, value: unknown) => Ways
	/** begun at the locked workstation */
	fromLocked?: boolean
}
const newWords = (turn: number) => `turned words ${turn}`
const same = (ways: Ways) => ways

const changing: readonly Changing[] = [
	{
		name: 'session.changePassphrase',
		work: (app, ways, turn) =>
			app.call('session.changePassphrase', { old: ways.passphrase, passphrase: newWords(turn) }),
		after: (ways, turn) => ({ ...ways, passphrase: newWords(turn) }),
	},
	{
		name: 'session.setPin',
		work: (app, ways, turn) =>
			app.call('session.setPin', { passphrase: ways.passphrase, pin: String(739_162 + turn) }),
		after: same,
	},
	{
		name: 'people.save',
		work: (app, _, turn) =>
			app.call('people.save', { ...reset, passphrase: `reception words ${turn}` }),
		after: same,
	},
	{
		name: 'session.newRecoveryKey',
		work: (app, ways) => app.call('session.newRecoveryKey', { passphrase: ways.passphrase }),
		after: (ways, _, value) => ({
			...ways,
			recoveryKey: (value as { recoveryKey: string }).recoveryKey,
		}),
	},
	{
		name: 'people.changeDataKey',
		work: (app) => app.call('people.changeDataKey', {}),
		after: same,
	},
	{
		name: 'session.unlockWithRecoveryKey',
		work: (app, ways, turn) =>
			app.call('session.unlockWithRecoveryKey', {
				recoveryKey: ways.recoveryKey,
				newPassphrase: newWords(turn),
			}),
		after: (ways, turn) => ({ ...ways, passphrase: newWords(turn) }),
		fromLocked: true,
	},
]

/** Opens a host on the records as the change begins. */
async function began({ fromLocked }: Changing, here: string, ways: Ways): Promise<Opened> {
	const app = open(here)
	if (!fromLocked) await app.ask('session.unlock', { passphrase: ways.passphrase })
	return app
}
/** Each way in opens a copy of the records, and what stands in them is there. */
async function expectOpen(here: string, ways: Ways, where: string) {
	const copy = folder()
	cpSync(here, copy, { recursive: true })
	const app = open(copy)
	for (const [name, input] of [
		['session.unlock', { passphrase: ways.passphrase }],
		[
			'session.unlockWithRecoveryKey',
			{ recoveryKey: ways.recoveryKey, newPassphrase: 'opened by paper' },
		],
	] as const) {
		expect(await app.call(name, input), `${where}: ${name}`).toMatchObject({ ok: true })
		expect((await app.ask('players.search', { query: 'zoe', limit: 5 })).total, where).toBe(1)
		await app.ask('session.lock')
	}
	app.close()
}
test.each(changing)('locked at any moment of $name', { timeout: 120_000 }, async (change) => {
	const { app, here, recoveryKey } = await withPlayer()
	app.close()
	let ways: Ways = { passphrase, recoveryKey }
	let longMs = 0
	for (let turn = 0; turn <= moments; turn++) {
		const app = await began(change, here, ways)
		const from = performance.now()
		const doing = change.work(app, ways, turn)
		// the first one tells how long it takes; the others are locked in the midst of it
		const lockAtMs = turn === 0 ? Number.POSITIVE_INFINITY : (longMs * (turn - 0.5)) / moments
		if (turn > 0) {
			await new Promise((passed) => setTimeout(passed, lockAtMs))
			await app.call('session.lock', {})
		}
		const answer = await doing
		if (turn === 0) longMs = performance.now() - from
		const where = `${change.name}, locked ${lockAtMs.toFixed(1)} of ${longMs.toFixed(1)} ms`
		if (answer.ok) ways = change.after(ways, turn, answer.value)
		else expect(['people.locked', 'people.locked-meanwhile'], where).toContain(answer.code)
		app.close()
		await expectOpen(here, ways, where)
	}
})
test('locking during the wait of a new person leaves no half person behind', async () => {
	const { app } = await withPlayer()
	const saving = app.call('people.save', { ...reset, passphrase: 'reception words' })
	await app.ask('session.lock')
	expect(await saving).toMatchObject({ ok: false, code: 'people.locked-meanwhile' })
	await app.ask('session.unlock', { passphrase })
	expect((await app.ask('people.list')).people).toHaveLength(1)
	await app.ask('people.save', { ...reset, passphrase: 'reception words' })
	await app.ask('session.lock')
	await app.ask('session.unlock', { passphrase: 'reception words' })
	app.close()
})
