/** Planning from a day before the visit: what is ahead counts, and the plan keeps its own rules. */
import fc from 'fast-check'
import { expect, it } from 'vitest'
import { loadHighs, solveLevels } from '../../electron/solver/levels.ts'
import { addDays } from '../../shared/engine/plain/days.ts'
import { verify } from '../../shared/engine/season/verify/verify.ts'
import { problemOf, season } from './drawn-season.ts'

const highs = await loadHighs()
it('a plan from any day, before the visit too, keeps every hard rule', () => {
	fc.assert(
		fc.property(season(20, 4, 40), fc.integer({ min: 0, max: 40 }), (drawn, back) => {
			const visit = { ...drawn, visitDate: addDays('2027-01-04', back) }
			const problem = problemOf(visit, '2027-01-04')
			const { rotation } = solveLevels(highs, problem, { timeLimitSeconds: 5, gap: 0.001 })
			expect(verify(problem, rotation).problems).toEqual([])
		}),
		{ numRuns: 60 },
	)
}, 120_000)
