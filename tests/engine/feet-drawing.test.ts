/** Both feet on the screen: one scale, the outline as long and wide as measured, what is lit. */
import { describe, expect, test } from 'vitest'
import { drawFeet, type FootSeen } from '../../renderer/screens/assessment/results/feetDrawing.ts'
import { footPath } from '../../shared/engine/report/foot-outline.ts'

const room = { width: 400, height: 400, letter: 14 }
const nothing = { side: undefined, part: undefined }
const foot: FootSeen = { lengthMm: 250, ballLengthMm: 180, widthMm: 96 }

/** The corners of the box round path data of curves. */
function boxOf(path: string) {
	const numbers = (path.match(/-?\d+(\.\d+)?/g) ?? []).map(Number)
	let [x0, y0] = numbers as [number, number]
	const xs: number[] = []
	const ys: number[] = []
	for (let at = 2; at < numbers.length; at += 6) {
		const [x1, y1, x2, y2, x3, y3] = numbers.slice(at, at + 6) as [
			number,
			number,
			number,
			number,
			number,
			number,
		]
		for (let step = 0; step <= 100; step++) {
			const t = step / 100
			const u = 1 - t
			const on = (a: number, b: number, c: number, d: number) =>
				u ** 3 * a + 3 * u * u * t * b + 3 * u * t * t * c + t ** 3 * d
			xs.push(on(x0, x1, x2, x3))
			ys.push(on(y0, y1, y2, y3))
		}
		;[x0, y0] = [x3, y3]
	}
	return {
		left: Math.min(...xs),
		right: Math.max(...xs),
		width: Math.max(...xs) - Math.min(...xs),
		height: Math.max(...ys) - Math.min(...ys),
		top: Math.min(...ys),
	}
}
describe('the outline', () => {
	test('it is as long as the foot, and as wide within half a millimetre', () => {
		const place = { x: 0, bottom: 0, unitsPerMm: 1 }
		const box = boxOf(footPath('left', { lengthMm: 262, ballLengthMm: 190, widthMm: 104 }, place))
		expect(box.height).toBeCloseTo(262, 1)
		expect(Math.abs(box.width - 104)).toBeLessThan(0.5)
	})
	test('the right foot is the mirror image of the left', () => {
		const measures = { lengthMm: 250, widthMm: 96, heelWidthMm: 64 }
		const place = { x: 0, bottom: 0, unitsPerMm: 1 }
		const [left, right] = (['left', 'right'] as const).map((side) =>
			boxOf(footPath(side, measures, place)),
		)
		expect(left!.left).toBeCloseTo(-right!.right, 5)
		expect(left!.right).toBeCloseTo(-right!.left, 5)
	})
})
describe('both feet', () => {
	test('one scale for both, and both within the room', () => {
		const drawn = drawFeet({ left: { ...foot, lengthMm: 200 }, right: foot }, room, nothing)
		const [left, right] = drawn!.feet.map(({ path }) => boxOf(path))
		expect(left!.height / right!.height).toBeCloseTo(200 / 250, 3)
		expect(right!.height).toBeCloseTo(250 * drawn!.unitsPerMm, 0)
		expect(left!.left).toBeGreaterThan(0)
		expect(right!.right).toBeLessThan(room.width)
		expect(right!.top).toBeGreaterThan(room.letter)
		expect(left!.right).toBeLessThan(right!.left)
	})
	test('a foot without a length is not drawn, and neither is nothing', () => {
		expect(drawFeet({ left: foot, right: { widthMm: 96 } }, room, nothing)!.feet).toHaveLength(1)
		expect(drawFeet({ left: {}, right: {} }, room, nothing)).toBeUndefined()
	})
	test('only what was measured has its line, each with its figure', () => {
		const [left] = drawFeet({ left: foot, right: foot }, room, nothing)!.feet
		expect(left!.dimensions.map(({ part, figure }) => [part, figure])).toEqual([
			['length', '250'],
			['ball-length', '180'],
			['width', '96'],
		])
	})
	test('the measure in hand is lit on its side alone, measured or not', () => {
		const atHand = { side: 'left', part: 'heel-width' } as const
		const [left, right] = drawFeet({ left: foot, right: foot }, room, atHand)!.feet
		expect(left!.dimensions.filter(({ lit }) => lit)).toMatchObject([
			{ part: 'heel-width', figure: '', measured: false },
		])
		expect(right!.dimensions.filter(({ lit }) => lit)).toEqual([])
	})
	test('what is not seen from above is shown while the hand is at it', () => {
		const seen = { ...foot, girthMm: 238 }
		const atHand = { side: 'right', part: 'girth' } as const
		const [left, right] = drawFeet({ left: seen, right: seen }, room, atHand)!.feet
		expect(left!.dimensions.some(({ part }) => part === 'girth')).toBe(false)
		expect(right!.dimensions.find(({ part }) => part === 'girth')).toMatchObject({
			figure: '238',
			lit: true,
		})
	})
})
