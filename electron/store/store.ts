/**
 * The sealed, append-only record store on node:sqlite: one face for what it is made of. Where a
 * record is sealed: record.ts; its kinds: kinds.ts; the keys: keyring.ts and key-slots.ts.
 */
import type { Carried } from '../../shared/desk/outreach/carried.ts'
import type { OpenRow, PageWish } from './audit-chain.ts'
import { signContent } from './author.ts'
import { BackedUpStore } from './backed-up-store.ts'
import type { OpenCard, RemakeCard } from './cards.ts'
import { inWords } from './disk.ts'
import { filesIn, outsideFolder, takeFolder } from './folder.ts'
import type { FolderLock } from './lock.ts'
import { openAtStart } from './opening.ts'
import { damagedWords, type NewRecord, type StoredRecord } from './record.ts'
import { scryptCost } from './seal.ts'
import type { Sharing } from './sharing.ts'
import { knownAuthors, type Signature, signatureOf } from './signatures.ts'
import type { Actor, AuditNote } from './trail.ts'
import type { Damaged, Wanted } from './travelling.ts'
import { type Verified, verifyAll, verifySteps } from './verification.ts'

export type { RemakeCard } from './cards.ts'
export { ownerSlot } from './key-slots.ts'
export type { NewRecord, StoredRecord } from './record.ts'
export type { Actor } from './trail.ts'

interface StoreOptions {
	/** scrypt N of new wrappings */
	cost?: number
	now?: () => Date
	/** who acts, for the audit trail */
	actor?: () => Actor
	backupFolder?: string
	/** where the second head is kept; beside what other programs remember of this PC */
	outside?: string
	/** cards of records of the first versions, which do not hold them */
	remakeCard?: RemakeCard
	/** whether a copy of the folder is nothing to tell anybody of, as with the demo's */
	isCopyMeant?: boolean
	/** told of each record that a list had to leave out since it is damaged, in words */
	tellDamage?: (says: string) => void
}
const nobody: Actor = { personId: null, role: 'nobody', purpose: '' }

export class Store extends BackedUpStore {
	readonly #tellDamage: (says: string) => void
	readonly #held: FolderLock

	/**
	 * Opens or creates the store. @throws Error where it is open elsewhere, was written by a newer
	 * version, or the folder cannot be written
	 */
	constructor(folder: string, options: StoreOptions = {}) {
		const { cost = scryptCost, now = () => new Date(), actor = () => nobody } = options
		const { outside = outsideFolder(), remakeCard: remake = () => undefined } = options
		const files = filesIn(folder, outside)
		super(files, { cost, now, actor, remake }, options.backupFolder ?? folder)
		this.isCopyMeant = options.isCopyMeant ?? false
		this.#tellDamage = options.tellDamage ?? (() => {})
		this.#held = takeFolder(folder, (words) => this.#lost(words))
		try {
			openAtStart(this.opening(), () => this.backups())
			this.notices.push(...this.#held.notices)
		} catch (error) {
			this.#held.release()
			throw inWords(error, folder)
		}
	}
	close(): void {
		this.lock()
		this.parts.heads.close()
		this.parts.database.close()
		this.#held.release()
	}
	/** Another PC holds the folder: nothing more is written here. */
	#lost(words: string): void {
		this.notices.push(words)
		try {
			this.lock()
		} catch {
			this.parts.keyring.lock()
		}
	}
	/** As it is, and @throws FolderTaken where another PC holds the folder meanwhile. */
	override async unlock(passphrase: string): Promise<string> {
		this.#held.mustHold()
		return super.unlock(passphrase)
	}
	override async unlockWithRecoveryKey(typed: string, newPassphrase: string): Promise<string> {
		this.#held.mustHold()
		return super.unlockWithRecoveryKey(typed, newPassphrase)
	}

	/** The name of this installation in the order that all stores agree on. */
	get origin(): string {
		return this.parts.order.origin
	}
	/** The name of these records, the same in every copy of them. */
	get recordsId(): string {
		return this.parts.order.recordsId
	}
	/** Names that this store wrote under before it was restored, moved or copied. */
	get formerOrigins(): string[] {
		return this.parts.order.former
	}
	/** Appends one record with its card and its audit row. @returns its id */
	append(record: NewRecord): string {
		return this.parts.records.append(record)
	}
	/** One record by id. @throws Error where there is none, SealBroken where it is damaged */
	read(id: string): StoredRecord {
		return this.parts.records.read(id)
	}
	has(id: string): boolean {
		return this.parts.records.has(id)
	}
	get recordCount(): number {
		return this.parts.records.count
	}
	/** The kinds of which there are records, those of a newer version too. */
	kinds(): string[] {
		return this.parts.records.kinds()
	}
	/** Records of the kinds in order of writing; damaged ones are named and the rest still load. */
	load(kinds: readonly string[]): { records: StoredRecord[]; damaged: string[] } {
		return this.parts.records.load(kinds)
	}
	/** The same one by one, so that the sealed bytes of many need not stand in memory together. */
	each(kinds: readonly string[], use: (record: StoredRecord) => void, damaged: string[]): void {
		this.parts.records.each(kinds, use, damaged)
	}

	/**
	 * Cards about a player, in order of writing. A damaged card is read from its record; where that is
	 * damaged too, it is left out and told.
	 */
	cardsAbout(kind: string, playerId: string): OpenCard[] {
		return this.parts.cards.about(kind, playerId, (row) => this.#tellDamage(damagedWords(row)))
	}
	/**
	 * Cards of the versions of a thing, in order of writing.
	 * @throws SealBroken where one is damaged, and its record too
	 */
	cardsOf(kind: string, thing: string): OpenCard[] {
		return this.parts.cards.of(kind, thing)
	}
	/** Ids of all records about a player, of one kind where it is given, in order of writing. */
	recordsAbout(playerId: string, kind?: string): string[] {
		return this.parts.cards.recordsAbout(playerId, kind)
	}
	/** Time of the last entry about each player of the list. */
	lastEntries(playerIds: readonly string[]): Map<string, { first: string; last: string }> {
		return this.parts.cards.lastEntries(playerIds)
	}

	saveDraft(id: string, at: string, value: unknown): void {
		this.parts.drafts.save(id, at, value)
	}
	/** @returns undefined where there is no such draft. @throws SealBroken where it is damaged */
	draft(id: string): { at: string; value: unknown } | undefined {
		return this.parts.drafts.read(id)
	}
	draftIds(): string[] {
		return this.parts.drafts.ids()
	}
	dropDraft(id: string): void {
		this.parts.drafts.drop(id)
	}

	/**
	 * Adds a row to the audit trail. Where the disk is full or read-only a reading is not refused:
	 * the row is held and written as soon as there is room.
	 */
	audit(entry: AuditNote): void {
		this.parts.trail.note(entry)
	}
	/** Rows that wait for room on the disk. */
	get auditWaiting(): number {
		return this.parts.trail.waiting
	}
	auditPage(before: number, limit: number, wish?: PageWish): OpenRow[] {
		return this.parts.trail.page(before, limit, wish)
	}
	/**
	 * Trail, heads, roll, every record, card, draft and setting: a sentence for each fault.
	 */
	verify(destroyed: ReadonlySet<string>): { rows: number; problems: string[] } {
		return verifyAll(this.parts, destroyed)
	}
	/** The same, a step for each record; the last one gives the answer. */
	verifying(destroyed: ReadonlySet<string>): Iterable<Verified | undefined> {
		return verifySteps(this.parts, destroyed)
	}

	/**
	 * Records as they travel, in the common order; `wanted` gets the kind and the player.
	 * @param damaged gets the place of each record that cannot be read and stays here
	 */
	carry(playerIds: readonly string[], wanted: Wanted, damaged?: Damaged): Carried[] {
		return this.parts.travelling.carry(playerIds, wanted, damaged)
	}
	/**
	 * The same, a step for each record here; what does not travel is an empty one. What is written
	 * meanwhile is not in it.
	 */
	carrying(playerIds: readonly string[], wanted: Wanted, damaged?: Damaged): Iterable<Carried[]> {
		return this.parts.travelling.carrying(playerIds, wanted, damaged)
	}
	/** Differs as soon as a record was written or destroyed. */
	get state(): string {
		return `${this.recordCount} ${this.lastTick}`
	}
	/** Whether a record that comes in is here already, whole and the same. */
	holds(coming: Carried): 'no' | 'same' | 'other' {
		return this.parts.travelling.holds(coming)
	}
	/**
	 * Whether a record was written by the installation that it names.
	 * @param further public keys that are not known here yet, base64 by origin
	 */
	signatureOf(record: Carried, further: ReadonlyMap<string, string> = new Map()): Signature {
		const { records } = this.parts
		const { version = 1, number = 0 } = record
		const authors = new Map([...further, ...knownAuthors(records)])
		return signatureOf({ ...record, version, number }, authors)
	}
	/** A record that is not kept here, signed by this installation. @throws Error while locked */
	signed(record: Carried): Carried {
		const { version = 1, number = 0 } = record
		const whole = { ...record, version, number }
		return { ...whole, signature: signContent(this.parts.installation.signer(), whole) }
	}
	/** The highest place that a record here has in the common order. */
	get lastTick(): number {
		return this.parts.roll.last(this.origin).tick
	}
	/** What is shared over a server. */
	get sharing(): Sharing {
		return this.parts.sharing
	}
	/** Takes in a record of another store: author, time and place in the order stay as they are. */
	takeIn(coming: Carried): void {
		this.parts.travelling.takeIn(coming)
	}
}
