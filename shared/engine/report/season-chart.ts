/**
 * The season on the wall: a page for each half, weeks down and days across, the pair by letter and
 * pattern, the usual week in large print. No clinical words.
 */
import { addDays } from '../plain/days.ts'
import { present } from '../plain/present.ts'
import type { Speak } from '../words/speak.ts'
import { dateWords, weekdays } from '../words/words.ts'
import { heading, letterheadOf, nameOf, speakOf } from './base.ts'
import { type Block, entriesOf, type LwDocument } from './document.ts'
import { type ChartInput, type Lettering, letteringOf } from './season-chart/chart-input.ts'
import { pairKey, signs } from './season-chart/key.ts'
import { usualRow, weekRows } from './season-chart/rows.ts'
import { usualWeek } from './season-chart/usual.ts'
import { eventsOf, pagesOfWeeks, type WallWeek, weeksOf } from './season-chart/weeks.ts'

/** Room for the date of a Monday, points; more on the large sheet. */
const dateWidth = { A4: 54, Letter: 54, A3: 76 }

/** A page for half a season, for a wall; the name is left out where that is asked for. */
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
		print: 'wall',
		subject: subjectOf(input, weeks, t),
		blocks: pagesOfWeeks(weeks).flatMap((page, place) => [
			...(place === 0 ? [] : [heading(rangeOf(page, t), { level: 2, newPage: true })]),
			...pageBlocks(input, page, lettering, t),
		]),
		notes: [],
		footer: t('page.footerChart', { clinic: clinic.name, date: dateWords(on) }),
		createdAt: `${on}T12:00:00.000Z`,
	}
}
/** From the first Monday to the last Sunday. */
function rangeOf(weeks: readonly WallWeek[], t: Speak): string {
	const [first, last] = [weeks[0], weeks.at(-1)]
	if (!first || !last) return t('chart.noSession')
	return t('chart.range', {
		from: dateWords(first.monday),
		to: dateWords(addDays(last.monday, 6)),
	})
}
function subjectOf(
	{ visit, version = 1, showName = true, draft, on }: ChartInput,
	weeks: readonly WallWeek[],
	t: Speak,
): LwDocument['subject'] {
	const player: LwDocument['subject'] = showName ? [[t('subject.player'), nameOf(visit)]] : []
	return [
		...player,
		[t('subject.season'), rangeOf(weeks, t)],
		[
			t('subject.status'),
			draft ? t('status.draft') : t('chart.version', { version, date: dateWords(on) }),
		],
	]
}
/** The pairs, the usual week and the grid: all that a page needs to be read by itself. */
function pageBlocks(
	input: ChartInput,
	weeks: readonly WallWeek[],
	lettering: Lettering,
	t: Speak,
): Block[] {
	const usual = usualWeek(weeks)
	const drawn = { usual, events: eventsOf(input, lettering, t), lettering, t }
	const key = pairKey(input, lettering, t)
	const week = usualRow(drawn)
	const head = [t('chart.week'), ...weekdays]
	const widths = [dateWidth[input.paper], ...weekdays.map(() => '*' as const)]
	return [
		// a season in which no pair can be worn has none to name
		...(key.rows.length === 0 ? [] : [key]),
		...(usual.length === 0
			? []
			: [
					{
						kind: 'chart',
						caption: t('chart.usualCaption'),
						head: ['', ...weekdays],
						rows: [week],
						widths,
						size: 'large',
					} satisfies Block,
				]),
		{
			kind: 'chart',
			caption: `${t('chart.caption')}. ${signs(input, lettering, t)}`,
			head,
			rows: weekRows(weeks, drawn),
			widths,
			size: 'grid',
			above: key.rows.length + 2 * Math.max(1, ...week.map((cell) => entriesOf(cell).length)),
		},
	]
}
