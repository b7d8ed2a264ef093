/** The season through the host's calls: saved, planned in its worker, cancelled, planned again. */
import { describe, expect, test } from 'vitest'
import type { OutputOf } from '../../shared/contract.ts'
import { keepPast } from '../../shared/engine/season/past.ts'
import { seasonSessions } from '../../shared/engine/season/pattern.ts'
import type { Season } from '../../shared/engine/visit/visit.ts'
import { decideAll } from '../decide.ts'
import { opened, passphrase, season } from './season-bench.ts'

describe('a season on record', () => {
	test('is saved, planned, opened again after a restart; nothing is overwritten', async () => {
		const bench = await opened()
		expect(await bench.open()).toMatchObject({
			from: '2027-01-25',
			basis: { from: 'draft', visitDate: '2027-01-25' },
			pairs: [
				{ id: 'firm', letter: 'A' },
				{ id: 'new-ag', letter: 'C' },
				{ id: 'turf', letter: 'B' },
			],
		})
		await bench.save(season)
		const { plan, first, changes } = await bench.plan()
		expect([first, changes]).toEqual([true, []])
		expect(plan.sessions).toHaveLength(
			seasonSessions(season).filter((each) => each.status === undefined).length,
		)
		expect(plan.sessions.every((each) => each.reasons.length > 0 || each.unmet.length > 0)).toBe(
			true,
		)
		const before = await bench.open()
		expect(before.planned).toMatchObject({
			version: 1,
			season: before.savedAs,
			basisChanged: false,
			plan,
		})
		bench.app.close()
		const again = bench.make()
		const ask = bench.asking(again)
		await ask('session.unlock', { passphrase })
		expect(await ask('season.open', { playerId: bench.playerId })).toEqual(before)
		again.close()
	})
	test('a save from an older state, and one that ends before it begins, are refused', async () => {
		const bench = await opened()
		const { savedAs } = await bench.save(season)
		await bench.save({ ...season, to: '2027-06-05' })
		expect(
			(await bench.refused('season.save', { playerId: bench.playerId, season, follows: savedAs }))
				.code,
		).toBe('season.changed-elsewhere')
		expect((await bench.refused('season.save', { playerId: bench.playerId, season })).code).toBe(
			'season.changed-elsewhere',
		)
		expect((await bench.open()).season?.to).toBe('2027-06-05')
		const { savedAs: follows } = await bench.open()
		expect(
			(
				await bench.refused('season.save', {
					playerId: bench.playerId,
					season: { ...season, to: '2026-01-01' },
					follows,
				})
			).problems,
		).toMatchObject([{ path: 'season.to', code: 'season.day-too-early' }])
		bench.app.close()
	})
	test('the latest signed visit counts where no draft is open', async () => {
		const bench = await opened()
		await bench.save(season)
		await decideAll(bench.ask, bench.playerId, '2027-01-25')
		await bench.ask('visits.sign', { draftId: bench.draftId })
		expect((await bench.open()).basis).toEqual({ from: 'visit', visitDate: '2027-01-25' })
		expect((await bench.plan()).plan.pairs.map((each) => each.letter)).toEqual(['A', 'C', 'B'])
		bench.app.close()
	})
})
describe('planning again', () => {
	test('a pin is kept, a change is told, the past stays though the pattern is gone', async () => {
		const bench = await opened()
		await bench.save(season)
		const { plan } = await bench.plan()
		const free = plan.sessions.find(
			(each) => each.date > '2027-04-20' && each.pair === 'new-ag' && each.kind === 'training',
		)!
		await bench.save({
			...season,
			sessions: [
				...(season.sessions ?? []),
				{ ...seasonSessions(season).find((each) => each.id === free.id)!, pinned: 'turf' },
			],
		})
		const pinned = await bench.plan()
		expect(pinned.plan.sessions.find((each) => each.id === free.id)).toMatchObject({
			pair: 'turf',
			reasonCodes: expect.arrayContaining([{ code: 'season.chosen', params: {} }]),
		})
		expect(pinned.changes).toContainEqual(
			expect.objectContaining({
				date: free.date,
				code: 'season.change-moved',
				params: expect.objectContaining({
					start: free.start,
					kind: 'training',
					moved: [],
					worn: {
						before: [
							{
								pair: { letter: 'C', name: 'new artificial-ground boots' },
								minutes: free.minutes,
							},
						],
						after: [{ pair: { letter: 'B', name: 'turf shoes' }, minutes: free.minutes }],
					},
				}),
			}),
		)

		bench.clock.ms = Date.parse('2027-05-03T09:00:00.000Z')
		await bench.ask('session.unlock', { passphrase })
		const played = (from: typeof plan) =>
			from.sessions
				.filter((each) => each.date < '2027-05-03')
				.map(({ id, date, pair, parts }) => ({ id, date, pair, parts }))
		await bench.save({ ...season, pattern: season.pattern!.filter((each) => each.id !== 'tue') })
		const later = await bench.plan()
		expect(played(later.plan)).toEqual(played(pinned.plan))
		expect(
			later.plan.sessions.filter((each) => each.id.startsWith('tue:') && each.date >= '2027-05-03'),
		).toEqual([])
		expect((await bench.open()).planned?.version).toBe(3)
		bench.app.close()
	})
	test('rained off yesterday, and a pattern entered later, against the last plan', () => {
		const small: Season = {
			from: '2027-02-01',
			to: '2027-02-28',
			pattern: [
				{ id: 'tue', weekday: 'tuesday', minutes: 60, kind: 'training', surface: 'natural-firm' },
			],
		}
		const was = {
			from: '2027-02-10',
			sessions: seasonSessions(small).map((each) => ({
				...each,
				start: '18:00',
				ground: 'dry' as const,
				reasons: [],
				unmet: [],
			})),
		}
		const ids = (next: Season) =>
			seasonSessions(keepPast(next, was, '2027-02-17'))
				.filter((each) => each.status === undefined)
				.map((each) => each.id)
		expect(ids(small)).toEqual([
			'tue:2027-02-02',
			'tue:2027-02-09',
			'tue:2027-02-16',
			'tue:2027-02-23',
		])
		expect(ids({ ...small, pattern: [] })).toEqual([
			'tue:2027-02-02',
			'tue:2027-02-09',
			'tue:2027-02-16',
		])
		expect(ids({ ...small, exceptions: [{ from: '2027-02-16', status: 'cancelled' }] })).toEqual([
			'tue:2027-02-02',
			'tue:2027-02-09',
			'tue:2027-02-23',
		])
		expect(
			ids({
				...small,
				pattern: [
					...small.pattern!,
					{
						id: 'thu',
						weekday: 'thursday',
						minutes: 60,
						kind: 'training',
						surface: 'natural-firm',
					},
				],
			}),
		).toEqual([
			'tue:2027-02-02',
			'tue:2027-02-09',
			'thu:2027-02-11',
			'tue:2027-02-16',
			'thu:2027-02-18',
			'tue:2027-02-23',
			'thu:2027-02-25',
		])
	})
	test('cancelling keeps the last plan, and other calls are answered meanwhile', async () => {
		const bench = await opened()
		await bench.save(season)
		const running = bench.app.call('season.plan', { playerId: bench.playerId })
		expect(await bench.ask('season.progress', { playerId: bench.playerId })).toMatchObject({
			running: true,
		})
		expect((await bench.refused('season.plan', { playerId: bench.playerId })).code).toBe(
			'season.being-planned',
		)
		expect(await bench.ask('season.cancel', { playerId: bench.playerId })).toEqual({
			cancelled: true,
		})
		expect(await running).toMatchObject({ ok: false, code: 'season.cancelled' })
		expect((await bench.open()).planned).toBeUndefined()
		expect(await bench.ask('season.cancel', { playerId: bench.playerId })).toEqual({
			cancelled: false,
		})
		expect(await bench.ask('season.progress', { playerId: bench.playerId })).toEqual({
			running: false,
		})
		bench.app.close()
	})
})
describe('a new insert and a new pair at once', () => {
	test('every step of the ladder is half as long, and the match waits for it', async () => {
		const plain = await opened()
		await plain.save(season)
		const inserted = await opened({}, { heelRaiseMm: { left: 6, right: 6 } })
		await inserted.save(season)
		const steps = (plan: OutputOf<'season.plan'>['plan']) =>
			plan.sessions.flatMap(
				(each) =>
					each.parts
						?.filter((part) => part.pair === 'new-ag' && part !== each.parts?.at(-1))
						.map((part) => part.minutes) ?? [],
			)
		const [usual, halved] = [(await plain.plan()).plan, (await inserted.plan()).plan]
		expect(steps(usual).slice(0, 3)).toEqual([20, 30, 45])
		// half of 20, 30 and 45, rounded down to five minutes
		expect(steps(halved).slice(0, 3)).toEqual([10, 15, 20])
		expect(
			halved.pairs.find((each) => each.id === 'new-ag')!.brokenInBy! >
				usual.pairs.find((each) => each.id === 'new-ag')!.brokenInBy!,
		).toBe(true)
		expect(halved.findings.find((each) => each.id === 'season.break-in-new-ag')).toMatchObject({
			code: 'season.break-in',
			params: { letter: 'C', firstMinutes: 10, insertPercent: 50 },
		})
		for (const bench of [plain, inserted]) bench.app.close()
	})
})
