/** The short form of npm run soak. */
import { expect, test } from 'vitest'
import { soak } from '../soak/kills.ts'

test('nothing acknowledged is lost by kill -9 over saves, signatures, backups, restores and ' +
	'upgrades', {
	timeout: 120_000,
}, async () => {
	const result = await soak(4, 1200)
	expect(result.lost).toEqual([])
	expect(result.signatures).toBeGreaterThan(0)
	expect(result.upgrades).toBe(2)
})
