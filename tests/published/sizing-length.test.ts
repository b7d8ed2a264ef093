/** Which rule decides the length, and the band of toe room that all hold to; each with its source. */
import { describe, expect, it } from 'vitest'
import { assess } from '../../shared/engine/assess.ts'
import { sizing } from '../../shared/engine/sizing/sizing.ts'
import type { Visit } from '../../shared/engine/visit/visit.ts'
import { modelWith, shelfOf, sizeOf } from './known-shelf.ts'
import { protocol, visit } from './sizing-visit.ts'

type Feet = NonNullable<Visit['feet']>
const fitted = (feet: Feet) => sizing(visit(feet), [], protocol)
const ids = (feet: Feet) => fitted(feet).findings.map(({ id }) => id)

describe('heel to ball, sizing.md 2.1: size = max(toe size, arch size)', () => {
	// 204 / 0.741 (ANSUR II mean ball/foot ratio of men) = 275.3 mm
	it('well beyond half a size the ball decides wholly, well below it the toes', () => {
		const ball = fitted({ left: { heelToToeMm: 262, heelToBallMm: 204 } })
		expect([ball.decidedBy, ball.decidedByFoot]).toEqual(['ball-length', 'left'])
		expect(ball.fitLengthMm).toBeCloseTo(204 / 0.741, 6)
		const toe = fitted({ left: { heelToToeMm: 262, heelToBallMm: 195 } })
		expect([toe.decidedBy, toe.decidedByFoot, toe.fitLengthMm]).toEqual(['toe-length', 'left', 262])
		// 196 / 0.741 = 264.5: asks for 2.5 mm more, less than half a size
		expect(ids({ left: { heelToToeMm: 262, heelToBallMm: 196 } })).toContain(
			'sizing.toe-length.both',
		)
		// 190 / 0.741 = 256.4: asks for nothing
		expect(ids({ left: { heelToToeMm: 262, heelToBallMm: 190 } })).not.toContain(
			'sizing.toe-length.both',
		)
	})
	// 1.329 mm of one reading (Lee 2014) divided by the root of 2 is 0.94; half a size is 4.233 mm.
	it('within a standard error of half a size it is given in part, half of it in the middle', () => {
		const arch = 204 / 0.741
		const middle = fitted({ left: { heelToToeMm: arch - 4.233, heelToBallMm: 204 } })
		expect(middle.fitLengthMm! - (arch - 4.233)).toBeCloseTo(4.233 / 2, 3)
		expect(middle.findings.find(({ code }) => code === 'sizing.arch-length')?.params).toMatchObject(
			{ wholly: false, longerMm: 4.2, givenMm: 2.1 },
		)
		const below = fitted({ left: { heelToToeMm: arch - 3.29, heelToBallMm: 204 } })
		expect(below.decidedBy).toBe('toe-length')
		const above = fitted({ left: { heelToToeMm: arch - 5.18, heelToBallMm: 204 } })
		expect(above.fitLengthMm).toBeCloseTo(arch, 6)
	})
	it('a tenth of a millimetre never turns the size, whichever foot it is of', () => {
		const at = (otherMm: number) =>
			fitted({
				left: { heelToToeMm: 262, heelToBallMm: 204 },
				right: { heelToToeMm: otherMm, heelToBallMm: 195 },
			}).fitLengthMm!
		for (let tenths = 2600; tenths < 2700; tenths++)
			expect(Math.abs(at((tenths + 1) / 10) - at(tenths / 10))).toBeLessThan(0.5)
		const own = (tenths: number) =>
			fitted({ left: { heelToToeMm: tenths / 10, heelToBallMm: 204 } }).fitLengthMm!
		for (let tenths = 2600; tenths < 2800; tenths++)
			expect(Math.abs(own(tenths + 1) - own(tenths))).toBeLessThan(0.5)
	})
})
describe('one band of toe room', () => {
	const nails: Visit['conditions'] = [
		{ condition: 'subungual-haematoma', side: 'left', status: 'current' },
	]
	const withNails = (more: Partial<Visit> = {}): Visit => ({
		...visit({ left: { heelToToeMm: 260 }, sockMm: 2 }),
		conditions: nails,
		...more,
	})
	// flags-load.md: bruised or ingrown nails 8 to 12 mm while standing (common practice)
	it('bruised nails raise it to 8 to 12 mm in boots; trainers have more already', () => {
		const { toeRoomMm, insideLengthMm, trainers } = sizing(withNails(), [], protocol)
		expect([toeRoomMm, insideLengthMm]).toEqual([
			{ min: 8, target: 10, max: 12 },
			{ min: 270, target: 272, max: 274 },
		])
		expect(trainers!.toeRoomMm).toEqual({ min: 10, target: 12.5, max: 15 })
	})
	it('rule, pairs, shelf and words tell the same', () => {
		const assessed = assess(
			withNails({ footwear: [{ id: 'p', sole: 'firm-ground', insideLengthMm: 268 }] }),
			[],
			undefined,
			shelfOf(
				modelWith({ sizes: [sizeOf(8, 268)] }),
				modelWith({ id: 'n', sizes: [sizeOf(8, 271)] }),
			),
		)
		const toenails = assessed.findings.find(({ code }) => code === 'footwear.toenails')
		expect(toenails?.params).toEqual({ leastMm: 8, mostMm: 12 })
		const [pair] = assessed.footwear.current
		expect([pair?.toeRoomMm, pair?.verdict]).toEqual([6, 'replace'])
		expect(assessed.footwear.ranked.map(({ toeRoomMm, verdict }) => [toeRoomMm, verdict])).toEqual([
			[9, 'suits'],
			[6, 'unsuitable'],
		])
	})
})
describe('what else is said of a size', () => {
	const young = { birthDate: '2014-01-01' }
	it('width under 18: no letter and no norm, the foot against the shelf', () => {
		const wide = visit({ left: { heelToToeMm: 237, ballWidthMm: 99 } }, young)
		const found = (shelf?: ReturnType<typeof shelfOf>) =>
			sizing(wide, [], protocol, { shelf }).findings.find(
				({ code }) => code === 'sizing.young-width',
			)?.params
		expect(found()).toEqual({ widthMm: 99 })
		const sizes = [sizeOf(4, 247, 96), sizeOf(4.5, 247, 99), sizeOf(5, 247, 101), sizeOf(6, 255)]
		expect(found(shelfOf(modelWith({ sizes })))).toEqual({
			widthMm: 99,
			onShelf: { sizes: 3, wideEnough: 2, fromMm: 96, toMm: 101 },
		})
		expect(sizing(wide, [], protocol).fitting).toBeUndefined()
	})
	it('an injured foot is measured, and nothing is bought by its size', () => {
		const feet = { left: { heelToToeMm: 260 }, right: { heelToToeMm: 262 } }
		const calm = { footAtRisk: [], acute: [], jointsAtRisk: [], unclearedSurgery: false }
		const facts = {
			minor: false,
			years: 28,
			roles: [],
			grounds: [],
			left: { ...calm, acute: [{ measure: 'injury', value: 'yes' }] },
			right: calm,
		}
		const injured = sizing(visit(feet), [], protocol, { facts })
		expect([injured.usableForBuying, injured.fitLengthMm]).toEqual([false, 262])
		expect(injured.findings.map(({ id }) => id)).toContain('sizing.not-for-buying.left')
		expect(injured.findings.map(({ id }) => id)).not.toContain('sizing.not-for-buying.right')
		expect(sizing(visit(feet), [], protocol).usableForBuying).toBeUndefined()
	})
})
