/**
 * Charts: one description holds the numbers for picture, words and table; the picture is
 * well-formed and legible.
 */
import { createRequire } from 'node:module'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { assess } from '../../shared/engine/assess.ts'
import { ankleChart } from '../../shared/engine/charts/ankle-range.ts'
import { type Chart, showsCourse } from '../../shared/engine/charts/chart.ts'
import { chartsOf } from '../../shared/engine/charts/charts.ts'
import { footLengthChart } from '../../shared/engine/charts/foot-length.ts'
import { growthChart, valueAtPercentile } from '../../shared/engine/charts/growth-curves.ts'
import { innerTicks, monthTicks, niceStep } from '../../shared/engine/charts/scale.ts'
import { chartSvg } from '../../shared/engine/charts/svg.ts'
import type { Assessment } from '../../shared/engine/findings/assessment.ts'
import { openProtocol, shippedProtocol } from '../../shared/engine/protocol/protocol.ts'
import { dayNumber } from '../../shared/engine/visit/age.ts'
import { type Visit, visitSchema } from '../../shared/engine/visit/visit.ts'
import { dateWords } from '../../shared/engine/words/words.ts'

interface XmlNode {
	name: string
	attr: Record<string, string>
	val: string
	children: XmlNode[]
}
// the very parser that draws the pictures of the PDF: it is strict and throws on what is not XML
const { XmlDocument } = createRequire(createRequire(import.meta.url).resolve('pdfmake'))(
	'xmldoc',
) as { XmlDocument: new (text: string) => XmlNode }
const elements = (node: XmlNode): XmlNode[] => [
	node,
	...(node.children ?? []).filter((child) => child.name).flatMap(elements),
]
const look = { colour: '#17524f', widthPt: 350, heightPt: 205 }

const player = {
	givenName: 'Tui',
	familyName: 'Ashdown',
	birthDate: '2013-05-02',
	sex: 'male' as const,
}
const make = (visitDate: string, more: Record<string, unknown> = {}): Visit =>
	visitSchema.parse({ format: 'lastwright-visit', version: 1, player, visitDate, ...more })
const first = make('2026-07-15', {
	feet: {
		stance: 'standing',
		left: { heelToToeMm: [241, 241] },
		right: { heelToToeMm: [243, 244] },
	},
	ankles: { left: { lungeCm: [8.2, 8.4, 8.3] }, right: { lungeCm: 9.6 } },
	body: { statureCm: 154.9, massKg: 43.6 },
})
const second = make('2027-01-20', {
	feet: {
		stance: 'standing',
		sockMm: 2,
		left: { heelToToeMm: [246, 247] },
		right: { heelToToeMm: [249, 248] },
	},
	ankles: { left: { lungeCm: 7.1, lungeDeg: 31 }, right: { lungeCm: 9.5, lungeDeg: 38 } },
	body: { statureCm: 158.4, massKg: 46.2 },
	footwear: [
		{ id: 'p1', name: 'match <boots> & "more"', sole: 'firm-ground', insideLengthMm: 258 },
		{ id: 'p2', sole: 'road' },
	],
})
const topics = ['sizing', 'ankle', 'growth'] as const
const all = (
	visit: Visit,
	earlier: readonly Visit[],
	assessment: Assessment = assess(visit, earlier),
): Chart[] => topics.flatMap((topic) => chartsOf(topic, visit, earlier, assessment))
const drawnNumbers = (chart: Chart): number[] =>
	chart.panels.flatMap((panel) => panel.series.flatMap((one) => one.points.map((point) => point.y)))
const shown = (value: number) => String(Math.round(value * 10) / 10)

describe('the one description', () => {
	const charts = all(second, [first])
	it('gives foot length, ankle range in cm and in degrees, stature and mass', () => {
		expect(charts.map((chart) => chart.id)).toEqual([
			'foot-length',
			'ankle-cm',
			'ankle-deg',
			'growth-stature',
			'growth-mass',
		])
		expect(charts.map(showsCourse)).toEqual([true, true, false, true, true])
	})
	it.each(charts.map((chart) => [chart.id, chart] as const))(
		'%s: every drawn reading stands in the words and in the table',
		(_, chart) => {
			const cells = chart.table.rows.flat()
			expect(drawnNumbers(chart).length).toBeGreaterThan(0)
			for (const value of drawnNumbers(chart)) {
				expect(chart.alternative).toContain(`${shown(value)} ${chart.y.unit}`)
				expect(cells).toContain(shown(value))
			}
			for (const row of chart.table.rows) expect(row.length).toBe(chart.table.head.length)
			for (const { words, y } of chart.panels.flatMap((panel) => panel.marks))
				expect(`${chart.alternative} ${words.join(' ')}`).toContain(shown(y))
			expect(chart.basis.length).toBeGreaterThan(0)
			for (const basis of chart.basis) expect(basis.source).not.toBe('')
		},
	)
	it.each(charts.map((chart) => [chart.id, chart] as const))(
		'%s: is XML of shapes and words in the font of the house',
		(_, chart) => {
			const root = new XmlDocument(chartSvg(chart, look))
			expect(root.name).toBe('svg')
			expect(root.attr.viewBox).toBe('0 0 350 205')
			const nodes = elements(root)
			expect(
				nodes
					.map((node) => node.name)
					.filter((name) => !['svg', 'text', 'line', 'path', 'rect', 'circle'].includes(name)),
			).toEqual([])
			const texts = nodes.filter((node) => node.name === 'text')
			for (const node of texts) expect(node.attr['font-family']).toBe('Noto')
			expect(texts.map((node) => node.val).join(' ')).toContain(chart.y.title)
		},
	)
	it('is the same picture for the same input, whatever the order of the earlier visits', () => {
		const middle = make('2026-10-01', {
			feet: { left: { heelToToeMm: 244 }, right: { heelToToeMm: 246 } },
		})
		const [one, other] = [
			[first, middle],
			[middle, first],
		].map((earlier) => chartSvg(footLengthChart(second, earlier, assess(second, earlier))!, look))
		expect(one).toBe(other)
	})
})
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
	const chart = ankleChart('cm', second, [first], assess(second, [first]))!
	it('keeps left and right apart on one axis', () => {
		expect(chart.panels.map((panel) => panel.title)).toEqual(['Left ankle', 'Right ankle'])
		expect(
			chart.panels.map((panel) => panel.series[0]!.points.map((point) => shown(point.y))),
		).toEqual([
			['8.3', '7.1'],
			['9.6', '9.5'],
		])
	})
	it('puts the error band of the protocol round the visit before, and its cut-off', () => {
		const half = protocol.value('ankle.realCmSame'),
			other = protocol.value('ankle.realCmOther')
		for (const [index, before] of [8.3, 9.6].entries())
			for (const { low, high } of chart.panels[index]!.bands[0]!.points) {
				expect((low + high) / 2).toBeCloseTo(before, 9)
				expect([half, other].some((one) => Math.abs((high - low) / 2 - one) < 1e-9)).toBe(true)
			}
		expect(chart.panels.map((panel) => panel.marks[0]!.y)).toEqual([
			protocol.value('ankle.restrictedCm'),
			protocol.value('ankle.restrictedCm'),
		])
		expect(chart.alternative).toContain('Cut-off in use 9 cm')
	})
	it('takes the smaller published error only where the examiners are known to differ', () => {
		const named = (visit: Visit, examiner: string): Visit => ({
			...visit,
			feet: { ...visit.feet, examiner },
		})
		const half = (a: string, b: string) => {
			const [then, now] = [named(first, a), named(second, b)]
			const { low, high } = ankleChart('cm', now, [then], assess(now, [then]))!.panels[0]!.bands[0]!
				.points[0]!
			return (high - low) / 2
		}
		expect(half('Ines', 'Ines')).toBeCloseTo(protocol.value('ankle.realCmSame'), 9)
		expect(half('Ines', 'Odd')).toBeCloseTo(protocol.value('ankle.realCmOther'), 9)
	})
	it('never turns centimetres into degrees', () =>
		expect(ankleChart('deg', first, [], assess(first))).toBeUndefined())
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
describe('scales', () => {
	it('steps by 1, 2 or 5', () =>
		expect(
			[
				[10, 5],
				[11, 5],
				[23, 5],
				[0.7, 5],
				[93, 6],
			].map(([span, most]) => niceStep(span!, most!)),
		).toEqual([2, 5, 5, 0.2, 20]))
	it('keeps ticks inside and their labels free of binary tails', () =>
		expect(innerTicks(0.05, 0.75, 4).map((one) => one.label)).toEqual(['0.2', '0.4', '0.6']))
	it('stands on first days of months', () =>
		expect(
			monthTicks(dayNumber('2026-06-30'), dayNumber('2027-02-02'), 3).map((one) => one.label),
		).toEqual(['Jul 2026', 'Oct 2026', 'Jan 2027']))
})
describe('any course of visits', () => {
	const reading = (min: number, max: number) =>
		fc.option(
			fc.integer({ min: min * 10, max: max * 10 }).map((n) => n / 10),
			{ nil: undefined },
		)
	const course = fc.array(
		fc.record({
			day: fc.integer({ min: 0, max: 4000 }),
			left: reading(90, 400),
			right: reading(90, 400),
			lunge: reading(-10, 30),
			deg: reading(0, 75),
			stature: reading(70, 240),
			mass: reading(10, 250),
			inside: reading(90, 420),
		}),
		{ minLength: 1, maxLength: 9 },
	)
	const visitsOf = (
		drawn: {
			day: number
			left: number | undefined
			right: number | undefined
			lunge: number | undefined
			deg: number | undefined
			stature: number | undefined
			mass: number | undefined
			inside: number | undefined
		}[],
	) =>
		[...new Map(drawn.map((one) => [one.day, one])).values()]
			.toSorted((a, b) => a.day - b.day)
			.map((one) =>
				visitSchema.parse(
					JSON.parse(
						JSON.stringify({
							format: 'lastwright-visit',
							version: 1,
							player,
							visitDate: new Date(Date.UTC(2015, 0, 1 + one.day)).toISOString().slice(0, 10),
							feet: { left: { heelToToeMm: one.left }, right: { heelToToeMm: one.right } },
							ankles: {
								left: { lungeCm: one.lunge, lungeDeg: one.deg },
								right: { lungeCm: one.lunge },
							},
							body: { statureCm: one.stature, massKg: one.mass },
							footwear: one.inside === undefined ? [] : [{ id: 'p', insideLengthMm: one.inside }],
						}),
					),
				),
			)
	it('draws finite numbers inside the picture, and no two words over each other', () => {
		fc.assert(
			fc.property(
				course,
				fc.constantFrom([350, 205], [460, 128], [460, 155]),
				(drawn, [widthPt, heightPt]) => {
					const visits = visitsOf(drawn),
						now = visits.at(-1)!
					for (const chart of all(now, visits.slice(0, -1))) {
						const svg = chartSvg(chart, {
							colour: '#17524f',
							widthPt: widthPt!,
							heightPt: heightPt!,
						})
						expect(svg).not.toMatch(/NaN|Infinity|undefined|null/)
						expect(
							`${chart.alternative} ${chart.summary} ${JSON.stringify(chart.table)}`,
						).not.toMatch(/NaN|Infinity|undefined|null/)
						const boxes = elements(new XmlDocument(svg))
							.filter((node) => node.name === 'text')
							.map((node) => {
								// 0.5 em: a little under the mean advance, so that only a real overlap counts
								const w = node.val.length * 8.5 * 0.5,
									anchor = node.attr['text-anchor'],
									x = Number(node.attr.x) - (anchor === 'middle' ? w / 2 : anchor === 'end' ? w : 0)
								return { words: node.val, x, y: Number(node.attr.y) - 6.5, w, h: 6.5 }
							})
						for (const [index, a] of boxes.entries()) {
							expect(a.x, a.words).toBeGreaterThanOrEqual(-1)
							expect(a.x + a.w, a.words).toBeLessThanOrEqual(widthPt! + 1)
							for (const b of boxes.slice(index + 1))
								expect(
									a.x < b.x + b.w && b.x < a.x + a.w && a.y < b.y + b.h && b.y < a.y + a.h,
									`${chart.id}: "${a.words}" over "${b.words}"`,
								).toBe(false)
						}
					}
				},
			),
			{ numRuns: 60 },
		)
	})
})
