/** What an import would change, before it changes anything. */
import { present } from '../plain/present.ts'
import type { Session } from '../visit/visit.ts'
import { type Statement, state } from '../words/statement.ts'
import type { SeasonSession } from './pattern.ts'

/** Something only a person can answer; `key` is where the answer goes in ImportChoices. */
interface ImportQuestion extends Statement {
	key: string
	options: string[]
}
export interface ImportChoices {
	/** IANA name of the clinic's time zone; sessions are kept in its wall clock */
	zone: string
	from: string
	to: string
	/** name of the list: sessions of the same list that are no longer in it are taken out */
	source: string
	team?: string
	code?: Session['code']
	surface?: Session['surface']
	ground?: Session['ground']
	/** by place */
	surfaces?: Record<string, Session['surface']>
	/** by title */
	kinds?: Record<string, Session['kind']>
	/** by the name of a time zone nobody knows: an IANA name */
	zones?: Record<string, string>
	dateOrder?: 'day-month' | 'month-day'
	trainingMinutes: number
	matchMinutes: number
}
export interface Incoming {
	sessions: SeasonSession[]
	problems: Statement[]
	questions: ImportQuestion[]
	notes: Statement[]
}
export interface ImportPreview {
	add: SeasonSession[]
	change: (Statement & { before: Session; after: SeasonSession })[]
	remove: Session[]
	problems: Statement[]
	questions: ImportQuestion[]
	notes: Statement[]
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
/** Those of them that a person is told of. */
const told = [
	'date',
	'start',
	'minutes',
	'kind',
	'surface',
	'ground',
	'status',
	'title',
	'place',
	'team',
] as const

/** A session of the list against the one that is there; undefined where nothing changes. */
function changeOf(
	before: Session,
	session: SeasonSession,
): ImportPreview['change'][number] | undefined {
	// an older copy of the list never undoes a newer one
	if ((session.sequence ?? 0) < (before.sequence ?? 0)) return undefined
	const changed = listed.filter((field) => before[field] !== session[field])
	if (changed.length === 0) return undefined
	const said = told
		.filter((field) => changed.includes(field))
		.map((field) => present({ field, before: before[field], after: session[field] }))
	return {
		before,
		after: { ...session, ...present({ pinned: before.pinned, worn: before.worn }) },
		...state('season.list-change', { date: before.date, changed: said }),
	}
}
/** Sessions of the same list that are no longer in it; what was worn in one is kept. */
function missingFrom(incoming: Incoming, existing: readonly Session[], source: string): Session[] {
	const named = new Set(incoming.sessions.map((session) => session.id))
	return existing.filter(
		(session) =>
			session.source === source &&
			session.id !== undefined &&
			!named.has(session.id) &&
			session.worn === undefined,
	)
}
/** Compares by id. Reading the same list twice gives no change. */
export function previewImport(
	existing: readonly Session[],
	incoming: Incoming,
	source: string,
): ImportPreview {
	const { sessions, problems, questions, notes } = incoming
	const known = new Map(existing.map((session) => [session.id, session]))
	const preview: ImportPreview = {
		add: [],
		change: [],
		remove: [],
		problems,
		questions,
		notes,
		same: 0,
	}
	for (const session of sessions) {
		const before = known.get(session.id)
		const change = before && changeOf(before, session)
		if (!before) preview.add.push(session)
		else if (change) preview.change.push(change)
		else preview.same++
	}
	// while questions stand open the list is not wholly read: nothing is taken out for being missing
	// from it
	if (questions.length === 0 && problems.length === 0)
		preview.remove = missingFrom(incoming, existing, source)
	return preview
}
/** The sessions after the preview was confirmed. */
export function applyImport(existing: readonly Session[], preview: ImportPreview): Session[] {
	const changed = new Map<string | undefined, Session>(
		preview.change.map(({ after }) => [after.id, after]),
	)
	const gone = new Set(preview.remove.map((session) => session.id))
	const moment = ({ date, start }: Session): string => `${date} ${start ?? ''}`
	return [
		...existing
			.filter((session) => session.id === undefined || !gone.has(session.id))
			.map((session) => changed.get(session.id) ?? session),
		...preview.add,
	].sort((left, right) => (moment(left) < moment(right) ? -1 : 1))
}

const matchWords =
	/\b(match|game|fixture|vs?\.?|versus|final|semi|round|cup|friendly|league|play-?off|home|away)\b/i
const trainingWords = /\b(training|practice|practise|session|gym|drills?|conditioning)\b/i
/** Training or match by the words of a title, or undefined where it must be asked. */
export function kindOf(title: string, choices: ImportChoices): Session['kind'] | undefined {
	const answered = choices.kinds?.[title]
	if (answered) return answered
	const [match, training] = [matchWords.test(title), trainingWords.test(title)]
	if (match === training) return undefined
	return match ? 'match' : 'training'
}
/** Adds a question once. */
export function ask(questions: ImportQuestion[], question: ImportQuestion): void {
	if (!questions.some(({ key }) => key === question.key)) questions.push(question)
}
