/** Sizing over random valid visits: labels, finite numbers, sources, mirrored sides. */
import fc from 'fast-check'
import { expect, it } from 'vitest'
import { openProtocol } from '../../shared/engine/protocol/protocol.ts'
import { sizesOf } from '../../shared/engine/sizing/sizes.ts'
import { sizing } from '../../shared/engine/sizing/sizing.ts'
import type { Visit } from '../../shared/engine/visit/visit.ts'
import { mirrored, swapVisit } from './mirror.ts'
import { feet, numbers, player, validVisit } from './random-visit.ts'

const protocol = openProtocol()
const lengthMm = fc.integer({ min: 90_000, max: 400_000 }).map((n) => n / 1000)
const systems = ['jpCm', 'eu', 'uk', 'usMen', 'usWomen', 'usChild', 'au'] as const
type Label = ReturnType<typeof sizesOf>['uk']
/** Place of a label on one scale that runs on through the wrap. */
const place = ({ label, scale }: Label, wraps: boolean): number =>
	label + (wraps && scale !== 'child' ? 13 : 0)
const wraps = (system: string): boolean =>
	system === 'uk' || system === 'au' || system === 'usChild'

it('a longer foot never has a smaller label', () => {
	fc.assert(
		fc.property(lengthMm, lengthMm, (a, b) => {
			const shorter = sizesOf(Math.min(a, b)),
				longer = sizesOf(Math.max(a, b))
			for (const system of systems)
				expect(place(longer[system], wraps(system)), system).toBeGreaterThanOrEqual(
					place(shorter[system], wraps(system)),
				)
			expect(longer.mondopoint.lengthMm).toBeGreaterThanOrEqual(shorter.mondopoint.lengthMm)
		}),
	)
})
it(
	'the label is within a quarter of the exact value; the fitting is never below it by more ' +
		'than the wrap',
	() => {
		fc.assert(
			fc.property(lengthMm, (mm) => {
				const sizes = sizesOf(mm)
				for (const system of systems) {
					const { exact, label, fitting, scale } = sizes[system]
					expect(Math.abs(label - exact)).toBeLessThanOrEqual(0.25 + 1e-9)
					expect([label * 2, fitting * 2].every(Number.isInteger)).toBe(true)
					const onScale = scale === 'child' && fitting < exact - 1e-9 ? fitting + 13 : fitting
					expect(onScale - exact).toBeGreaterThanOrEqual(-1e-9)
					expect(onScale - exact).toBeLessThan(0.5)
					if (scale === 'child') expect(Math.max(label, fitting)).toBeLessThanOrEqual(13.5)
				}
				expect(Math.abs(sizes.mondopoint.lengthMm - mm)).toBeLessThanOrEqual(2.5)
			}),
		)
	},
)
it('in steps of a tenth of a millimetre no label falls back or jumps by more than half a size', () => {
	for (const system of systems) {
		let before = place(sizesOf(90)[system], wraps(system))
		for (let tenths = 901; tenths <= 4000; tenths++) {
			const now = place(sizesOf(tenths / 10)[system], wraps(system))
			if (now < before || now > before + 0.5)
				expect(now, `${system} at ${tenths / 10} mm`).toBe(before)
			before = now
		}
	}
})
const visits: fc.Arbitrary<Visit> = validVisit({ player, feet })
it('no number is NaN or infinite, every finding has its source', () => {
	fc.assert(
		fc.property(visits, (visit) => {
			const result = sizing(visit, [], protocol)
			expect(numbers(result).every(Number.isFinite)).toBe(true)
			for (const finding of result.findings) {
				expect(finding.basis.source, finding.id).not.toBe('')
				expect(finding.because.length).toBeGreaterThan(0)
			}
		}),
	)
})
it('the longest recorded foot is always covered by the length to fit', () => {
	fc.assert(
		fc.property(visits, (visit) => {
			const { left, right, fitLengthMm, insideLengthMm } = sizing(visit, [], protocol)
			const lengths = [left.lengthMm, right.lengthMm].flatMap((length) => length ?? [])
			if (lengths.length === 0) expect(fitLengthMm).toBeUndefined()
			else expect(insideLengthMm!.min).toBeGreaterThan(Math.max(...lengths))
		}),
	)
})
it('swapped sides in, swapped sides out', () => {
	fc.assert(
		fc.property(visits, (visit) => {
			expect(mirrored(sizing(swapVisit(visit), [], protocol))).toEqual(
				mirrored(sizing(visit, [], protocol), false),
			)
		}),
	)
})
it('swapped sides in, swapped sides out, with an earlier visit', () => {
	fc.assert(
		fc.property(visits, visits, (visit, other) => {
			const then = { ...other, visitDate: '2026-03-02' }
			expect(mirrored(sizing(swapVisit(visit), [swapVisit(then)], protocol))).toEqual(
				mirrored(sizing(visit, [then], protocol), false),
			)
		}),
	)
})
it('the label is likelier than its neighbour, and the two never make more than one', () => {
	fc.assert(
		fc.property(visits, (visit) => {
			const { sizeConfidence, nextSize } = sizing(visit, [], protocol)
			if (sizeConfidence === undefined || !nextSize) return
			expect(sizeConfidence + 1e-9).toBeGreaterThanOrEqual(nextSize.probability)
			expect(sizeConfidence + nextSize.probability).toBeLessThanOrEqual(1 + 1e-9)
		}),
	)
})
