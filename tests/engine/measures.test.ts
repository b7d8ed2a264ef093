/**
 * One definition of each measure: it cannot be left incomplete, and every list, table and chart
 * follows from it.
 */
import fc from 'fast-check'
import { describe, expect, expectTypeOf, it } from 'vitest'
import { writePath } from '../../renderer/parts/draft-path.ts'
import { helpOf, measureHelp } from '../../renderer/parts/help/topic.ts'
import { asksOf, steps } from '../../renderer/screens/assessment/steps.ts'
import { stations } from '../../shared/desk/squad/stations.ts'
import { assess } from '../../shared/engine/assess.ts'
import { coursesOf } from '../../shared/engine/charts/charts.ts'
import { changesOfVisit } from '../../shared/engine/findings/measure-change.ts'
import type { MeasureRow } from '../../shared/engine/findings/measure-rows.ts'
import { missingMeasures } from '../../shared/engine/findings/missing.ts'
import { openProtocol } from '../../shared/engine/protocol/protocol.ts'
import { rows } from '../../shared/engine/protocol/rows.ts'
import { measuredNumbers } from '../../shared/engine/report/measure-table.ts'
import { fieldMeta } from '../../shared/engine/visit/field-meta.ts'
import { nameOfField } from '../../shared/engine/visit/field-names.ts'
import {
	catalogue,
	numberMeasures,
	type Placed,
	pathsOf,
	sidesOf,
} from '../../shared/engine/visit/measures/catalogue.ts'
import type { Measures, NumberMeasure } from '../../shared/engine/visit/measures/measure.ts'
import { shapeOf } from '../../shared/engine/visit/measures/shape.ts'
import { asNumber, measured, pathOn, recordedAt } from '../../shared/engine/visit/measures/value.ts'
import { type Visit, visitSchema } from '../../shared/engine/visit/visit.ts'
import { readingInWords } from '../../shared/engine/words/reading.ts'
import { speakFrom } from '../../shared/engine/words/speak.ts'
import { ankles, player as anyPlayer, body, feet, postures, validVisit } from './random-visit.ts'

const protocol = openProtocol()
const player = { givenName: 'A', familyName: 'B', birthDate: '2013-05-02', sex: 'male' as const }
const make = (visitDate: string, parts: object = {}): Visit =>
	visitSchema.parse({ format: 'lastwright-visit', version: 1, player, visitDate, ...parts })

/** A visit with every number measure taken, in the middle of its soft limits plus `step`. */
function everythingMeasured(visitDate: string, step: number): Visit {
	let visit = make(visitDate)
	for (const placed of numberMeasures)
		for (const path of pathsOf(placed))
			visit = writePath(visit, path, valueFor(placed.measure, step))
	return visitSchema.parse(visit)
}
function valueFor({ kind, soft: [low, high], readings }: NumberMeasure, step: number) {
	const middle = low + (high - low) / 2 + step
	const value = kind === 'whole' ? Math.round(middle) : middle
	return typeof readings === 'object' ? Array(readings.items).fill(value) : value
}

describe('a definition', () => {
	const span = {
		kind: 'number',
		label: 'Span',
		name: 'span',
		unit: 'mm',
		hard: [50, 400],
		soft: [150, 250],
		digits: 1,
		readings: 'repeats',
		hint: 'none',
		help: 'none',
		repeatError: 'none',
		realChange: 'none',
		norms: 'none',
		trend: 'none',
		report: 'none',
		wanted: 'none',
		squadDay: 'none',
		private: 'none',
	} as const
	it('lacks no fact: what does not exist is said to be none', () => {
		const whole = { spanMm: span } as const satisfies Measures
		const { trend: _, ...trendless } = span
		// @ts-expect-error a measure that does not say whether it trends is refused by the compiler
		const lacking = { spanMm: trendless } as const satisfies Measures
		expect(Object.keys(whole.spanMm)).toContain('trend')
		expect(Object.keys(lacking.spanMm)).not.toContain('trend')
	})
	it('names no protocol row that does not exist', () => {
		// @ts-expect-error no such row
		const misnamed: MeasureRow = 'sizing.realGirthCm'
		expect(rows).not.toHaveProperty([misnamed])
	})
	it('gives the visit file exactly its type', () => {
		type Foot = NonNullable<NonNullable<Visit['feet']>['left']>
		expectTypeOf<Foot['heelToToeMm']>().toEqualTypeOf<number | number[] | undefined>()
		expectTypeOf<Foot['note']>().toEqualTypeOf<string | undefined>()
		type Posture = NonNullable<NonNullable<Visit['posture']>['left']>
		expectTypeOf<Posture['fpi6']>().toEqualTypeOf<number[] | undefined>()
		expectTypeOf<Posture['heelRises']>().toEqualTypeOf<number | undefined>()
		expectTypeOf<NonNullable<Visit['body']>['puberty']>().toEqualTypeOf<
			'before' | 'during' | 'after' | undefined
		>()
	})
	it('carries its label, unit and limits into the schema', () => {
		const shape = shapeOf({ spanMm: span })
		expect(shape.spanMm.safeParse([150, 151]).success).toBe(true)
		expect(shape.spanMm.safeParse(401).success).toBe(false)
		for (const placed of numberMeasures)
			for (const path of pathsOf(placed)) {
				const { label, unit, hard, soft, readings } = placed.measure
				expect(fieldMeta(visitSchema, path), path).toMatchObject({
					title: label,
					unit,
					min: hard[0],
					max: hard[1],
					softMin: soft[0],
					softMax: soft[1],
					items: typeof readings === 'object' ? readings.items : 0,
				})
			}
	})
	it('has limits that hold each other', () => {
		for (const { key, measure } of numberMeasures) {
			expect(measure.hard[0], key).toBeLessThanOrEqual(measure.soft[0])
			expect(measure.hard[1], key).toBeGreaterThanOrEqual(measure.soft[1])
			expect(measure.soft[0], key).toBeLessThan(measure.soft[1])
		}
	})
})

describe('what follows from the definitions', () => {
	const all = (of: (placed: Placed) => boolean) => catalogue.filter(of)
	it('every measure is asked on a step, with its hint', () => {
		const shown = steps.flatMap(({ groups }) => groups.flatMap(({ fields }) => fields))
		for (const placed of catalogue) {
			const row = shown.find(({ paths }) => paths[0] === pathsOf(placed)[0])
			expect(row?.paths, placed.key).toEqual(pathsOf(placed))
			expect(row?.hint ?? 'none').toBe(placed.measure.hint)
		}
	})
	it('what a visit is told to lack is what somebody wants, and is asked on a step', () => {
		const wanted = (minor: boolean) =>
			all(
				({ measure }) => measure.wanted === 'everyone' || (minor && measure.wanted === 'minors'),
			).flatMap((placed) => [...pathsOf(placed)])
		const missing = missingMeasures(make('2027-01-20'), protocol).map(({ path }) => path)
		const adult = missingMeasures(make('2040-01-20'), protocol).map(({ path }) => path)
		expect(missing).toEqual(expect.arrayContaining(wanted(true)))
		expect(adult).toEqual(expect.arrayContaining(wanted(false)))
		expect(adult).toContain('body.statureCm')
		expect(adult).not.toContain('body.sittingHeightCm')
		const asked = steps.flatMap(asksOf)
		expect(missing.filter((path) => !asked.includes(path))).toEqual([])
	})
	it('every measure with help has its steps, and its rows from the protocol', () => {
		const helped = all(({ measure }) => measure.help !== 'none')
		expect(measureHelp.map(([key]) => key)).toEqual(helped.map(({ key }) => key))
		for (const placed of helped) {
			const help = helpOf(pathsOf(placed)[0])!
			expect(help.steps.length, placed.key).toBeGreaterThan(0)
			for (const key of [...help.errors, ...help.norms]) expect(rows).toHaveProperty([key])
		}
		const sidedNumbers = numberMeasures.filter(({ sided }) => sided)
		expect(sidedNumbers.filter(({ measure }) => measure.help === 'none')).toEqual([])
	})
	const [then, now] = [everythingMeasured('2026-08-01', 0), everythingMeasured('2027-01-20', 1)]
	const trending = numberMeasures.filter(({ measure }) => measure.trend !== 'none')
	it('every measure that trends is compared, on each side', () => {
		const compared = changesOfVisit(now, [then], protocol).map(
			({ placed, side }) => `${placed.key} ${side}`,
		)
		expect(compared).toEqual(
			trending.flatMap((placed) => sidesOf(placed).map((side) => `${placed.key} ${side}`)),
		)
	})
	it('every measure that trends is drawn with both its visits, of adults and minors', () => {
		const grown = { ...player, birthDate: '1990-05-02' }
		for (const who of [player, grown]) {
			const latest = { ...now, player: who }
			const earlier = [{ ...then, player: who }]
			const charts = coursesOf(latest, earlier, assess(latest, earlier))
			expect(new Set(charts.map(({ id }) => id)).size).toBe(charts.length)
			for (const chart of charts) expect(chart.visits, chart.id).toBe(2)
			const drawn = charts.flatMap(({ panels }) =>
				panels.flatMap(({ series }) => series.flatMap(({ points }) => points.map(({ y }) => y))),
			)
			for (const placed of trending)
				for (const side of sidesOf(placed))
					expect(drawn, placed.key).toContain(measured(latest, placed, side))
		}
	})
	it('a table of a report has the measures that its reader is shown, and no other', () => {
		const t = speakFrom()
		for (const reader of ['player', 'doctor', 'laboratory'] as const) {
			const shown = all(
				(placed) =>
					placed.measure.report !== 'none' &&
					placed.measure.report[reader] !== 'none' &&
					sidesOf(placed).some((side) => recordedAt(now, pathOn(placed, side)) !== undefined),
			)
			expect(shown.length).toBeGreaterThan(2)
			const table = measuredNumbers(reader, now, t)
			expect(table.length).toBe(shown.length)
			for (const [name, left, right] of table) {
				expect(name).not.toBe('')
				expect([left, right].join(' ')).not.toMatch(/undefined|NaN/)
			}
		}
		const sideless = all(({ sided }) => !sided)
		expect(sideless.filter(({ measure }) => measure.report !== 'none')).toEqual([])
	})
	it('a squad day enters what its measures say', () => {
		const entered = stations.flatMap((station) => station.rows.flat())
		for (const placed of catalogue)
			for (const path of pathsOf(placed))
				expect(entered.includes(path), path).toBe(placed.measure.squadDay !== 'none')
	})
	it('a reason is named by the measure', () => {
		for (const { key, measure } of catalogue) {
			expect(nameOfField(key)).toBeDefined()
			if (key !== 'note') expect(nameOfField(key), key).toBe(measure.name)
		}
		expect(readingInWords({ measure: 'lungeCm', side: 'left', value: 7.1, unit: 'cm' })).toBe(
			'knee to wall, left: 7.1 cm',
		)
		expect(nameOfField('nightPain')).toBe('pain at night or at rest')
	})
	it('one number stands for repeats and for items, whatever was recorded', () => {
		fc.assert(
			fc.property(
				validVisit({ player: anyPlayer, feet, ankles, posture: postures, body }),
				(visit) => {
					for (const placed of numberMeasures)
						for (const path of pathsOf(placed)) {
							const recorded = recordedAt(visit, path)
							const value = asNumber(placed.measure, recorded)
							if (recorded === undefined) expect(value).toBeUndefined()
							else expect(Number.isFinite(value), path).toBe(true)
						}
				},
			),
		)
	})
})
