/** Roster, board and swapped players, as pure rules. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { boardRow, doubledNumbers } from '../../shared/desk/squad/board.ts'
import { rosterFromCells } from '../../shared/desk/squad/roster.ts'
import { missingAt, stations } from '../../shared/desk/squad/stations.ts'
import { swapQuestions } from '../../shared/desk/squad/swapped.ts'
import { fieldMeta } from '../../shared/engine/visit/field-meta.ts'
import { type Visit, visitSchema } from '../../shared/engine/visit/visit.ts'

const head = [
	'Number',
	'Given name',
	'Family name',
	'Birth date',
	'Sex',
	'Guardian',
	'Guardian e-mail',
	'Consents',
]
const on = '2027-01-20'
const visit = (over: Partial<Visit> = {}): Visit => ({
	format: 'lastwright-visit',
	version: 1,
	player: { givenName: 'Tui', familyName: 'Ashdown', birthDate: '2013-05-02', sex: 'male' },
	visitDate: on,
	screening: {},
	...over,
})

/** Well written, and yet no day. */
const noDays = ['31/31/2011', '2011-02-30', '32.12.2011', '2011-13-01']

describe('roster', () => {
	test(
		'good rows are players; every bad cell is named by row and column with value and ' + 'remedy',
		() => {
			const { rows, problems } = rosterFromCells(
				[
					head,
					[
						'7',
						'Tui',
						'Ashdown',
						'2013-05-02',
						'm',
						'Rae',
						'rae@example.org',
						'photos; squad-summary',
					],
					['7', 'Ida', 'Lane', '2012-06-30', 'f'],
					['x', 'Bo', 'Reed', '31.12.2012', '?'],
					['9', 'Cy', 'Hill', '2030-01-01', 'f'],
					['10', 'Di', 'Moor', '2013-01-02', 'f', '', '', 'dancing'],
				],
				{ team: 'Rovers', on },
			)
			expect(rows).toMatchObject([
				{
					number: '7',
					player: { club: 'Rovers', guardian: { email: 'rae@example.org' } },
					consents: ['photos', 'squad-summary'],
				},
			])
			expect(problems.map(({ row, column, code }) => [row, column, code])).toEqual([
				[3, 'number', 'given-twice'],
				[4, 'number', 'not-a-number'],
				[4, 'sex', 'not-a-term'],
				[5, 'birthDate', 'not-before-day'],
				[6, 'consents', 'not-a-purpose'],
			])
		},
	)
	test('a day and month that can be read both ways are asked, unless another row decides', () => {
		const row = (number: string, date: string) => [number, 'Tui', `Ashdown${number}`, date, 'm']
		expect(
			rosterFromCells([head, row('1', '03/04/2012')], { team: '', on }).problems,
		).toMatchObject([{ column: 'birthDate', code: 'day-or-month' }])
		expect(
			rosterFromCells([head, row('1', '03/04/2012'), row('2', '25/04/2012')], { team: '', on })
				.rows[0]?.player.birthDate,
		).toBe('2012-04-03')
		expect(
			rosterFromCells([head, row('1', '03/04/2012'), row('2', '04/25/2012')], { team: '', on })
				.rows[0]?.player.birthDate,
		).toBe('2012-03-04')
	})
	test('a date that the calendar does not have is named', () => {
		for (const date of noDays) {
			const { problems } = rosterFromCells([head, ['1', 'Tui', 'Ashdown', date, 'm']], {
				team: '',
				on,
			})
			expect(problems.map(({ code }) => code)).toEqual(['not-in-calendar'])
		}
	})
	test('any cells at all: never throws, no number twice, no row both good and bad', () => {
		fc.assert(
			fc.property(
				fc.array(
					fc.array(
						fc.oneof(
							fc.string({ maxLength: 12 }),
							fc.constantFrom('7', '2012-04-03', 'm', 'Rae', ...noDays),
						),
						{ maxLength: 9 },
					),
					{ maxLength: 8 },
				),
				(body) => {
					const { rows, problems } = rosterFromCells([head, ...body], { team: 'Rovers', on })
					expect(new Set(rows.map((row) => row.number)).size).toBe(rows.length)
					expect(rows.filter((row) => problems.some((bad) => bad.row === row.row))).toEqual([])
				},
			),
		)
	})
})
describe('swapped players', () => {
	const feet = (left: number, right = left) => ({
		left: { heelToToeMm: left },
		right: { heelToToeMm: right },
	})
	const last = visit({
		visitDate: '2026-01-20',
		feet: feet(246),
		body: { statureCm: 158, massKg: 46 },
	})
	test.each([
		['a shorter foot', visit({ feet: feet(240) }), 2],
		['a foot longer than a year allows', visit({ feet: feet(275) }), 2],
		['stature down', visit({ body: { statureCm: 155 } }), 1],
		['stature far up', visit({ body: { statureCm: 178 } }), 1],
		['half the mass again', visit({ body: { massKg: 70 } }), 1],
		['sides far apart', visit({ feet: feet(250, 265) }), 1],
		['usual growth', visit({ feet: feet(256), body: { statureCm: 164, massKg: 50 } }), 0],
		['within the error of measuring', visit({ feet: feet(244), body: { statureCm: 157.5 } }), 0],
	])('%s: %# asks as often as it should', (_, now, asked) => {
		const questions = swapQuestions(now, [last])
		expect(questions.length).toBe(asked)
		for (const question of questions) expect(question.basis.unsourced).toBe(true)
	})
	test('without an earlier visit only the sides are compared', () => {
		expect(swapQuestions(visit({ feet: feet(200) }), [])).toEqual([])
	})
})
describe('stations and board', () => {
	test('every field of a station is a field of the visit, and what it needs stands on it', () => {
		for (const station of stations)
			for (const path of station.rows.flat())
				expect(fieldMeta(visitSchema, path).title, path).not.toBe('')
		for (const station of stations.filter((station) => station.rows.length > 0))
			for (const path of station.needs) expect(station.rows.flat(), station.name).toContain(path)
	})
	test('not measured is an answer, empty is not', () => {
		expect(missingAt(visit(), 'check-in')).toEqual(['play.code'])
		expect(missingAt(visit({ notMeasured: { 'play.code': 'not measured' } }), 'check-in')).toEqual(
			[],
		)
	})
	test('signed wins over everything, absent and refused ask for nothing', () => {
		const base = {
			playerId: 'p',
			number: '7',
			name: 'Tui',
			birthDate: '2013-05-02',
			consentNoted: false,
		}
		expect(boardRow({ ...base, presence: 'here', draft: visit() })).toMatchObject({ state: 'open' })
		for (const presence of ['absent', 'refused'] as const)
			expect(boardRow({ ...base, presence })).toMatchObject({ state: presence, missing: [] })
		expect(boardRow({ ...base, presence: 'absent', signedVisitId: 'v' })).toMatchObject({
			state: 'signed',
			missing: [],
		})
	})
	test('a number that stands for two players is found', () => {
		expect(
			doubledNumbers([
				{ number: '7', name: 'A' },
				{ number: '8', name: 'B' },
				{ number: '7', name: 'C' },
			]),
		).toEqual([{ number: '7', names: ['A', 'C'] }])
	})
})
