import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { DatabaseSync } from 'node:sqlite'
import { expect, test } from 'vitest'
import { printRecoveryKey, readRecoveryKey } from '../../electron/store/recovery.ts'
import { SealBroken } from '../../electron/store/seal.ts'
import { Store } from '../../electron/store/store.ts'

const cost = 2 ** 10
const folder = () => mkdtempSync(join(tmpdir(), 'lastwright-test-'))
const at = '2027-01-20T09:00:00.000Z'

test('opens with the passphrase and the recovery key, refuses others', async () => {
	const here = folder()
	let store = new Store(here, { cost })
	const recovery = await store.setUp('correct horse')
	store.append({ kind: 'player', at, value: { familyName: 'Ashdown' } })
	expect(() => new Store(here, { cost })).toThrow(/already open/)
	store.close()
	store = new Store(here, { cost })
	await expect(store.unlock('wrong horse')).rejects.toThrow(SealBroken)
	await store.unlockWithRecoveryKey(recovery.toLowerCase(), 'new passphrase')
	store.lock()
	await store.unlock('new passphrase')
	expect(store.load(['player']).records.map(({ value }) => value)).toEqual([
		{ familyName: 'Ashdown' },
	])
	// a key of its own: of random ones a check letter lets one slip in 32 pass
	const printed = printRecoveryKey(Uint8Array.from({ length: 20 }, (_, index) => index * 7))
	const mistyped = printed.at(-2) === '0' ? '1' : '0'
	expect(() => readRecoveryKey(printed.slice(0, -2) + mistyped + printed.at(-1))).toThrow(/Group 4/)
	for (const name of readdirSync(here)) {
		expect(readFileSync(join(here, name)).includes('Ashdown')).toBe(false)
		expect(statSync(join(here, name)).mode & 0o077, name).toBe(0)
	}
	store.close()
})
test('a flipped bit is named and the rest loads; records cannot be changed or deleted', async () => {
	const here = folder()
	const store = new Store(here, { cost })
	await store.setUp('correct horse')
	const bad = store.append({ kind: 'player', at, value: 1 })
	store.append({ kind: 'player', at, value: 2 })
	store.close()
	const db = new DatabaseSync(join(here, 'lastwright.db'))
	expect(() => db.exec("UPDATE record SET at = ''")).toThrow(/never changed/)
	expect(() => db.exec('DELETE FROM record')).toThrow(/never deleted/)
	const row = db.prepare('SELECT sealed FROM record WHERE id = ?').get(bad) as {
		sealed: Uint8Array
	}
	row.sealed[20] = (row.sealed[20] ?? 0) ^ 1
	db.exec('DROP TRIGGER record_stays')
	db.prepare('UPDATE record SET sealed = ? WHERE id = ?').run(row.sealed, bad)
	db.close()
	const again = new Store(here, { cost })
	await again.unlock('correct horse')
	const { records, damaged } = again.load(['player'])
	expect(records.map(({ value }) => value)).toEqual([2])
	expect(damaged).toEqual([expect.stringContaining(bad)])
	again.close()
})
test('a store of a newer schema is refused in words', () => {
	const here = folder()
	new Store(here, { cost }).close()
	const db = new DatabaseSync(join(here, 'lastwright.db'))
	db.exec('UPDATE meta SET value = 99')
	db.close()
	expect(() => new Store(here, { cost })).toThrow(/newer Lastwright/)
})
test('a head that is gone is said, but not where a set-up was cut off before it wrote one', async () => {
	const [here, outside] = [folder(), folder()]
	let store = new Store(here, { cost, outside })
	await store.setUp('correct horse')
	store.close()
	const takeHeadsAway = () => {
		rmSync(join(here, 'lastwright.head'))
		for (const file of readdirSync(outside)) rmSync(join(outside, file))
	}
	takeHeadsAway()
	store = new Store(here, { cost, outside })
	await store.unlock('correct horse')
	expect(store.alarms()).toEqual([])
	store.saveDraft('a', at, 1)
	store.close()
	takeHeadsAway()
	store = new Store(here, { cost, outside })
	await store.unlock('correct horse')
	expect(store.alarms()).toEqual([
		expect.objectContaining({ says: expect.stringMatching(/copy of the head is missing/) }),
	])
	store.close()
})
