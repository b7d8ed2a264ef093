/**
 * The sealed, append-only record store on node:sqlite: one face for what it is made of. Where a
 * record is sealed: record.ts; its kinds: kinds.ts; the keys: keyring.ts and key-slots.ts.
 */
import type { Carried } from '../../shared/desk/outreach/carried.ts'
import type { BackupName, BackupReason } from '../../shared/desk/records/backup-name.ts'
import { settleIn } from './at-unlock.ts'
import type { OpenRow } from './audit-chain.ts'
import { type BackupPlace, backupsIn } from './backup-list.ts'
import type { BackupPreview } from './backups.ts'
import type { CardOf, OpenCard } from './cards.ts'
import { destroyForGood } from './destruction.ts'
import { inWords } from './disk.ts'
import { filesIn, type StoreFiles, takeFolder } from './folder.ts'
import { ownerSlot } from './key-slots.ts'
import type { Kind } from './kinds.ts'
import { type Opening, openAtStart } from './opening.ts'
import { assemble, lockUp, type Parts } from './parts.ts'
import { decode, encode, type NewRecord, type StoredRecord } from './record.ts'
import { restoreFrom } from './restore.ts'
import { scryptCost, seal, unseal } from './seal.ts'
import { setUp } from './set-up.ts'
import type { Actor, AuditNote } from './trail.ts'
import { verifyTrail } from './verification.ts'

export { ownerSlot } from './key-slots.ts'
export type { Kind } from './kinds.ts'
export type { NewRecord, StoredRecord } from './record.ts'
export type { Actor } from './trail.ts'

interface StoreOptions {
	/** scrypt N of new wrappings */
	cost?: number
	now?: () => Date
	/** who acts, for the audit trail */
	actor?: () => Actor
	backupFolder?: string
}
/** Wrong tries of unlocking. */
interface Tries {
	wrong: number
	lastMs: number
	waitMs: number
}
const nobody: Actor = { personId: null, role: 'nobody', purpose: '' }

export class Store {
	readonly #files: StoreFiles
	readonly #parts: Parts
	readonly #clock: () => Date
	readonly #release: () => void
	/** Where backups go unless another folder is named. */
	backupFolder: string
	/** What the person should know about the opening, in words. */
	readonly notices: string[] = []

	/**
	 * Opens or creates the store. @throws Error where it is open elsewhere, was written by a newer
	 * version, or the folder cannot be written
	 */
	constructor(folder: string, options: StoreOptions = {}) {
		const { cost = scryptCost, now = () => new Date(), actor = () => nobody } = options
		this.#clock = now
		this.#files = filesIn(folder)
		this.#parts = assemble(this.#files, { cost, now, actor })
		this.backupFolder = options.backupFolder ?? folder
		this.#release = takeFolder(folder)
		try {
			openAtStart(this.#opening(), () => this.backups())
		} catch (error) {
			this.#release()
			throw inWords(error, folder)
		}
	}
	#now(): string {
		return this.#clock().toISOString()
	}
	#opening(): Opening {
		const [parts, files, notices] = [this.#parts, this.#files, this.notices]
		return { parts, files, notices, now: () => this.#now() }
	}
	/** All of it or none of it; one inside another belongs to the outer one. */
	together<T>(work: () => T): T {
		return this.#parts.database.together(work)
	}
	close(): void {
		this.lock()
		this.#parts.trail.close()
		this.#parts.database.close()
		this.#release()
	}

	get isSetUp(): boolean {
		return this.#parts.slots.isSetUp
	}
	get isOpen(): boolean {
		return this.#parts.keyring.dataKey !== undefined
	}
	/** The name of this store in the order that all stores agree on. */
	get origin(): string {
		return this.#parts.order.origin
	}
	/** scrypt N of new wrappings. */
	get cost(): number {
		return this.#parts.keyring.cost
	}
	/** Wrong tries of unlocking, kept across restarts; no secret in it. */
	get tries(): Tries {
		const text = this.#parts.settings.text('tries')
		return text ? (JSON.parse(text) as Tries) : { wrong: 0, lastMs: 0, waitMs: 0 }
	}
	set tries(value: Tries) {
		this.#parts.settings.put('tries', JSON.stringify(value))
	}
	/** A small sealed note of this store itself, never merged; undefined while locked. */
	sealedSetting(name: string): unknown {
		const bytes = this.#parts.settings.bytes(name)
		const key = this.#parts.keyring.dataKey
		return bytes && key ? decode(unseal(key, name, 'setting', bytes)) : undefined
	}
	setSealedSetting(name: string, value: unknown): void {
		this.#parts.settings.put(
			name,
			seal(this.#parts.keyring.opened(), name, 'setting', encode(value)),
		)
	}

	/**
	 * Makes the data key and its two wrappings; what `fill` writes belongs to the same transaction.
	 * @returns the recovery key to print; it is kept nowhere
	 */
	setUp(passphrase: string, fill?: () => void): Promise<string> {
		return setUp(this.#parts, passphrase, fill)
	}
	/**
	 * @returns the slot of the person whose passphrase it is. @throws SealBroken on a wrong
	 * passphrase
	 */
	async unlock(passphrase: string): Promise<string> {
		const slot = await this.#parts.keyring.unlock(passphrase)
		this.#settleIn()
		return slot
	}
	/**
	 * Gives the owner a new passphrase. @throws RangeError naming the mistyped group, SealBroken on
	 * another store's key
	 */
	async unlockWithRecoveryKey(typed: string, newPassphrase: string): Promise<string> {
		await this.#parts.keyring.unlockWithRecoveryKey(typed, newPassphrase)
		this.#settleIn()
		return ownerSlot
	}
	#settleIn(): void {
		this.together(() => {
			this.notices.push(...settleIn(this.#parts, this.#now()))
		})
	}
	/** @throws RangeError where another person has the same one */
	setPassphrase(slot: string, passphrase: string): Promise<void> {
		return this.#parts.keyring.setPassphrase(slot, passphrase)
	}
	/** Whether a passphrase is that of a slot. */
	async isPassphraseOf(slot: string, passphrase: string): Promise<boolean> {
		return (await this.#parts.slots.find(passphrase))?.slot === slot
	}
	dropSlot(slot: string): void {
		this.#parts.slots.drop(slot)
	}
	lock(): void {
		lockUp(this.#parts)
	}

	/** Appends one record with its card and its audit row. @returns its id */
	append(record: NewRecord): string {
		return this.#parts.records.append(record)
	}
	/** One record by id. @throws Error where there is none, SealBroken where it is damaged */
	read(id: string): StoredRecord {
		return this.#parts.records.read(id)
	}
	has(id: string): boolean {
		return this.#parts.records.has(id)
	}
	get recordCount(): number {
		return this.#parts.records.count
	}
	/** Records of the kinds in order of writing; damaged ones are named and the rest still load. */
	load(kinds: readonly Kind[]): { records: StoredRecord[]; damaged: string[] } {
		return this.#parts.records.load(kinds)
	}
	/** The same one by one, so that the sealed bytes of many need not stand in memory together. */
	each(kinds: readonly Kind[], use: (record: StoredRecord) => void, damaged: string[]): void {
		this.#parts.records.each(kinds, use, damaged)
	}

	/** The card of a record: made with it, or made again from it. */
	putCard(id: string, kind: Kind, card: CardOf): void {
		this.#parts.cards.put(id, kind, card)
	}
	/** Records of a kind that have no card yet (written by an earlier version). */
	withoutCard(kinds: readonly Kind[]): { id: string; kind: Kind; follows: string | undefined }[] {
		return this.#parts.cards.missing(kinds)
	}
	/**
	 * Cards about a player, in order of writing. A damaged card is skipped: its record is the truth.
	 */
	cardsAbout(kind: Kind, playerId: string): OpenCard[] {
		return this.#parts.cards.about(kind, playerId)
	}
	/** Cards of the versions of a thing, in order of writing. */
	cardsOf(kind: Kind, thing: string): OpenCard[] {
		return this.#parts.cards.of(kind, thing)
	}
	/** Ids of all records about a player. */
	recordsAbout(playerId: string): string[] {
		return this.#parts.cards.recordsAbout(playerId)
	}
	/** Time of the last entry about each player of the list. */
	lastEntries(playerIds: readonly string[]): Map<string, { first: string; last: string }> {
		return this.#parts.cards.lastEntries(playerIds)
	}

	saveDraft(id: string, at: string, value: unknown): void {
		this.#parts.drafts.save(id, at, value)
	}
	/** @returns undefined where there is no such draft. @throws SealBroken where it is damaged */
	draft(id: string): { at: string; value: unknown } | undefined {
		return this.#parts.drafts.read(id)
	}
	draftIds(): string[] {
		return this.#parts.drafts.ids()
	}
	dropDraft(id: string): void {
		this.#parts.drafts.drop(id)
	}

	/**
	 * Adds a row to the audit trail. Where the disk is full or read-only a reading is not refused:
	 * the row is held and written as soon as there is room.
	 */
	audit(entry: AuditNote): void {
		this.#parts.trail.note(entry)
	}
	/** Rows that wait for room on the disk. */
	get auditWaiting(): number {
		return this.#parts.trail.waiting
	}
	auditPage(before: number, limit: number, wanted?: (row: OpenRow) => boolean): OpenRow[] {
		return this.#parts.trail.page(before, limit, wanted)
	}
	/**
	 * The chain, the records it names, and the records of earlier versions: a sentence for each
	 * fault.
	 */
	verify(destroyed: ReadonlySet<string>): { rows: number; problems: string[] } {
		return verifyTrail(this.#parts, destroyed)
	}

	/** Records as they travel, in the common order; `wanted` gets the kind and the player. */
	carry(
		playerIds: readonly string[],
		wanted: (kind: Kind, about: string | undefined) => boolean,
	): Carried[] {
		return this.#parts.travelling.carry(playerIds, wanted)
	}
	/** Whether a record that comes in is here already, whole and the same. */
	holds(coming: Carried): 'no' | 'same' | 'other' {
		return this.#parts.travelling.holds(coming)
	}
	/** Takes in a record of another store: author, time and place in the order stay as they are. */
	takeIn(coming: Carried): void {
		this.#parts.travelling.takeIn(coming)
	}
	/**
	 * Removes records for good and keeps what `register` writes, in one transaction; then the freed
	 * bytes are overwritten.
	 */
	destroy(recordIds: readonly string[], draftIds: readonly string[], register: () => void): void {
		destroyForGood(this.#parts, recordIds, draftIds, register)
	}

	/** The backups in the backup folder and beside the records, newest first. */
	backups(): BackupPlace[] {
		const { folder } = this.#files
		return backupsIn([this.backupFolder, folder], { folder, origins: new Set([this.origin]) })
	}
	/** A dated backup, checked record by record; one at a time. @throws BackupRefused in words */
	backup(reason: BackupReason, folder = this.backupFolder): Promise<BackupName> {
		return this.#parts.backups.make(reason, folder, () => this.#now())
	}
	/** Resolves when no backup is being written. */
	backupsDone(): Promise<void> {
		return this.#parts.backups.done()
	}
	/** What a backup holds. @throws BackupRefused */
	preview(file: string): BackupPreview {
		return this.#parts.backups.preview(file)
	}
	/**
	 * Puts a backup in the place of the records. What stands now is backed up first and never lost.
	 * @throws BackupRefused
	 */
	restore(file: string): Promise<{ before?: BackupName }> {
		return restoreFrom(this.#opening(), file, () => this.backup('before-restore'))
	}
}
