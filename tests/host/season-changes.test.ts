/** A season changed under way, through the host's calls: as little as must be is told otherwise. */
import { describe, expect, test } from 'vitest'
import type { OutputOf } from '../../shared/contract.ts'
import { plannedPair } from '../../shared/engine/prescription/planned-pair.ts'
import { seasonSessions } from '../../shared/engine/season/pattern.ts'
import type { Season } from '../../shared/engine/visit/visit.ts'
import { opened, pictured, season } from './season-bench.ts'

type Plan = OutputOf<'season.plan'>['plan']
const wornIn = ({ sessions }: Plan) =>
	new Map(sessions.map(({ id, pair, parts }) => [id, JSON.stringify(parts ?? pair)]))
/** Ids of the sessions that both plans have and tell otherwise. */
function toldOtherwise(before: Plan, after: Plan): string[] {
	const [was, now] = [wornIn(before), wornIn(after)]
	return [...was].flatMap(([id, worn]) => (now.has(id) && now.get(id) !== worn ? [id] : []))
}
const without = (id: string): Season => ({
	...season,
	sessions: [
		...(season.sessions ?? []).filter((each) => each.id !== id),
		{ ...seasonSessions(season).find((each) => each.id === id)!, status: 'cancelled' },
	],
})

describe('planned again', () => {
	test('nothing changed: nothing is told otherwise', async () => {
		const bench = await opened()
		await bench.save(season)
		const first = await bench.plan()
		const again = await bench.plan()
		expect(again.changes).toEqual([])
		expect(toldOtherwise(first.plan, again.plan)).toEqual([])
		bench.app.close()
	})
	test('a session called off changes no other; a pin changes its own and is kept then on', async () => {
		const bench = await opened()
		await bench.save(season)
		const first = await bench.plan()
		const last = first.plan.sessions.findLast(({ kind }) => kind === 'training')!
		await bench.save(without(last.id))
		const called = await bench.plan()
		expect(toldOtherwise(first.plan, called.plan)).toEqual([])
		expect(called.changes.map(({ code }) => code)).toEqual(['season.change-off'])
		const free = called.plan.sessions.find(
			({ date, pair, kind }) => date > '2027-04-20' && pair === 'new-ag' && kind === 'training',
		)!
		const pinned = { ...seasonSessions(season).find(({ id }) => id === free.id)!, pinned: 'turf' }
		const changed = without(last.id)
		await bench.save({ ...changed, sessions: [...changed.sessions!, pinned] })
		const withPin = await bench.plan()
		expect(wornIn(withPin.plan).get(free.id)).toBe(JSON.stringify('turf'))
		expect(toldOtherwise(called.plan, withPin.plan)).toEqual([free.id])
		expect(toldOtherwise(withPin.plan, (await bench.plan()).plan)).toEqual([])
		bench.app.close()
	})
})
describe('before signing', () => {
	test('a pair is planned in one step: the plan of before is old, the next one wears it', async () => {
		const bench = await opened()
		await bench.save(season)
		const first = await bench.plan()
		const role = { id: 'match', role: 'match', sole: 'firm-ground' } as const
		const pair = plannedPair(role, undefined, '2027-02-08')
		await bench.put({ footwear: [...pictured.footwear!, pair] })
		expect((await bench.open()).planned?.basisChanged).toBe(true)
		const { plan, changes } = await bench.plan()
		expect(plan.pairs.map(({ id }) => id)).toContain(pair.id)
		expect(changes.map(({ code }) => code)).toContain('season.change-pair-new')
		const letters = ({ pairs }: Plan) => new Map(pairs.map(({ id, letter }) => [id, letter]))
		for (const [id, letter] of letters(first.plan)) expect(letters(plan).get(id)).toBe(letter)
		bench.app.close()
	})
	test('a weekly pattern is offered from play where none was entered, and nothing is saved', async () => {
		const bench = await opened({ play: { matchesPerWeek: 1, trainingsPerWeek: 2 } })
		const offered = await bench.open()
		expect(offered.fromPlay?.rows.map(({ weekday }) => weekday)).toEqual([
			'saturday',
			'tuesday',
			'thursday',
		])
		expect([offered.season?.pattern, offered.savedAs]).toEqual([undefined, undefined])
		await bench.save({ from: season.from, to: season.to, pattern: offered.fromPlay!.rows })
		expect((await bench.open()).fromPlay).toBeUndefined()
		bench.app.close()
	})
})
