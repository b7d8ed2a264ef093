/**
 * The player's own table of the season: which pair on which day, small enough to fold. No clinical
 * words.
 */
import { monthInWords, weekdayName } from '../plain/days.ts'
import type { Plan, PlanSession } from '../season/plan-file.ts'
import { rounded } from '../visit/sides.ts'
import { termWords } from '../visit/terms.ts'
import type { Visit } from '../visit/visit.ts'
import type { Speak } from '../words/speak.ts'
import { dateWords } from '../words/words.ts'
import { heading, letterheadOf, nameOf, say, speakOf } from './base.ts'
import type { Clinic } from './clinic.ts'
import type { Block, LwDocument } from './document.ts'

interface PocketInput {
	visit: Visit
	clinic: Clinic
	plan: Plan
	/** Whether a pair to be bought may be named. */
	buying: boolean
	/** ISO date of making. */
	on: string
}
/** The sessions that lie ahead, a table each month. */
export function pocketTable({ visit, clinic, plan, buying, on }: PocketInput): LwDocument {
	const t = speakOf(clinic)
	const ahead = plan.sessions.filter((session) => !session.past)
	const byMonth = Map.groupBy(ahead, ({ date }) => monthInWords(date))
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
			...pairs(plan, buying, t),
			...(buying ? purchases(plan, t) : []),
			...[...byMonth].flatMap(([month, sessions]) => monthBlocks(month, sessions, plan, t)),
			...(ahead.length === 0 ? [say(t('pocket.nothing'))] : []),
			{ kind: 'text', text: t('pocket.safety'), tone: 'small' },
		],
		notes: [],
		paper: clinic.paper ?? 'A4',
		footer: `${clinic.name}, ${dateWords(on)}`,
		createdAt: `${on}T12:00:00.000Z`,
	}
}

const pairs = (plan: Plan, buying: boolean, t: Speak): Block[] => [
	heading(t('pocket.pairs')),
	{
		kind: 'list',
		items: [...plan.pairs]
			.sort((a, b) => (a.letter < b.letter ? -1 : 1))
			.map((pair) => pairWords(pair, buying)),
	},
]
function pairWords(
	{ letter, name, sole, replaceBy, brokenInBy }: Plan['pairs'][number],
	buying: boolean,
): string {
	return [
		`${letter}: ${name}, ${termWords(sole)}`,
		replaceBy === undefined || !buying ? '' : `. A new pair by ${dateWords(replaceBy)}`,
		brokenInBy === undefined ? '' : `. Worn in step by step until ${dateWords(brokenInBy)}`,
	].join('')
}
function purchases(plan: Plan, t: Speak): Block[] {
	if (plan.purchases.length === 0) return []
	return [
		heading(t('pocket.buy')),
		{
			kind: 'list',
			items: plan.purchases.map(
				({ sole, buyBy }) => `A ${termWords(sole)} pair by ${dateWords(buyBy)}.`,
			),
		},
	]
}
const monthBlocks = (
	month: string,
	sessions: readonly PlanSession[],
	plan: Plan,
	t: Speak,
): Block[] => [
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
			wornWords(session, plan, t),
		]),
	},
]
/**
 * What to put on, in the words of the chart: one letter, or one after the other with its minutes.
 */
function wornWords(
	{ pair, parts, minutes, fullMinutes }: PlanSession,
	plan: Plan,
	t: Speak,
): string {
	const letterOf = (id: string) => plan.pairs.find((own) => own.id === id)?.letter ?? id
	if (parts && parts.length > 1)
		return parts
			.map((part) => `${letterOf(part.pair)} for ${rounded(part.minutes, 0)} min`)
			.join(', then ')
	if (pair === undefined) return t('pocket.askFirst')
	return fullMinutes === undefined
		? letterOf(pair)
		: `${letterOf(pair)}, ${minutes} of ${fullMinutes} min`
}
