/** Any measure over the visits, a panel a side, as its definition says. */
import { isMinor } from '../facts/age.ts'
import type { KeptAssessment } from '../findings/assessment.ts'
import { examinersOf, stanceOf } from '../findings/change.ts'
import { realChangeRow } from '../findings/measure-change.ts'
import { rowOf } from '../findings/measure-rows.ts'
import { dayNumber } from '../plain/days.ts'
import { present } from '../plain/present.ts'
import type { Basis } from '../protocol/basis.ts'
import { openProtocol, type Protocol, type ThresholdKey } from '../protocol/protocol.ts'
import { type Placed, sidesOf } from '../visit/measures/catalogue.ts'
import type { NumberMeasure } from '../visit/measures/measure.ts'
import { measured } from '../visit/measures/value.ts'
import type { Side, Visit } from '../visit/visit.ts'
import { type Statement, state } from '../words/statement.ts'
import { capital, dateWords, shown } from '../words/words.ts'
import { type Chart, type Panel, type Series, toldBy } from './chart.ts'
import {
	asRecorded,
	datesOf,
	inOrder,
	judgedBy,
	leastSpanOf,
	lineSeries,
	type Reading,
	readingOn,
	sideSeries,
} from './course.ts'

interface Taken extends Reading {
	visit: Visit
}
/** The band of measuring error: half its width, round the reading it starts from. */
interface MeasuringError extends Reading {
	key: ThresholdKey
	half: number
}
/** What was read on one side, or on the player. */
interface Line {
	side: Side | undefined
	/** 'Left ankle', or the measure where it has no side. */
	title: string
	readings: Taken[]
	/** Undefined where no smallest real change is known, or another protocol judged. */
	error?: MeasuringError
}
interface Course {
	placed: Placed<NumberMeasure>
	title: string
	unit: string
	lines: Line[]
	/** The stance of the feet, where the measure hangs on it. */
	seated: boolean
	/** At least one. */
	dates: string[]
	/** Undefined where there is none, or another protocol judged. */
	cutOff?: { value: number; key: ThresholdKey }
	span: { min: number; max: number }
}

/**
 * A measure over the visits, with the cut-off in use and the band of measuring error: the latest
 * earlier reading (this one, at a first visit), give or take the smallest real change.
 * @param earlier any order; of a measure that hangs on the stance those of another one are left out
 * @returns undefined where it was not measured at all
 */
export function measureChart(
	placed: Placed<NumberMeasure>,
	visit: Visit,
	earlier: readonly Visit[],
	assessment: KeptAssessment,
	protocol: Protocol = openProtocol(),
): Chart | undefined {
	const judge = judgedBy(assessment, protocol) ? protocol : undefined
	const course = courseOf(placed, visit, earlier, judge)
	if (course.dates.length === 0) return undefined
	const { title, unit, lines, dates, span } = course
	return {
		id: `course.${placed.key}`,
		title: `${title} over time`,
		x: { title: '', unit: '', kind: 'date', ...span },
		y: { title, unit, kind: 'number', leastSpan: leastSpanOf(placed.measure) },
		panels: lines.map((line) => panelOf(line, course)),
		visits: dates.length,
		forecast: false,
		...wordsOf(course),
		table: tableOf(course),
		basis: judge ? basisOf(course, judge) : [],
		...(placed.measure.private === 'none' ? {} : { private: placed.measure.private }),
	}
}
const unitWords = (unit: string): string => (unit === 'deg' ? 'degrees' : unit)

function courseOf(
	placed: Placed<NumberMeasure>,
	visit: Visit,
	earlier: readonly Visit[],
	judge: Protocol | undefined,
): Course {
	const { measure, part, stance } = placed
	const title = capital(measure.name)
	const visits = inOrder(visit, earlier).filter(
		(seen) => stance === 'any' || stanceOf(seen) === stanceOf(visit),
	)
	const lines = sidesOf(placed).map((side): Line => {
		const readings = visits.flatMap((seen) => {
			const value = measured(seen, placed, side)
			return value === undefined ? [] : [{ visit: seen, date: seen.visitDate, value }]
		})
		const error = judge && measuringError(measure, readings, visit, judge)
		return {
			side,
			title: side ? `${capital(side)} ${part}` : title,
			readings,
			...present({ error }),
		}
	})
	const dates = datesOf(...lines.map(({ readings }) => readings))
	return {
		placed,
		title,
		unit: unitWords(measure.unit),
		lines,
		seated: stance === 'alike' && stanceOf(visit) === 'seated',
		dates,
		...present({ cutOff: judge && cutOffOf(measure, visit, judge) }),
		span: spanOf(dates.map(dayNumber)),
	}
}
/** The line drawn; none for a minor where it is an adult's. */
function cutOffOf({ trend }: NumberMeasure, visit: Visit, protocol: Protocol): Course['cutOff'] {
	if (trend === 'none' || trend.cutOff === 'none') return undefined
	if (trend.cutOff.of === 'adults' && isMinor(visit, protocol)) return undefined
	const key = rowOf(trend.cutOff.row)
	return { key, value: protocol.value(key) }
}
/** A visit alone still gets room to the right, where the next reading will stand. */
function spanOf(days: readonly number[]): { min: number; max: number } {
	const first = Math.min(...days)
	const last = Math.max(...days)
	const margin = Math.max(15, (last - first) * 0.08)
	return { min: first - margin, max: last === first ? last + 120 : last + margin }
}
/** Before there is an earlier reading the limit of the same examiner stands. */
function measuringError(
	measure: NumberMeasure,
	readings: readonly Taken[],
	visit: Visit,
	protocol: Protocol,
): MeasuringError | undefined {
	const before = readings.findLast((reading) => reading.visit !== visit)
	const start = before ?? readings.at(-1)
	const key = realChangeRow(measure, before ? examinersOf(visit, before.visit) : 'same')
	return start && key
		? { date: start.date, value: start.value, key, half: protocol.value(key) }
		: undefined
}
/** The half widths of the bands, each once. */
const widthsOf = ({ lines }: Course): number[] => [
	...new Set(lines.flatMap(({ error }) => error?.half ?? [])),
]
/** '1.5', or '1.5 or 2.4' where the sides differ. */
const widthWords = (course: Course): string =>
	widthsOf(course)
		.map((width) => shown(width))
		.join(' or ')

const seriesOf = ({ side, title, readings }: Line): Series =>
	side ? sideSeries(side, readings) : lineSeries(title, readings)

function panelOf(line: Line, course: Course): Panel {
	const { placed, cutOff } = course
	const taken = line.readings.length > 0
	return {
		...(line.side ? { title: `${line.title}${taken ? '' : ': not measured'}` } : {}),
		series: taken ? [seriesOf(line)] : [],
		bands: bandsOf(line, course),
		curves: [],
		marks: cutOff
			? [{ words: ['cut-off', `${shown(cutOff.value)} ${placed.measure.unit}`], y: cutOff.value }]
			: [],
	}
}
function bandsOf({ error }: Line, course: Course): Panel['bands'] {
	if (!error) return []
	const { unit, dates, span } = course
	const low = error.value - error.half
	const high = error.value + error.half
	return [
		{
			name:
				`within measuring error (${widthWords(course)} ${unit}) of ` +
				`${dates.length > 1 ? 'the visit before' : 'this visit'}`,
			points: [dayNumber(error.date), span.max].map((x) => ({ x, low, high })),
		},
	]
}
function wordsOf(course: Course): ReturnType<typeof toldBy> {
	const { placed, lines } = course
	const told = (of: (readings: readonly Reading[]) => readonly Reading[]) =>
		lines.map(({ side, readings }) =>
			lineStatement(placed, side, of(readings.map(({ date, value }) => ({ date, value })))),
		)
	const rules = ruleStatements(course)
	return toldBy(
		[
			state('chart.course', { of: placed.key, seated: course.seated }),
			...told((readings) => readings),
			...rules,
		],
		[...told((readings) => readings.slice(-1)), ...rules],
	)
}
const lineStatement = (
	{ key, part, measure: { unit } }: Placed<NumberMeasure>,
	side: Side | undefined,
	readings: readonly Reading[],
): Statement =>
	side && part !== 'player'
		? state('chart.side', { side, of: part, readings, unit })
		: state('chart.line', { of: key, readings, unit })
function ruleStatements(course: Course): Statement[] {
	const { cutOff } = course
	const { key, measure } = course.placed
	const { unit } = measure
	const widths = widthsOf(course)
	return [
		...(cutOff ? [state('chart.cut-off', { of: key, cutOff: cutOff.value, unit })] : []),
		...(widths.length > 0 ? [state('chart.measuring-error', { widths, unit })] : []),
	]
}
function tableOf({ title, unit, lines, dates, cutOff }: Course): Chart['table'] {
	const errors = lines.map(({ error }) => error?.half)
	return {
		head: ['Date', ...lines.map(({ side }) => `${side ? capital(side) : title} (${unit})`)],
		rows: [
			...dates.map((date) => [
				dateWords(date),
				...lines.map(({ readings }) => readingOn(readings, date)),
			]),
			...(cutOff ? [['Cut-off', ...lines.map(() => shown(cutOff.value))]] : []),
			...(errors.some((half) => half !== undefined)
				? [
						[
							'Smallest real change',
							...errors.map((half) => (half === undefined ? 'none' : shown(half))),
						],
					]
				: []),
		],
	}
}
function basisOf({ lines, placed, cutOff }: Course, protocol: Protocol): Basis[] {
	const keys = new Set(lines.flatMap(({ error }) => error?.key ?? []))
	const rules = [
		...(cutOff ? [protocol.basis(`cut-off, ${placed.measure.name}`, cutOff.key)] : []),
		...[...keys].map((key) => protocol.basis('smallest real change', key)),
	]
	return rules.length > 0 ? rules : [asRecorded]
}
