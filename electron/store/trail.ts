/** Writing the audit trail: who did it, what waits for room on the disk, searches under way. */
import type { AuditEntry } from '../../shared/desk/records/audit.ts'
import { type AuditChain, type OpenRow, type PageWish, whileLocked } from './audit-chain.ts'
import type { Around, Database } from './database.ts'
import { diskTrouble } from './disk.ts'
import type { Keyring } from './keyring.ts'
import type { Order } from './order.ts'

/** Who acts, for the audit trail. */
export interface Actor {
	personId: string | null
	role: string
	purpose: string
}
/** What the caller says of a row; the rest is known or usual. */
export type AuditNote = Partial<AuditEntry> & Pick<AuditEntry, 'function'>
interface TypedSearch {
	entry: AuditEntry
	/** when its first letter was typed, by performance.now() */
	sinceMs: number
	timer: NodeJS.Timeout
}
/**
 * A search that is being typed is one row of the trail: written once it stood still so long, and at
 * the latest after the second time.
 */
const searchSettledMs = 400
const searchLongestMs = 3000

export class Trail implements Around {
	readonly #database: Database
	readonly #keyring: Keyring
	readonly #order: Order
	readonly #chain: AuditChain
	readonly #now: () => Date
	readonly #actor: () => Actor
	/** rows that found no room on the disk */
	#held: AuditEntry[] = []
	/** rows that only the key can write, from while the records were locked */
	#later: AuditEntry[] = []
	#typed: TypedSearch | undefined

	constructor(
		{
			database,
			keyring,
			order,
			chain,
		}: { database: Database; keyring: Keyring; order: Order; chain: AuditChain },
		{ now, actor }: { now: () => Date; actor: () => Actor },
	) {
		this.#database = database
		this.#keyring = keyring
		this.#order = order
		this.#chain = chain
		this.#now = now
		this.#actor = actor
	}
	beginning(): void {
		this.settleSearch()
	}
	undone(): void {
		this.#chain.forget()
	}
	/** Another file was opened: the chain is that file's. */
	opened(): void {
		this.#chain.forget()
	}
	/** Lets go of the rows that waited for room: they belonged to records that were replaced. */
	dropWaiting(): void {
		this.#held = []
		this.#later = []
	}
	/**
	 * Adds a row to the audit trail. Where the disk is full or read-only a reading is not refused:
	 * the row is held and written as soon as there is room.
	 */
	note(entry: AuditNote): void {
		const actor = this.#actor()
		const now = this.#now()
		const whole: AuditEntry = {
			utcTime: now.toISOString(),
			localOffsetMinutes: -now.getTimezoneOffset(),
			playerId: null,
			objectRef: '',
			outcome: 'done',
			...actor,
			...entry,
		}
		if (whole.function === 'search') this.#holdSearch(whole)
		else this.#write(whole)
	}
	/**
	 * Letters added to or taken off a query within a moment belong to one search; another query or
	 * person does not.
	 */
	#holdSearch(entry: AuditEntry): void {
		const before = this.#typed
		const goesOn = before !== undefined && isSameSearch(before, entry)
		if (!goesOn) this.settleSearch()
		clearTimeout(before?.timer)
		this.#typed = {
			entry,
			sinceMs: goesOn ? before.sinceMs : performance.now(),
			timer: setTimeout(() => this.settleSearch(), searchSettledMs).unref(),
		}
	}
	/** Writes the row of the last search; whatever is noted next stands behind it. */
	settleSearch(): void {
		const typed = this.#typed
		if (!typed) return
		this.#typed = undefined
		clearTimeout(typed.timer)
		// a failure here is nobody's call: the row waits and is written with the next one
		try {
			this.#write(typed.entry)
		} catch {
			this.#held.push(typed.entry)
		}
	}
	#write(whole: AuditEntry): void {
		// the letter box is not believed in anything else
		if (!this.#keyring.isOpen && !whileLocked.includes(whole.function)) {
			this.#later.push(whole)
			return
		}
		const inside = this.#database.isTogether
		const { isOpen } = this.#keyring
		const waiting = isOpen ? [...this.#later, ...this.#held] : []
		try {
			this.#database.together(() => {
				for (const entry of [...waiting, whole]) this.#add(entry)
			})
			if (isOpen) {
				this.#held = []
				this.#later = []
			}
		} catch (error) {
			if (inside || !diskTrouble(error)) throw error
			this.#held.push(whole)
		}
	}
	#add(entry: AuditEntry): void {
		this.#chain.add(entry, this.#order.origin, this.#keyring.forTrail())
	}
	/** Rows that wait for room on the disk. */
	get waiting(): number {
		return this.#held.length
	}

	/** Rows before a number, newest first. @throws Error while locked */
	page(before: number, limit: number, wish?: PageWish): OpenRow[] {
		this.#keyring.opened()
		this.settleSearch()
		return this.#chain.page(before, limit, this.#keyring.forTrail(), wish)
	}
	/** Walks the whole chain. @throws Error while locked */
	verify(each: (row: OpenRow) => void): { rows: number; problems: string[] } {
		this.#keyring.opened()
		this.settleSearch()
		return this.#chain.verify(this.#keyring.forTrail(), each)
	}
}
function isSameSearch(before: TypedSearch, entry: AuditEntry): boolean {
	return (
		before.entry.personId === entry.personId &&
		performance.now() - before.sinceMs < searchLongestMs &&
		(entry.objectRef.startsWith(before.entry.objectRef) ||
			before.entry.objectRef.startsWith(entry.objectRef))
	)
}
