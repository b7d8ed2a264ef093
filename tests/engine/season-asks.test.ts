/** What recorded conditions ask of a season, by the table alone. */
import { describe, expect, it } from 'vitest'
import { stopBefore } from '../../shared/engine/season/problem/before.ts'
import { asksOfSeason, thatAsk } from '../../shared/engine/season/problem/condition-asks.ts'
import { type Condition, conditions } from '../../shared/engine/visit/terms.ts'
import type { Visit } from '../../shared/engine/visit/visit.ts'

type Recorded = NonNullable<Visit['conditions']>[number]
const recorded = (
	condition: Condition,
	status: Recorded['status'] = 'current',
	side: Recorded['side'] = 'left',
): Recorded => ({ condition, side, status })

describe('what conditions ask of a season', () => {
	it('each asks for one thing at most once', () => {
		for (const condition of conditions) {
			const asked = asksOfSeason(condition).map(({ ask }) => ask)
			expect(new Set(asked).size).toBe(asked.length)
		}
	})
	it.each(['neuropathy', 'previous-foot-ulcer'] as const)('%s stops it, even past', (condition) =>
		expect(stopBefore({ conditions: [recorded(condition, 'past')] })).toMatchObject({
			id: 'season.stop-sensation',
			level: 'stop',
			params: { conditions: [condition] },
		}),
	)
	it.each([
		'second-metatarsal-stress-fracture',
		'fifth-metatarsal-stress-fracture',
		'navicular-stress-fracture',
	] as const)(
		'%s stops it while current; recovering, studs come back step by step',
		(condition) => {
			expect(stopBefore({ conditions: [recorded(condition)] })?.id).toBe('season.stop-bone-stress')
			const back = { conditions: [recorded(condition, 'recovering')] }
			expect(stopBefore(back)).toBeUndefined()
			expect(thatAsk(back, ({ ask }) => ask === 'limit-studs')).toHaveLength(1)
			const past = { conditions: [recorded(condition, 'past')] }
			expect(thatAsk(past, ({ ask }) => ask === 'limit-studs')).toEqual([])
		},
	)
	it('both feet are named as both, and no side as none', () => {
		const bone = 'navicular-stress-fracture'
		const sideOf = (...sides: Recorded['side'][]) =>
			stopBefore({ conditions: sides.map((side) => recorded(bone, 'current', side)) })?.side
		expect([sideOf('left'), sideOf('left', 'right'), sideOf('both'), sideOf('none')]).toEqual([
			'left',
			'both',
			'both',
			'none',
		])
		expect(sideOf('none', 'right')).toBe('right')
	})
})
