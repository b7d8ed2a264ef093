/** A plan anew is looked at before it is kept: taken, left, or refused where things changed. */
import { describe, expect, test } from 'vitest'
import type { OutputOf } from '../../shared/contract.ts'
import { opened, season } from './season-bench.ts'

type Planned = OutputOf<'season.plan'>
/** A season that was planned once, with its last match pinned to another pair since. */
async function changedSincePlanned() {
	const bench = await opened()
	await bench.save(season)
	const { plan } = await bench.plan()
	const match = plan.sessions.findLast(({ kind, pair }) => kind === 'match' && pair !== undefined)!
	const other = plan.pairs.find(({ id }) => id !== match.pair)!
	const { date, start, minutes, kind, surface, ground, id } = match
	const pin = { id, date, start, minutes, kind, surface, ground, pinned: other.id }
	await bench.save({ ...season, sessions: [...season.sessions!, pin] })
	const ask = () => bench.ask<Planned>('season.plan', { playerId: bench.playerId, ask: true })
	const to = <T>(call: string) => bench.ask<T>(call, { playerId: bench.playerId })
	return { bench, plan, match, other, ask, to }
}
describe('a plan that is asked for first', () => {
	test('is kept at once where there is none before', async () => {
		const bench = await opened()
		await bench.save(season)
		const first = await bench.ask<Planned>('season.plan', { playerId: bench.playerId, ask: true })
		expect(first).toMatchObject({ first: true, kept: true, changes: [] })
		expect((await bench.open()).planned?.plan).toEqual(first.plan)
		bench.app.close()
	})
	test('is kept when it is taken, once', async () => {
		const { bench, plan, match, other, ask, to } = await changedSincePlanned()
		const tried = await ask()
		expect(tried.kept).toBe(false)
		expect(tried.changes.length).toBeGreaterThan(0)
		expect((await bench.open()).planned?.plan).toEqual(plan)
		expect(await to('season.take')).toEqual({ changes: tried.changes })
		const { planned } = await bench.open()
		expect(planned?.plan.sessions.find(({ id }) => id === match.id)?.pair).toBe(other.id)
		expect((await bench.refused('season.take', { playerId: bench.playerId })).code).toBe(
			'season.nothing-to-take',
		)
		bench.app.close()
	})
	test('is gone when it is left; the plan before stands', async () => {
		const { bench, plan, ask, to } = await changedSincePlanned()
		await ask()
		expect(await to('season.leave')).toEqual({ left: true })
		expect(await to('season.leave')).toEqual({ left: false })
		expect((await bench.refused('season.take', { playerId: bench.playerId })).code).toBe(
			'season.nothing-to-take',
		)
		expect((await bench.open()).planned?.plan).toEqual(plan)
		bench.app.close()
	})
	test('is refused where the sessions changed since', async () => {
		const { bench, plan, ask } = await changedSincePlanned()
		await ask()
		await bench.save(season)
		expect((await bench.refused('season.take', { playerId: bench.playerId })).code).toBe(
			'season.changed-since',
		)
		expect((await bench.open()).planned?.plan).toEqual(plan)
		bench.app.close()
	})
})
