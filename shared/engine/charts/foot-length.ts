import type { Assessment } from '../findings/assessment.ts'
import { stanceOf } from '../findings/change.ts'
import type { Basis } from '../protocol/basis.ts'
import { openProtocol, type Protocol, type ThresholdKey } from '../protocol/protocol.ts'
import { ageYears, dayNumber } from '../visit/age.ts'
import { bothSides, meanOf, perSide } from '../visit/sides.ts'
import type { Pair, Visit } from '../visit/visit.ts'
import { dateWords } from '../words/words.ts'
import type { Band, Chart, Mark } from './chart.ts'
import { inOrder, judgedBy, number, readings, short } from './course.ts'

/**
 * Pairs whose line lies further than this from the readings would flatten the picture (mm); they
 * stand in the table.
 */
const nearMm = 20
const mostPairs = 4
const roomKeys: { [K in 'boot' | 'trainer']: { young: ThresholdKey; adult: ThresholdKey } } = {
	boot: { young: 'footwear.youthReplaceMm', adult: 'footwear.adultTightMm' },
	trainer: { young: 'footwear.youthTrainerReplaceMm', adult: 'footwear.adultTrainerTightMm' },
}
const roomKey = (pair: Pair, adult: boolean): ThresholdKey =>
	roomKeys[pair.sole === 'road' || pair.sole === 'trail' ? 'trainer' : 'boot'][
		adult ? 'adult' : 'young'
	]

/**
 * Foot length in mm per side over the visits, the forecast of the longer foot, and the length at
 * which toe room runs out
 * in each pair of known inside length: inside length less sock less the least toe room of the
 * protocol.
 * @param earlier any order; visits measured in another stance than this one are left out, since
 * they are not comparable
 * @returns undefined where no foot was measured, or one visit has neither forecast nor a pair to
 * hold it against
 */
export function footLengthChart(
	visit: Visit,
	earlier: readonly Visit[],
	assessment: Assessment,
	protocol: Protocol = openProtocol(),
): Chart | undefined {
	const visits = inOrder(visit, earlier)
	const lengthOf = (one: Visit, side: 'left' | 'right') =>
		one === visit
			? assessment.sizing[side].lengthMm
			: stanceOf(one) !== stanceOf(visit)
				? undefined
				: meanOf(one.feet?.[side]?.heelToToeMm)
	const course = perSide((side) =>
		visits.flatMap((one) => {
			const value = lengthOf(one, side)
			return value === undefined ? [] : [{ date: one.visitDate, value }]
		}),
	)
	const all = [...course.left, ...course.right]
	if (all.length === 0) return undefined
	const days = all.map((one) => dayNumber(one.date))
	const now = Math.max(...bothSides.flatMap((side) => lengthOf(visit, side) ?? []))
	const forecast = Number.isFinite(now) ? (assessment.growth?.footForecast ?? []) : []
	const bands: Band[] =
		forecast.length === 0
			? []
			: [
					{
						name: 'longer foot, forecast',
						points: [
							{ x: dayNumber(visit.visitDate), low: now, high: now, middle: now },
							...forecast.map(({ date, lengthMm, lowMm, highMm }) => ({
								x: dayNumber(date),
								low: lowMm,
								high: highMm,
								middle: lengthMm,
							})),
						],
					},
				]
	const lengths = [
		...all.map((one) => one.value),
		...forecast.flatMap((one) => [one.lowMm, one.highMm]),
	]
	const least = Math.min(...lengths),
		most = Math.max(...lengths)
	const adult =
		ageYears(visit.player.birthDate, visit.visitDate) >= protocol.value('footwear.adultFromYears')
	const limits = !judgedBy(assessment, protocol)
		? []
		: (visit.footwear ?? []).flatMap((pair) => {
				if (pair.insideLengthMm === undefined) return []
				const key = roomKey(pair, adult)
				return [
					{
						id: pair.id,
						name: pair.name ?? pair.id,
						key,
						y: pair.insideLengthMm - (visit.feet?.sockMm ?? 0) - protocol.value(key),
					},
				]
			})
	const away = (y: number) => Math.max(0, least - y, y - most)
	const marks: Mark[] = limits
		.filter(({ y }) => away(y) <= nearMm)
		.toSorted((a, b) => away(a.y) - away(b.y))
		.slice(0, mostPairs)
		.map(({ name, y }) => ({ words: [short(name), `room ends ${number(y)}`], y }))
	// one visit says nothing over time unless there is a line to hold it against
	if (new Set(days).size < 2 && forecast.length === 0 && marks.length === 0) return undefined
	const first = Math.min(...days),
		last = Math.max(...days, ...forecast.map((one) => dayNumber(one.date)))
	const pad = Math.max(20, (last - first) * 0.04)
	const dates = [...new Set(all.map((one) => one.date))].toSorted()
	const end = forecast.at(-1)
	const forecastWords = end
		? `By ${dateWords(end.date)} the longer foot may measure ${number(end.lowMm)} to ` +
			`${number(end.highMm)} mm, ${number(end.lengthMm)} mm at the mean rate.`
		: ''
	const whenOf = (id: string): string => {
		const found = assessment.growth?.toeRoom?.find((one) => one.id === id)
		return found?.state === 'already-short'
			? ', already reached'
			: found?.runsOutOn
				? `, about ${dateWords(found.runsOutOn)}`
				: ''
	}
	const roomWords = limits.map(
		({ id, name, y }) => `Toe room in ${name} runs out at ${number(y)} mm${whenOf(id)}.`,
	)
	const basis: Basis[] = [
		...(forecast.length > 0
			? [
					protocol.basis(
						'foot forecast',
						visit.player.sex === 'male' ? 'growth.footRateBoysMm' : 'growth.footRateGirlsMm',
					),
					protocol.basis('width of the forecast band', 'growth.footHighFactor'),
				]
			: []),
		...[...new Set(limits.map((limit) => limit.key))].map((key) =>
			protocol.basis('least toe room', key),
		),
	]
	return {
		id: 'foot-length',
		title: 'Foot length over time',
		x: { title: '', unit: '', kind: 'date', min: first - pad, max: last + pad },
		y: { title: 'Foot length', unit: 'mm', kind: 'number', leastSpan: 10 },
		panels: [
			{
				series: bothSides
					.map((side) => ({
						name: side,
						marker: side === 'left' ? ('circle' as const) : ('square' as const),
						dashed: side === 'right',
						points: course[side].map(({ date, value }) => ({ x: dayNumber(date), y: value })),
					}))
					.filter((one) => one.points.length > 0),
				bands,
				curves: [],
				marks,
			},
		],
		visits: dates.length,
		forecast: forecast.length > 0,
		alternative: [
			`Foot length over time${stanceOf(visit) === 'seated' ? ', measured seated' : ''}. Left ` +
				`foot: ${readings(course.left, 'mm')}.`,
			`Right foot: ${readings(course.right, 'mm')}.`,
			forecastWords,
			...roomWords,
		]
			.filter(Boolean)
			.join(' '),
		summary: [
			`Left foot: ${readings(course.left.slice(-1), 'mm')}. Right foot: ` +
				`${readings(course.right.slice(-1), 'mm')}.`,
			forecastWords,
			...roomWords.slice(0, 2),
		]
			.filter(Boolean)
			.join(' '),
		table: {
			head: ['Date', 'Left (mm)', 'Right (mm)', 'Longer foot, forecast (mm)'].slice(
				0,
				forecast.length > 0 ? 4 : 3,
			),
			rows: [
				...dates.map((date) => [
					dateWords(date),
					...bothSides.map((side) => cell(course[side].find((one) => one.date === date)?.value)),
					...(forecast.length > 0 ? [''] : []),
				]),
				...forecast.map(({ date, lengthMm, lowMm, highMm }) => [
					dateWords(date),
					'',
					'',
					`${number(lengthMm)} (${number(lowMm)} to ${number(highMm)})`,
				]),
				...limits.map(({ name, y }) => [
					`${name}: room runs out`,
					number(y),
					number(y),
					...(forecast.length > 0 ? [number(y)] : []),
				]),
			],
		},
		basis,
	}
}
const cell = (value: number | undefined): string =>
	value === undefined ? 'not measured' : number(value)
