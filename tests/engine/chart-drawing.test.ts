/** The picture of a chart says what its words and table say, is well-formed and legible. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { assess } from '../../shared/engine/assess.ts'
import { showsCourse } from '../../shared/engine/charts/chart.ts'
import { footLengthChart } from '../../shared/engine/charts/foot-length.ts'
import { innerTicks, monthTicks, niceStep } from '../../shared/engine/charts/scale.ts'
import { chartSvg } from '../../shared/engine/charts/svg.ts'
import { dayNumber } from '../../shared/engine/plain/days.ts'
import { type Visit, visitSchema } from '../../shared/engine/visit/visit.ts'
import { allCharts, drawnNumbers, first, make, player, second, shown } from './chart-visits.ts'
import { elements, XmlDocument } from './svg-reader.ts'

const look = { colour: '#17524f', widthPt: 350, heightPt: 205 }

describe('the one description', () => {
	const charts = allCharts(second, [first])
	it('gives foot length, ankle range in cm and in degrees, stature and mass', () => {
		expect(charts.map((chart) => chart.id)).toEqual([
			'foot-length',
			'course.lungeCm',
			'course.lungeDeg',
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
		const drawn = (earlier: Visit[]) =>
			chartSvg(footLengthChart(second, earlier, assess(second, earlier))!, look)
		expect(drawn([first, middle])).toBe(drawn([middle, first]))
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
		expect(innerTicks(0.05, 0.75, 4).map((tick) => tick.label)).toEqual(['0.2', '0.4', '0.6']))
	it('stands on first days of months', () =>
		expect(
			monthTicks(dayNumber('2026-06-30'), dayNumber('2027-02-02'), 3).map((tick) => tick.label),
		).toEqual(['Jul 2026', 'Oct 2026', 'Jan 2027']))
})

describe('any course of visits', () => {
	const reading = (min: number, max: number) =>
		fc.option(
			fc.integer({ min: min * 10, max: max * 10 }).map((tenths) => tenths / 10),
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
		[...new Map(drawn.map((seen) => [seen.day, seen])).values()]
			.toSorted((a, b) => a.day - b.day)
			.map((seen) =>
				visitSchema.parse(
					JSON.parse(
						JSON.stringify({
							format: 'lastwright-visit',
							version: 1,
							player,
							visitDate: new Date(Date.UTC(2015, 0, 1 + seen.day)).toISOString().slice(0, 10),
							feet: { left: { heelToToeMm: seen.left }, right: { heelToToeMm: seen.right } },
							ankles: {
								left: { lungeCm: seen.lunge, lungeDeg: seen.deg },
								right: { lungeCm: seen.lunge },
							},
							body: { statureCm: seen.stature, massKg: seen.mass },
							footwear: seen.inside === undefined ? [] : [{ id: 'p', insideLengthMm: seen.inside }],
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
					for (const chart of allCharts(now, visits.slice(0, -1))) {
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
