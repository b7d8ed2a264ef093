/** What a file for the way back changes, player by player, in sentences that anybody here reads. */
import { z } from 'zod'
import { dayInWords } from '../../engine/plain/days.ts'
import { playerSchema } from '../../engine/visit/visit.ts'
import { answerWords, recallRecordSchema } from '../recall/answer.ts'
import { dueWords } from '../recall/item.ts'
import { followUpSchema } from '../recall/referral.ts'
import { differences, notThere } from '../records/amendment.ts'
import { consentSchema, purposes } from '../records/consent.ts'
import { metaOf } from '../records/told.ts'

/** One player and what changes for them. */
export const playerChangesSchema = z.strictObject({
	playerId: z.string(),
	name: z.string(),
	/** not here before */
	isNew: z.boolean(),
	lines: z.array(z.string()),
	/** how many lines are not told */
	more: z.number(),
})
export type PlayerChanges = z.infer<typeof playerChangesSchema>
/** Lines of one player, and players, that are told: a choice of this program. */
const mostLines = 12
const mostPlayers = 200
/** Characters of somebody's own words that are told. */
const mostWords = 160

const clipped = (text: string): string =>
	text.length > mostWords ? `${text.slice(0, mostWords).trimEnd()} ...` : text
const ended = (text: string): string => (/[.!?]$/.test(text) ? text : `${text}.`)
const told = (text: string): string => ended(clipped(text.trim()))
const days = z.iso.date()

const visitValue = z.looseObject({
	signedBy: z.looseObject({ name: z.string() }),
	visit: z.looseObject({ visitDate: z.string() }),
	version: z.number().optional(),
	amends: z.looseObject({ reason: z.string() }).optional(),
})
const noteValue = z.looseObject({ what: z.string(), text: z.string(), by: z.string() })
const holdValue = z.looseObject({ reason: z.string(), on: z.boolean() })
const mergeValue = z.looseObject({ undone: z.boolean(), reason: z.string() })
const seasonValue = z.looseObject({ what: z.string() })
const squadValue = z.looseObject({
	what: z.string(),
	team: z.string().optional(),
	day: z.string().optional(),
	presence: z.string().optional(),
	reason: z.string().optional(),
})
const noticeValue = z.looseObject({ text: z.string(), removed: z.unknown().optional() })
const contactValue = z.looseObject({
	name: z.string(),
	role: z.string(),
	email: z.string().optional(),
	removed: z.boolean().optional(),
})
const breachValue = z.looseObject({ recipient: z.string(), what: z.string() })
const sendingValue = z.looseObject({ recipient: z.string(), channel: z.string() })

/** A sentence for a value of one kind; undefined where it is told with another record. */
type Telling = (value: unknown) => string | undefined
const telling = <Value>(schema: z.ZodType<Value>, tell: (value: Value) => string): Telling => {
	return (value) => {
		const read = schema.safeParse(value)
		return read.success ? tell(read.data) : undefined
	}
}
const noteWords: Record<string, (text: string, by: string) => string> = {
	'in-error': (text, by) => `A visit is marked as entered in error by ${by}: ${told(text)}`,
	'late-entry': (text, by) => `A later note on a visit by ${by}: ${told(text)}`,
	statement: (text, by) => `The player's own statement on a visit, taken by ${by}: ${told(text)}`,
	countersign: (text, by) =>
		`A student's visit is countersigned by ${by}${text.trim() ? `: ${told(text)}` : '.'}`,
}
const seasonWords: Record<string, string> = {
	season: 'The season was entered or changed.',
	plan: 'A plan of the season was made.',
	calendar: 'The calendar of the season was given out.',
}
const presenceWords: Record<string, string> = {
	here: 'was there',
	absent: 'was absent',
	refused: 'refused',
	expected: 'was expected',
}
const tellings = new Map<string, Telling>([
	[
		'visit',
		telling(visitValue, ({ signedBy, visit, amends, version = 1 }) =>
			amends
				? `The visit of ${dayInWords(visit.visitDate)} is amended (version ${version}) by ` +
					`${signedBy.name}: ${told(amends.reason)}`
				: `New visit of ${dayInWords(visit.visitDate)}, signed by ${signedBy.name}.`,
		),
	],
	[
		'visit-note',
		telling(noteValue, ({ what, text, by }) =>
			(noteWords[what] ?? ((words: string) => `A note on a visit: ${told(words)}`))(text, by),
		),
	],
	[
		'consent',
		telling(consentSchema, ({ purpose, recipient, decision, grantor, given, ...consent }) => {
			const what = `to ${purposes[purpose].says}${recipient ? ` for ${recipient}` : ''}`
			if (consent.withdrawn !== undefined) {
				const by = consent.withdrawnBy ? ` by ${consent.withdrawnBy}` : ''
				return `Consent ${what} is withdrawn${by} on ${dayInWords(consent.withdrawn)}.`
			}
			const word = decision === 'permit' ? 'given' : 'refused'
			return `Consent ${what} is ${word} by ${grantor.name} on ${dayInWords(given)}.`
		}),
	],
	[
		'hold',
		telling(holdValue, ({ on, reason }) =>
			on ? `The record is put on hold: ${told(reason)}` : `The hold is released: ${told(reason)}`,
		),
	],
	[
		'merge',
		telling(mergeValue, ({ undone, reason }) =>
			undone
				? `No longer shown as one with another player: ${told(reason)}`
				: `Shown as one with another player: ${told(reason)}`,
		),
	],
	[
		'season',
		telling(seasonValue, ({ what }) => seasonWords[what] ?? 'Something of the season was kept.'),
	],
	[
		'squad',
		telling(squadValue, ({ what, team, day, presence = '', reason }) =>
			what === 'member'
				? `On the list of a screening day${team ? `: ${team}` : ''}` +
					`${days.safeParse(day).success ? `, ${dayInWords(day ?? '')}` : ''}.`
				: `At the screening day: ${presenceWords[presence] ?? presence}` +
					`${reason ? `, ${told(reason)}` : '.'}`,
		),
	],
	[
		'sending-note',
		telling(noticeValue, ({ text, removed }) =>
			removed === undefined
				? `To know before anything is sent: ${told(text)}`
				: `No longer to know before sending: ${told(text)}`,
		),
	],
	[
		'sending',
		telling(
			sendingValue,
			({ recipient, channel }) => `A report was given to ${recipient} (${channel}).`,
		),
	],
	[
		'contact',
		telling(contactValue, ({ name, role, email, removed }) =>
			removed
				? `${name} (${role}) is no longer a contact.`
				: `New contact: ${name} (${role}${email ? `, ${email}` : ''}).`,
		),
	],
	[
		'breach',
		telling(
			breachValue,
			({ recipient, what }) => `Something was sent in error to ${recipient}: ${told(what)}`,
		),
	],
	[
		'recall',
		telling(
			recallRecordSchema,
			({ item, answer, by }) =>
				`What is due, ${dueWords[item.kind].toLowerCase()} by ${dayInWords(item.on)}: ` +
				`${answerWords(answer)} (${by}).`,
		),
	],
	[
		'follow-up',
		telling(followUpSchema, ({ entry, by }) => {
			if (entry.what === 'try') return `A referral was asked after by ${by}: ${told(entry.says)}`
			return entry.what === 'outcome'
				? `What came of a referral is written by ${by}: ${told(entry.found)}`
				: `What came of a referral is taken back by ${by}: ${told(entry.why)}`
		}),
	],
	['document', () => 'A document was made for the outbox.'],
	['answer', () => 'A question about two versions was answered on the laptop.'],
])
/** One sentence about a record that comes; undefined where another record tells it. */
export const recordLine = (kind: string, value: unknown): string | undefined =>
	tellings.get(kind)?.(value)

const shown = (text: string): string => (days.safeParse(text).success ? dayInWords(text) : text)
/** A group of details has no title of its own. */
const groupTitles: Record<string, string> = { guardian: 'The guardian' }
const titleOf = (path: string): string =>
	groupTitles[path] ?? metaOf(path, playerSchema)?.title ?? path
/** What is said to be nothing stands as nothing. */
const isNothing = (text: string): boolean => text === notThere || text === 'null'
/** A value that came, went or is another one. */
function fieldLine(title: string, before: string, after: string): string {
	if (isNothing(before)) return `${title}: ${shown(after)}, where nothing stood.`
	if (isNothing(after)) return `${title}: taken off; it was ${shown(before)}.`
	return `${title}: ${shown(after)} instead of ${shown(before)}.`
}
/** A field that two places changed differently, and what each says. */
export interface AskedField {
	field: string
	values: readonly { isHere: boolean; value: unknown }[]
}
/**
 * The details of a player that are others than before, field by field.
 * @param asked what two places changed differently: told once, with what each says
 */
export function detailsLines(
	before: object,
	after: object,
	asked: readonly AskedField[],
): string[] {
	const isAsked = (path: string): boolean =>
		asked.some(({ field }) => path === field || path.startsWith(`${field}.`))
	return [
		...differences(before, after)
			.filter((change) => !(isNothing(change.before) && isNothing(change.after)))
			.filter(({ path }) => !isAsked(path))
			.map((change) => fieldLine(titleOf(change.path), change.before, change.after)),
		...asked.map(
			({ field, values }) =>
				`${titleOf(field)} was changed in two places (${placed(values)}): it is asked under To ` +
				'answer.',
		),
	]
}
/** What stands here first, whichever is the newer. */
const placed = (values: AskedField['values']): string =>
	values
		.toSorted((left, right) => Number(right.isHere) - Number(left.isHere))
		.map(({ isHere, value }) => `${isHere ? 'at home' : 'away'} ${whole(value)}`)
		.join('; ')
function whole(value: unknown): string {
	if (value === null || value === undefined || value === '') return 'nothing'
	if (typeof value !== 'object') return shown(String(value))
	return Object.values(value)
		.filter((part) => part !== null && typeof part !== 'object')
		.join(', ')
}
export const newPlayerLine = (birthDate: string): string =>
	`New player, born on ${dayInWords(birthDate)}.`

/** What became of a draft, by what the merge calls it. */
const draftWords: Record<string, (on: string) => string> = {
	begun: (on) => `The open draft of ${on} comes along.`,
	'goes-on': (on) => `The open draft of ${on} goes on as the laptop left it.`,
	both: (on) => `The draft of ${on} was changed in both places: both are kept.`,
	closed: (on) => `The open draft of ${on} is closed: its visit is signed.`,
	joined: (on) => `Two drafts of ${on} become one: no field had two different values.`,
}
export const draftLine = (step: string, visitDate: string): string =>
	(draftWords[step] ?? ((on: string) => `The draft of ${on} changed.`))(dayInWords(visitDate))

/** Players by name, each with as many lines as are told; equal lines are told once, with a count. */
export function toldChanges(changes: readonly Omit<PlayerChanges, 'more'>[]): {
	players: PlayerChanges[]
	more: number
} {
	const players = changes
		.map(({ lines, ...player }) => ({ ...player, lines: counted(lines) }))
		.filter(({ lines }) => lines.length > 0)
		.sort((left, right) => (left.name < right.name ? -1 : 1))
	return {
		players: players.slice(0, mostPlayers).map(({ lines, ...player }) => ({
			...player,
			lines: lines.slice(0, mostLines),
			more: Math.max(0, lines.length - mostLines),
		})),
		more: Math.max(0, players.length - mostPlayers),
	}
}
function counted(lines: readonly string[]): string[] {
	const times = new Map<string, number>()
	for (const line of lines) times.set(line, (times.get(line) ?? 0) + 1)
	return [...times].map(([line, count]) => (count === 1 ? line : `${line} (${count} times)`))
}
