/** The keys while the records are open: who may have them, what is derived from them. */
import { createHmac, createSecretKey, hkdfSync, type KeyObject, randomBytes } from 'node:crypto'
import type { TrailKeys } from './audit-chain.ts'
import { makeBox } from './box.ts'
import { type KeySlots, ownerSlot, recoverySlot } from './key-slots.ts'
import { readRecoveryKey } from './recovery.ts'
import { passphraseBytes, SealBroken, seal, unseal, unwrap, type Wrapped, wrap } from './seal.ts'
import type { Settings } from './settings.ts'

/** A data key that nobody uses yet, with its two wrappings. */
interface FreshKeys {
	key: Uint8Array
	recovery: Uint8Array
	byPassphrase: Wrapped
	byRecovery: Wrapped
}
const inUse = 'This passphrase cannot be used. Choose another one.'

export class Keyring {
	readonly #slots: KeySlots
	readonly #settings: Settings
	/** scrypt N of new wrappings */
	readonly cost: number
	#key: Uint8Array | undefined
	#digestKey: Uint8Array | undefined
	#reader: KeyObject | undefined

	constructor(slots: KeySlots, settings: Settings, cost: number) {
		this.#slots = slots
		this.#settings = settings
		this.cost = cost
	}
	/** The data key; undefined while the records are locked. */
	get dataKey(): Uint8Array | undefined {
		return this.#key
	}
	/** The data key. @throws Error in words while the records are locked */
	opened(): Uint8Array {
		if (!this.#key) throw new Error('The records are locked. Unlock them first.')
		return this.#key
	}
	/** The data key for opening many records one after another. @throws Error while locked */
	reader(): KeyObject | Uint8Array {
		return this.#reader ?? this.opened()
	}
	/** What stands in the place of a player's or thing's id. @throws Error while locked */
	digest(what: 'about' | 'thing', id: string | undefined): string | null {
		this.opened()
		if (id === undefined || !this.#digestKey) return null
		return createHmac('sha256', this.#digestKey)
			.update(`${what}:${id}`)
			.digest('base64url')
			.slice(0, 22)
	}
	/** What the audit trail seals and opens its rows with; while locked only the letter box. */
	forTrail(): TrailKeys {
		return {
			dataKey: this.#key,
			boxPublic: this.#key ? undefined : this.#settings.bytes('box-public'),
			boxPrivate: () =>
				unseal(
					this.opened(),
					'box',
					'setting',
					this.#settings.bytes('box-private') ?? new Uint8Array(),
				),
		}
	}

	/** Makes a data key and wraps it twice; nothing is written. */
	async makeFresh(passphrase: string): Promise<FreshKeys> {
		const key = randomBytes(32)
		const recovery = randomBytes(20)
		const byPassphrase = await wrap(key, ownerSlot, passphraseBytes(passphrase), this.cost)
		const byRecovery = await wrap(key, recoverySlot, recovery, this.cost)
		return { key, recovery, byPassphrase, byRecovery }
	}
	/** Writes a fresh key's wrappings and letter box, and opens with it. */
	begin({ key, byPassphrase, byRecovery }: FreshKeys): void {
		this.#slots.put(ownerSlot, byPassphrase)
		this.#slots.put(recoverySlot, byRecovery)
		this.#fitBox(key)
		this.#take(key)
	}
	/** Fits the letter box where a store of the first version has none. */
	fitMissingBox(): void {
		if (!this.#settings.bytes('box-public')) this.#fitBox(this.opened())
	}
	#fitBox(key: Uint8Array): void {
		const { publicKey, privateKey } = makeBox()
		this.#settings.put('box-public', publicKey)
		this.#settings.put('box-private', seal(key, 'box', 'setting', privateKey))
	}
	#take(key: Uint8Array): void {
		this.#key = key
		this.#digestKey = Buffer.from(hkdfSync('sha256', key, '', 'lastwright about', 32))
		// the cipher takes a key object wherever it takes bytes, and is spared making one for each of
		// thousands of records
		this.#reader = createSecretKey(key)
	}
	/** Forgets the keys. */
	lock(): void {
		this.#key?.fill(0)
		this.#key = undefined
		this.#digestKey = undefined
		this.#reader = undefined
	}

	/**
	 * Opens with a person's passphrase.
	 * @returns that person's slot
	 * @throws SealBroken on a wrong passphrase
	 */
	async unlock(passphrase: string): Promise<string> {
		const found = await this.#slots.find(passphrase)
		if (!found) throw new SealBroken('no slot opens with this passphrase')
		this.#take(found.key)
		return found.slot
	}
	/**
	 * Opens with the printed key and gives the owner a new passphrase.
	 * @throws RangeError naming the mistyped group, SealBroken on another store's key
	 */
	async unlockWithRecoveryKey(typed: string, newPassphrase: string): Promise<void> {
		const key = await unwrap(this.#slots.read(recoverySlot), recoverySlot, readRecoveryKey(typed))
		const wrapped = await wrap(key, ownerSlot, passphraseBytes(newPassphrase), this.cost)
		await this.#refuseAnothers(newPassphrase, ownerSlot)
		this.#slots.put(ownerSlot, wrapped)
		this.#take(key)
	}
	/** Gives a person a passphrase. @throws RangeError where another person has the same one */
	async setPassphrase(slot: string, passphrase: string): Promise<void> {
		const key = this.opened()
		await this.#refuseAnothers(passphrase, slot)
		// one salt for all people: an unlock stretches once, however many work here
		const { salt, cost } = this.#slots.read(ownerSlot)
		this.#slots.put(slot, await wrap(key, slot, passphraseBytes(passphrase), cost, salt))
	}
	async #refuseAnothers(passphrase: string, slot: string): Promise<void> {
		const taken = await this.#slots.find(passphrase)
		if (taken && taken.slot !== slot) throw new RangeError(inUse)
	}
}
