/** Two visits of an invented player, and all their charts, for the tests on charts. */
import { assess } from '../../shared/engine/assess.ts'
import type { Chart } from '../../shared/engine/charts/chart.ts'
import { chartsOf } from '../../shared/engine/charts/charts.ts'
import type { Assessment } from '../../shared/engine/findings/assessment.ts'
import { type Visit, visitSchema } from '../../shared/engine/visit/visit.ts'

export const player = {
	givenName: 'Tui',
	familyName: 'Ashdown',
	birthDate: '2013-05-02',
	sex: 'male' as const,
}
export const make = (visitDate: string, more: Record<string, unknown> = {}): Visit =>
	visitSchema.parse({ format: 'lastwright-visit', version: 1, player, visitDate, ...more })
export const first = make('2026-07-15', {
	feet: {
		stance: 'standing',
		left: { heelToToeMm: [241, 241] },
		right: { heelToToeMm: [243, 244] },
	},
	ankles: { left: { lungeCm: [8.2, 8.4, 8.3] }, right: { lungeCm: 9.6 } },
	body: { statureCm: 154.9, massKg: 43.6 },
})
export const second = make('2027-01-20', {
	feet: {
		stance: 'standing',
		sockMm: 2,
		left: { heelToToeMm: [246, 247] },
		right: { heelToToeMm: [249, 248] },
	},
	ankles: { left: { lungeCm: 7.1, lungeDeg: 31 }, right: { lungeCm: 9.5, lungeDeg: 38 } },
	body: { statureCm: 158.4, massKg: 46.2 },
	footwear: [
		{ id: 'p1', name: 'match <boots> & "more"', sole: 'firm-ground', insideLengthMm: 258 },
		{ id: 'p2', sole: 'road' },
	],
})
const topics = ['sizing', 'ankle', 'growth'] as const
export const allCharts = (
	visit: Visit,
	earlier: readonly Visit[],
	assessment: Assessment = assess(visit, earlier),
): Chart[] => topics.flatMap((topic) => chartsOf(topic, visit, earlier, assessment))
export const drawnNumbers = (chart: Chart): number[] =>
	chart.panels.flatMap((panel) =>
		panel.series.flatMap((series) => series.points.map((point) => point.y)),
	)
export const shown = (value: number) => String(Math.round(value * 10) / 10)
