/** The pure parts of the season's screen: its weeks, the walk by keys, and what is said in words. */
import { describe, expect, it } from 'vitest'
import { linesOf } from '../../renderer/screens/season/edits.ts'
import { lineWords } from '../../renderer/screens/season/gridWords.ts'
import { provenWords } from '../../renderer/screens/season/provenWords.ts'
import {
	dayAt,
	firstAhead,
	lineAt,
	moved,
	type Place,
	weeksOf,
} from '../../renderer/screens/season/weekGrid.ts'
import type { Plan } from '../../shared/engine/season/plan-file.ts'
import type { Season } from '../../shared/engine/visit/visit.ts'

const season: Season = {
	from: '2027-02-03',
	to: '2027-02-28',
	sessions: [
		{ id: 'a', date: '2027-02-04', start: '18:00', minutes: 75, kind: 'training', surface: 'hall' },
		{ id: 'b', date: '2027-02-13', start: '09:00', minutes: 80, kind: 'match', surface: 'hall' },
		{ id: 'c', date: '2027-02-13', start: '15:00', minutes: 80, kind: 'match', surface: 'hall' },
	],
}
const lines = linesOf(season, undefined, '2027-02-10')
const weeks = weeksOf(season, lines)
const place = (week: number, day: number, at = 0): Place => ({ week, day, at })

describe('weeks down, days across', () => {
	it('begin on a Monday and hold every day of the season', () => {
		expect(weeks.map(({ monday }) => monday)).toEqual([
			'2027-02-01',
			'2027-02-08',
			'2027-02-15',
			'2027-02-22',
		])
		expect(weeks.every(({ days }) => days.length === 7)).toBe(true)
		expect(weeks[0]?.days.map(({ inside }) => inside)).toEqual([
			false,
			false,
			true,
			true,
			true,
			true,
			true,
		])
	})
	it('have each session once, on its day', () => {
		const all = weeks.flatMap(({ days }) => days.flatMap((day) => day.lines))
		expect(all.map(({ session }) => session.id)).toEqual(['a', 'b', 'c'])
		expect(dayAt(weeks, place(1, 5))?.lines).toHaveLength(2)
		expect(lineAt(weeks, place(1, 5, 1))?.session.id).toBe('c')
		expect(lineAt(weeks, place(0, 0))).toBeUndefined()
	})
	it('open at the first session that is not past', () => {
		expect(firstAhead(weeks)).toEqual(place(1, 5))
		expect(firstAhead(weeksOf(season, []))).toEqual(place(0, 0))
	})
})
describe('the walk by keys', () => {
	it.each([
		['ArrowRight', place(0, 3), place(0, 4)],
		['ArrowLeft', place(0, 0), place(0, 0)],
		['ArrowDown', place(0, 3), place(1, 3)],
		['ArrowDown', place(1, 5), place(1, 5, 1)],
		['ArrowDown', place(1, 5, 1), place(2, 5)],
		['ArrowUp', place(2, 5), place(1, 5, 1)],
		['ArrowUp', place(0, 3), place(0, 3)],
		['ArrowDown', place(3, 3), place(3, 3)],
		['PageDown', place(0, 3), place(3, 3)],
		['Home', place(1, 5, 1), place(1, 0)],
		['End', place(1, 2), place(1, 6)],
	])('%s from %j to %j', (key, from, to) => {
		expect(moved(weeks, from, key)).toEqual(to)
	})
	it('leaves other keys alone', () => {
		expect(moved(weeks, place(0, 0), 'b')).toBeUndefined()
	})
})
describe('in full words', () => {
	const pairs = [{ id: 'p1', letter: 'A', name: 'match boots', sole: 'firm-ground' }]
	it('names the day, what it is, the ground, what is worn and the pin', () => {
		const line = lineAt(weeks, place(1, 5))!
		expect(lineWords(line, pairs)).toBe(
			'Saturday 13 February 2027: match 09:00, 80 minutes, hall, dry: not planned',
		)
		const pinned = { ...line, session: { ...line.session, pinned: 'p1', ground: 'wet' as const } }
		expect(lineWords(pinned, pairs)).toBe(
			'Saturday 13 February 2027: match 09:00, 80 minutes, hall, wet: not planned; ' +
				'pinned to pair A, match boots',
		)
	})
	it('says why a session is off, and a pair that is recorded no more', () => {
		const line = lineAt(weeks, place(0, 3))!
		const off = { ...line, session: { ...line.session, status: 'bye' as const } }
		expect(lineWords(off, pairs)).toMatch(/: bye; past$/)
		const gone = { ...line, session: { ...line.session, worn: 'p9' } }
		expect(lineWords(gone, pairs)).toContain('a pair that is recorded no more')
	})
})
describe('how far a plan is proven', () => {
	const plan = { status: 'optimal', gap: 0 } as Plan
	const level = (name: 'matches' | 'even', proven: boolean, gap = 0) => ({
		level: name,
		reached: 0,
		proven,
		gap,
	})
	it.each([
		[plan, 'Proven the best possible.'],
		[{ ...plan, status: 'time-limit', gap: 0.0213 } as Plan, 'Within 2.13 % of the best possible.'],
		[
			{ ...plan, levels: [level('matches', true), level('even', true)] },
			'Proven the best possible at each of 2 aims, matches first.',
		],
		[
			{ ...plan, levels: [level('matches', true), level('even', false, 0.02)] },
			'Proven the best: matches with a pair. Not proven: even wear: within 2 % of the best.',
		],
		[
			{ ...plan, levels: [level('matches', false, 1)] },
			'Not proven: matches with a pair: how near is not known.',
		],
	])('%#', (of, words) => {
		expect(provenWords(of)).toBe(words)
	})
})
