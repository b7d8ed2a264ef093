/**
 * Exact binomial figures: values of the cumulative tables that handbooks of statistics print (from
 * memory), and closed forms: by whole numbers, and the interval of Clopper and Pearson (Biometrika
 * 1934;26:404-413), which for none of n ends at 1 - tail^(1/n). The least number by Wilks (Ann Math
 * Stat 1941;12:91-96) by its own sum.
 */
import { describe, expect, it } from 'vitest'
import { atMost, exactInterval } from '../../shared/engine/plain/binomial.ts'
import { openProtocol } from '../../shared/engine/protocol/protocol.ts'

/** By whole numbers: Pascal's triangle, and one division at the end. */
function byPascal(k: number, n: number, tenths: bigint): number {
	const row = [1n]
	for (let each = 1; each <= n; each++)
		for (let at = each; at >= 0; at--)
			row[at] = (row[at] ?? 0n) + (at > 0 ? (row[at - 1] ?? 0n) : 0n)
	let sum = 0n
	for (let at = 0; at <= k; at++)
		sum += (row[at] ?? 0n) * tenths ** BigInt(at) * (10n - tenths) ** BigInt(n - at)
	return Number((sum * 10n ** 15n) / 10n ** BigInt(n)) / 1e15
}
describe('at most k of n', () => {
	it.each([
		[2, 5, 0.5, 0.5],
		[3, 10, 0.5, 0.1719],
		[1, 10, 0.2, 0.3758],
		[5, 20, 0.5, 0.0207],
		[12, 20, 0.8, 0.0321],
	])('%i of %i at %d is %d', (k, n, share, chance) => {
		expect(atMost(k, n, share)).toBeCloseTo(chance, 4)
	})
	it('agrees with whole numbers for each k of n', () => {
		for (const n of [1, 7, 22, 60])
			for (let k = 0; k <= n; k++) expect(atMost(k, n, 0.8)).toBeCloseTo(byPascal(k, n, 8n), 10)
	})
})
describe('the exact interval', () => {
	it.each([
		[0, 10, 0, 0.3085],
		[5, 10, 0.1871, 0.8129],
		[9, 10, 0.555, 0.9975],
		[10, 10, 0.6915, 1],
	])('of %i in %i goes from %d to %d', (k, n, low, high) => {
		const interval = exactInterval(k, n, 0.95)
		expect(interval.low).toBeCloseTo(low, 4)
		expect(interval.high).toBeCloseTo(high, 4)
	})
	it('of none ends where the closed form does', () => {
		for (const n of [1, 5, 22, 200])
			expect(exactInterval(0, n, 0.95).high).toBeCloseTo(1 - 0.025 ** (1 / n), 9)
	})
})
it('22 is the least number whose range holds 80 % with 95 % certainty', () => {
	const sure = (n: number) => 1 - n * 0.8 ** (n - 1) + (n - 1) * 0.8 ** n
	expect(sure(openProtocol().value('audit.leastForecasts'))).toBeGreaterThanOrEqual(0.95)
	expect(sure(openProtocol().value('audit.leastForecasts') - 1)).toBeLessThan(0.95)
})
