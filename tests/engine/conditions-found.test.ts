/** Every condition is found by each of its names, and by no name of another. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { findConditions } from '../../shared/engine/conditions/find.ts'
import { type Condition, conditions } from '../../shared/engine/visit/terms.ts'
import { conditionWords } from '../../shared/engine/words/en/conditions.table.ts'

describe('a condition is found', () => {
	const declaring = (name: string): Condition[] =>
		conditions.filter((condition) => {
			const { synonyms, name: own, player, doctor } = conditionWords[condition]
			return [own, player, doctor, ...synonyms].some(
				(other) => other?.toLowerCase() === name.toLowerCase(),
			)
		})
	const everyName = conditions.flatMap((condition) => {
		const { name, player, synonyms } = conditionWords[condition]
		return [name, player, ...synonyms].map((called) => ({ called, condition }))
	})
	it.each(everyName)('by "$called": $condition, and by no other of that name', ({ called }) => {
		const whole = findConditions(called).filter((option) => option.whole)
		expect(whole.map(({ condition }) => condition)).toEqual(declaring(called))
		expect(findConditions(called)[0]?.whole).toBe(true)
	})
	it.each<[string, Condition, string]>([
		['sever', 'calcaneal-apophysitis', 'Sever'],
		['SEVERS dis', 'calcaneal-apophysitis', "Sever's disease"],
		['osgood', 'tibial-tubercle-apophysitis', 'Osgood'],
		['tailor', 'bunionette', "tailor's bunion"],
		['shin spl', 'shin-pain', 'shin splints'],
		['runners toe', 'subungual-haematoma', "runner's toe"],
		['fasciitis', 'plantar-heel-pain', 'plantar fasciitis'],
		['iselin', 'fifth-metatarsal-apophysitis', 'Iselin'],
		['morton', 'interdigital-neuroma', 'Morton'],
		['turf toe', 'turf-toe', 'turf toe'],
		['midportion', 'achilles-midportion', 'mid-portion Achilles tendinopathy'],
		['midportion achilles', 'achilles-midportion', 'mid-portion Achilles tendinopathy'],
		['heel pain', 'calcaneal-apophysitis', 'growing heel pain'],
	])('by "%s" first as %s, and says why: %s', (typed, condition, fits) =>
		expect(findConditions(typed)[0]).toMatchObject({ condition, fits }),
	)
	it('from any beginning of any word of its names', () => {
		const anyName = fc.constantFrom(...everyName)
		fc.assert(
			fc.property(anyName, fc.nat(), fc.nat(), ({ called, condition }, which, letters) => {
				const words = called
					.replace(/['’]/g, '')
					.split(/[^\p{L}\p{N}]+/u)
					.filter(Boolean)
				const word = words[which % words.length] ?? ''
				const typed = word.slice(0, 1 + (letters % word.length))
				expect(findConditions(typed).map((option) => option.condition)).toContain(condition)
			}),
		)
	})
	it('all of them where nothing is typed, none where no name fits', () => {
		expect(findConditions(' ').map(({ condition }) => condition)).toEqual([...conditions])
		expect(findConditions('xyzzy')).toEqual([])
	})
})
