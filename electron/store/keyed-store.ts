/** The keys of a store as the services see them: set up, unlocked, locked, changed. */
import type { Alarm } from './alarms.ts'
import { settleIn } from './at-unlock.ts'
import { inWords } from './disk.ts'
import type { StoreFiles } from './folder.ts'
import { lockUp } from './forgetting.ts'
import { ownerSlot, type Slot } from './key-slots.ts'
import type { Parts } from './parts.ts'
import { decode, encode } from './record.ts'
import { setUp } from './set-up.ts'

/** Wrong tries of unlocking. */
interface Tries {
	wrong: number
	lastMs: number
	waitMs: number
}
export class KeyedStore {
	protected readonly parts: Parts
	protected readonly files: StoreFiles
	readonly #clock: () => Date
	/** What the person should know about the opening of the files, in words. */
	readonly notices: string[] = []
	#found: string[] = []
	/** whether a copy of the folder is nothing to tell anybody of, as with the demo's */
	protected isCopyMeant = false
	constructor(parts: Parts, files: StoreFiles, clock: () => Date) {
		this.parts = parts
		this.files = files
		this.#clock = clock
	}
	protected now(): string {
		return this.#clock().toISOString()
	}
	/**
	 * Runs once the outermost transaction is committed, at once outside of one; not at all where it
	 * is rolled back.
	 */
	afterCommit(work: () => void): void {
		this.parts.database.afterCommit(work)
	}
	/** All of it or none of it; one inside another belongs to the outer one. */
	together<T>(work: () => T): T {
		return this.parts.database.together(work)
	}
	/** What the last unlock found, in words; empty while locked. */
	get found(): readonly string[] {
		return this.#found
	}
	get isSetUp(): boolean {
		return this.parts.slots.isSetUp
	}
	get isOpen(): boolean {
		return this.parts.keyring.isOpen
	}
	/** scrypt N of new wrappings. */
	get cost(): number {
		return this.parts.keyring.cost
	}
	/** Wrong tries of unlocking, kept across restarts; no secret in it. */
	get tries(): Tries {
		const text = this.parts.settings.text('tries')
		return text ? (JSON.parse(text) as Tries) : { wrong: 0, lastMs: 0, waitMs: 0 }
	}
	set tries(value: Tries) {
		this.parts.settings.put('tries', JSON.stringify(value))
	}
	/** A small sealed note of this store itself, never merged; undefined while locked. */
	sealedSetting(name: string): unknown {
		if (!this.isOpen) return undefined
		const bytes = this.parts.keyring.sealedSetting(name)
		return bytes && decode(bytes)
	}
	setSealedSetting(name: string, value: unknown): void {
		this.parts.keyring.putSealedSetting(name, encode(value))
	}

	/**
	 * Makes the data key and its two slots; what `fill` writes belongs to the same transaction.
	 * @returns the recovery key to print; it is kept nowhere
	 */
	setUp(passphrase: string, fill?: () => void): Promise<string> {
		return setUp(this.parts, passphrase, () => this.#settleIn([]), fill)
	}
	/**
	 * @returns the slot of the person whose passphrase it is. @throws SealBroken on a wrong
	 * passphrase, RangeError where the slot is older than the key of the records
	 */
	async unlock(passphrase: string): Promise<string> {
		const { slot, toPut } = await this.parts.keyring.unlock(passphrase)
		this.#settleIn(toPut)
		return slot
	}
	/**
	 * Gives the owner a new passphrase. @throws RangeError naming the mistyped group, SealBroken on
	 * another store's key
	 */
	async unlockWithRecoveryKey(typed: string, newPassphrase: string): Promise<string> {
		const { toPut } = await this.parts.keyring.unlockWithRecoveryKey(typed, newPassphrase)
		this.#settleIn(toPut)
		return ownerSlot
	}
	#settleIn(toPut: readonly Slot[]): void {
		const { records } = this.files
		try {
			this.#found = settleIn(this.parts, {
				...{ now: this.now(), records, toPut },
				isCopyMeant: this.isCopyMeant,
			})
		} catch (error) {
			this.lock()
			throw inWords(error, this.files.folder)
		}
	}
	/**
	 * Gives a person a passphrase; the old one opens until the new one is known to. What `fill` writes
	 * belongs to the same transaction.
	 * @throws RangeError where another person has the same one, Error where it was locked meanwhile
	 */
	async setPassphrase(slot: string, passphrase: string, fill = () => {}): Promise<void> {
		const put = await this.parts.keyring.makePassphrase(slot, passphrase)
		this.together(() => {
			put()
			fill()
		})
	}
	/** A new recovery key to print; the old paper opens until `confirm` is called. */
	newRecoveryKey(): Promise<{ printed: string; confirm: () => void }> {
		return this.parts.keyring.newRecoveryKey()
	}
	/**
	 * A new data key for all that is written from now on; whoever has a slot opens it too.
	 * @throws OldRecoveryKey where the printed key is of an earlier version
	 */
	changeDataKey(): void {
		const { database, keyring } = this.parts
		const keys = this.together(() => keyring.changeDataKey())
		database.afterCommit(() => keyring.take(keys))
	}
	/** Slots that hold no newer data key until their person unlocks once. */
	slotsOfOldForm(): string[] {
		return this.parts.slots.ofOldForm()
	}
	/** What was found amiss with the records and nobody has looked into yet. */
	alarms(): Alarm[] {
		return this.parts.alarms.open()
	}
	/**
	 * The owner has looked into it: from now on the heads go by what is there, and the list of the
	 * settings and drafts by what lies in the file.
	 * @param why stands in the audit trail
	 */
	settleAlarms(why: string): void {
		const settled = new Set(this.alarms().map(({ says }) => says))
		this.together(() => {
			this.parts.alarms.clear()
			this.parts.trail.note({
				function: 'verify',
				objectRef: 'alarms',
				purpose: `looked into: ${why}`,
			})
		})
		this.parts.keeper.settle()
		this.#found = this.#found.filter((says) => !settled.has(says))
	}
	/** Whether a passphrase is that of a slot. */
	async isPassphraseOf(slot: string, passphrase: string): Promise<boolean> {
		return (await this.parts.slots.find(passphrase))?.slot === slot
	}
	/** Whether anybody's passphrase is this one; whose is not told. */
	async isSomebodysPassphrase(passphrase: string): Promise<boolean> {
		return (await this.parts.slots.find(passphrase)) !== undefined
	}
	dropSlot(slot: string): void {
		this.parts.slots.drop(slot)
	}
	lock(): void {
		this.#found = []
		lockUp(this.parts)
	}
}
