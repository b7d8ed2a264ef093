/**
 * The posture room over random valid visits: finite numbers, sources, mirrored sides, ordered
 * bands.
 */
import fc from 'fast-check'
import { expect, it } from 'vitest'
import { posture } from '../../shared/engine/posture/posture.ts'
import { openProtocol, shippedProtocol } from '../../shared/engine/protocol/protocol.ts'
import { mirrored, swapVisit } from './mirror.ts'
import { body, conditions, numbers, player, postures, validVisit } from './random-visit.ts'

const schemes = (['raw', 'trial'] as const).map((fpiScheme) =>
	openProtocol({ ...shippedProtocol, fpiScheme }),
)
const visits = validVisit({ player, posture: postures, conditions })
const order = ['highly-supinated', 'supinated', 'normal', 'pronated', 'highly-pronated']

it('no number is NaN or infinite, every finding has its source', () => {
	fc.assert(
		fc.property(visits, fc.constantFrom(...schemes), (visit, protocol) => {
			const result = posture(visit, [], protocol)
			expect(numbers(result).every(Number.isFinite)).toBe(true)
			for (const finding of result.findings) {
				expect(finding.basis.source, finding.id).not.toBe('')
				expect(JSON.stringify(finding.params)).not.toContain('null')
			}
		}),
	)
})
it('swapped sides in, swapped sides out', () => {
	const whole = validVisit({ player, posture: postures, conditions, body })
	fc.assert(
		fc.property(whole, whole, fc.constantFrom(...schemes), (visit, other, protocol) => {
			const then = { ...other, visitDate: '2026-03-02' }
			expect(mirrored(posture(swapVisit(visit), [swapVisit(then)], protocol))).toEqual(
				mirrored(posture(visit, [then], protocol), false),
			)
		}),
	)
})
it('swapped sides in, swapped sides out, at a first visit', () => {
	fc.assert(
		fc.property(visits, fc.constantFrom(...schemes), (visit, protocol) => {
			expect(mirrored(posture(swapVisit(visit), [], protocol))).toEqual(
				mirrored(posture(visit, [], protocol), false),
			)
		}),
	)
})
it('a higher index is never in a lower band', () => {
	fc.assert(
		fc.property(visits, fc.constantFrom(...schemes), (visit, protocol) => {
			const { left, right } = posture(visit, [], protocol)
			if (left.fpi === undefined || right.fpi === undefined) return
			const [low, high] = left.fpi <= right.fpi ? [left, right] : [right, left]
			expect(order.indexOf(high.fpiBand!)).toBeGreaterThanOrEqual(order.indexOf(low.fpiBand!))
		}),
	)
})
