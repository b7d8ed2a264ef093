/** Fixture lists as spreadsheets write them. */

import { describe, expect, it } from 'vitest'
import { readCsv } from '../../electron/calendar/csv.ts'
import { dateOrderOf, timeFrom } from '../../electron/calendar/written-dates.ts'
import { decodedText } from '../../renderer/parts/tableText.ts'
import { applyImport } from '../../shared/engine/season/preview.ts'
import { choices, previewOf } from './calendar-text.ts'

describe('reading a CSV list', () => {
	it('BOM, semicolons, decimal comma, AM and PM, quoted separators', () => {
		const read = readCsv(
			'\uFEFFDate;Time;Hours;Opponent;Type;Surface\r\n2027-03-06;2:30 pm;1,5;"Example; ' +
				'Alex";match;natural firm\r\n2027-03-09;18:00;1,25;;training;artificial (3G)\r\n\r\n',
			choices,
		)
		expect(read.problems).toEqual([])
		expect(
			read.sessions.map((session) => [
				session.date,
				session.start,
				session.minutes,
				session.kind,
				session.surface,
				session.title,
			]),
		).toEqual([
			['2027-03-06', '14:30', 90, 'match', 'natural-firm', 'Example; Alex'],
			['2027-03-09', '18:00', 75, 'training', 'artificial-3g', 'training'],
		])
	})
	it('tabs, and windows-1252', () =>
		expect(
			readCsv(
				decodedText(
					Uint8Array.from(
						Buffer.from('Date\tTime\tTitle\n2027-03-06\t14:00\tMatch v Caf\xe9', 'latin1'),
					),
				),
				choices,
			).sessions[0],
		).toMatchObject({ title: 'Match v Café', start: '14:00' }))
	it('any number above 12 decides the order of day and month; otherwise it is asked', () => {
		expect(
			[
				['03/04/2027', '13/04/2027'],
				['03/04/2027', '04/13/2027'],
				['03/04/2027'],
				['13/04/2027', '04/13/2027'],
				['2027-04-03'],
				['04/04/2027'],
			].map(dateOrderOf),
		).toEqual(['day-month', 'month-day', 'unknown', 'mixed', 'plain', 'day-month'])
		const text = 'Date,Time,Type\n03/04/2027,14:00,match\n'
		expect(readCsv(text, choices)).toMatchObject({
			sessions: [],
			questions: [
				{
					key: 'dateOrder',
					code: 'season.ask-date-order',
					params: { given: '03/04/2027', dayFirst: '2027-04-03', monthFirst: '2027-03-04' },
				},
			],
		})
		expect(
			(['day-month', 'month-day'] as const).map(
				(dateOrder) => readCsv(text, { ...choices, dateOrder }).sessions[0]!.date,
			),
		).toEqual(['2027-04-03', '2027-03-04'])
	})
	it('times as lists write them', () =>
		expect(
			['18:00', '6:30 PM', '12 am', '12:15 pm', 'TBA', 't.b.d.', '', '25:00', 'noon'].map(timeFrom),
		).toEqual([
			'18:00',
			'18:30',
			'00:00',
			'12:15',
			'unset',
			'unset',
			'unset',
			undefined,
			undefined,
		]))
	it('names the row, the value and the remedy', () => {
		const read = readCsv(
			'Date,Time,Type\n2027-02-30,14:00,match\n2027-03-01,noon,match\n2027-03-02,14:00,match\n',
			choices,
		)
		expect(read.problems).toMatchObject([
			{ code: 'season.row-date', params: { row: 2, given: '2027-02-30', order: 'day-month' } },
			{ code: 'season.row-time', params: { row: 3, given: 'noon' } },
		])
		expect(read.sessions.length).toBe(1)
		expect(readCsv('What,When\na,b\n', choices).problems).toMatchObject([
			{ code: 'season.table-no-dates', params: { given: ['What', 'When'] } },
		])
	})
	it('the same list twice changes nothing; a new time is a change, a bye is a bye', () => {
		const list = (time: string, status = '') =>
			`Date,Time,Type,Opponent,Status\n2027-03-06,${time},match,Reds,${status}\n`
		const first = applyImport([], previewOf(readCsv(list('14:00'), choices), []))
		expect(previewOf(readCsv(list('14:00'), choices), first)).toMatchObject({
			add: [],
			change: [],
			remove: [],
			same: 1,
		})
		expect(previewOf(readCsv(list('15:00', 'bye'), choices), first).change[0]!.after).toMatchObject(
			{
				start: '15:00',
				status: 'bye',
			},
		)
	})
})
