/** What a finding rests on is read in words: no key, id or sign of the program among them. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { assess } from '../../shared/engine/assess.ts'
import { conditionNames } from '../../shared/engine/conditions/registry.ts'
import { rows } from '../../shared/engine/protocol/rows.ts'
import {
	limitInWords,
	readingInWords,
	thresholdInWords,
} from '../../shared/engine/words/reading.ts'
import { ruleInWords } from '../../shared/engine/words/words.ts'
import { wholeVisit } from './random-visit.ts'

const isKey = /[a-z][A-Z]|[a-z]\.[a-z]|undefined|NaN/
const limitOf = (value: number, unit: string) => limitInWords({ limit: { value, unit } })

describe('a threshold', () => {
	it.each(Object.entries(rows))('%s is named as the settings name it', (threshold, row) => {
		const { value, unit } = row
		const words = thresholdInWords({ threshold, limit: { value, unit } }) ?? ''
		// a unit may hold letters of its own: EU, FPI, mm/mm
		expect(words.replace(limitOf(value, unit) ?? '', '')).not.toMatch(isKey)
		expect(words).not.toContain(threshold)
	})
	it('has its unit in words, and its own words behind the unit', () => {
		expect(limitOf(36.5, 'deg, knee bent')).toBe('36.5 degrees, knee bent')
		expect(limitOf(1, 'points per mm')).toBe('1 point per mm')
		expect(limitOf(5, 'FPI')).toBe('5 FPI')
		expect(limitOf(0.2, 'mm/mm')).toBe('0.2 mm/mm')
		expect(limitOf(6, '/9 or more')).toBe('6 /9 or more')
	})
	it('of an older record stands as it was written', () => {
		expect(thresholdInWords({ threshold: 'ankle.flagCm 2 cm' })).toBe('ankle.flagCm 2 cm')
	})
})
describe('over random visits', () => {
	const visits = fc.sample(wholeVisit, { numRuns: 150, seed: 5 })
	const findings = visits.flatMap((visit) => assess(visit).findings)
	it('the name of every rule is words', () => {
		const rules = [...new Set(findings.map(({ basis }) => basis.rule))]
		expect(rules.length).toBeGreaterThan(80)
		const ids = rules.filter((rule) => !rule.includes(' '))
		expect(ids.filter((id) => /[a-z][A-Z]|[a-z]-[a-z]+-\d|^[a-z]/.test(ruleInWords(id)))).toEqual(
			[],
		)
	})
	it('a sign that stops an insert is told by its name', () => {
		const signs = findings
			.flatMap(({ because }) => because)
			.filter(({ measure }) => measure === 'warningSign')
		expect(signs.length).toBeGreaterThan(30)
		const bare = ({ value }: { value: number | string }) =>
			`warning sign: ${String(value).replaceAll('-', ' ')}`
		// a condition may be called as it is written; one more sign is
		const plain: readonly (number | string)[] = [...conditionNames, 'bony-tenderness']
		expect(
			signs.filter((sign) => !plain.includes(sign.value) && readingInWords(sign) === bare(sign)),
		).toEqual([])
	})
})
