/** How often advice was followed, why it was not, and what went wrong with what was worn. */
import { askedSince } from '../../engine/recheck/asked.ts'
import { type Trouble, troubles } from '../../engine/visit/terms.ts'
import type { Since } from '../../engine/visit/visit.ts'
import { goneCell } from './gone.ts'
import { type Asking, type Course, type Look, looksOf, type Mark, type Seen } from './seen.ts'

type Answer = 'done' | 'in-part' | 'not-done' | 'not-wanted'
interface Advised {
	kind: string
	/** tells what it is about from others of its kind */
	about: string
	answer?: Answer | undefined
	why?: string | undefined
}
const answersOf = {
	bought: { bought: 'done', 'not-bought': 'not-done', 'not-wanted': 'not-wanted' },
	worn: {
		'still-worn': 'done',
		'weaned-as-planned': 'done',
		'stopped-early': 'in-part',
		'never-worn': 'not-done',
	},
	wearingIn: { kept: 'done', 'in-part': 'in-part', 'not-kept': 'not-done' },
	season: { kept: 'done', changed: 'in-part', 'not-used': 'not-done' },
} as const
/** Each thing that a re-check asks, as it was answered. */
function advisedIn(since: Partial<Since>): Advised[] {
	const { done = [], bought = [], worn = [], wearingIn, season } = since
	return [
		...done.map(({ what, answer, why, pairs = [], role = '', side = '', words = '' }) => ({
			kind: what,
			about: [...pairs, role, side, words].join(' '),
			answer,
			why,
		})),
		...bought.map(({ role, answer, why }) => ({
			kind: 'buy',
			about: role,
			answer: answer && answersOf.bought[answer],
			why,
		})),
		...worn.map(({ what, side, now, why }) => ({
			kind: what,
			about: side,
			answer: now && answersOf.worn[now],
			why,
		})),
		...(since.asksWearingIn
			? [{ kind: 'wearing-in', about: '', answer: wearingIn && answersOf.wearingIn[wearingIn] }]
			: []),
		...(since.asksSeason
			? [{ kind: 'season', about: '', answer: season && answersOf.season[season] }]
			: []),
	]
}
/** What a visit advised: what a re-check would ask of it. */
const advisedAt = ({ visit, assessment, decisions }: Seen, asking: Asking): Advised[] =>
	askedSince({ visit, assessment, decisions }, asking.today, asking.protocol).flatMap(({ opens }) =>
		advisedIn(opens),
	)
/** What the re-check that looks back to a visit was told. */
function answeredAfter({ then, later }: Look): Since | undefined {
	return later.find(({ visit }) => visit.since?.visitDate === then.visit.visitDate)?.visit.since
}
/** One answer for several things of a kind: all of one answer, else in part; none, where none came. */
function together(answers: readonly (Answer | undefined)[]): Answer | 'unasked' {
	const given = answers.filter((answer) => answer !== undefined)
	const [first] = given
	if (first === undefined) return 'unasked'
	return given.length === answers.length && given.every((answer) => answer === first)
		? first
		: 'in-part'
}
/** Kinds that are counted with what was done: a pair, an insert, a raise. */
const ofMeasures: readonly string[] = ['buy', 'insert', 'raise']
/** By kind of advice, at the first visit of the period that gave it. */
export function adviceMarks(course: Course, asking: Asking): Mark[] {
	const looks = looksOf(course, asking).map((look) => ({
		...look,
		advised: advisedAt(look.then, asking),
		answers: advisedIn(answeredAfter(look) ?? {}),
	}))
	const kinds = [...new Set(looks.flatMap(({ advised }) => advised.map(({ kind }) => kind)))]
	const rows = kinds.flatMap((row): Mark[] => {
		const look = looks.find(({ advised }) => advised.some(({ kind }) => kind === row))
		if (!look || ofMeasures.includes(row)) return []
		if (look.later.length === 0)
			return [{ table: 'advice', row, cells: [goneCell(look, asking.today)] }]
		const about = look.advised.filter(({ kind }) => kind === row)
		const answers = about.map(
			(one) =>
				look.answers.find(({ kind, about: what }) => kind === row && what === one.about)?.answer,
		)
		return [{ table: 'advice', row, cells: [together(answers)] }]
	})
	const reasons = looks.flatMap(({ answers }) => answers.flatMap(({ why }) => why ?? []))
	return [
		...rows,
		...[...new Set(reasons)].map((row): Mark => ({ table: 'reason', row, cells: ['named'] })),
	]
}
type Worn = 'pair' | 'insert' | 'raise'
/** What was told of something worn, at any of these visits. */
const troublesIn = (seen: readonly Seen[], what: Worn): (Trouble | 'none')[] =>
	seen.flatMap(({ visit: { since } }) =>
		what === 'pair'
			? (since?.bought ?? []).flatMap(({ trouble }) => trouble ?? [])
			: (since?.worn ?? []).flatMap((row) => (row.what === what ? (row.trouble ?? []) : [])),
	)
/**
 * What the re-check after a visit was told of something to be worn, with the trouble that it or any
 * later one told.
 */
export function wornCells(look: Look, what: Worn): string[] {
	const kind = what === 'pair' ? 'buy' : what
	const given = advisedIn(answeredAfter(look) ?? {}).filter((one) => one.kind === kind)
	const answer = together(given.map((one) => one.answer))
	if (answer === 'not-done' || answer === 'not-wanted') return [answer]
	const told = troublesIn(look.later, what)
	if (answer === 'unasked' || told.length === 0) return ['unasked']
	return [
		answer,
		...troubles.map((trouble) => `${told.includes(trouble) ? 'told' : 'not'}.${trouble}`),
	]
}
