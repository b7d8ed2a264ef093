/** Every sentence of a document is in the catalogue, or in the clinic's own words. */
import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { clinicSchema } from '../../shared/engine/report/clinic.ts'
import { noDecisions } from '../../shared/engine/visit/decisions.ts'
import { sentences } from '../../shared/engine/words/en/documents.table.ts'
import { placeholdersOf, speakFrom, textProblems } from '../../shared/engine/words/speak.ts'
import { clinic, json, read } from '../demo.ts'
import { demoNames, reportOf } from './demo-report.ts'

/** Files of the room that compose no document, or draw one that is composed. */
const composesNothing =
	/^(html|html\/.*|logo|bad-logo|png|safe-svg|colour|kinds|charts-section|readability|signing)\.ts$/

describe('the catalogue', () => {
	it('fills every placeholder and refuses a missing one', () => {
		const t = speakFrom()
		for (const [key, sentence] of Object.entries(sentences)) {
			const values = Object.fromEntries(placeholdersOf(sentence).map((name) => [name, `<${name}>`]))
			const said = (t as (key: string, values: object) => string)(key, values)
			expect(said, key).not.toMatch(/[{}]/)
			for (const value of Object.values(values)) expect(said, key).toContain(value)
			if (Object.keys(values).length > 0)
				expect(() => (t as (key: string) => string)(key), key).toThrow(/cannot be filled in/)
		}
	})
	it('checks the placeholders of a clinic’s own words', () => {
		expect(textProblems({ 'player.reviewOn': 'We meet again on {date}.' })).toEqual([])
		expect(textProblems({ 'player.reviewOn': 'We meet again on {day}.' })).toEqual([
			expect.stringContaining('unknown placeholder, given {day}'),
			expect.stringContaining('{date} is missing'),
		])
		expect(textProblems({ 'player.nothing': 'x' })).toEqual([
			expect.stringContaining('no such text'),
		])
		expect(
			clinicSchema.safeParse({ ...clinic, texts: { 'player.reviewOn': 'Soon.' } }).success,
		).toBe(false)
		expect(
			JSON.stringify(
				reportOf(
					read(json(demoNames[0]!)),
					{
						...noDecisions,
						reviewDate: '2027-05-05',
						actions: [{ what: 'Rest.', when: 'now', who: 'you' }],
					},
					{ clinic: { ...clinic, texts: { 'player.reviewOn': 'We meet again on {date}.' } } },
				),
			),
		).toContain('We meet again on 5 May 2027.')
	})
	it('holds every fixed sentence: no composer writes one of its own', () => {
		const folder = new URL('../../shared/engine/report/', import.meta.url)
		const files = readdirSync(folder, { recursive: true, encoding: 'utf8' })
		const composers = files.filter((name) => name.endsWith('.ts') && !composesNothing.test(name))
		expect(composers.length).toBeGreaterThan(25)
		for (const file of composers) {
			const code = readFileSync(new URL(file, folder), 'utf8')
				.replace(/\/\*[\s\S]*?\*\/|\/\/.*$/gm, '')
				.split('\n')
				.filter((line) => !/^import|throw |return `consent/.test(line.trim()))
				.join('\n')
			const sentencesHere = [...code.matchAll(/'([^'\n]*)'/g)]
				.map((found) => found[1] ?? '')
				.filter((text) => /^[A-Z][a-z]+ [a-z]+ [a-z]+/.test(text))
			expect(sentencesHere, file).toEqual([])
		}
	})
})
