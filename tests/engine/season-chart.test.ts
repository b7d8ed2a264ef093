/** The season on the wall: its pages, its usual week, and what departs from it. */
import { describe, expect, it } from 'vitest'
import { addDays } from '../../shared/engine/plain/days.ts'
import { patternOfLetter } from '../../shared/engine/report/document.ts'
import type { PlanView } from '../../shared/engine/report/inputs.ts'
import { isUsual, usualWeek, wornKey } from '../../shared/engine/report/season-chart/usual.ts'
import { pagesOfWeeks, weeksOf } from '../../shared/engine/report/season-chart/weeks.ts'
import { seasonChart } from '../../shared/engine/report/season-chart.ts'
import { clinic, json, read } from '../demo.ts'

type Session = PlanView['sessions'][number]
const session = (date: string, more: Partial<Session> = {}): Session => ({
	date,
	start: '18:00',
	kind: 'training',
	surface: 'natural-firm',
	pair: 'p1',
	...more,
})
/** A training each Tuesday from 2 February 2027. */
const tuesdays = (weeks: number, more: Partial<Session> = {}) =>
	Array.from({ length: weeks }, (_, week) => session(addDays('2027-02-02', 7 * week), more))
const chartOf = (plan: PlanView, paper: 'A4' | 'Letter' | 'A3' = 'A4') =>
	seasonChart({
		visit: read(json('season-visit.json')),
		clinic,
		plan,
		paper,
		draft: false,
		on: '2027-02-01',
		insert: false,
		buying: true,
	})
const pairs = [
	{ id: 'p1', letter: 'A', name: 'match boots', sole: 'firm-ground' },
	{ id: 'p2', letter: 'B', name: 'trainers', sole: 'trail' },
]

describe('pages of weeks', () => {
	it.each([
		[1, [1]],
		[26, [26]],
		[27, [14, 13]],
		[30, [15, 15]],
		[40, [20, 20]],
		[53, [18, 18, 17]],
	])('%i weeks: %j', (weeks, pages) => {
		const all = weeksOf({ sessions: tuesdays(weeks), pairs: [] })
		expect(all).toHaveLength(weeks)
		const parted = pagesOfWeeks(all)
		expect(parted.map(({ length }) => length)).toEqual(pages)
		expect(parted.flat()).toEqual(all)
	})
	it('keeps a week without a session between two that have one', () => {
		const sessions = [session('2027-02-02'), session('2027-02-16')]
		expect(weeksOf({ sessions, pairs: [] }).map((week) => week.sessions.length)).toEqual([1, 0, 1])
	})
	it('has nothing to show of a plan without sessions', () => {
		expect(weeksOf({ sessions: [], pairs: [] })).toEqual([])
	})
})
describe('the usual week', () => {
	const sessions = [
		...tuesdays(5),
		session('2027-03-09', { pair: 'p2' }),
		session('2027-02-06', { kind: 'match', start: '10:30' }),
	]
	const weeks = weeksOf({ sessions, pairs })
	const usual = usualWeek(weeks)
	it('is what comes back, in the pair most often worn then', () => {
		expect(usual.map(({ weekday, worn, like }) => [weekday, worn, like.start])).toEqual([
			[1, 'p1', '18:00'],
		])
	})
	it('tells what departs from it: another pair, another time, a shorter session, one that is off', () => {
		expect(isUsual(session('2027-02-09'), usual)).toBe(true)
		expect(isUsual(session('2027-02-09', { pair: 'p2' }), usual)).toBe(false)
		expect(isUsual(session('2027-02-09', { start: '19:00' }), usual)).toBe(false)
		expect(isUsual(session('2027-02-09', { minutes: 45, fullMinutes: 75 }), usual)).toBe(false)
		expect(isUsual({ ...session('2027-02-09'), status: 'cancelled' }, usual)).toBe(false)
	})
	it('counts pairs worn one after the other as their own way', () => {
		expect(wornKey(session('2027-02-02', { parts: [{ pair: 'p2' }, { pair: 'p1' }] }))).toBe(
			'p2 p1',
		)
		expect(wornKey(session('2027-02-02', { pair: undefined }))).toBe('')
	})
})
describe('the chart', () => {
	const gridsOf = (plan: PlanView) =>
		chartOf(plan).blocks.filter((block) => block.kind === 'chart' && block.size === 'grid')
	it('is one page for half a season, and two of the same length for 40 weeks', () => {
		expect(gridsOf({ sessions: tuesdays(26), pairs })).toHaveLength(1)
		const chart = chartOf({ sessions: tuesdays(40), pairs })
		const [, second] = chart.blocks.flatMap((block, place) =>
			block.kind === 'heading' ? [0, place] : [],
		)
		expect(chart.blocks[second ?? 0]).toMatchObject({
			newPage: true,
			text: '21 June 2027 to 7 November 2027',
		})
		expect(chart.blocks[(second ?? 0) + 1]).toMatchObject({ caption: 'Your pairs' })
	})
	it('names the pairs first, then the usual week in large print, then each week', () => {
		const { blocks } = chartOf({ sessions: tuesdays(3), pairs })
		expect(blocks.map((block) => (block.kind === 'chart' ? block.size : block.kind))).toEqual([
			undefined,
			'large',
			'grid',
		])
		expect(blocks[0]).toMatchObject({
			rows: [
				[
					{ text: 'A', pattern: 'plain', beside: 'match boots, firm ground' },
					{ text: 'B', pattern: 'rising', beside: 'trainers, trail' },
				],
			],
		})
	})
	it('has Monday to Sunday across: a Saturday never changes its column', () => {
		const saturdays = ['2027-02-06', '2027-02-13', '2027-02-20'].map((date) =>
			session(date, { kind: 'match' }),
		)
		const [grid] = gridsOf({ sessions: [...tuesdays(2), ...saturdays], pairs })
		if (grid?.kind !== 'chart') throw new Error('no grid')
		expect(grid.head.slice(1)).toEqual(['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'])
		expect(grid.rows.map((row) => row[6]?.text)).toEqual(['A', 'A', 'A'])
	})
	it('holds two sessions of a day in its one cell', () => {
		const twice = [session('2027-02-06', { start: '09:00' }), session('2027-02-06', { pair: 'p2' })]
		const [grid] = gridsOf({ sessions: twice, pairs })
		if (grid?.kind !== 'chart') throw new Error('no grid')
		expect(grid.rows[0]?.[6]).toMatchObject({ text: 'A', more: [{ text: 'B' }] })
	})
	it.each(['A4', 'Letter', 'A3'] as const)('is made for %s', (paper) => {
		expect(chartOf({ sessions: tuesdays(2), pairs }, paper).paper).toBe(paper)
	})
})
it('gives twelve pairs twelve patterns', () => {
	expect(new Set([...'ABCDEFGHIJKL'].map(patternOfLetter)).size).toBe(12)
	expect([...'ABCDEF'].map(patternOfLetter)).toEqual([
		'plain',
		'rising',
		'falling',
		'dots',
		'bars',
		'grid',
	])
})
