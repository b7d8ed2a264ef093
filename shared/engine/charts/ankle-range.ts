import type { Assessment } from '../findings/assessment.ts'
import { examinersOf } from '../findings/change.ts'
import { openProtocol, type Protocol, type ThresholdKey } from '../protocol/protocol.ts'
import { dayNumber } from '../visit/age.ts'
import { bothSides, meanOf, perSide } from '../visit/sides.ts'
import type { Visit } from '../visit/visit.ts'
import { dateWords } from '../words/words.ts'
import type { Chart, Panel } from './chart.ts'
import { inOrder, judgedBy, number, readings } from './course.ts'

export type AnkleUnit = 'cm' | 'deg'
/** Centimetres and degrees are two charts: one is never turned into the other. */
const measures = {
	cm: {
		field: 'lungeCm',
		title: 'Knee to wall',
		unit: 'cm',
		cutOff: 'ankle.restrictedCm',
		same: 'ankle.realCmSame',
		other: 'ankle.realCmOther',
		leastSpan: 6,
	},
	deg: {
		field: 'lungeDeg',
		title: 'Lunge angle',
		unit: 'degrees',
		cutOff: 'ankle.restrictedDeg',
		same: 'ankle.realDegSame',
		other: 'ankle.realDegOther',
		leastSpan: 14,
	},
} as const satisfies {
	[K in AnkleUnit]: {
		field: 'lungeCm' | 'lungeDeg'
		title: string
		unit: string
		cutOff: ThresholdKey
		same: ThresholdKey
		other: ThresholdKey
		leastSpan: number
	}
}

/**
 * Weight-bearing range of each ankle over the visits, with the cut-off in use and the band of
 * measuring error:
 * the latest earlier reading (this one, at a first visit), give or take the smallest real change.
 * @param earlier any order; @returns undefined where neither ankle was measured in this unit
 */
export function ankleChart(
	unit: AnkleUnit,
	visit: Visit,
	earlier: readonly Visit[],
	assessment: Assessment,
	protocol: Protocol = openProtocol(),
): Chart | undefined {
	const { field, title, unit: words, cutOff, same, other, leastSpan } = measures[unit]
	const visits = inOrder(visit, earlier)
	const course = perSide((side) =>
		visits.flatMap((one) => {
			const value = meanOf(one.ankles?.[side]?.[field])
			return value === undefined ? [] : [{ one, date: one.visitDate, value }]
		}),
	)
	const dates = [
		...new Set(bothSides.flatMap((side) => course[side].map((each) => each.date))),
	].toSorted()
	if (dates.length === 0) return undefined
	const judged = judgedBy(assessment, protocol)
	const days = dates.map(dayNumber)
	const first = Math.min(...days),
		last = Math.max(...days)
	// one visit alone still gets room to the right, where the next reading will stand
	const max = last === first ? last + 120 : last + Math.max(15, (last - first) * 0.08),
		min = first - Math.max(15, (last - first) * 0.08)
	const cut = protocol.value(cutOff)
	const errors = perSide((side) => {
		const before = course[side].filter((each) => each.one !== visit).at(-1)
		const anchor = before ?? course[side].at(-1)
		if (!judged || !anchor) return undefined
		// the change the room judged has the last word on its error; before there is one, the examiner
		// decides
		const change = assessment.ankle.changes?.[side]?.[field]
		const limit = change && change.since === before?.date ? change.smallestReal : undefined
		const key: ThresholdKey =
			limit === undefined
				? before && examinersOf(visit, before.one) === 'different'
					? other
					: same
				: limit === protocol.value(other)
					? other
					: same
		return { ...anchor, key, half: protocol.value(key) }
	})
	const widths = [...new Set(bothSides.flatMap((side) => errors[side]?.half ?? []))]
	const name =
		`within measuring error (${widths.map((width) => number(width)).join(' or ')} ` +
		`${words}) of ${dates.length > 1 ? 'the visit before' : 'this visit'}`
	const panels: Panel[] = bothSides.map((side) => {
		const error = errors[side]
		return {
			title:
				`${side === 'left' ? 'Left' : 'Right'} ` +
				`ankle${course[side].length === 0 ? ': not measured' : ''}`,
			series:
				course[side].length === 0
					? []
					: [
							{
								name: side,
								marker: side === 'left' ? ('circle' as const) : ('square' as const),
								dashed: side === 'right',
								points: course[side].map(({ date, value }) => ({ x: dayNumber(date), y: value })),
							},
						],
			bands: error
				? [
						{
							name,
							points: [dayNumber(error.date), max].map((x) => ({
								x,
								low: error.value - error.half,
								high: error.value + error.half,
							})),
						},
					]
				: [],
			curves: [],
			marks: judged
				? [{ words: ['cut-off', `${number(cut)} ${words === 'cm' ? 'cm' : 'deg'}`], y: cut }]
				: [],
		}
	})
	const lines = bothSides.map(
		(side) => `${side === 'left' ? 'Left' : 'Right'} ankle: ${readings(course[side], words)}.`,
	)
	const rules = judged
		? [
				`Cut-off in use ${number(cut)} ${words}; below it the ankle counts as restricted.`,
				`A change of less than ${widths.map((width) => number(width)).join(' or ')} ${words} is ` +
					'within measuring error.',
			]
		: []
	const keys = [...new Set(bothSides.flatMap((side) => errors[side]?.key ?? []))]
	return {
		id: `ankle-${unit}`,
		title: `${title} over time`,
		x: { title: '', unit: '', kind: 'date', min, max },
		y: { title, unit: words, kind: 'number', leastSpan },
		panels,
		visits: dates.length,
		forecast: false,
		alternative: [`${title} over time.`, ...lines, ...rules].join(' '),
		summary: [
			...bothSides.map(
				(side) =>
					`${side === 'left' ? 'Left' : 'Right'} ankle: ${readings(course[side].slice(-1), words)}.`,
			),
			...rules,
		].join(' '),
		table: {
			head: ['Date', `Left (${words})`, `Right (${words})`],
			rows: [
				...dates.map((date) => [
					dateWords(date),
					...bothSides.map((side) => {
						const found = course[side].find((each) => each.date === date)
						return found ? number(found.value) : 'not measured'
					}),
				]),
				...(judged
					? [
							['Cut-off', number(cut), number(cut)],
							[
								'Smallest real change',
								...bothSides.map((side) => (errors[side] ? number(errors[side].half) : 'none')),
							],
						]
					: []),
			],
		},
		basis: judged
			? [
					protocol.basis('ankle range cut-off', cutOff),
					...keys.map((key) => protocol.basis('smallest real change', key)),
				]
			: [],
	}
}
