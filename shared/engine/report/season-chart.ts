/**
 * The season on the wall: one row an ISO week, one cell a session, the pair by letter and pattern.
 * No clinical words.
 */

import { dateOfDay, dayNumber } from '../visit/age.ts'
import type { Decisions } from '../visit/decisions.ts'
import { termWords } from '../visit/terms.ts'
import type { Visit } from '../visit/visit.ts'
import { weekdays } from '../words/en.table.ts'
import { dateWords, dayWords } from '../words/words.ts'
import { heading, letterheadOf, nameOf, speakOf } from './base.ts'
import type { Clinic } from './clinic.ts'
import { insertDecided, planLetters } from './club.ts'
import {
	type Block,
	type ChartCell,
	type LwDocument,
	type Pattern,
	patternOfLetter,
} from './document.ts'
import type { PlanView } from './inputs.ts'

/** 0 Monday to 6 Sunday; day 0, 1 January 1970, was a Thursday. */
const weekdayOf = (day: number): number => (day + 3) % 7
/** ISO 8601 week: its number and its Monday. The week belongs to the year of its Thursday. */
export function isoWeek(iso: string): { week: number; monday: string } {
	const monday = dayNumber(iso) - weekdayOf(dayNumber(iso))
	const year = dateOfDay(monday + 3).slice(0, 4)
	const fourth = dayNumber(`${year}-01-04`)
	return {
		week: Math.round((monday - (fourth - weekdayOf(fourth))) / 7) + 1,
		monday: dateOfDay(monday),
	}
}
export interface ChartInput {
	visit: Visit
	decisions: Decisions
	clinic: Clinic
	plan: PlanView
	paper: 'A4' | 'A3'
	version?: number
	/** Left out for the privacy of a changing room where false. */
	showName?: boolean
	draft: boolean
	on: string
}
/** Sessions side by side in a row: what 14 pt leaves room for, found by measuring printed pages. */
const columnsOn = { A4: 5, A3: 8 }

export function seasonChart({
	visit,
	decisions,
	clinic,
	plan,
	paper,
	version = 1,
	showName = true,
	draft,
	on,
}: ChartInput): LwDocument {
	const t = speakOf(clinic)
	const own = planLetters(visit, plan)
	const letterOf = (id: string): string =>
		plan.pairs.find((pair) => pair.id === id)?.letter ?? own.get(id) ?? id
	const patternOf = new Map(
		plan.pairs.map(({ id }): [string, Pattern] => [id, patternOfLetter(letterOf(id))]),
	)
	const insert = insertDecided(decisions) ? '+' : ''
	const events = new Map<string, string[]>()
	const note = (date: string | undefined, words: string) => {
		if (date) {
			const { monday } = isoWeek(date)
			events.set(monday, [...(events.get(monday) ?? []), words])
		}
	}
	for (const { id, replaceBy } of plan.pairs)
		note(replaceBy, t('chart.replace', { letter: letterOf(id) }))
	for (const pair of visit.footwear ?? [])
		note(pair.newFrom, t('chart.wearIn', { letter: letterOf(pair.id) }))
	note(decisions.reviewDate, t('chart.review'))
	type Shown = PlanView['sessions'][number] & { status?: 'cancelled' | 'bye' | 'injured' }
	const weeks = new Map<string, Shown[]>()
	for (const session of [
		...plan.sessions,
		...(plan.off ?? []).map((one): Shown => ({ ...one, surface: '' })),
	]) {
		const { monday } = isoWeek(session.date)
		weeks.set(monday, [...(weeks.get(monday) ?? []), session])
	}
	const dates = [...weeks.values()]
		.flat()
		.map(({ date }) => date)
		.toSorted()
	const [first, last] = [dates[0], dates.at(-1)]
	if (first && last)
		for (let day = dayNumber(isoWeek(first).monday); day <= dayNumber(last); day += 7)
			if (!weeks.has(dateOfDay(day))) weeks.set(dateOfDay(day), [])
	const most = Math.max(1, ...[...weeks.values()].map((list) => list.length))
	const columns = Math.min(most, columnsOn[paper])
	const cell = ({
		date,
		start,
		kind,
		pair,
		parts,
		status,
		minutes,
		fullMinutes,
	}: Shown): ChartCell => {
		const when = `${weekdays[weekdayOf(dayNumber(date))]} ${start ?? dayWords(date)}`
		const below = [
			when,
			...(kind === 'match' ? [t('chart.match')] : []),
			...(fullMinutes === undefined ? [] : [t('chart.short', { minutes: minutes ?? '' })]),
		].join(' ')
		// why a session is off is the player's own affair: only a bye, which all know, is named
		if (status) return { text: status === 'bye' ? t('chart.bye') : t('chart.off'), below: when }
		if (parts && parts.length > 1)
			return {
				text: `${letterOf(parts[0]!.pair)}${insert}`,
				after: parts
					.slice(1)
					.map((part) => `${letterOf(part.pair)}${insert}`)
					.join(' '),
				below,
				pattern: patternOf.get(parts[0]!.pair) ?? 'plain',
			}
		return pair === undefined
			? { text: t('chart.none'), below }
			: { text: `${letterOf(pair)}${insert}`, below, pattern: patternOf.get(pair) ?? 'plain' }
	}
	const rows = [...weeks]
		.toSorted(([a], [b]) => (a < b ? -1 : 1))
		.flatMap(([monday, sessions]) => {
			const inOrder = sessions
				.toSorted((a, b) => (`${a.date} ${a.start ?? ''}` < `${b.date} ${b.start ?? ''}` ? -1 : 1))
				.map(cell)
			const lines = Math.max(1, Math.ceil(inOrder.length / columns))
			return Array.from({ length: lines }, (_, line): ChartCell[] => {
				const cells = inOrder.slice(line * columns, (line + 1) * columns)
				const { week } = isoWeek(monday)
				return [
					{
						text: line === 0 ? String(week) : t('chart.continued', { week }),
						below: t('chart.weekOf', { date: dayWords(monday) }),
					},
					...Array.from({ length: columns }, (_, at): ChartCell => cells[at] ?? { text: '' }),
					{
						text: '',
						below: [
							...(line === 0 ? (events.get(monday) ?? []) : []),
							...(inOrder.length === 0 ? [t('chart.noSession')] : []),
						].join(', '),
					},
				]
			})
		})
	const legendRows = [...plan.pairs]
		.sort((a, b) => (letterOf(a.id) < letterOf(b.id) ? -1 : 1))
		.map(({ id, replaceBy, name, sole }): ChartCell[] => {
			const letter = letterOf(id)
			const pair = visit.footwear?.find((one) => one.id === id)
			const kindOf = sole ?? pair?.sole
			const words =
				[name ?? pair?.name ?? '', kindOf ? termWords(kindOf) : ''].filter(Boolean).join(', ') || id
			return [
				{ text: letter, pattern: patternOf.get(id) ?? 'plain' },
				{
					text: '',
					below: replaceBy
						? t('chart.legendReplace', { letter, pair: words, date: dateWords(replaceBy) })
						: t('chart.legendPair', { letter, pair: words }),
				},
			]
		})
	const legend: Block[] = [
		heading(t('chart.legend')),
		{
			kind: 'chart',
			caption: t('chart.legendCaption'),
			head: [t('chart.legendPattern'), t('chart.legendWords')],
			rows: legendRows,
			widths: [96, '*'],
		},
		{
			kind: 'list',
			items: [
				...(insert ? [t('chart.legendInsert')] : []),
				t('chart.legendMatch'),
				...(plan.sessions.some((session) => session.pair === undefined)
					? [t('chart.legendNone')]
					: []),
			],
		},
	]
	return {
		title: t('chart.title'),
		kind: 'season-chart',
		language: 'en',
		draft,
		letterhead: letterheadOf(clinic),
		...(showName ? { running: nameOf(visit) } : {}),
		paper,
		landscape: true,
		print: 'wall',
		subject: [
			...(showName ? [[t('subject.player'), nameOf(visit)] as [string, string]] : []),
			[
				t('subject.season'),
				first && last ? `${dateWords(first)} to ${dateWords(last)}` : t('chart.noSession'),
			],
			[
				t('subject.status'),
				draft ? t('status.draft') : t('chart.version', { version, date: dateWords(on) }),
			],
		],
		blocks: [
			{
				kind: 'chart',
				caption: t('chart.caption'),
				head: [
					t('chart.week'),
					...Array.from({ length: columns }, (_, at) => t('chart.session', { number: at + 1 })),
					t('chart.notes'),
				],
				rows,
				widths: [104, ...Array.from({ length: columns }, () => '*' as const), 120],
			},
			...legend,
		],
		notes: [],
		footer: t('page.footerChart', { clinic: clinic.name, date: dateWords(on) }),
		createdAt: `${on}T12:00:00.000Z`,
	}
}
