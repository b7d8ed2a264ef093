/** Weight-bearing range of the ankles over the visits. */
import type { Assessment, PerSide } from '../findings/assessment.ts'
import { examinersOf } from '../findings/change.ts'
import { dayNumber } from '../plain/days.ts'
import type { Basis } from '../protocol/basis.ts'
import { openProtocol, type Protocol, type ThresholdKey } from '../protocol/protocol.ts'
import { bothSides, meanOf, perSide } from '../visit/sides.ts'
import type { Side, Visit } from '../visit/visit.ts'
import { type Statement, state } from '../words/statement.ts'
import { capital, dateWords, shown } from '../words/words.ts'
import { type Chart, type Panel, toldBy } from './chart.ts'
import { datesOf, inOrder, judgedBy, type Reading, readingOn, sideSeries } from './course.ts'

type AnkleUnit = 'cm' | 'deg'
interface Measure {
	field: 'lungeCm' | 'lungeDeg'
	title: string
	unit: string
	/** As it stands beside the line of the cut-off. */
	shortUnit: string
	cutOff: ThresholdKey
	/** The smallest real change, by the same examiner and by another. */
	same: ThresholdKey
	other: ThresholdKey
	leastSpan: number
}
/** Centimetres and degrees are two charts: one is never turned into the other. */
const measures: Record<AnkleUnit, Measure> = {
	cm: {
		field: 'lungeCm',
		title: 'Knee to wall',
		unit: 'cm',
		shortUnit: 'cm',
		cutOff: 'ankle.restrictedCm',
		same: 'ankle.realCmSame',
		other: 'ankle.realCmOther',
		leastSpan: 6,
	},
	deg: {
		field: 'lungeDeg',
		title: 'Lunge angle',
		unit: 'degrees',
		shortUnit: 'deg',
		cutOff: 'ankle.restrictedDeg',
		same: 'ankle.realDegSame',
		other: 'ankle.realDegOther',
		leastSpan: 14,
	},
}
interface AnkleReading extends Reading {
	visit: Visit
}
/** The band of measuring error: half its width, round the reading it starts from. */
interface MeasuringError extends Reading {
	key: ThresholdKey
	half: number
}
interface AnkleCourse {
	measure: Measure
	course: PerSide<AnkleReading[]>
	/** At least one. */
	dates: string[]
	/** Undefined where another protocol judged: then neither cut-off nor error is shown. */
	cutOff: number | undefined
	errors: PerSide<MeasuringError | undefined>
	span: { min: number; max: number }
}

/**
 * Weight-bearing range of each ankle over the visits, with the cut-off in use and the band of
 * measuring error: the latest earlier reading (this one, at a first visit), give or take the
 * smallest real change.
 * @param earlier any order; @returns undefined where neither ankle was measured in this unit
 */
export function ankleChart(
	unit: AnkleUnit,
	visit: Visit,
	earlier: readonly Visit[],
	assessment: Assessment,
	protocol: Protocol = openProtocol(),
): Chart | undefined {
	const measure = measures[unit]
	const visits = inOrder(visit, earlier)
	const course = perSide((side) => readingsOf(visits, side, measure))
	const dates = datesOf(course)
	if (dates.length === 0) return undefined
	const judged = judgedBy(assessment, protocol)
	const ankles: AnkleCourse = {
		measure,
		course,
		dates,
		cutOff: judged ? protocol.value(measure.cutOff) : undefined,
		errors: perSide((side) =>
			judged
				? measuringError(side, course[side], { measure, visit, assessment, protocol })
				: undefined,
		),
		span: spanOf(dates.map(dayNumber)),
	}
	const { title } = measure
	return {
		id: `ankle-${unit}`,
		title: `${title} over time`,
		x: { title: '', unit: '', kind: 'date', ...ankles.span },
		y: { title, unit: measure.unit, kind: 'number', leastSpan: measure.leastSpan },
		panels: bothSides.map((side) => panelOf(side, ankles)),
		visits: dates.length,
		forecast: false,
		...wordsOf(ankles),
		table: tableOf(ankles),
		basis: judged ? basisOf(ankles, protocol) : [],
	}
}

const readingsOf = (visits: readonly Visit[], side: Side, { field }: Measure): AnkleReading[] =>
	visits.flatMap((visit) => {
		const value = meanOf(visit.ankles?.[side]?.[field])
		return value === undefined ? [] : [{ visit, date: visit.visitDate, value }]
	})
/** A visit alone still gets room to the right, where the next reading will stand. */
function spanOf(days: readonly number[]): { min: number; max: number } {
	const first = Math.min(...days)
	const last = Math.max(...days)
	const margin = Math.max(15, (last - first) * 0.08)
	return { min: first - margin, max: last === first ? last + 120 : last + margin }
}

interface Judgement {
	measure: Measure
	visit: Visit
	assessment: Assessment
	protocol: Protocol
}
function measuringError(
	side: Side,
	readings: readonly AnkleReading[],
	judgement: Judgement,
): MeasuringError | undefined {
	const before = readings.findLast((reading) => reading.visit !== judgement.visit)
	const start = before ?? readings.at(-1)
	if (!start) return undefined
	const key = errorKey(side, before, judgement)
	return { date: start.date, value: start.value, key, half: judgement.protocol.value(key) }
}
/**
 * The change the room judged has the last word on its error; before there is one, the examiner
 * decides.
 */
function errorKey(
	side: Side,
	before: AnkleReading | undefined,
	{ measure: { field, same, other }, visit, assessment, protocol }: Judgement,
): ThresholdKey {
	const change = assessment.ankle.changes?.[side]?.[field]
	const judged = change && change.since === before?.date ? change.smallestReal : undefined
	if (judged !== undefined) return judged === protocol.value(other) ? other : same
	return before && examinersOf(visit, before.visit) === 'different' ? other : same
}
/** The half widths of the bands, each once. */
const widthsOf = ({ errors }: AnkleCourse): number[] => [
	...new Set(bothSides.flatMap((side) => errors[side]?.half ?? [])),
]
/** '1.5', or '1.5 or 2.4' where the sides differ. */
const widthWords = (ankles: AnkleCourse): string =>
	widthsOf(ankles)
		.map((width) => shown(width))
		.join(' or ')

function panelOf(side: Side, ankles: AnkleCourse): Panel {
	const { measure, course, cutOff } = ankles
	const measured = course[side].length > 0
	return {
		title: `${capital(side)} ankle${measured ? '' : ': not measured'}`,
		series: measured ? [sideSeries(side, course[side])] : [],
		bands: bandsOf(side, ankles),
		curves: [],
		marks:
			cutOff === undefined
				? []
				: [{ words: ['cut-off', `${shown(cutOff)} ${measure.shortUnit}`], y: cutOff }],
	}
}
function bandsOf(side: Side, ankles: AnkleCourse): Panel['bands'] {
	const { measure, dates, errors, span } = ankles
	const error = errors[side]
	if (!error) return []
	const low = error.value - error.half
	const high = error.value + error.half
	return [
		{
			name:
				`within measuring error (${widthWords(ankles)} ${measure.unit}) of ` +
				`${dates.length > 1 ? 'the visit before' : 'this visit'}`,
			points: [dayNumber(error.date), span.max].map((x) => ({ x, low, high })),
		},
	]
}
function wordsOf(ankles: AnkleCourse): ReturnType<typeof toldBy> {
	const { measure, course } = ankles
	const sides = (of: (readings: readonly Reading[]) => readonly Reading[]) =>
		bothSides.map((side) => {
			const readings = of(course[side].map(({ date, value }) => ({ date, value })))
			return state('chart.side', { side, of: 'ankle', readings, unit: measure.shortUnit })
		})
	const rules = ruleStatements(ankles)
	return toldBy(
		[
			state('chart.course', { of: measure.field, seated: false }),
			...sides((readings) => readings),
			...rules,
		],
		[...sides((readings) => readings.slice(-1)), ...rules],
	)
}
function ruleStatements(ankles: AnkleCourse): Statement[] {
	const { measure, cutOff } = ankles
	const unit = measure.shortUnit
	if (cutOff === undefined) return []
	return [
		state('chart.cut-off', { cutOff, unit }),
		state('chart.measuring-error', { widths: widthsOf(ankles), unit }),
	]
}
function tableOf({
	measure: { unit },
	course,
	dates,
	cutOff,
	errors,
}: AnkleCourse): Chart['table'] {
	const errorCells = bothSides.map((side) => {
		const error = errors[side]
		return error ? shown(error.half) : 'none'
	})
	return {
		head: ['Date', `Left (${unit})`, `Right (${unit})`],
		rows: [
			...dates.map((date) => [
				dateWords(date),
				...bothSides.map((side) => readingOn(course[side], date)),
			]),
			...(cutOff === undefined
				? []
				: [
						['Cut-off', shown(cutOff), shown(cutOff)],
						['Smallest real change', ...errorCells],
					]),
		],
	}
}
function basisOf({ measure, errors }: AnkleCourse, protocol: Protocol): Basis[] {
	const keys = new Set(bothSides.flatMap((side) => errors[side]?.key ?? []))
	return [
		protocol.basis('ankle range cut-off', measure.cutOff),
		...[...keys].map((key) => protocol.basis('smallest real change', key)),
	]
}
