/**
 * A chart as a player reads it: the same readings, with every word in plain language. A chart
 * without plain words does not reach a player.
 */
import type { Chart, Panel, Series } from '../charts/chart.ts'
import { dateOfDay } from '../plain/days.ts'
import type { Speak } from '../words/speak.ts'
import { capital, dateWords, shown } from '../words/words.ts'

interface PlainWords {
	caption: (chart: Chart, t: Speak) => (string | false)[]
	/** What the axis of the readings is called. */
	axis: (t: Speak) => string
	panel: (panel: Panel, t: Speak) => Panel
}
const some = (chart: Chart, part: 'bands' | 'marks'): boolean =>
	chart.panels.some((panel) => panel[part].length > 0)
const renamed = <Named extends { name: string }>(list: readonly Named[], name: string): Named[] =>
	list.map((one) => ({ ...one, name }))

const ankle = (axis: PlainWords['axis']): PlainWords => ({
	axis,
	caption: (chart, t) => [
		t('player.chartAnkle'),
		some(chart, 'marks') && t('player.chartAnkleLine'),
		some(chart, 'bands') && t('player.chartAnkleShade'),
	],
	panel: (panel, t) => ({
		...panel,
		bands: renamed(panel.bands, t('player.chartByChance')),
		marks: panel.marks.map(({ y }) => ({ words: [t('player.chartOurLine'), shown(y)], y })),
	}),
})
const byChart: Readonly<Record<string, PlainWords>> = {
	'course.lungeCm': ankle((t) => t('player.lunge')),
	'course.lungeDeg': ankle((t) => t('player.lungeAngle')),
	'foot-length': {
		axis: (t) => t('player.heelToToe'),
		caption: (chart, t) => [
			t('player.chartFeet'),
			some(chart, 'bands') && t('player.chartFeetShade'),
			some(chart, 'marks') && t('player.chartFeetLine'),
		],
		panel: (panel, t) => ({
			...panel,
			bands: renamed(panel.bands, t('player.chartToCome')),
		}),
	},
	'growth-stature': {
		axis: (t) => t('player.height'),
		caption: (_chart, t) => [t('player.chartHeight'), t('player.chartHeightLines')],
		panel: (panel, t) => ({
			...panel,
			series: renamed(panel.series, t('player.chartYou')),
			curves: panel.curves.map((curve) => ({
				...curve,
				name: curve.strong ? t('player.chartMiddle') : '',
			})),
		}),
	},
}
/** '246 mm on 20 January 2027; 250 mm on 3 May 2027', or at an age. */
const readingsOf = ({ points }: Series, { x, y }: Chart, t: Speak): string =>
	points
		.map((point) => {
			const value = `${shown(point.y)} ${y.unit}`
			return x.kind === 'date'
				? t('player.chartOn', { value, date: dateWords(dateOfDay(point.x)) })
				: t('player.chartAtAge', { value, years: shown(point.x) })
		})
		.join('; ')

/** @returns undefined where the chart has no words for players */
export function plainChart(chart: Chart, t: Speak): { chart: Chart; caption: string } | undefined {
	const words = Object.hasOwn(byChart, chart.id) ? byChart[chart.id] : undefined
	if (!words) return undefined
	const caption = words
		.caption(chart, t)
		.filter((sentence) => sentence !== false)
		.join(' ')
	const panels = chart.panels.map((panel) => words.panel(panel, t))
	const readings = panels.flatMap(({ series }) =>
		series.map((one) => `${capital(one.name)}: ${readingsOf(one, chart, t)}.`),
	)
	return {
		caption,
		chart: {
			...chart,
			title: caption,
			y: { ...chart.y, title: words.axis(t) },
			panels,
			alternative: [caption, ...readings].join(' '),
		},
	}
}
