/** Formulas: what is printed, worked out again, is what was computed. */
import fc from 'fast-check'
import { expect, it } from 'vitest'
import { assess } from '../../shared/engine/assess.ts'
import {
	arcTangentDeg,
	cubed,
	equation,
	exactly,
	type Formula,
	inNames,
	inNumbers,
	minus,
	naturalLog,
	over,
	plus,
	quantity,
	squared,
	squareRoot,
	times,
	toThePower,
} from '../../shared/engine/findings/formula.ts'
import { sumsIn, workedOut } from './printed-sum.ts'
import { wholeVisit } from './random-visit.ts'

const known = (text: string) => ({ low: Number(text), high: Number(text) })
const number = fc.integer({ min: -9999, max: 9999 }).map((value) => exactly(value / 100))
const positive = fc.integer({ min: 1, max: 9999 }).map((value) => exactly(value / 100))
const { formula } = fc.letrec<{ formula: Formula }>((tie) => {
	const part = tie('formula')
	return {
		formula: fc.oneof(
			{ maxDepth: 4, withCrossShrink: true },
			number,
			fc.tuple(part, part, part).map(([a, b, c]) => plus(a, b, c)),
			fc.tuple(part, part, part).map(([a, b, c]) => minus(a, b, c)),
			fc.tuple(part, part, part).map(([a, b, c]) => times(a, b, c)),
			fc.tuple(part, positive).map(([a, b]) => over(a, b)),
			fc.tuple(part, positive, positive).map(([a, b, c]) => over(a, times(b, c))),
			fc.tuple(part, positive, positive).map(([a, b, c]) => over(a, over(b, c))),
			part.map(squared),
			part.map(cubed),
			fc
				.tuple(positive, fc.integer({ min: -20, max: 20 }))
				.map(([base, tenths]) => toThePower(base, exactly(tenths / 10))),
			part.map(arcTangentDeg),
			positive.map(naturalLog),
			positive.map(squareRoot),
		),
	}
})
it('any formula, printed and worked out again, is the number that it computed', () => {
	fc.assert(
		fc.property(formula, (made) => {
			fc.pre(Math.abs(made.value) < 1e15)
			const { low, high } = workedOut(inNumbers(made), known)
			expect(low, inNumbers(made)).toBe(high)
			// the sign of a term is moved before it, which changes the last digits of large products
			expect(Math.abs(low - made.value)).toBeLessThanOrEqual(1e-9 * (1 + Math.abs(made.value)))
		}),
	)
})
it('a formula is written with its names, its numbers and its result', () => {
	const made = plus(times(exactly(1.5), quantity(24.96, 1, 'F cm')), exactly(-2))
	expect([inNames(made), inNumbers(made), equation(made, 'sizes', 1)]).toEqual([
		'1.5 x F cm - 2',
		'1.5 x 25 - 2',
		'1.5 x 25 - 2 = 35.4 sizes',
	])
})
it('every sum in a working comes to the number printed behind it', () => {
	const seen = new Set<string>()
	fc.assert(
		fc.property(wholeVisit, wholeVisit, (visit, other) => {
			const then = { ...other, player: visit.player, visitDate: '2026-03-02' }
			const { sizing, ankle, posture, growth, loading } = assess(visit, [then])
			for (const { id, lines } of [sizing, ankle, posture, growth, loading].flatMap(
				(room) => room?.workings ?? [],
			))
				for (const line of lines)
					for (const { worked, result } of sumsIn(line)) {
						const meets = worked.low <= result.high && worked.high >= result.low
						expect(meets, `${id}: ${line}`).toBe(true)
						seen.add(id.replace(/\.(left|right)$/, ''))
					}
		}),
		{ numRuns: 200 },
	)
	// the formulas of each room were among them
	for (const id of [
		'sizing.size-uk',
		'sizing.width-z',
		'sizing.jis',
		'ankle.heel-raise',
		'posture.ipj',
		'posture.leg-length',
		'growth.adult-stature',
		'growth.offset-moore',
		'growth.centile-bmi',
		'loading.force-sidestep',
	])
		expect([...seen]).toContain(id)
})
