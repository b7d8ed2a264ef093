/** A fault planted in a sound rotation, one for each hard rule: the verifier names it. */
import { describe, expect, it } from 'vitest'
import { loadHighs, solveLevels } from '../../electron/solver/levels.ts'
import type { Rotation, SeasonProblem } from '../../shared/engine/season/problem/problem.ts'
import { verify } from '../../shared/engine/season/verify/verify.ts'
import type { Pair, Session } from '../../shared/engine/visit/visit.ts'
import type { Breach } from '../../shared/engine/words/en/season/refusals.ts'
import { problemOf } from './drawn-season.ts'
import { seasonVisit } from './random-season.ts'

const highs = await loadHighs()
const on = (date: string, more: Partial<Session> = {}): Session => ({
	date,
	start: '18:00',
	minutes: 60,
	kind: 'training',
	surface: 'natural-firm',
	...more,
})
const sessions = [
	on('2027-02-02', { ground: 'wet' }),
	on('2027-02-03'),
	on('2027-02-06', { kind: 'match' }),
	on('2027-02-09'),
	on('2027-02-11', { surface: 'hall' }),
	on('2027-02-13', { kind: 'match', surface: 'artificial-3g' }),
]
const pairs: Pair[] = [
	{ id: 'firm', sole: 'firm-ground', minutesWorn: 900 },
	{ id: 'turf', sole: 'turf', minutesWorn: 900 },
	{ id: 'new', sole: 'artificial-ground', minutesWorn: 0, newFrom: '2027-02-09' },
	{ id: 'old', sole: 'firm-ground', minutesWorn: 7150 },
]
const base = problemOf(seasonVisit(pairs, sessions))
const placeOf = (id: string) => base.pairs.findIndex((pair) => pair.id === id)
const solved = solveLevels(highs, base, { timeLimitSeconds: 10, gap: 0.001 }).rotation
const wearing = (rotation: Rotation, slot: number, ...uses: [id: string, minutes: number][]) => ({
	uses: rotation.uses.map((worn, place) =>
		place === slot ? uses.map(([id, minutes]) => ({ pair: placeOf(id), minutes })) : worn,
	),
})
/** The pair as the problem has it, but changed. */
const withPair = (id: string, change: Partial<SeasonProblem['pairs'][number]>): SeasonProblem => ({
	...base,
	// the points are blind: the verifier goes by the pair
	cost: base.cost.map((row) => row.map((points) => (typeof points === 'number' ? points : 0))),
	pairs: base.pairs.map((pair) => (pair.id === id ? { ...pair, ...change } : pair)),
})
const everywhere = (id: string): Rotation => ({
	uses: sessions.map(({ minutes }) => [{ pair: placeOf(id), minutes }]),
})
const found = (problem: SeasonProblem, rotation: Rotation): Breach['is'][] =>
	verify(problem, rotation).problems.map(({ is }) => is)

it('the rotation is sound before a fault is planted', () => expect(found(base, solved)).toEqual([]))
describe('each fault alone', () => {
	const faults: [fault: string, is: Breach['is'], SeasonProblem, Rotation][] = [
		['a sole that is not for the hall', 'barred', base, wearing(solved, 4, ['firm', 60])],
		['a new pair before its day', 'barred', base, wearing(solved, 0, ['new', 20], ['turf', 40])],
		['a pair worn twice before it dried', 'soaked', base, everywhere('turf')],
		['a pair past its life', 'life', base, wearing(solved, 0, ['old', 60])],
		['a step too long', 'break-in', { ...base, fixed: [] }, wearing(solved, 3, ['new', 60])],
		[
			'a match too early',
			'match-too-early',
			{ ...base, fixed: [] },
			wearing(solved, 5, ['new', 60]),
		],
		[
			'a sharp stud',
			'barred',
			withPair('turf', { leftOff: true }),
			wearing(solved, 1, ['turf', 60]),
		],
		[
			'a match in a pair for training only',
			'barred',
			withPair('turf', { trainingOnly: true }),
			wearing(solved, 2, ['turf', 60]),
		],
		[
			'a pair past its last day',
			'barred',
			withPair('turf', { lastDay: '2027-02-08' }),
			wearing(solved, 3, ['turf', 60]),
		],
		['a match that is held', 'held', { ...base, matchesHeld: true }, solved],
		['a session half filled', 'minutes', base, wearing(solved, 1, ['turf', 30])],
		[
			'two pairs where none are changed',
			'unshared',
			base,
			wearing(solved, 1, ['turf', 30], ['firm', 30]),
		],
		[
			'three pairs in one session',
			'crowded',
			{ ...base, slots: base.slots.map((slot) => ({ ...slot, split: true })) },
			wearing(solved, 1, ['turf', 20], ['firm', 20], ['old', 20]),
		],
		[
			'boots changed for the last minutes',
			'short-part',
			{ ...base, slots: base.slots.map((slot) => ({ ...slot, split: true })) },
			wearing(solved, 1, ['turf', 55], ['firm', 5]),
		],
		['a step of the ladder left out', 'settled', base, wearing(solved, 3, ['firm', 60])],
		[
			'a week past its limit',
			'week',
			{
				...base,
				caps: [
					{
						id: 'cap',
						limit: { limit: 'pair', mostMinutes: 100 },
						pairs: [placeOf('turf')],
						weeks: [{ monday: '2027-02-01', slots: [0, 1, 2], minutes: 100 }],
					},
				],
			},
			{ uses: everywhere('turf').uses },
		],
		['a session forgotten', 'length', base, { uses: solved.uses.slice(1) }],
	]
	it.each(faults)('%s: %s', (_, is, problem, rotation) => {
		expect(found(problem, rotation)).toContain(is)
	})
})
describe('wishes', () => {
	const pinned = (pin: string): SeasonProblem => ({
		...base,
		slots: base.slots.map((slot, place) => (place === 1 ? { ...slot, pin: placeOf(pin) } : slot)),
	})
	it('a pin is missed where the pair could be worn, and not where it may not', () => {
		const other = wearing(solved, 1, ['firm', 60])
		expect(verify(pinned('turf'), other).pinMissed).toEqual([1])
		expect(verify(pinned('new'), other).pinMissed).toEqual([])
		expect(verify(pinned('firm'), other).pinMissed).toEqual([])
	})
	it('what was told is missed where another pair is worn', () => {
		const told = {
			...base,
			slots: base.slots.map((slot, place) =>
				place === 1 ? { ...slot, told: placeOf('turf') } : slot,
			),
		}
		expect(verify(told, wearing(solved, 1, ['firm', 60])).toldMissed).toEqual([1])
		expect(verify(told, wearing(solved, 1, ['turf', 60])).toldMissed).toEqual([])
	})
	it('a gap counts the more the earlier it is', () => {
		const gapAt = (slot: number) => verify(base, wearing(solved, slot)).reached
		expect(gapAt(1).trainings).toBe(gapAt(4).trainings)
		expect(gapAt(1).even).toBeGreaterThan(gapAt(4).even)
	})
	it('one switch between sessions close together counts, one far apart does not', () => {
		const two = problemOf(
			seasonVisit(pairs.slice(0, 2), [on('2027-02-02'), on('2027-02-03'), on('2027-02-12')]),
		)
		const worn = (...places: number[]) =>
			verify(two, { uses: places.map((pair) => [{ pair, minutes: 60 }]) }).reached.changes
		expect(worn(0, 0, 0)).toBe(0)
		expect(worn(0, 0, 1)).toBe(0)
		expect(worn(0, 1, 1)).toBe(two.weights.switchOver)
	})
})
