/** Joints and studs on the sole by hand-worked geometry, and what is drawn of a model and a lace. */
import { expect, it } from 'vitest'
import { assess } from '../../shared/engine/assess.ts'
import { lacingIds } from '../../shared/engine/footwear/lacing.ts'
import { lacingFigure } from '../../shared/engine/footwear/lacing-figure.ts'
import { soleFigure } from '../../shared/engine/footwear/sole-figure.ts'
import { jointsOf, studPoints } from '../../shared/engine/footwear/studs.ts'
import { openProtocol } from '../../shared/engine/protocol/protocol.ts'
import { modelWith, sizeOf, studAt, visitWith } from './known-shelf.ts'

const protocol = openProtocol()
it('places joints and studs on the sole by hand-worked geometry', () => {
	const sizing = {
		left: { lengthMm: 260, ballLengthMm: 190, widthMm: 100, fitting: {} },
		right: { lengthMm: 260, widthMm: 100, fitting: {} },
	} as Parameters<typeof jointsOf>[0]
	const joints = jointsOf(sizing, 'left', protocol)!
	// 100 x (0.5 - 0.17) = 33 in from the middle; 190 x 0.88 = 167.2; 100 x (0.5 - 0.12) = 38; 260 x
	// 0.15 = 39
	const near = (point: { xMm: number; yMm: number }, x: number, y: number) => {
		expect(point.xMm).toBeCloseTo(x, 9)
		expect(point.yMm).toBeCloseTo(y, 9)
	}
	near(joints['first metatarsal head'], 190, -33)
	near(joints['fifth metatarsal head'], 167.2, 38)
	near(joints['heel centre'], 39, 0)
	expect(jointsOf(sizing, 'right', protocol)).toBeUndefined()
	near(
		studPoints(
			modelWith({
				studs: [
					{ xFraction: 0.7, yFraction: -0.6, shape: 'round', heightMm: 10, removable: false },
				],
			}),
			sizeOf(8, 270, 102),
		)[0]!,
		189,
		-30.6,
	)
})
it('the sole figure is at true proportion, mirrored by side, and says in words what it shows', () => {
	const boot = modelWith({ studs: [studAt(0.7, -0.6)], name: 'A & B' })
	const { sizing } = assess(visitWith())
	const left = soleFigure(boot, sizeOf(8, 270, 102), sizing, 'left', protocol),
		right = soleFigure(boot, sizeOf(8, 270, 102), sizing, 'right', protocol)
	const centre = (svg: string) => {
		const [, cx, cy] = /<ellipse cx="([\d.]+)" cy="([\d.]+)"/.exec(svg)!
		return [Number(cx), Number(cy)]
	}
	// width 102 + 28; a medial stud (30.6 from the middle) lies to the right of a left sole, 14 + 270
	// - 189 from the top
	expect([centre(left.svg), centre(right.svg)]).toEqual([
		[95.6, 95],
		[34.4, 95],
	])
	expect(left.svg).toContain('A &amp; B')
	expect(left.alternative).toMatch(/first metatarsal head: nearest stud 2\.6 mm/)
})
it('every lacing pattern has a drawing of its own', () =>
	expect(new Set(lacingIds.map((id) => lacingFigure(id, 'left').svg)).size).toBe(lacingIds.length))
