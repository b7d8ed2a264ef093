/**
 * A chart as a player reads it: the same readings, with every word in plain language. What it says
 * are the chart's own statements in the player's words; what it shows is named here. A chart that is
 * not named here does not reach a player.
 */
import type { Chart, Panel } from '../charts/chart.ts'
import type { Speak } from '../words/speak.ts'
import type { StatementCode } from '../words/statement.ts'
import { shown } from '../words/words.ts'
import { type Reader, toldBy } from './reader.ts'

interface PlainNames {
	/** What the axis of the readings is called. */
	axis: (t: Speak) => string
	panel: (panel: Panel, t: Speak) => Panel
}
const renamed = <Named extends { name: string }>(list: readonly Named[], name: string): Named[] =>
	list.map((one) => ({ ...one, name }))

const ankle = (axis: PlainNames['axis']): PlainNames => ({
	axis,
	panel: (panel, t) => ({
		...panel,
		bands: renamed(panel.bands, t('player.chartByChance')),
		marks: panel.marks.map(({ y }) => ({ words: [t('player.chartOurLine'), shown(y)], y })),
	}),
})
const byChart: Readonly<Record<string, PlainNames>> = {
	'course.lungeCm': ankle((t) => t('player.lunge')),
	'course.lungeDeg': ankle((t) => t('player.lungeAngle')),
	'foot-length': {
		axis: (t) => t('player.heelToToe'),
		panel: (panel, t) => ({
			...panel,
			bands: renamed(panel.bands, t('player.chartToCome')),
		}),
	},
	'growth-stature': {
		axis: (t) => t('player.height'),
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
/** Numbers that the picture shows, or that stand beside it: no caption repeats them. */
const shownNumbers: ReadonlySet<string> = new Set<StatementCode>([
	'chart.line',
	'chart.side',
	'chart.stature',
	'chart.foot-forecast',
])

/** @returns undefined where the chart has no words for players */
export function plainChart(
	chart: Chart,
	reader: Reader,
	t: Speak,
): { chart: Chart; caption: string } | undefined {
	const names = Object.hasOwn(byChart, chart.id) ? byChart[chart.id] : undefined
	if (!names) return undefined
	const said = (chart.told ?? []).flatMap((statement) => {
		const says = toldBy(reader, statement)
		return says === undefined ? [] : [{ code: statement.code, says }]
	})
	const caption = said
		.filter(({ code }) => !shownNumbers.has(code))
		.map(({ says }) => says)
		.join(' ')
	return {
		caption,
		chart: {
			...chart,
			title: caption,
			y: { ...chart.y, title: names.axis(t) },
			panels: chart.panels.map((panel) => names.panel(panel, t)),
			alternative: said.map(({ says }) => says).join(' '),
		},
	}
}
