/** The short form of npm run soak: the same attacks, fewer of them, and always the same ones. */
import { describe, expect, test } from 'vitest'
import { damages } from '../soak/damages.ts'
import { forger, wrongWith } from '../soak/forger.ts'
import { killedSetUps, killedUpgrades } from '../soak/killed-starts.ts'
import { kills } from '../soak/kills.ts'
import { restores } from '../soak/restores.ts'

const seed = 20270120
const long = { timeout: 900_000 }

describe('kill -9', () => {
	test('loses nothing that was acknowledged, whatever was under way', long, async () => {
		const result = await kills(38, seed)
		expect(result.faults).toEqual([])
		for (const act of ['save', 'draft', 'sign', 'passphrase', 'recovery', 'backup', 'restore'])
			expect(result.done, `${act} was never done`).toHaveProperty(act)
	})
	test('leaves a set-up that happened, or none', long, async () => {
		const result = await killedSetUps(8, seed)
		expect(result.faults).toEqual([])
	})
	test('leaves an upgrade that happened, or none', long, async () => {
		expect((await killedUpgrades(4, seed)).faults).toEqual([])
	})
})
test(
	'of single bits and bytes damaged anywhere none changes unsaid what a person sees',
	long,
	async () => {
		const result = await damages(200, seed)
		expect(result.wrong).toEqual([])
		expect(result.rounds).toBe(200)
	},
)
test('whoever has the files and no key is found out', long, async () => {
	const forged = await forger()
	const wrong = forged.flatMap((one) => wrongWith(one).map((says) => `${one.name}: ${says}`))
	expect(wrong).toEqual([])
})
test('a restore sends nothing, loses nothing and says what comes back', long, async () => {
	const result = await restores(3, seed)
	expect(result.faults).toEqual([])
	expect(result.sentBefore).toBeGreaterThan(0)
})
