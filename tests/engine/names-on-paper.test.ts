/** Names in any script, birth dates that cannot be: the same rule wherever they are entered. */
import { describe, expect, it } from 'vitest'
import { rosterFromCells } from '../../shared/desk/squad/roster.ts'
import { assess } from '../../shared/engine/assess.ts'
import { unprintableIn } from '../../shared/engine/plain/printable.ts'
import { guardianSummary } from '../../shared/engine/report/guardian.ts'
import { playerReport } from '../../shared/engine/report/player.ts'
import { birthProblems, unusualAge } from '../../shared/engine/visit/birth.ts'
import { noDecisions } from '../../shared/engine/visit/decisions.ts'
import {
	hasOtherLetters,
	nameFault,
	nameProblems,
	tidyName,
	tidyPlayer,
} from '../../shared/engine/visit/names.ts'
import { parseVisit } from '../../shared/engine/visit/parse.ts'
import type { Player } from '../../shared/engine/visit/visit.ts'
import { clinic, json, read } from '../demo.ts'

const someone: Player = {
	givenName: 'Tui',
	familyName: 'Ashdown',
	birthDate: '2013-05-02',
	sex: 'male',
}
const hebrew = { ...someone, givenName: 'נועה', familyName: 'לוי' }
const latinName = { givenName: 'Noa', familyName: 'Levi' }

describe('a name', () => {
	it.each([
		['Zoë Nguyễn'],
		['Nguyễn'.normalize('NFD')],
		['Ελένη Παπαδοπούλου'],
		['Светлана Ковалёва'],
		["D'Arcy-O’Neill"],
		['Ḩạ̄ṣin̄'],
		['Łukasz Đặng Ærø'],
	])('%s is printed as it is', (name) => expect(nameFault(name)).toBeUndefined())
	it.each([
		['نور', 'Arabic'],
		['נועה', 'Hebrew'],
		['さくら 田中', 'Japanese'],
		['田中', 'Chinese or Japanese'],
		['김민준', 'Korean'],
		['สมชาย', 'Thai'],
		['Ana ა', 'Georgian'],
		['நிலா', 'Tamil'],
	])('%s has letters that no page can print', (name, letters) =>
		expect(nameFault(name)).toEqual({ code: 'not-printed', letters }),
	)
	it.each([
		['Zoë 😀', '😀 (U+1F600)'],
		['Zoë ❤️', '❤ (U+2764)'],
		['Zoë\u0007', 'an unseen sign (U+0007)'],
		['Zo\u202eë', 'an unseen sign (U+202E)'],
		['🇬🇧', '🇬 (U+1F1EC)'],
	])('%j holds a sign that is no part of a name', (name, sign) =>
		expect(nameFault(name)).toEqual({ code: 'not-in-a-name', sign }),
	)
	it('keeps the joiners that some scripts are written with', () =>
		expect(nameFault('علی\u200cرضا')).toEqual({ code: 'not-printed', letters: 'Arabic' }))
	it('is kept composed, on one line, without what nobody sees', () => {
		expect(tidyName(' \u200fנועה\u200f ')).toBe('נועה')
		expect(tidyName('Nguyễn'.normalize('NFD'))).toBe('Nguyễn')
		expect(tidyName('Ana\n Maria\t')).toBe('Ana Maria')
		expect(tidyPlayer({ ...hebrew, latinName, guardian: { name: ' דן\u200e' } })).toEqual({
			...hebrew,
			latinName,
			guardian: { name: 'דן' },
		})
	})
	it('of another script is told from one in Latin letters', () =>
		expect(['Zoë', 'Ελένη', "O'Neill 2", 'נועה'].map(hasOtherLetters)).toEqual([
			false,
			true,
			false,
			true,
		]))
})
describe('the names of a player', () => {
	const pathsOf = (player: Player) => nameProblems(player).map(({ path }) => path)
	it('are asked for in Latin letters, field by field', () => {
		expect(pathsOf(hebrew)).toEqual(['player.givenName', 'player.familyName'])
		expect(pathsOf({ ...hebrew, latinName })).toEqual([])
		const guardian = { name: '太郎' }
		expect(pathsOf({ ...someone, guardian })).toEqual(['player.guardian.name'])
		expect(pathsOf({ ...someone, guardian: { ...guardian, latinName: 'Taro' } })).toEqual([])
		expect(nameProblems(hebrew)[0]?.message).toBe(
			'no font of the pages has its letters (Hebrew), given "נועה", allowed: the name as it is, ' +
				'with its spelling in Latin letters beside it (latinName; in a list the columns Latin ' +
				'given name, Latin family name, Latin guardian)',
		)
	})
	it('have no emoji, be the name spelt in Latin letters or not', () =>
		expect(pathsOf({ ...hebrew, familyName: 'לוי 🙂', latinName })).toEqual(['player.familyName']))
	it('cannot be spelt for paper in letters that no page can print', () =>
		expect(
			pathsOf({ ...hebrew, latinName: { ...latinName, familyName: 'לוי' }, club: '東京' }),
		).toEqual(['player.latinName.familyName', 'player.club']))
	it('stand on every page in Latin letters, and nowhere as nobody can print them', () => {
		const visit = read({
			...json('visit-adolescent.json'),
			player: {
				...json('visit-adolescent.json').player,
				...hebrew,
				latinName,
				guardian: { name: 'דן לוי', latinName: 'Dan Levi' },
			},
		})
		const input = {
			visit,
			assessment: assess(visit),
			decisions: noDecisions,
			clinic,
			draft: true,
			signedAt: undefined,
		}
		for (const compose of [playerReport, guardianSummary]) {
			const page = JSON.stringify(compose(input))
			expect(page).toContain('Noa Levi')
			expect(unprintableIn(page)).toEqual([])
		}
		expect(JSON.stringify(guardianSummary(input))).toContain('Dan Levi')
	})
})
describe('a birth date', () => {
	it.each([
		['2027-01-21', ['still-to-come']],
		['1916-12-31', ['too-long-ago']],
		['1850-01-01', ['too-long-ago']],
		['1917-01-01', []],
		['2027-01-20', []],
	])('%s on 20 January 2027: %j', (birthDate, codes) =>
		expect(birthProblems(birthDate, '2027-01-20', 'at').map(({ code }) => code)).toEqual(codes),
	)
	it.each([
		['2024-01-20', 3],
		['2023-01-20', undefined],
		['1966-01-20', 61],
		['1967-01-19', undefined],
	])('%s is asked about as %s years', (birthDate, years) =>
		expect(unusualAge(birthDate, '2027-01-20')).toBe(years),
	)
	it('is refused the same in a visit file and in a roster', () => {
		const file = { ...json('visit-adult.json') }
		const parsed = parseVisit({ ...file, player: { ...file.player, birthDate: '1850-01-01' } })
		expect(parsed.ok ? [] : parsed.problems.map(({ code }) => code)).toEqual(['too-long-ago'])
		const heads = ['Number', 'Given name', 'Family name', 'Birth date', 'Sex']
		const roster = rosterFromCells([heads, ['1', 'Ada', 'Quill', '1850-01-01', 'f']], {
			team: '',
			on: '2027-01-20',
		})
		expect(roster.problems).toMatchObject([{ row: 2, column: 'birthDate', code: 'too-long-ago' }])
	})
})
describe('a roster', () => {
	const heads = ['Number', 'Given name', 'Family name', 'Birth date', 'Sex', 'Guardian']
	const row = ['1', 'נועה', 'לוי', '2013-05-02', 'f', 'דן']
	it('names what no page can print, with the columns that help', () => {
		const { rows, problems } = rosterFromCells([heads, row], { team: '', on: '2027-01-20' })
		expect(rows).toEqual([])
		expect(problems.map(({ row: at, column, code }) => [at, column, code])).toEqual([
			[2, 'givenName', 'not-printed'],
			[2, 'familyName', 'not-printed'],
			[2, 'guardian', 'not-printed'],
		])
	})
	it('takes their spelling in Latin letters', () => {
		const latin = ['Latin given name', 'Family name in Latin letters', 'Latin guardian']
		const { rows, problems } = rosterFromCells(
			[
				[...heads, ...latin],
				[...row, 'Noa', 'Levi', 'Dan'],
			],
			{ team: '', on: '2027-01-20' },
		)
		expect(problems).toEqual([])
		expect(rows[0]?.player).toMatchObject({
			givenName: 'נועה',
			latinName,
			guardian: { name: 'דן', latinName: 'Dan' },
		})
	})
})
