/** What one level reached can be kept by the next, however long the minutes it is reckoned in. */
import { expect, it } from 'vitest'
import { loadHighs, solveLevels } from '../../electron/solver/levels.ts'
import { addDays } from '../../shared/engine/plain/days.ts'
import { verify } from '../../shared/engine/season/verify/verify.ts'
import type { Session } from '../../shared/engine/visit/visit.ts'
import { problemOf } from './drawn-season.ts'
import { seasonVisit } from './random-season.ts'

const highs = await loadHighs()
it('shares of a long season, asked of pairs that cannot give them', () => {
	const sessions = Array.from({ length: 17 }, (_, week): Session[] => {
		const on = (day: number, minutes: number): Session => ({
			date: addDays('2027-01-04', 7 * week + day),
			start: '10:30',
			minutes,
			kind: 'training',
			surface: 'natural-soft',
		})
		return [on(0, 90), on(5, 60)]
	}).flat()
	for (const shareMaxPercent of [31, 33, 35, 37])
		for (const shareMinPercent of [10, 13, 17]) {
			const visit = seasonVisit(
				[
					{ id: 'p1', sole: 'firm-ground', shareMaxPercent },
					{ id: 'p2', sole: 'artificial-ground', shareMinPercent },
				],
				sessions,
			)
			const problem = problemOf(visit)
			const { rotation, levels } = solveLevels(highs, problem, { timeLimitSeconds: 20, gap: 0.001 })
			expect(verify(problem, rotation).problems).toEqual([])
			expect(levels).toHaveLength(10)
		}
}, 120_000)
