/**
 * What the owner should hear of, read from the audit trail. That it was seen is a row of the trail
 * itself: who and when, and never taken back.
 */
import type { InputOf, OutputOf } from '../../../shared/contract.ts'
import {
	type Happening,
	type NoticeKind,
	noticesOf,
	type SeenMark,
	type TryKind,
} from '../../../shared/desk/people/notices.ts'
import type { AuditRow } from '../../../shared/desk/records/audit.ts'
import type { Deps } from '../records/deps.ts'
import { Refusal } from '../records/refusal.ts'
import type { PeopleMemory } from './memory.ts'

/** What the rows of the trail call a try, for ever; and what it was. */
export const triedAs = {
	unlock: 'unlock',
	pin: 'PIN',
	'own-passphrase': 'passphrase of a person',
	'hand-over': 'passphrase at a hand-over',
} as const satisfies Record<TryKind, string>
/** The purpose by which a row says the rest, for ever. */
export const noticedAs = {
	'person-added': 'person added',
	'passphrase-given': 'passphrase given',
	'person-off': 'person taken off',
	'recovery-key-issued': 'recovery key issued',
	'recovery-key-used': 'recovery key used',
	'backup-late': 'backup is late',
	'disk-nearly-full': 'disk nearly full',
} as const satisfies Partial<Record<NoticeKind, string>>
/** A key that took the place of a confirmed one is issued with its confirmation. */
export const issuedAndConfirmed = 'recovery key issued and confirmed'
const kindOfPurpose = new Map<string, NoticeKind>([
	...Object.entries(noticedAs).map(([kind, purpose]) => [purpose, kind as NoticeKind] as const),
	[issuedAndConfirmed, 'recovery-key-issued'],
])
const kindOfTry = new Map<string, TryKind>(
	Object.entries(triedAs).map(([kind, purpose]) => [purpose, kind as TryKind]),
)
/** How a row of a failed try names the person aimed at, for ever. */
export const aimedAt = (personId: string): string => `person:${personId}`
/** How a row names the person it changed something for; no record is called so. */
export const ofStaff = (personId: string): string => `staff:${personId}`
const seenRef = 'notices:'

/** Rows that are read at once, and pages at most: of a trail that long only the newest part is told. */
const pageLong = 500
const mostPages = 40
/** As many where only what came since is read. */
const shortPage = 50

/** What a row tells the owner; undefined where it tells nothing. */
function kindOf({ function: does, purpose, objectRef }: AuditRow): NoticeKind | undefined {
	if (does === 'unlock-failed') return kindOfTry.get(purpose) ?? 'unlock'
	// the records of the list after a restore are of the same function
	if (does === 'restore') return objectRef.startsWith('restored:') ? undefined : 'restored'
	if (does === 'create' && objectRef.startsWith('breach:')) return 'sent-in-error'
	return does === 'create' || does === 'update' || does === 'backup'
		? kindOfPurpose.get(purpose)
		: undefined
}
interface Read {
	happenings: Happening[]
	marks: SeenMark[]
	/** the newest row that was looked at */
	upTo: number
	/** also what was seen already */
	whole: boolean
}
const nothingRead: Read = { happenings: [], marks: [], upTo: 0, whole: true }
const seenUpTo = ({ marks }: Read): number => Math.max(0, ...marks.map(({ upTo }) => upTo))
export class Notices {
	readonly #store: Deps['store']
	readonly #people: PeopleMemory
	#known = nothingRead
	constructor({ store }: Pick<Deps, 'store'>, people: PeopleMemory) {
		this.#store = store
		this.#people = people
	}
	/** Another person is at work, or nobody. */
	forget(): void {
		this.#known = nothingRead
	}
	/**
	 * What is known, with what the trail took up since it was last looked at.
	 * @param whole also what was seen already; else it is enough where that begins
	 */
	#read(whole: boolean): Read {
		if (whole && !this.#known.whole) this.forget()
		const since = this.#known.upTo
		const read = this.#readFrom(whole)
		for (const rows of this.#pages(since > 0 ? shortPage : pageLong)) {
			for (const row of rows.filter(({ seq }) => seq > since)) this.#take(read, row)
			const lowest = rows.at(-1)?.seq ?? 0
			if (lowest <= since || (!whole && lowest <= seenUpTo(read))) break
		}
		this.#known = read
		return read
	}
	/** What is known already; of the first look, as much as is asked for. */
	#readFrom(whole: boolean): Read {
		const { happenings, marks, upTo, whole: wasWhole } = this.#known
		const copied = { happenings: [...happenings], marks: [...marks], upTo }
		return { ...copied, whole: upTo === 0 ? whole : wasWhole }
	}
	/** The trail from its newest row on, so many at once. */
	*#pages(long: number): Generator<AuditRow[]> {
		let before = Number.MAX_SAFE_INTEGER
		for (let page = 0; page < mostPages; page++) {
			const rows = this.#store.auditPage(before, long)
			yield rows
			const last = rows.at(-1)
			if (!last || rows.length < long) return
			before = last.seq
		}
	}
	#take(read: Read, row: AuditRow): void {
		const { happenings, marks } = read
		const { seq, objectRef, utcTime: at } = row
		read.upTo = Math.max(read.upTo, seq)
		const by = this.#people.nameOf(row.personId)
		const upTo = objectRef.startsWith(seenRef) ? Number(objectRef.slice(seenRef.length)) : 0
		if (upTo > 0) marks.push({ seq, upTo, by: by ?? row.role, at })
		const what = kindOf(row)
		if (what) happenings.push({ seq, what, whom: this.#whom(objectRef), by, at })
	}
	#whom(objectRef: string): string | undefined {
		const prefix = [aimedAt(''), ofStaff('')].find((start) => objectRef.startsWith(start))
		return prefix === undefined ? undefined : this.#people.nameOf(objectRef.slice(prefix.length))
	}
	list(): OutputOf<'notices.list'> {
		const { happenings, marks, upTo } = this.#read(true)
		return { notices: noticesOf(happenings, marks), upTo }
	}
	/** So many that nobody has marked as seen. */
	unseen(): number {
		const { happenings, marks } = this.#read(false)
		return noticesOf(happenings, marks).filter(({ seen }) => !seen).length
	}
	/** @throws Refusal where the trail has not so many rows, or nothing up to there is new */
	seen({ upTo }: InputOf<'notices.seen'>): OutputOf<'notices.seen'> {
		const read = this.#read(false)
		const { upTo: newest } = read
		const isNew = ({ seq }: Happening) => seq > seenUpTo(read) && seq <= upTo
		if (upTo > newest || !read.happenings.some(isNew))
			throw new Refusal(
				'people.nothing-to-mark',
				'Nothing new stands in these notices. Open the list again, then mark it as seen.',
				[{ path: 'upTo', message: `given ${upTo}, allowed: a row up to ${newest} after the last` }],
			)
		this.#store.audit({ function: 'read', objectRef: `${seenRef}${upTo}`, purpose: 'notices seen' })
		return {}
	}
}
