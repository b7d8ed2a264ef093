/** The keys while the records are open: who may have them, what is derived from them. */
import { createHmac, randomBytes } from 'node:crypto'
import type { TrailKeys } from './audit-chain.ts'
import { makeBox } from './box.ts'
import { type DataKey, DataKeys, dataKeyOf, freshDataKey, olderKeyRow } from './data-keys.ts'
import { isEnvelope, open, shut } from './envelope.ts'
import {
	type Found,
	type KeySlots,
	makeSlot,
	ownerSlot,
	recoverySlot,
	type Slot,
} from './key-slots.ts'
import { printRecoveryKey, readRecoveryKey } from './recovery.ts'
import { Said } from './said.ts'
import { passphraseBytes, SealBroken, unseal } from './seal.ts'
import type { Settings } from './settings.ts'

/** A data key that nobody uses yet, with the two slots that open it. */
interface FreshKeys {
	key: DataKey
	/** the recovery key as it is printed */
	printed: string
	slots: readonly [owner: Slot, recovery: Slot]
}
/** The recovery key was printed by the first version: a new data key cannot be put behind it. */
class OldRecoveryKey extends Said {
	constructor() {
		super(
			'The recovery key was printed by an earlier version. Print a new recovery key first: the ' +
				'old paper could not open what is written under a new key of the records.',
		)
	}
}
const inUse = 'This passphrase cannot be used. Choose another one.'
const lockedMeanwhile = 'The records were locked meanwhile. Nothing was changed: unlock them again.'
const tooOld =
	'The key of the records was changed since you last unlocked. Ask the owner for a new passphrase.'
const recoveryBytes = 20

export class Keyring {
	readonly #slots: KeySlots
	readonly #settings: Settings
	/** scrypt N of new slots */
	readonly cost: number
	#keys: DataKeys | undefined

	constructor(slots: KeySlots, settings: Settings, cost: number) {
		this.#slots = slots
		this.#settings = settings
		this.cost = cost
	}
	get isOpen(): boolean {
		return this.#keys !== undefined
	}
	/** The data keys; undefined while the records are locked. */
	get keys(): DataKeys | undefined {
		return this.#keys
	}
	/** The data keys. @throws Error in words while the records are locked */
	opened(): DataKeys {
		if (!this.#keys)
			throw new Said('The records are locked. Unlock them first.', { why: 'people.locked' })
		return this.#keys
	}
	/** What stands in the place of a player's or thing's id. @throws Error while locked */
	digest(what: 'about' | 'thing', id: string | undefined): string | null {
		const keys = this.opened()
		const key = keys.derived(keys.root.id, 'about')
		if (id === undefined || !key) return null
		return createHmac('sha256', key).update(`${what}:${id}`).digest('base64url').slice(0, 22)
	}
	/** What the audit trail seals and opens its rows with; while locked only the letter box. */
	forTrail(): TrailKeys {
		return {
			keys: this.#keys,
			boxPublic: this.#keys ? undefined : this.#settings.bytes('box-public'),
			boxPrivate: () => this.sealedSetting('box-private') ?? new Uint8Array(),
		}
	}
	/** The bytes of a sealed setting; undefined where there is none. @throws SealBroken, Error locked */
	sealedSetting(name: string): Uint8Array | undefined {
		const bytes = this.#settings.bytes(name)
		const keys = this.opened()
		if (!bytes) return undefined
		if (isEnvelope(keys, bytes)) return open(keys, bytes, ['setting', name])
		// the letter box of the first versions was sealed under a shorter name
		const before = name === 'box-private' ? 'box' : name
		return unseal(keys.root.reader, before, 'setting', bytes)
	}
	putSealedSetting(name: string, clear: Uint8Array): void {
		this.#settings.put(name, shut(this.opened().newest, clear, ['setting', name]))
	}

	/** Makes a data key and the two slots that open it; nothing is written. */
	async makeFresh(passphrase: string): Promise<FreshKeys> {
		const key = freshDataKey()
		const recovery = randomBytes(recoveryBytes)
		const owner = await makeSlot(ownerSlot, passphraseBytes(passphrase), key.bytes, this)
		const byPaper = await makeSlot(recoverySlot, recovery, key.bytes, this)
		return { key, printed: printRecoveryKey(recovery), slots: [owner, byPaper] }
	}
	/** Writes a fresh key's slots and letter box, and opens with it. */
	begin({ key, slots }: FreshKeys): void {
		this.take(new DataKeys([key]))
		for (const slot of slots) this.#slots.put(slot)
		this.fitMissingBox()
	}
	/** Fits the letter box where there is none. */
	fitMissingBox(): void {
		if (this.#settings.bytes('box-public')) return
		const { publicKey, privateKey } = makeBox()
		this.#settings.put('box-public', publicKey)
		this.putSealedSetting('box-private', privateKey)
	}
	take(keys: DataKeys): void {
		this.#keys = keys
	}
	/** Forgets the keys. */
	lock(): void {
		this.#keys?.forget()
		this.#keys = undefined
	}

	/**
	 * Opens with a person's passphrase.
	 * @throws SealBroken on a wrong passphrase, RangeError where the slot is too old
	 */
	async unlock(passphrase: string): Promise<Found> {
		const found = await this.#slots.find(passphrase)
		if (!found) throw new SealBroken('no slot opens with this passphrase')
		this.#take(found)
		return found
	}
	/**
	 * Opens with the printed key and makes the owner's slot anew; it is among what was found.
	 * @throws RangeError naming the mistyped group, SealBroken on another store's key
	 */
	async unlockWithRecoveryKey(typed: string, newPassphrase: string): Promise<Found> {
		const found = await this.#slots.findRecovery(readRecoveryKey(typed))
		const { salt, cost } = this.#slots.read(ownerSlot)
		const { bytes } = found.keys.newest
		const made = await makeSlot(ownerSlot, passphraseBytes(newPassphrase), bytes, { salt, cost })
		await this.#refuseAnothers(newPassphrase, ownerSlot)
		this.#take(found)
		return { ...found, slot: ownerSlot, toPut: [...found.toPut, made] }
	}
	#take({ toPut, keys }: Found): void {
		// a slot of the first versions holds the first data key and nothing else
		if (toPut.length > 0 && this.#slots.olderKeys().length > 0) throw new RangeError(tooOld)
		this.take(keys)
	}
	/**
	 * Makes a person's slot anew for a passphrase; the old one opens until it is put in place.
	 * @returns what puts it there. @throws Error where it was locked meanwhile
	 * @throws RangeError where another person has the same one
	 */
	async makePassphrase(slot: string, passphrase: string): Promise<() => void> {
		const newest = Buffer.from(this.opened().newest.bytes)
		const { id } = this.opened().newest
		await this.#refuseAnothers(passphrase, slot)
		// one salt for all people: an unlock stretches once, however many work here
		const { salt, cost } = this.#slots.read(ownerSlot)
		const made = await makeSlot(slot, passphraseBytes(passphrase), newest, { salt, cost })
		newest.fill(0)
		return () => {
			this.#mustStillBe(id)
			this.#slots.put(made)
		}
	}
	#mustStillBe(id: string): void {
		if (this.#keys?.newest.id !== id)
			throw new Said(lockedMeanwhile, { why: 'people.locked-meanwhile' })
	}
	/** A new recovery key; the old paper opens until `confirm` is called. @throws Error while locked */
	async newRecoveryKey(): Promise<{ printed: string; confirm: () => void }> {
		const newest = Buffer.from(this.opened().newest.bytes)
		const { id } = this.opened().newest
		const secret = randomBytes(recoveryBytes)
		const made = await makeSlot(recoverySlot, secret, newest, this)
		newest.fill(0)
		const confirm = () => {
			this.#mustStillBe(id)
			this.#slots.put(made)
		}
		return { printed: printRecoveryKey(secret), confirm }
	}
	/**
	 * Makes a new data key for what is written from now on and puts it into every slot; the caller
	 * decides on the transaction and takes the keys once it is whole.
	 * @throws OldRecoveryKey where the printed key could not open it
	 */
	changeDataKey(): DataKeys {
		const keys = this.opened()
		if (this.#slots.ofOldForm().includes(recoverySlot)) throw new OldRecoveryKey()
		const next = freshDataKey()
		this.#slots.keepOlderKey(olderKeyRow(keys.newest, next, keys.all().length))
		this.#slots.putInAll(next.bytes)
		return keys.followedBy(dataKeyOf(next.bytes))
	}
	async #refuseAnothers(passphrase: string, slot: string): Promise<void> {
		const taken = await this.#slots.find(passphrase)
		taken?.keys.forget()
		if (taken && taken.slot !== slot) throw new RangeError(inUse)
	}
}
