/** Charts: one description holds the numbers for picture, words and table. */
import { describe, expect, it } from 'vitest'
import { assess } from '../../shared/engine/assess.ts'
import { footLengthChart } from '../../shared/engine/charts/foot-length.ts'
import { growthChart, valueAtPercentile } from '../../shared/engine/charts/growth-curves.ts'
import { measureChart } from '../../shared/engine/charts/measure-course.ts'
import { numberIn } from '../../shared/engine/findings/measure-change.ts'
import { dayNumber } from '../../shared/engine/plain/days.ts'
import { openProtocol, shippedProtocol } from '../../shared/engine/protocol/protocol.ts'
import type { Visit } from '../../shared/engine/visit/visit.ts'
import { dateWords } from '../../shared/engine/words/words.ts'
import { drawnNumbers, first, make, second, shown } from './chart-visits.ts'

describe('foot length', () => {
	const assessment = assess(second, [first])
	const chart = footLengthChart(second, [first], assessment)!
	it('carries the forecast of the assessment, starting at the longer foot', () => {
		const [start, ...months] = chart.panels[0]!.bands[0]!.points
		expect(start).toEqual({ x: dayNumber('2027-01-20'), low: 248.5, high: 248.5, middle: 248.5 })
		expect(months).toEqual(
			assessment.growth!.footForecast!.map(({ date, lengthMm, lowMm, highMm }) => ({
				x: dayNumber(date),
				low: lowMm,
				high: highMm,
				middle: lengthMm,
			})),
		)
		const last = assessment.growth!.footForecast!.at(-1)!
		expect(chart.alternative).toContain(
			`By ${dateWords(last.date)} the longer foot may measure ${shown(last.lowMm)} to ` +
				`${shown(last.highMm)} mm`,
		)
	})
	it(
		'draws where toe room runs out only for a pair of known inside length: inside 258, sock 2, ' +
			'least room 5',
		() => {
			expect(chart.panels[0]!.marks.map((mark) => mark.y)).toEqual([258 - 2 - 5])
			expect(chart.alternative).toContain('runs out at 251 mm')
		},
	)
	it('draws no threshold of another protocol than the one that judged', () => {
		const clinic = { ...shippedProtocol, id: 'clinic', values: { 'footwear.youthReplaceMm': 8 } }
		const judged = assess(second, [first], clinic)
		expect(footLengthChart(second, [first], judged)!.panels[0]!.marks).toEqual([])
		expect(
			footLengthChart(second, [first], judged, openProtocol(clinic))!.panels[0]!.marks[0]!.y,
		).toBe(248)
	})
	it('a seated visit is drawn without the standing ones, and says that it was seated', () => {
		const seated = make('2027-01-20', {
			feet: { stance: 'seated', left: { heelToToeMm: 245 }, right: { heelToToeMm: 247 } },
		})
		const drawn = footLengthChart(seated, [first], assess(seated, [first]))!
		expect(drawnNumbers(drawn)).toEqual([245, 247])
		expect(drawn.alternative).toMatch(/^Foot length over time, measured seated\./)
	})
	it('leaves earlier seated measures out', () => {
		const seated = make('2026-03-01', {
			feet: { stance: 'seated', left: { heelToToeMm: 236 }, right: { heelToToeMm: 238 } },
		})
		expect(
			drawnNumbers(footLengthChart(second, [seated, first], assess(second, [seated, first]))!),
		).toEqual(drawnNumbers(chart))
	})
	it('is absent where no foot was measured', () =>
		expect(footLengthChart(make('2027-01-20'), [], assess(make('2027-01-20')))).toBeUndefined())
})

describe('ankle range', () => {
	const protocol = openProtocol()
	const cm = numberIn('ankles', 'lungeCm')
	const chart = measureChart(cm, second, [first], assess(second, [first]))!
	it('keeps left and right apart on one axis', () => {
		expect(chart.panels.map((panel) => panel.title)).toEqual(['Left ankle', 'Right ankle'])
		expect(
			chart.panels.map((panel) => panel.series[0]!.points.map((point) => shown(point.y))),
		).toEqual([
			['8.3', '7.1'],
			['9.6', '9.5'],
		])
	})
	it('puts the error band of the protocol round the visit before', () => {
		const published = [protocol.value('ankle.realCmSame'), protocol.value('ankle.realCmOther')]
		for (const [index, before] of [8.3, 9.6].entries())
			for (const { low, high } of chart.panels[index]!.bands[0]!.points) {
				expect((low + high) / 2).toBeCloseTo(before, 9)
				expect(published.some((half) => Math.abs((high - low) / 2 - half) < 1e-9)).toBe(true)
			}
	})
	it('draws the cut-off in centimetres for adults alone, and an angle for everybody', () => {
		const grown = (visit: Visit): Visit => ({
			...visit,
			player: { ...visit.player, birthDate: '1998-05-02' },
		})
		const [then, now] = [grown(first), grown(second)]
		const marksOf = (key: 'lungeCm' | 'lungeDeg', visit: Visit, before: Visit) =>
			measureChart(numberIn('ankles', key), visit, [before], assess(visit, [before]))!.panels.map(
				({ marks }) => marks.map(({ y }) => y),
			)
		const cutOff = protocol.value('ankle.restrictedCm')
		expect(marksOf('lungeCm', now, then)).toEqual([[cutOff], [cutOff]])
		expect(marksOf('lungeCm', second, first)).toEqual([[], []])
		const angle = protocol.value('ankle.restrictedDeg')
		expect(marksOf('lungeDeg', second, first)).toEqual([[angle], [angle]])
	})
	it('takes the smaller published error only where the examiners are known to differ', () => {
		const named = (visit: Visit, examiner: string): Visit => ({
			...visit,
			feet: { ...visit.feet, examiner },
		})
		const half = (a: string, b: string) => {
			const [then, now] = [named(first, a), named(second, b)]
			const { low, high } = measureChart(cm, now, [then], assess(now, [then]))!.panels[0]!.bands[0]!
				.points[0]!
			return (high - low) / 2
		}
		expect(half('Ines', 'Ines')).toBeCloseTo(protocol.value('ankle.realCmSame'), 9)
		expect(half('Ines', 'Odd')).toBeCloseTo(protocol.value('ankle.realCmOther'), 9)
	})
	it('never turns centimetres into degrees', () =>
		expect(measureChart(numberIn('ankles', 'lungeDeg'), first, [], assess(first))).toBeUndefined())
})

describe('stature and mass on their curves', () => {
	// CDC 2000 table rows at 120.5 months: the published medians, and z 1.8808 for the 97th by LMS
	it('P50 is the published median and P97 its LMS value', () => {
		expect(valueAtPercentile('stature', 'male', 120.5, 50)).toBeCloseTo(138.8234114, 6)
		expect(valueAtPercentile('stature', 'male', 120.5, 97)).toBeCloseTo(
			138.8234114 * (1 + 0.505564115 * 0.047610108 * 1.880794) ** (1 / 0.505564115),
			3,
		)
	})
	it('draws seven curves that never cross, and the visits at their ages', () => {
		const chart = growthChart('stature', second, [first], assess(second, [first]))!
		const { curves, series } = chart.panels[0]!
		expect(curves.map((curve) => curve.name)).toEqual([
			'P3',
			'P10',
			'P25',
			'P50',
			'P75',
			'P90',
			'P97',
		])
		for (const [index, curve] of curves.entries())
			for (const [at, point] of curve.points.entries())
				if (index > 0) expect(point.y).toBeGreaterThan(curves[index - 1]!.points[at]!.y)
		expect(series[0]!.points.map((point) => point.y)).toEqual([154.9, 158.4])
		expect(series[0]!.points[1]!.x).toBeCloseTo(13.719, 3)
		expect(chart.alternative).toContain(
			`centile ${Math.round(assess(second, [first]).growth!.centiles.stature!.percentile)}`,
		)
	})
	it('is absent for adults and outside the ages of the table', () => {
		const adult = make('2037-01-20', { body: { statureCm: 180, massKg: 75 } })
		expect(growthChart('stature', adult, [], assess(adult))).toBeUndefined()
		const small = make('2017-01-20', { body: { statureCm: 98, massKg: 15 } })
		expect(growthChart('stature', small, [], assess(small))).toBeUndefined()
	})
})
