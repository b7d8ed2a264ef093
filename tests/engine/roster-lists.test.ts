/** Lists as clubs and schools write them. */
import { describe, expect, test } from 'vitest'
import { rosterOfText } from '../../electron/services/squad/roster-text.ts'
import { decodedText } from '../../renderer/parts/tableText.ts'
import type { RosterAnswers } from '../../shared/desk/squad/roster-answers.ts'

const on = '2027-01-20'
const read = (text: string, answers: RosterAnswers = {}, taken: string[] = []) =>
	rosterOfText(text, { team: 'Rovers', on, answers, taken })
const named = (text: string, answers?: RosterAnswers) =>
	read(text, answers).rows.map(
		({ number, player }) =>
			`${number} ${player.givenName} ${player.familyName} ${player.birthDate} ${player.sex}`,
	)

describe('a list as it comes', () => {
	test('says what parts its columns', () =>
		expect(
			named('sep=;\r\nNo.;First name;Surname;DOB;Gender\r\n7;José;Ávila;2012-04-17;M'),
		).toEqual(['7 José Ávila 2012-04-17 male']))
	test.each([[','], [';'], ['\t'], ['|']])('is parted by %j', (mark) =>
		expect(
			named(
				[
					['Shirt No.', 'Forename', 'Last name', 'Date of Birth', 'Gender'],
					['07', 'Ida', 'Lane', '17.04.2012', 'girl'],
					['10', 'Bo', 'Reed', '3.5.2012', 'boy'],
				]
					.map((cells) => cells.join(mark))
					.join('\n'),
			),
		).toEqual(['7 Ida Lane 2012-04-17 female', '10 Bo Reed 2012-05-03 male']),
	)
	test('has a title over its headings; rows are counted as a spreadsheet counts them', () => {
		const { titleLines, rows, problems } = read(
			'Rovers U15,,,,\n\nBib,Given name,Family name,Birth date,Sex\n7,Ida,Lane,2012-04-17,f\n8,Bo,Reed,2012-02-31,m',
		)
		expect(titleLines).toBe(2)
		expect(rows.map(({ row }) => row)).toEqual([4])
		expect(problems.map(({ row, column, code }) => [row, column, code])).toEqual([
			[5, 'birthDate', 'not-in-calendar'],
		])
	})
	test('holds whole names: those that part in one way are taken, others asked', () => {
		const text =
			'#;Player;Born;Sex\n1;Lane, Ida May;2012-04-17;f\n2;Bo Reed;2012-04-17;m\n3;Ana de la Torre;2012-04-17;f'
		const { problems, bad } = read(text)
		expect(named(text)).toEqual(['1 Ida May Lane 2012-04-17 female', '2 Bo Reed 2012-04-17 male'])
		expect(problems.map(({ row, column, code }) => [row, column, code])).toEqual([
			[4, 'familyName', 'name-not-parted'],
		])
		expect(bad).toMatchObject([{ row: 4, cells: { name: 'Ana de la Torre', givenName: '' } }])
		expect(
			named(text, { repairs: { 4: { givenName: 'Ana', familyName: 'de la Torre' } } }),
		).toContain('3 Ana de la Torre 2012-04-17 female')
	})
	test('lacks numbers and sex: numbers are given that are free, the sex is said once', () => {
		const text = 'Given name,Family name,Birth date\nIda,Lane,2012-04-17\nBo,Reed,2012-04-17'
		expect(read(text).missing).toEqual(['sex'])
		const { rows } = read(text, { sex: 'female' }, ['1'])
		expect(rows.map(({ number, isNumbered }) => [number, isNumbered])).toEqual([
			['2', true],
			['3', true],
		])
	})
	test('has headings of its own, which are told', () => {
		const text = 'Voornaam;Achternaam;Geboren op;m/f\nIda;Lane;2012-04-17;f'
		expect(read(text).missing).toContain('givenName')
		expect(named(text, { columns: { 0: 'givenName', 1: 'familyName', 2: 'birthDate' } })).toEqual([
			'1 Ida Lane 2012-04-17 female',
		])
		const twice = 'Name;Player;Born;Sex\nIda Lane;x;2012-04-17;f'
		expect(read(twice).problems.map(({ code }) => code)).toEqual(['given-twice'])
		expect(named(twice, { columns: { 1: 'unread' } })).toEqual(['1 Ida Lane 2012-04-17 female'])
	})
	test('a number of the board or of another row is named, also with zeros before it', () => {
		const text =
			'No,Given name,Family name,Birth date,Sex\n7,A,B,2012-04-17,m\n007,C,D,2012-04-17,m'
		expect(read(text).problems).toMatchObject([{ row: 3, column: 'number', code: 'given-twice' }])
		expect(read(text, {}, ['7']).problems).toHaveLength(2)
		expect(read(text, { leaveOut: [2] }).problems).toEqual([])
	})
	test('letters that were lost are asked for, and never taken in', () =>
		expect(
			read('No,Given name,Family name,Birth date,Sex\n7,Jos\ufffd,Lane,2012-04-17,m').problems,
		).toMatchObject([{ row: 2, column: 'givenName', code: 'letters-lost' }]))
	test('is written in the code pages of spreadsheets', () => {
		const text = 'No;Given name\r\n7;José'
		const utf16 = (littleEndian: boolean) => {
			const view = new DataView(new ArrayBuffer(2 * text.length + 2))
			for (const [place, unit] of [0xfeff, ...[...text].map((one) => one.charCodeAt(0))].entries())
				view.setUint16(2 * place, unit, littleEndian)
			return new Uint8Array(view.buffer)
		}
		expect(decodedText(new TextEncoder().encode(`\ufeff${text}`)).endsWith('José')).toBe(true)
		expect(decodedText(Uint8Array.from([...text].map((one) => one.charCodeAt(0))))).toBe(text)
		expect(decodedText(utf16(true))).toBe(text)
		expect(decodedText(utf16(false))).toBe(text)
	})
})
describe('dates of a list', () => {
	const list = (...dates: string[]) =>
		[
			'No,Given name,Family name,Birth date,Sex',
			...dates.map((date, at) => `${at},A${at},B,${date},m`),
		].join('\n')
	const births = (text: string, answers?: RosterAnswers) =>
		read(text, answers).rows.map(({ player }) => player.birthDate)
	test.each([
		['2012-04-17', '2012-04-17'],
		['2012-04-17 00:00:00', '2012-04-17'],
		['2012/4/17', '2012-04-17'],
		['17.4.2012', '2012-04-17'],
		['17-Apr-12', '2012-04-17'],
		['17th April 2012', '2012-04-17'],
		['"April 17, 2012"', '2012-04-17'],
		['17/04/12', '2012-04-17'],
		['04/17/2012', '2012-04-17'],
		['5/5/98', '1998-05-05'],
	])('%s is %s', (written, iso) => expect(births(list(written))).toEqual([iso]))
	test('one odd row turns no other: what comes first is asked', () => {
		const text = list('03/04/2012', '05/06/2012', '07/08/2012', '25/04/2012')
		expect(births(text)).toEqual(['2012-04-25'])
		expect(read(text).dates).toMatchObject({ open: 3, told: { 'day-first': 1 } })
		expect(read(text).dates.order).toBeUndefined()
		expect(births(text, { dayOrder: 'month-first' })).toEqual([
			'2012-03-04',
			'2012-05-06',
			'2012-07-08',
			'2012-04-25',
		])
	})
	test('rows that contradict one another decide nothing', () =>
		expect(read(list('03/04/2012', '25/04/2012', '04/25/2012')).problems).toMatchObject([
			{ row: 2, code: 'day-or-month' },
		]))
})
