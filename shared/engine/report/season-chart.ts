/**
 * The season on the wall: one row an ISO week, one cell a session, the pair by letter and pattern.
 * No clinical words.
 */
import { present } from '../plain/present.ts'
import type { Speak } from '../words/speak.ts'
import { dateWords } from '../words/words.ts'
import { letterheadOf, nameOf, speakOf } from './base.ts'
import type { Block, LwDocument } from './document.ts'
import { type ChartInput, type Lettering, letteringOf } from './season-chart/chart-input.ts'
import { chartKey } from './season-chart/key.ts'
import { weekRows } from './season-chart/rows.ts'
import { eventsOf, type SeasonWeeks, weeksOf } from './season-chart/weeks.ts'

/** Sessions side by side in a row: what 14 pt leaves room for, found by measuring printed pages. */
const columnsOn = { A4: 5, A3: 8 }

/** One page or more for a wall, in large print; the name is left out where that is asked for. */
export function seasonChart(input: ChartInput): LwDocument {
	const { visit, clinic, paper, draft, on, showName = true } = input
	const t = speakOf(clinic)
	const weeks = weeksOf(input.plan)
	const lettering = letteringOf(input)
	return {
		title: t('chart.title'),
		kind: 'season-chart',
		language: 'en',
		draft,
		letterhead: letterheadOf(clinic),
		...present({ running: showName ? nameOf(visit) : undefined }),
		paper,
		landscape: true,
		print: 'wall',
		subject: subjectOf(input, weeks, t),
		blocks: [wall(input, weeks, lettering, t), ...chartKey(input, lettering, t)],
		notes: [],
		footer: t('page.footerChart', { clinic: clinic.name, date: dateWords(on) }),
		createdAt: `${on}T12:00:00.000Z`,
	}
}
function subjectOf(
	{ visit, version = 1, showName = true, draft, on }: ChartInput,
	{ first, last }: SeasonWeeks,
	t: Speak,
): LwDocument['subject'] {
	const player: LwDocument['subject'] = showName ? [[t('subject.player'), nameOf(visit)]] : []
	return [
		...player,
		[
			t('subject.season'),
			first && last ? `${dateWords(first)} to ${dateWords(last)}` : t('chart.noSession'),
		],
		[
			t('subject.status'),
			draft ? t('status.draft') : t('chart.version', { version, date: dateWords(on) }),
		],
	]
}
function wall(input: ChartInput, weeks: SeasonWeeks, lettering: Lettering, t: Speak): Block {
	const most = Math.max(1, ...[...weeks.sessions.values()].map((sessions) => sessions.length))
	const columns = Math.min(most, columnsOn[input.paper])
	return {
		kind: 'chart',
		caption: t('chart.caption'),
		head: [
			t('chart.week'),
			...Array.from({ length: columns }, (_, at) => t('chart.session', { number: at + 1 })),
			t('chart.notes'),
		],
		rows: weekRows(weeks, eventsOf(input, lettering, t), columns, lettering, t),
		widths: [104, ...Array.from({ length: columns }, () => '*' as const), 120],
	}
}
