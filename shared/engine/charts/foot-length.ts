/** Foot length over the visits, with what is to come and where the pairs run out of room. */

import { isAdult } from '../facts/age.ts'
import { leastRoomKey } from '../facts/toe-room.ts'
import type { GrowthResult, KeptAssessment, PerSide } from '../findings/assessment.ts'
import { stanceOf } from '../findings/change.ts'
import { numberIn } from '../findings/measure-change.ts'
import { dayNumber } from '../plain/days.ts'
import { present } from '../plain/present.ts'
import type { Basis } from '../protocol/basis.ts'
import { openProtocol, type Protocol, type ThresholdKey } from '../protocol/protocol.ts'
import { bothSides, meanOf, perSide } from '../visit/sides.ts'
import type { Side, Visit } from '../visit/visit.ts'
import { type Statement, state } from '../words/statement.ts'
import { dateWords, shown } from '../words/words.ts'
import { type Band, type Chart, type Mark, toldBy } from './chart.ts'
import {
	datesOf,
	inOrder,
	judgedBy,
	leastSpanOf,
	type Reading,
	readingOn,
	sideSeries,
} from './course.ts'

/**
 * Pairs whose line lies further than this from the readings would flatten the picture (mm); they
 * stand in the table.
 */
const nearMm = 20
const mostPairs = 4
/** Letters of a pair's name in the margin: more would take the room of the picture. */
const mostLetters = 18
type Forecast = NonNullable<GrowthResult['footForecast']>
/** The foot length (mm) at which a pair has no toe room left, by the threshold of that pair. */
interface RoomLimit {
	id: string
	name: string
	key: ThresholdKey
	lengthMm: number
}
const { measure: length } = numberIn('feet', 'heelToToeMm')
interface FootCourse {
	visit: Visit
	course: PerSide<Reading[]>
	dates: string[]
	/** Of the longer foot; empty where there is none. */
	forecast: Forecast
	limits: RoomLimit[]
}

/**
 * Foot length in mm per side over the visits, the forecast of the longer foot, and the length at
 * which toe room runs out in each pair of known inside length: inside length less sock less the
 * least toe room of the protocol.
 * @param earlier any order; visits measured in another stance than this one are left out, since
 * they are not comparable
 * @returns undefined where no foot was measured, or one visit has neither forecast nor a pair to
 * hold it against
 */
export function footLengthChart(
	visit: Visit,
	earlier: readonly Visit[],
	assessment: KeptAssessment,
	protocol: Protocol = openProtocol(),
): Chart | undefined {
	const course = courseOf(visit, earlier, assessment)
	const dates = datesOf(course.left, course.right)
	if (dates.length === 0) return undefined
	const longerMm = Math.max(...bothSides.flatMap((side) => assessment.sizing[side].lengthMm ?? []))
	const forecast = Number.isFinite(longerMm) ? (assessment.growth?.footForecast ?? []) : []
	const limits = judgedBy(assessment, protocol) ? roomLimits(visit, protocol) : []
	const feet: FootCourse = { visit, course, dates, forecast, limits }
	const marks = marksOf(feet)
	// one visit says nothing over time unless there is a line to hold it against
	if (dates.length < 2 && forecast.length === 0 && marks.length === 0) return undefined
	const bands = forecast.length === 0 ? [] : [forecastBand(visit, longerMm, forecast)]
	return {
		id: 'foot-length',
		title: 'Foot length over time',
		x: { title: '', unit: '', kind: 'date', ...spanOf(feet) },
		y: { title: 'Foot length', unit: 'mm', kind: 'number', leastSpan: leastSpanOf(length) },
		panels: [
			{
				series: bothSides
					.map((side) => sideSeries(side, course[side]))
					.filter((series) => series.points.length > 0),
				bands,
				curves: [],
				marks,
			},
		],
		visits: dates.length,
		forecast: forecast.length > 0,
		...wordsOf(feet, assessment),
		table: tableOf(feet),
		basis: basisOf(feet, protocol),
	}
}

const courseOf = (
	visit: Visit,
	earlier: readonly Visit[],
	assessment: KeptAssessment,
): PerSide<Reading[]> =>
	perSide((side) =>
		inOrder(visit, earlier).flatMap((measured) => {
			const value =
				measured === visit
					? assessment.sizing[side].lengthMm
					: comparableLength(measured, visit, side)
			return value === undefined ? [] : [{ date: measured.visitDate, value }]
		}),
	)
const comparableLength = (earlier: Visit, visit: Visit, side: Side): number | undefined =>
	stanceOf(earlier) === stanceOf(visit) ? meanOf(earlier.feet?.[side]?.heelToToeMm) : undefined

function roomLimits(visit: Visit, protocol: Protocol): RoomLimit[] {
	const adult = isAdult(visit, protocol)
	return (visit.footwear ?? []).flatMap((pair) => {
		if (pair.insideLengthMm === undefined) return []
		const key = leastRoomKey(pair, adult)
		return [
			{
				id: pair.id,
				name: pair.name ?? pair.id,
				key,
				lengthMm: pair.insideLengthMm - (visit.feet?.sockMm ?? 0) - protocol.value(key),
			},
		]
	})
}
const readingsOf = ({ course }: FootCourse): Reading[] => [...course.left, ...course.right]

/** The limits that lie near enough to be drawn, the nearest first. */
function marksOf(feet: FootCourse): Mark[] {
	const lengths = [
		...readingsOf(feet).map((reading) => reading.value),
		...feet.forecast.flatMap((step) => [step.lowMm, step.highMm]),
	]
	const least = Math.min(...lengths)
	const most = Math.max(...lengths)
	const away = ({ lengthMm }: RoomLimit) => Math.max(0, least - lengthMm, lengthMm - most)
	return feet.limits
		.filter((limit) => away(limit) <= nearMm)
		.toSorted((a, b) => away(a) - away(b))
		.slice(0, mostPairs)
		.map(({ name, lengthMm }) => ({
			words: [shortened(name), `room ends ${shown(lengthMm)}`],
			y: lengthMm,
		}))
}
const shortened = (name: string): string =>
	name.length <= mostLetters ? name : `${name.slice(0, mostLetters - 3).trimEnd()}...`

const forecastBand = (visit: Visit, longerMm: number, forecast: Forecast): Band => ({
	name: 'longer foot, forecast',
	points: [
		{ x: dayNumber(visit.visitDate), low: longerMm, high: longerMm, middle: longerMm },
		...forecast.map(({ date, lengthMm, lowMm, highMm }) => ({
			x: dayNumber(date),
			low: lowMm,
			high: highMm,
			middle: lengthMm,
		})),
	],
})
function spanOf({ dates, forecast }: FootCourse): { min: number; max: number } {
	const days = dates.map(dayNumber)
	const first = Math.min(...days)
	const last = Math.max(...days, ...forecast.map((step) => dayNumber(step.date)))
	const margin = Math.max(20, (last - first) * 0.04)
	return { min: first - margin, max: last + margin }
}

function wordsOf(feet: FootCourse, assessment: KeptAssessment): ReturnType<typeof toldBy> {
	const { visit, course, limits } = feet
	const sides = (of: (readings: readonly Reading[]) => readonly Reading[]) =>
		bothSides.map((side) =>
			state('chart.side', { side, of: 'foot', readings: of(course[side]), unit: 'mm' }),
		)
	const forecast = forecastStatement(feet)
	const rooms = limits.map(({ id, name: pair, lengthMm }) =>
		state('chart.room-ends', { pair, lengthMm, ...whenRoomEnds(id, assessment) }),
	)
	const seated = stanceOf(visit) === 'seated'
	return toldBy(
		[
			state('chart.course', { of: 'foot', seated }),
			...sides((readings) => readings),
			...forecast,
			...rooms,
		],
		[...sides((readings) => readings.slice(-1)), ...forecast, ...rooms.slice(0, 2)],
	)
}
function forecastStatement({ forecast }: FootCourse): Statement[] {
	const end = forecast.at(-1)
	if (!end) return []
	const { date: by, lowMm, highMm, lengthMm } = end
	return [state('chart.foot-forecast', { by, lowMm, highMm, lengthMm })]
}
function whenRoomEnds(id: string, assessment: KeptAssessment): { reached: boolean; on?: string } {
	const room = assessment.growth?.toeRoom?.find((pair) => pair.id === id)
	return present({ reached: room?.state === 'already-short', on: room?.runsOutOn })
}

/** The column of the forecast only where there is one. */
function tableOf({ course, dates, forecast, limits }: FootCourse): Chart['table'] {
	const foreseen = forecast.length > 0
	const sides = ['Date', 'Left (mm)', 'Right (mm)']
	return {
		head: foreseen ? [...sides, 'Longer foot, forecast (mm)'] : sides,
		rows: [
			...dates.map((date) => [
				dateWords(date),
				...bothSides.map((side) => readingOn(course[side], date)),
				...(foreseen ? [''] : []),
			]),
			...forecast.map(({ date, lengthMm, lowMm, highMm }) => [
				dateWords(date),
				'',
				'',
				`${shown(lengthMm)} (${shown(lowMm)} to ${shown(highMm)})`,
			]),
			...limits.map(({ name, lengthMm }) => [
				`${name}: room runs out`,
				shown(lengthMm),
				shown(lengthMm),
				...(foreseen ? [shown(lengthMm)] : []),
			]),
		],
	}
}
function basisOf({ visit, forecast, limits }: FootCourse, protocol: Protocol): Basis[] {
	const rate: ThresholdKey =
		visit.player.sex === 'male' ? 'growth.footRateBoysMm' : 'growth.footRateGirlsMm'
	const ofForecast = [
		protocol.basis('foot forecast', rate),
		protocol.basis('width of the forecast band', 'growth.footHighFactor'),
	]
	const keys = new Set(limits.map((limit) => limit.key))
	return [
		...(forecast.length > 0 ? ofForecast : []),
		...[...keys].map((key) => protocol.basis('least toe room', key)),
	]
}
