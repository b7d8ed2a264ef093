/**
 * The exact toy problems of the rotation (solver-verified figures), and the arithmetic of rounds.
 */
import { expect, it } from 'vitest'
import { solveSeason } from '../../electron/solver/solve.ts'
import { suitability } from '../../shared/engine/protocol/norms/suitability.ts'
import { openProtocol } from '../../shared/engine/protocol/protocol.ts'
import { expandPattern } from '../../shared/engine/season/pattern.ts'
import { buildProblem } from '../../shared/engine/season/problem/build.ts'
import { ladderMinutes } from '../../shared/engine/season/problem/ladder.ts'
import type { Owned, SeasonProblem, Slot } from '../../shared/engine/season/problem/problem.ts'
import { verify } from '../../shared/engine/season/verify/verify.ts'
import { seasonVisit } from '../engine/random-season.ts'

const weights: SeasonProblem['weights'] = {
	change: 0,
	wear: 0,
	share: 0,
	switchOver: 0,
	switchHours: 48,
	price: 0,
	gap: 0,
	familiarDays: 14,
}
const owned = (id: string, dryingHours: number): Owned => ({
	id,
	name: id,
	letter: id,
	sole: 'firm-ground',
	startMinutes: 0,
	lifeMinutes: 100000,
	dryingHours: { dry: dryingHours, damp: dryingHours, wet: dryingHours },
	isNew: false,
	relativePrice: 0,
})
const slots = (count: number, minutes: number, split: boolean): Slot[] =>
	Array.from({ length: count }, (_, index) => ({
		id: `s${index}`,
		date: `2027-02-0${index + 1}`,
		start: '18:00',
		startHour: 24 * index + 18,
		minutes,
		kind: 'training',
		surface: 'natural-firm',
		ground: 'dry',
		past: false,
		counts: true,
		split,
	}))
const base = {
	fixed: [],
	caps: [],
	matchFromMinutes: 150,
	breakIn: { firstMinutes: 20, share: 0.5, roundMinutes: 5 },
	shortestPartMinutes: 15,
	weights,
}

it('A: three days 24 h apart, pair A dries in 36 h: A, B, A at a cost of 1', async () => {
	const problem: SeasonProblem = {
		...base,
		// on wet ground drying is a rule, as in the toy problem, and no wish
		slots: slots(3, 60, false).map((slot) => ({ ...slot, ground: 'wet' })),
		pairs: [owned('A', 36), owned('B', 0)],
		cost: [
			[0, 1],
			[0, 1],
			[0, 1],
		],
	}
	const solved = await solveSeason(problem, { gap: 0 })
	expect(
		solved.rotation.uses.map((uses) => uses.map((use) => problem.pairs[use.pair]!.id)),
	).toEqual([['A'], ['B'], ['A']])
	expect([solved.status, verify(problem, solved.rotation).reached]).toEqual([
		'optimal',
		expect.objectContaining({ suited: 1, dry: 0 }),
	])
})
it('B: the break-in ladder over six sessions of up to 90 minutes', () => {
	expect(ladderMinutes([90, 90, 90, 90, 90, 90], base.breakIn)).toEqual([
		20, 50, 95, 162.5, 252.5, 342.5,
	])
})
it('B: the same ladder laid on a season, in round minutes, and other wear only after it', () => {
	const visit = seasonVisit(
		[
			{ id: 'old', sole: 'firm-ground', minutesWorn: 3000 },
			{ id: 'new', sole: 'firm-ground', newFrom: '2027-02-01' },
		],
		['01', '03', '05', '08', '10'].map((day) => ({
			date: `2027-02-${day}`,
			start: '18:00',
			minutes: 90,
			kind: 'training',
			surface: 'natural-firm',
		})),
	)
	const { problem } = buildProblem({ visit, protocol: openProtocol(), suitability })
	expect(problem.fixed.map(({ minutes }) => minutes)).toEqual([20, 30, 45, 65])
	expect(problem.cost.map((row) => row[0])).toEqual([
		{ why: 'breaking-in' },
		{ why: 'breaking-in' },
		{ why: 'breaking-in' },
		{ why: 'breaking-in' },
		expect.any(Number),
	])
})
it('C: five sessions of 90 minutes, A at most 120 minutes, B at 1 a minute: 330', async () => {
	const problem: SeasonProblem = {
		...base,
		slots: slots(5, 90, true),
		pairs: [owned('A', 0), owned('B', 0)],
		cost: Array.from({ length: 5 }, () => [0, 60]),
		caps: [
			{
				id: 'cap',
				limit: { limit: 'pair', mostMinutes: 120 },
				pairs: [0],
				weeks: [{ monday: '2027-02-01', slots: [0, 1, 2, 3, 4], minutes: 120 }],
			},
		],
	}
	const solved = await solveSeason(problem, { gap: 0 })
	expect(verify(problem, solved.rotation).reached.suited).toBeCloseTo(330, 2)
	expect(verify(problem, solved.rotation).problems).toEqual([])
})
it('18 rounds of two trainings and a match with one bye, training kept, are 53 sessions', () => {
	const patterns = [
		['tuesday', 'training'],
		['thursday', 'training'],
		['saturday', 'match'],
	].map(([weekday, kind]) => ({
		id: weekday!,
		weekday: weekday as 'tuesday',
		kind: kind as 'match',
		minutes: 75,
		surface: 'natural-firm' as const,
	}))
	// 18 weeks from Monday 5 April 2027
	const all = expandPattern(patterns, '2027-04-05', '2027-08-08', [
		{ from: '2027-06-07', to: '2027-06-13', status: 'bye' },
	])
	expect(all.length).toBe(54)
	expect(all.filter(({ status }) => status === undefined).length).toBe(53)
	expect(all.filter(({ status }) => status === 'bye').map(({ date }) => date)).toEqual([
		'2027-06-12',
	])
})
it('injured for two weeks takes every session out', () => {
	const all = expandPattern(
		[{ id: 'tue', weekday: 'tuesday', kind: 'training', minutes: 60, surface: 'hall' }],
		'2027-03-01',
		'2027-03-31',
		[{ from: '2027-03-08', to: '2027-03-21', status: 'injured' }],
	)
	expect(all.map(({ date, status }) => [date, status])).toEqual([
		['2027-03-02', undefined],
		['2027-03-09', 'injured'],
		['2027-03-16', 'injured'],
		['2027-03-23', undefined],
		['2027-03-30', undefined],
	])
})
