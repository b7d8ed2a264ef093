/** The ankle room over random valid visits: finite numbers, sources, mirrored sides, limits. */
import fc from 'fast-check'
import { expect, it } from 'vitest'
import { ankle } from '../../shared/engine/ankle/ankle.ts'
import { heightForPitch, pitchDeg } from '../../shared/engine/ankle/pitch.ts'
import { openProtocol } from '../../shared/engine/protocol/protocol.ts'
import { mirrored, swapVisit } from './mirror.ts'
import {
	ankles,
	body,
	conditions,
	feet,
	footwear,
	numbers,
	player,
	validVisit,
} from './random-visit.ts'

const protocol = openProtocol()
const visits = validVisit({ player, feet, ankles, conditions, footwear })
it('no number is NaN or infinite, every finding has its source', () => {
	fc.assert(
		fc.property(visits, (visit) => {
			const result = ankle(visit, [], protocol)
			expect(numbers(result).every(Number.isFinite)).toBe(true)
			for (const finding of result.findings) {
				expect(finding.basis.source, finding.id).not.toBe('')
				expect(JSON.stringify(finding.params)).not.toContain('null')
			}
		}),
	)
})
it('swapped sides in, swapped sides out', () => {
	// With a leg-length reason the raise may be one-sided; an earlier visit brings changes.
	const whole = validVisit({ player, feet, ankles, conditions, footwear, body })
	fc.assert(
		fc.property(whole, whole, (visit, other) => {
			const then = { ...other, visitDate: '2026-03-02' }
			expect(mirrored(ankle(swapVisit(visit), [swapVisit(then)], protocol))).toEqual(
				mirrored(ankle(visit, [then], protocol), false),
			)
			const { heelRaiseMm } = ankle(visit, [then], protocol)
			if (heelRaiseMm) expect(Math.max(heelRaiseMm.left, heelRaiseMm.right)).toBeLessThanOrEqual(6)
		}),
	)
})
it('swapped sides in, swapped sides out, at a first visit', () => {
	fc.assert(
		fc.property(visits, (visit) => {
			expect(mirrored(ankle(swapVisit(visit), [], protocol))).toEqual(
				mirrored(ankle(visit, [], protocol), false),
			)
		}),
	)
})
it('a proposed raise is the same on both feet and never above the limit in use', () => {
	fc.assert(
		fc.property(visits, (visit) => {
			const { heelRaiseMm, offsetMm } = ankle(visit, [], protocol)
			if (!heelRaiseMm) return
			expect(heelRaiseMm.left).toBe(heelRaiseMm.right)
			expect(heelRaiseMm.left).toBeLessThanOrEqual(6)
			expect(offsetMm!.max).toBeGreaterThanOrEqual(offsetMm!.min)
		}),
	)
})
it('height and pitch are inverse', () => {
	fc.assert(
		fc.property(
			fc.double({ min: -30, max: 55, noNaN: true }),
			fc.double({ min: 60, max: 300, noNaN: true }),
			(height, length) => {
				expect(Math.abs(heightForPitch(pitchDeg(height, length), length) - height)).toBeLessThan(
					1e-9,
				)
			},
		),
	)
})
