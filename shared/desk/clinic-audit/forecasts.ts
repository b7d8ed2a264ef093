/** What was forecast at a visit, beside what came: length of the foot, outgrown by, wear. */
import { longerFootMm } from '../../engine/growth/velocity.ts'
import { daysBetween } from '../../engine/plain/days.ts'
import type { Pair } from '../../engine/visit/visit.ts'
import {
	type Asking,
	type Course,
	daysAfter,
	type Look,
	looksOf,
	type Mark,
	measuredFootMm,
	type Seen,
} from './seen.ts'

/** How a forecast ended; undefined where nothing tells yet. */
interface Came {
	cell: 'inside' | 'below' | 'above'
	values?: Record<string, number>
}
type Forecast = (look: Look, asking: Asking) => readonly (Came | undefined)[]

interface Point {
	date: string
	lengthMm: number
	lowMm: number
	highMm: number
}
/** Between two points, by days; undefined past the last. */
function pointOn(points: readonly Point[], on: string): Omit<Point, 'date'> | undefined {
	const next = points.findIndex(({ date }) => date >= on)
	const [before, after] = [points[next - 1], points[next]]
	if (!after) return undefined
	if (!before || after.date === on) return after
	const share = daysBetween(before.date, on) / daysBetween(before.date, after.date)
	const between = (key: keyof Omit<Point, 'date'>) =>
		before[key] + (after[key] - before[key]) * share
	return { lengthMm: between('lengthMm'), lowMm: between('lowMm'), highMm: between('highMm') }
}
/** Measures to a hundredth: beyond it a band would be missed by how a machine counts. */
const centi = (value: number): number => Math.round(value * 100) / 100
const placeOf = (value: number, low: number, high: number): Came['cell'] => {
	if (centi(value) < centi(low)) return 'below'
	return centi(value) > centi(high) ? 'above' : 'inside'
}
/** The next measured length after long enough: shorter spans are mostly measuring error. */
const footLength: Forecast = ({ then, later }, { protocol }) => {
	const forecast = then.assessment.growth?.footForecast
	const nowMm = longerFootMm(then.visit)
	if (!forecast || nowMm === undefined) return []
	const today = { date: then.visit.visitDate, lengthMm: nowMm, lowMm: nowMm, highMm: nowMm }
	const leastDays = protocol.value('growth.footIntervalMinDays')
	const next = later.find(
		(one) => daysAfter(then, one) >= leastDays && measuredFootMm(one) !== undefined,
	)
	const cameMm = next && measuredFootMm(next)
	const expected = next && pointOn([today, ...forecast], next.visit.visitDate)
	if (cameMm === undefined || !expected) return [undefined]
	const expectedMm = expected.lengthMm - nowMm
	if (expectedMm <= 0) return [undefined]
	return [
		{
			cell: placeOf(cameMm, expected.lowMm, expected.highMm),
			values: {
				error: centi(cameMm - expected.lengthMm),
				ratio: (cameMm - nowMm) / expectedMm,
				expected: centi(expectedMm),
				grown: centi(cameMm - nowMm),
			},
		},
	]
}
/** Room of a pair at a later visit: its inside length less the length to fit and the sock then. */
function roomLater(insideMm: number, seen: Seen): number | undefined {
	const { assessment, visit } = seen
	const measuredMm = measuredFootMm(seen)
	const fitMm = measuredMm && (assessment.sizing.fitLengthMm ?? measuredMm)
	return fitMm === undefined ? undefined : centi(insideMm - fitMm - (visit.feet?.sockMm ?? 0))
}
/**
 * Short before the band began: below; short within it: inside; still with room past its end: above.
 * A pair that lasts by the forecast is inside while it has room past the last day that is forecast.
 */
const outgrown: Forecast = ({ then, later }) =>
	(then.assessment.growth?.toeRoom ?? []).flatMap((forecast): (Came | undefined)[] => {
		const { id, leastMm, state, earliest, latest } = forecast
		const insideMm = then.visit.footwear?.find((pair) => pair.id === id)?.insideLengthMm
		if (insideMm === undefined || state === 'already-short' || earliest === undefined) return []
		const seen = later.flatMap((one) => {
			const roomMm = roomLater(insideMm, one)
			return roomMm === undefined ? [] : [{ on: one.visit.visitDate, roomMm }]
		})
		const at = seen.findIndex(({ roomMm }) => roomMm < leastMm)
		const short = seen[at]
		// it ran out somewhere between two visits: what overlaps the band is inside
		const lastWithRoom = at > 0 ? seen[at - 1]?.on : at < 0 ? seen.at(-1)?.on : undefined
		if (latest !== undefined && lastWithRoom !== undefined && lastWithRoom > latest)
			return [{ cell: 'above' }]
		if (!short) return [undefined]
		return [{ cell: short.on < earliest ? 'below' : 'inside' }]
	})

const endsAPair: readonly string[] = [
	'studs-worn',
	'sole-separated',
	'counter-collapsed',
	'insole-board-split',
	'upper-cracked',
]
const isWornOut = ({ damage = [] }: Pair): boolean => damage.some((one) => endsAPair.includes(one))
/**
 * Hours of a pair when damage ended it, or so far: against the life recorded for it, or the span of the
 * protocol. Worn out before the span: below; in it: inside; sound beyond it: above.
 */
const wear: Forecast = ({ then, later }, { protocol }) =>
	(then.visit.footwear ?? []).flatMap((pair): (Came | undefined)[] => {
		if (pair.minutesWorn === undefined || pair.plannedAs !== undefined || isWornOut(pair)) return []
		const life = pair.lifeMinutes
		const from = life ?? protocol.value('footwear.lifeCheckHours') * 60
		const to = life ?? protocol.value('footwear.lifeReplaceHours') * 60
		if (pair.minutesWorn >= from) return []
		const since = later.flatMap(
			({ visit }) => visit.footwear?.find(({ id }) => id === pair.id) ?? [],
		)
		const ended = since.find((one) => isWornOut(one) && one.minutesWorn !== undefined)
		const most = Math.max(
			...since.filter((one) => !isWornOut(one)).map((one) => one.minutesWorn ?? 0),
			0,
		)
		if (most > to) return [{ cell: 'above' }]
		const endedAt = ended?.minutesWorn
		if (endedAt === undefined) return [undefined]
		return [{ cell: placeOf(endedAt, from, to) }]
	})
export const forecasts = { 'foot-length': footLength, outgrown, wear } as const
export type ForecastKind = keyof typeof forecasts

/** By what was forecast: the first of the period that something came of, else that nothing did. */
export function forecastMarks(course: Course, asking: Asking): Mark[] {
	const looks = looksOf(course, asking)
	return Object.entries(forecasts).flatMap(([row, forecast]): Mark[] => {
		const made = looks.flatMap((look) => forecast(look, asking))
		if (made.length === 0) return []
		const came = made.find((one) => one !== undefined)
		if (!came) return [{ table: 'forecast', row, cells: ['missing'] }]
		return [
			{ table: 'forecast', row, cells: [came.cell], ...(came.values && { values: came.values }) },
		]
	})
}
