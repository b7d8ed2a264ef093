/** What an import would change, before it changes anything. */

import { termWords } from '../visit/terms.ts'
import type { Session } from '../visit/visit.ts'
import { fullDay } from './pattern.ts'

export interface ImportProblem {
	where: string
	says: string
}
/** Something only a person can answer; `key` is where the answer goes in ImportChoices. */
export interface ImportQuestion {
	key: string
	says: string
	options: string[]
}
export interface ImportChoices {
	/** IANA name of the clinic's time zone; sessions are kept in its wall clock */ zone: string
	from: string
	to: string
	/** name of the list: sessions of the same list that are no longer in it are taken out */ source: string
	team?: string
	code?: Session['code']
	surface?: Session['surface']
	ground?: Session['ground']
	/** by place */ surfaces?: Record<string, Session['surface']>
	/** by title */ kinds?: Record<string, Session['kind']>
	/** by the name of a time zone nobody knows: an IANA name */ zones?: Record<string, string>
	dateOrder?: 'day-month' | 'month-day'
	trainingMinutes: number
	matchMinutes: number
}
export interface Incoming {
	sessions: (Session & { id: string })[]
	problems: ImportProblem[]
	questions: ImportQuestion[]
	notes: string[]
}
export interface ImportPreview {
	add: (Session & { id: string })[]
	change: { before: Session; after: Session & { id: string }; says: string }[]
	remove: Session[]
	problems: ImportProblem[]
	questions: ImportQuestion[]
	notes: string[]
	same: number
}

/** Fields a list decides; what the clinician added (pin, worn pair) is kept. */
const listed = [
	'date',
	'start',
	'minutes',
	'kind',
	'surface',
	'ground',
	'team',
	'code',
	'title',
	'place',
	'status',
	'minutesAssumed',
	'source',
	'sequence',
] as const
const told: Partial<Record<(typeof listed)[number], string>> = {
	date: 'date',
	start: 'start',
	minutes: 'minutes',
	kind: 'kind',
	surface: 'surface',
	ground: 'ground',
	status: 'status',
	title: 'title',
	place: 'place',
	team: 'team',
}

/** A field as people write it. */
function wordOf(field: (typeof listed)[number], session: Session): string {
	const value = session[field]
	if (value === undefined) return field === 'status' ? 'on' : 'none'
	return field === 'date'
		? fullDay(session.date)
		: field === 'surface'
			? termWords(session.surface)
			: String(value)
}
/** Compares by id. Reading the same list twice gives no change. */
export function previewImport(
	existing: readonly Session[],
	incoming: Incoming,
	source: string,
): ImportPreview {
	const preview: ImportPreview = {
		add: [],
		change: [],
		remove: [],
		problems: incoming.problems,
		questions: incoming.questions,
		notes: incoming.notes,
		same: 0,
	}
	const known = new Map(
		existing.flatMap((one) => (one.id === undefined ? [] : [[one.id, one] as const])),
	)
	const named = new Set<string>()
	for (const session of incoming.sessions) {
		named.add(session.id)
		const before = known.get(session.id)
		if (!before) {
			preview.add.push(session)
			continue
		}
		// an older copy of the list never undoes a newer one
		if ((session.sequence ?? 0) < (before.sequence ?? 0)) {
			preview.same++
			continue
		}
		const changed = listed.filter((field) => before[field] !== session[field])
		if (changed.length === 0) {
			preview.same++
			continue
		}
		const after = {
			...session,
			...(before.pinned === undefined ? {} : { pinned: before.pinned }),
			...(before.worn === undefined ? {} : { worn: before.worn }),
		}
		const words = changed.flatMap((field) =>
			told[field] === undefined
				? []
				: [`${told[field]}: ${wordOf(field, before)} becomes ${wordOf(field, session)}`],
		)
		preview.change.push({
			before,
			after,
			says: `${fullDay(before.date)}: ${words.join('; ') || 'details of the list'}`,
		})
	}
	// while questions stand open the list is not wholly read: nothing is taken out for being missing
	// from it
	if (incoming.questions.length === 0 && incoming.problems.length === 0)
		preview.remove = existing.filter(
			(one) =>
				one.source === source &&
				one.id !== undefined &&
				!named.has(one.id) &&
				one.worn === undefined,
		)
	return preview
}
/** The sessions after the preview was confirmed. */
export function applyImport(existing: readonly Session[], preview: ImportPreview): Session[] {
	const changed = new Map(preview.change.map((one) => [one.after.id, one.after]))
	const gone = new Set(preview.remove.map((one) => one.id))
	return [
		...existing
			.filter((one) => one.id === undefined || !gone.has(one.id))
			.map((one) => (one.id === undefined ? one : (changed.get(one.id) ?? one))),
		...preview.add,
	].sort((a, b) => (`${a.date} ${a.start ?? ''}` < `${b.date} ${b.start ?? ''}` ? -1 : 1))
}

const matchWords =
	/\b(match|game|fixture|vs?\.?|versus|final|semi|round|cup|friendly|league|play-?off|home|away)\b/i
const trainingWords = /\b(training|practice|practise|session|gym|drills?|conditioning)\b/i
/** Training or match by the words of a title, or undefined where it must be asked. */
export function kindOf(title: string, choices: ImportChoices): Session['kind'] | undefined {
	const answered = choices.kinds?.[title]
	if (answered) return answered
	const [match, training] = [matchWords.test(title), trainingWords.test(title)]
	return training && !match ? 'training' : match && !training ? 'match' : undefined
}
/** Adds a question once. */
export function ask(questions: ImportQuestion[], question: ImportQuestion): void {
	if (!questions.some((one) => one.key === question.key)) questions.push(question)
}
