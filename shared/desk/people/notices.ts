/**
 * What the owner should hear of: tries of getting in, changes of who works here, keys, and what
 * stands badly with the records. Told once, marked as seen by the owner, and never about a patient.
 */
import { z } from 'zod'

/** Tries: a passphrase or recovery key at the locked PC, a PIN, a passphrase in a session. @internal */
export const tryKinds = ['unlock', 'pin', 'own-passphrase', 'hand-over'] as const
export type TryKind = (typeof tryKinds)[number]
/** @internal */
export const noticeKinds = [
	...tryKinds,
	'person-added',
	'passphrase-given',
	'person-off',
	'recovery-key-issued',
	'recovery-key-used',
	'restored',
	'sent-in-error',
	'backup-late',
	'disk-nearly-full',
] as const
export type NoticeKind = (typeof noticeKinds)[number]

export const noticeSchema = z.strictObject({
	what: z.enum(noticeKinds),
	/** the person it is about; absent where a passphrase says nothing of whose it should be */
	whom: z.string().optional(),
	/** who did it; absent where nobody was at work */
	by: z.string().optional(),
	times: z.int().min(1),
	/** ISO 8601, of the first and the last of them */
	first: z.string(),
	last: z.string(),
	/** who marked it as seen, and when */
	seen: z.strictObject({ by: z.string(), at: z.string() }).optional(),
})
export type Notice = z.infer<typeof noticeSchema>

/** One row of the audit trail that the owner should hear of. */
export interface Happening {
	seq: number
	what: NoticeKind
	whom: string | undefined
	by: string | undefined
	/** ISO 8601 */
	at: string
}
/** A row that says that all up to another row was seen. */
export interface SeenMark {
	seq: number
	upTo: number
	by: string
	at: string
}
const isTry = (what: NoticeKind): what is TryKind => (tryKinds as readonly string[]).includes(what)

/** The mark that first covers a row; undefined where nobody has seen it yet. */
const markOf = (seq: number, marks: readonly SeenMark[]): SeenMark | undefined =>
	marks
		.filter(({ upTo }) => upTo >= seq)
		.reduce<SeenMark | undefined>(
			(first, mark) => (first && first.seq < mark.seq ? first : mark),
			undefined,
		)

/**
 * Notices, the latest first. Tries of the same kind at the same person are one notice, as far as
 * they were seen together.
 */
export function noticesOf(happenings: readonly Happening[], marks: readonly SeenMark[]): Notice[] {
	const found = new Map<string, Notice>()
	for (const { seq, what, whom, by, at } of happenings) {
		const mark = markOf(seq, marks)
		const key = JSON.stringify(isTry(what) ? [what, whom, mark?.seq] : [seq])
		const before = found.get(key)
		found.set(key, {
			what,
			...(whom !== undefined && { whom }),
			...(by !== undefined && !isTry(what) && { by }),
			times: (before?.times ?? 0) + 1,
			first: before && before.first < at ? before.first : at,
			last: before && before.last > at ? before.last : at,
			...(mark && { seen: { by: mark.by, at: mark.at } }),
		})
	}
	return [...found.values()].sort((left, right) => right.last.localeCompare(left.last))
}
