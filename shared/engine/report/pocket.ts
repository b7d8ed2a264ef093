/**
 * The player's own table of the season: which pair on which day, small enough to fold. No clinical
 * words.
 */

import { weekdayName } from '../season/pattern.ts'
import type { Plan, PlanSession } from '../season/plan-file.ts'
import { rounded } from '../visit/sides.ts'
import { termWords } from '../visit/terms.ts'
import type { Visit } from '../visit/visit.ts'
import { sentences } from '../words/en.table.ts'
import { dateWords } from '../words/words.ts'
import { heading, letterheadOf, nameOf, speakOf } from './base.ts'
import type { Clinic } from './clinic.ts'
import type { Block, LwDocument } from './document.ts'

/** '2027-04-03' as 'April 2027'. */
const monthOf = (date: string): string => dateWords(date).replace(/^\d+ /, '')

/**
 * What to put on, in the words of the chart: one letter, or one after the other with its minutes.
 */
export function wornWords(
	session: Pick<PlanSession, 'pair' | 'parts' | 'minutes' | 'fullMinutes'>,
	plan: Pick<Plan, 'pairs'>,
	none: string = sentences['pocket.askFirst'],
): string {
	const letter = (id: string) => plan.pairs.find((pair) => pair.id === id)?.letter ?? id
	if (session.parts && session.parts.length > 1)
		return session.parts
			.map((part) => `${letter(part.pair)} for ${rounded(part.minutes, 0)} min`)
			.join(', then ')
	return session.pair === undefined
		? none
		: `${letter(session.pair)}${session.fullMinutes === undefined ? '' : `, ${session.minutes} of ${session.fullMinutes} min`}`
}
/** @param on ISO date of making */
export function pocketTable({
	visit,
	clinic,
	plan,
	on,
}: {
	visit: Visit
	clinic: Clinic
	plan: Plan
	on: string
}): LwDocument {
	const t = speakOf(clinic)
	const ahead = plan.sessions.filter((session) => !session.past)
	const byMonth = new Map<string, PlanSession[]>()
	for (const session of ahead)
		byMonth.set(monthOf(session.date), [...(byMonth.get(monthOf(session.date)) ?? []), session])
	const tables = [...byMonth].flatMap(([month, sessions]): Block[] => [
		heading(month),
		{
			kind: 'table',
			caption: t('pocket.caption', { month }),
			head: [
				t('pocket.day'),
				t('pocket.start'),
				t('pocket.what'),
				t('pocket.ground'),
				t('pocket.wear'),
			],
			widths: [90, 45, 60, '*', 130],
			rows: sessions.map((session) => [
				`${weekdayName(session.date).slice(0, 3)} ${Number(session.date.slice(8))}`,
				session.start,
				session.kind,
				`${termWords(session.surface)}${session.ground === 'dry' ? '' : `, ${session.ground}`}`,
				wornWords(session, plan, t('pocket.askFirst')),
			]),
		},
	])
	return {
		title: t('pocket.title'),
		kind: 'season-pocket',
		language: 'en',
		draft: false,
		letterhead: letterheadOf(clinic),
		running: nameOf(visit),
		subject: [
			[t('subject.player'), nameOf(visit)],
			[t('subject.season'), `${dateWords(plan.season.from)} to ${dateWords(plan.season.to)}`],
			[t('pocket.from'), dateWords(plan.from)],
		],
		blocks: [
			heading(t('pocket.pairs')),
			{
				kind: 'list',
				items: [...plan.pairs]
					.sort((a, b) => (a.letter < b.letter ? -1 : 1))
					.map(
						(pair) =>
							`${pair.letter}: ${pair.name}, ` +
							`${termWords(pair.sole)}${pair.replaceBy === undefined ? '' : `. A new pair by ${dateWords(pair.replaceBy)}`}${pair.brokenInBy === undefined ? '' : `. Worn in step by step until ${dateWords(pair.brokenInBy)}`}`,
					),
			},
			...(plan.purchases.length === 0
				? []
				: [
						heading(t('pocket.buy')),
						{
							kind: 'list' as const,
							items: plan.purchases.map(
								(purchase) => `A ${termWords(purchase.sole)} pair by ${dateWords(purchase.buyBy)}.`,
							),
						},
					]),
			...tables,
			...(ahead.length === 0 ? [{ kind: 'text' as const, text: t('pocket.nothing') }] : []),
			{ kind: 'text', text: t('pocket.safety'), tone: 'small' },
		],
		notes: [],
		footer: `${clinic.name}, ${dateWords(on)}`,
		createdAt: `${on}T12:00:00.000Z`,
	}
}
