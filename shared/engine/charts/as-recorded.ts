/** Courses that no rule judges: worst pain of each condition, and the hours of sport a week. */
import { saidConditions } from '../conditions/query.ts'
import { dayInWords, dayNumber } from '../plain/days.ts'
import { numberMeasures } from '../visit/measures/catalogue.ts'
import { measured } from '../visit/measures/value.ts'
import { termWords } from '../visit/terms.ts'
import type { Visit } from '../visit/visit.ts'
import type { Chart, Point, Series } from './chart.ts'
import { asRecorded, leastSpanOf, type Reading } from './course.ts'

interface Course {
	id: string
	title: string
	yTitle: string
	unit: string
	leastSpan: number
	lines: readonly { name: string; values: readonly Reading[] }[]
}
function chartOf({ id, title, yTitle, unit, leastSpan, lines }: Course): Chart | undefined {
	const dates = [...new Set(lines.flatMap((line) => line.values.map((value) => value.date)))].sort()
	const days = dates.map(dayNumber)
	if (dates.length < 2) return undefined
	const series = lines.map(
		(line, index): Series => ({
			name: line.name,
			marker: index % 2 === 0 ? 'circle' : 'square',
			dashed: index % 2 === 1,
			points: line.values.map((value): Point => ({ x: dayNumber(value.date), y: value.value })),
		}),
	)
	const told = lines
		.map(({ name, values }) => {
			const readings = values.map(({ value, date }) => `${value} ${unit} on ${dayInWords(date)}`)
			return `${name}: ${readings.join(', ')}`
		})
		.join('. ')
	return {
		id,
		title,
		x: { title: 'Visit', unit: '', kind: 'date', min: Math.min(...days), max: Math.max(...days) },
		y: { title: yTitle, unit, kind: 'number', leastSpan },
		panels: [{ series, bands: [], curves: [], marks: [] }],
		visits: dates.length,
		forecast: false,
		alternative: `${title}. ${told}.`,
		summary: told,
		table: {
			head: ['Visit', ...lines.map((line) => `${line.name} (${unit})`)],
			rows: dates.map((date) => [
				dayInWords(date),
				...lines.map((line) => {
					const found = line.values.find((value) => value.date === date)
					return found ? String(found.value) : ''
				}),
			]),
		},
		basis: [asRecorded],
	}
}
/** @param visits in order of time; @returns undefined before there are two visits with a value */
export function painChart(visits: readonly Visit[]): Chart | undefined {
	const of = (visit: Visit) =>
		saidConditions(visit).flatMap((condition) =>
			condition.painWorst === undefined
				? []
				: [
						{
							name: `${termWords(condition.condition)}, ${condition.side}`,
							date: visit.visitDate,
							value: condition.painWorst,
						},
					],
		)
	const all = visits.flatMap(of)
	return chartOf({
		id: 'trends.pain',
		title: 'Worst pain',
		yTitle: 'Pain',
		unit: '/10',
		leastSpan: 10,
		lines: [...new Set(all.map(({ name }) => name))].map((name) => ({
			name,
			values: all.filter((value) => value.name === name),
		})),
	})
}
/** The measures that are hours of sport, a line each. @param visits in order of time */
export function hoursChart(visits: readonly Visit[]): Chart | undefined {
	const shown = numberMeasures.filter(
		({ measure: { trend } }) => trend !== 'none' && trend.picture === 'hours-of-sport',
	)
	const lines = shown
		.map((placed) => ({
			name: placed.measure.name,
			values: visits.flatMap((visit) => {
				const value = measured(visit, placed)
				return value === undefined ? [] : [{ date: visit.visitDate, value }]
			}),
		}))
		.filter(({ values }) => values.length > 0)
	return chartOf({
		id: 'trends.load',
		title: 'Hours of sport a week',
		yTitle: 'Hours',
		unit: 'h/week',
		leastSpan: Math.max(...shown.map(({ measure }) => leastSpanOf(measure))),
		lines,
	})
}
