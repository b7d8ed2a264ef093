/** Whatever protocol is accepted, the rules work with it: no error, no number that is none. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { readAs } from '../../shared/desk/ledger/ledger.ts'
import { assess } from '../../shared/engine/assess.ts'
import { limitsOf, protocolProblems } from '../../shared/engine/protocol/check.ts'
import {
	openProtocol,
	protocolSchema,
	shippedProtocol,
} from '../../shared/engine/protocol/protocol.ts'
import { rows } from '../../shared/engine/protocol/rows.ts'
import { playerReport } from '../../shared/engine/report/player.ts'
import { noDecisions } from '../../shared/engine/visit/decisions.ts'
import { problemLine, problemsOf } from '../../shared/engine/visit/problems.ts'
import type { Visit } from '../../shared/engine/visit/visit.ts'
import { clinic, json, read } from '../demo.ts'
import { wholeVisit } from './random-visit.ts'

type Key = keyof typeof rows
const keys = Object.keys(rows) as Key[]
const fileOf = (values: Record<string, number>) => ({ ...shippedProtocol, id: 'clinic', values })
/** Values at the ends of what each row can be, and between. */
const anyValues = fc.subarray(keys, { minLength: 1 }).chain((chosen) =>
	fc.record(
		Object.fromEntries(
			chosen.map((key) => {
				const [min, max] = limitsOf(key)
				const between = fc.double({ min, max, noNaN: true })
				return [key, fc.oneof(fc.constantFrom(min, max), between)]
			}),
		),
	),
)
/** What of some values can stand together. */
function standing(values: Record<string, number>): Record<string, number> {
	const problems = protocolProblems(values)
	if (problems.length === 0) return values
	const wrong = new Set(problems.map(({ key }) => key))
	return standing(Object.fromEntries(Object.entries(values).filter(([key]) => !wrong.has(key))))
}
const accepted = anyValues.map((values) => standing(values as Record<string, number>))
/** Where a number is none, or a text tells of one. */
function unsound(value: unknown, path = ''): string[] {
	if (typeof value === 'number') return Number.isFinite(value) ? [] : [`${path}: ${value}`]
	if (typeof value === 'string') return /NaN|Infinity/.test(value) ? [`${path}: ${value}`] : []
	if (value === null || typeof value !== 'object') return []
	return Object.entries(value).flatMap(([key, inner]) => unsound(inner, `${path}.${key}`))
}
const accepting = (values: Record<string, number>) => protocolSchema.parse(fileOf(values))
const assessed = (visit: Visit, values: Record<string, number>) =>
	assess(visit, [], accepting(values))
const reportOf = (visit: Visit, values: Record<string, number>) =>
	playerReport({
		visit,
		assessment: assessed(visit, values),
		decisions: noDecisions,
		clinic,
		draft: true,
		signedAt: undefined,
		protocol: openProtocol(accepting(values)),
	})
const linesOf = (values: Record<string, number>): string[] => {
	const read = protocolSchema.safeParse(fileOf(values))
	return read.success ? [] : problemsOf(read.error, fileOf(values)).map(problemLine)
}

describe('the limits of a threshold', () => {
	it.each(keys)('%s has them, around the shipped value', (key) => {
		const [least, most] = limitsOf(key)
		expect(least).toBeLessThan(most)
		expect(rows[key].value).toBeGreaterThanOrEqual(least)
		expect(rows[key].value).toBeLessThanOrEqual(most)
	})
	it.each<[Record<string, number>, string]>([
		[
			{ 'sizing.ballRatioMen': 0 },
			'values.sizing.ballRatioMen: beyond what it can be, given 0, allowed: 0.6 to 0.85 ' +
				'(ball length / foot length)',
		],
		[
			{ 'ankle.restrictedCm': -1 },
			'values.ankle.restrictedCm: below zero, given -1, allowed: 0 or more ' +
				'(cm, toe to wall; below is restricted)',
		],
		[
			{ 'season.lifeMinutes': 1e9 },
			'values.season.lifeMinutes: beyond what it can be, given 1000000000, allowed: 60 to 100000 ' +
				'(min)',
		],
		[
			{ 'ankle.nothing': 1 },
			'values.ankle.nothing: unknown key, given 1, allowed: only the keys of the file format',
		],
	])('a file with %j is refused, naming row, value and range', (values, line) =>
		expect(linesOf(values)).toEqual([line]),
	)
	it('a record of such a protocol is not read, one of an unknown threshold goes without it', () => {
		const record = (values: Record<string, number>) => ({
			file: fileOf(values),
			why: 'tried',
			by: 'A. Example',
			at: '2027-01-20T09:00:00.000Z',
		})
		expect(readAs('protocol', 1, record({ 'sizing.ballRatioMen': 0 })).state).toBe('unreadable')
		const newer = readAs('protocol', 1, record({ 'ankle.nothing': 1, 'ankle.restrictedCm': 8 }))
		expect(newer).toMatchObject({ state: 'read', value: { file: { values: {} } } })
		expect(newer.state === 'read' && newer.value.file.values).toEqual({ 'ankle.restrictedCm': 8 })
	})
	it('an accepted protocol never stops the rules, and gives numbers alone', () => {
		fc.assert(
			fc.property(accepted, wholeVisit, (values, visit) => {
				expect(unsound(assessed(visit, values))).toEqual([])
			}),
		)
	})
	it('nor the report that is made of it', () => {
		fc.assert(
			fc.property(accepted, wholeVisit, (values, visit) => {
				expect(unsound(reportOf(visit, values))).toEqual([])
			}),
			{ numRuns: 20 },
		)
	})
	it('a raise is given up at once where a step of nothing came past the check', () => {
		const senseless = { ...shippedProtocol, values: { 'footwear.raiseStepMinMm': 0 } }
		expect(protocolSchema.safeParse(senseless).success).toBe(false)
		const growing = read(json('visit-adolescent.json'))
		const { steps } = assess(growing, [], senseless).prescription.raise
		expect(steps.filter(({ code }) => code === 'raise.step-wean')).toHaveLength(1)
	})
	it('the check itself sees a number that is none', () => {
		expect(unsound({ a: [1, { b: Number.NaN }], c: 'NaN mm' })).toHaveLength(2)
		const senseless = { ...shippedProtocol, values: { 'sizing.ballRatioMen': 0 } }
		const told = fc
			.sample(wholeVisit, 60)
			.filter(({ player, feet }) => player.sex === 'male' && feet)
			.map((visit) => {
				try {
					return unsound(assess(visit, [], senseless)).length
				} catch {
					return 1
				}
			})
		expect(Math.max(...told)).toBeGreaterThan(0)
	})
})
