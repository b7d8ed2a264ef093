/** The weekly pattern proposed of what was entered under play. */
import { describe, expect, it } from 'vitest'
import { patternFromPlay } from '../../shared/engine/season/from-play.ts'
import { seasonSessions } from '../../shared/engine/season/pattern.ts'
import type { Visit } from '../../shared/engine/visit/visit.ts'
import { patternSchema } from '../../shared/engine/visit/visit.ts'
import { protocol } from './season-plans.ts'

const proposed = (play: Visit['play']) => patternFromPlay({ play }, protocol)
const days = (play: Visit['play'], kind: string) =>
	proposed(play)
		?.rows.filter((row) => row.kind === kind)
		.map(({ weekday }) => weekday)

describe('a weekly pattern of what was entered under play', () => {
	it('has as many sessions as were entered, on days of their own', () => {
		for (const [matchesPerWeek, trainingsPerWeek] of [
			[1, 2],
			[2, 4],
			[0, 5],
			[1, 0],
			[3, 3],
		] as const) {
			const { rows } = proposed({ matchesPerWeek, trainingsPerWeek })!
			expect(rows.filter(({ kind }) => kind === 'match')).toHaveLength(matchesPerWeek)
			expect(rows.filter(({ kind }) => kind === 'training')).toHaveLength(trainingsPerWeek)
			expect(new Set(rows.map(({ weekday }) => weekday)).size).toBe(rows.length)
			expect(new Set(rows.map(({ id }) => id)).size).toBe(rows.length)
			for (const row of rows) expect(patternSchema.safeParse(row).success).toBe(true)
		}
	})
	it('plays on Saturday and trains on the days that leave one to it', () => {
		const play = { matchesPerWeek: 1, trainingsPerWeek: 2 }
		expect([days(play, 'match'), days(play, 'training')]).toEqual([
			['saturday'],
			['tuesday', 'thursday'],
		])
	})
	it('takes surfaces in turn, the code, and lengths from the protocol', () => {
		const { rows, said } = proposed({
			matchesPerWeek: 1,
			trainingsPerWeek: 2,
			surfaces: ['natural-firm', 'artificial-3g'],
			code: 'rugby-union',
		})!
		expect(rows.map(({ kind, surface }) => [kind, surface])).toEqual([
			['match', 'natural-firm'],
			['training', 'natural-firm'],
			['training', 'artificial-3g'],
		])
		expect(new Set(rows.map(({ code }) => code))).toEqual(new Set(['rugby-union']))
		expect(rows[0]!.minutes).toBe(protocol.value('season.matchMinutes'))
		expect(said).toMatchObject({ code: 'season.from-play', params: { surfaceGiven: true } })
	})
	it('every other week counts as one, too many as the days there are, none as nothing', () => {
		expect(days({ matchesPerWeek: 0.5 }, 'match')).toEqual(['saturday'])
		expect(days({ trainingsPerWeek: 21, matchesPerWeek: 1 }, 'training')).toHaveLength(6)
		expect(proposed({ matchesPerWeek: 0, trainingsPerWeek: 0 })).toBeUndefined()
		expect(proposed({ surfaces: ['hall'] })).toBeUndefined()
		expect(proposed(undefined)).toBeUndefined()
	})
	it('can be written out as a season', () => {
		const { rows } = proposed({ matchesPerWeek: 1, trainingsPerWeek: 2 })!
		const season = { from: '2027-02-01', to: '2027-02-28', pattern: rows }
		expect(seasonSessions(season)).toHaveLength(12)
	})
})
