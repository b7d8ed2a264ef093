/**
 * Who may open the data keys, as it lies in the file: a slot for each person and one for the printed
 * key. A slot is a pair of keys: the passphrase opens the private one, and by the public one the
 * newest data key is put in, so that it can change without anybody's passphrase.
 */
import { randomBytes } from 'node:crypto'
import { dropIn, makeBox, takeOut } from './box.ts'
import { type DataKeys, type OlderKeyRow, openDataKeys } from './data-keys.ts'
import type { Database } from './database.ts'
import { digestOfBytes } from './inventory.ts'
import { Said } from './said.ts'
import { passphraseBytes, SealBroken, seal, stretch, unseal } from './seal.ts'

/** The slot of the owner's passphrase; every other person has one of their own. */
export const ownerSlot = 'passphrase'
/** The slot of the printed recovery key. */
export const recoverySlot = 'recovery'

/** A slot as it lies in the file. */
export interface Slot {
	slot: string
	/** scrypt N */
	cost: number
	salt: Uint8Array
	/** the private key; in a slot of the first versions the data key itself */
	sealed: Uint8Array
	/** absent in a slot of the first versions */
	public: Uint8Array | null
	/** the newest data key, put in by the public key */
	box: Uint8Array | null
}
/** What a secret opened. */
export interface Found {
	slot: string
	keys: DataKeys
	/** slots to be put in place once the records are open: those in the present form */
	toPut: readonly Slot[]
}
const slotName = (slot: string) => `slot ${slot}`
const olderKeyName = (number: number) => `key ${number}`
const slotDigest = ({ cost, salt, sealed, public: key, box }: Slot) =>
	digestOfBytes(String(cost), salt, sealed, key ?? '', box ?? '')
const columns = 'slot, cost, salt, sealed, public, box'

/** scrypt N that a slot may ask for */
const [leastCost, mostCost] = [2, 2 ** 20]
const isSensibleCost = (cost: number) =>
	cost >= leastCost && cost <= mostCost && Number.isInteger(Math.log2(cost))

/** A slot that a stretched secret opens. */
function slotOf(
	place: Pick<Slot, 'slot' | 'cost' | 'salt'>,
	stretched: Uint8Array,
	newest: Uint8Array,
): Slot {
	const { publicKey, privateKey } = makeBox()
	return {
		...place,
		sealed: seal(stretched, place.slot, 'slot', privateKey),
		public: publicKey,
		box: dropIn(publicKey, place.slot, 'datakey', newest),
	}
}
/**
 * A slot that a secret opens, tried before it is given out: a slot that does not open must never
 * take the place of one that does.
 * @param salt where several slots share one, unlocking stretches once for all of them
 * @throws SealBroken
 */
export async function makeSlot(
	slot: string,
	secret: Uint8Array,
	newest: Uint8Array,
	{ cost, salt = randomBytes(16) }: { cost: number; salt?: Uint8Array },
): Promise<Slot> {
	const own = Buffer.from(newest)
	const stretched = await stretch(secret, salt, cost)
	const made = slotOf({ slot, cost, salt }, stretched, own)
	const opened = newestIn(made, stretched)
	if (!own.equals(opened.newest)) throw new SealBroken('a new key slot does not open')
	return made
}
/** The data key in a slot: the newest one, or the first where the slot is of the first versions. */
function newestIn(slot: Slot, stretched: Uint8Array): { newest: Uint8Array; isOld: boolean } {
	if (!slot.public || !slot.box)
		return { newest: unseal(stretched, slot.slot, 'keyslot', slot.sealed), isOld: true }
	const privateKey = unseal(stretched, slot.slot, 'slot', slot.sealed)
	return { newest: takeOut(privateKey, slot.slot, 'datakey', slot.box), isOld: false }
}

export class KeySlots {
	readonly #database: Database
	constructor(database: Database) {
		this.#database = database
	}
	/** Whether the file can be looked into and a key was ever made for it. */
	get isSetUp(): boolean {
		return this.#database.isOpen && this.#database.first('SELECT 1 FROM keyslot') !== undefined
	}
	all(): Slot[] {
		return this.#database.all<Slot>(`SELECT ${columns} FROM keyslot ORDER BY slot`)
	}
	put(slot: Slot): void {
		this.#database.touched(slotName(slot.slot), slotDigest(slot))
		this.#database.run(
			`INSERT INTO keyslot (${columns}) VALUES (?, ?, ?, ?, ?, ?) ON CONFLICT (slot) DO UPDATE ` +
				'SET cost = excluded.cost, salt = excluded.salt, sealed = excluded.sealed, public = ' +
				'excluded.public, box = excluded.box',
			slot.slot,
			slot.cost,
			slot.salt,
			slot.sealed,
			slot.public,
			slot.box,
		)
	}
	/** @throws Error where there is no such slot: the records were never set up */
	read(slot: string): Slot {
		const row = this.#database.first<Slot>(`SELECT ${columns} FROM keyslot WHERE slot = ?`, slot)
		if (!row)
			throw new Said('These records have not been set up yet.', { why: 'people.not-set-up' })
		return row
	}
	/** Older data keys, the last one first. */
	olderKeys(): OlderKeyRow[] {
		return this.#database.all<OlderKeyRow>(
			'SELECT number, sealed, endorsement FROM datakey ORDER BY number DESC',
		)
	}
	keepOlderKey({ number, sealed, endorsement }: OlderKeyRow): void {
		this.#database.touched(olderKeyName(number), digestOfBytes(sealed, endorsement))
		this.#database.run('INSERT INTO datakey VALUES (?, ?, ?)', number, sealed, endorsement)
	}
	/** Puts other older keys in the place of those that are here. @param rows the first one first */
	replaceOlderKeys(rows: readonly OlderKeyRow[]): void {
		for (const { number } of this.olderKeys())
			this.#database.touched(olderKeyName(number), undefined)
		this.#database.run('DELETE FROM datakey')
		for (const row of rows) this.keepOlderKey(row)
	}
	/** Which person's slot a passphrase opens; slots of one salt cost one stretching. */
	find(passphrase: string): Promise<Found | undefined> {
		return this.#find(
			passphraseBytes(passphrase),
			this.all().filter(({ slot }) => slot !== recoverySlot),
		)
	}
	/** What the printed key opens. @throws SealBroken where it belongs to other records */
	async findRecovery(secret: Uint8Array): Promise<Found> {
		const found = await this.#find(secret, [this.read(recoverySlot)])
		if (!found) throw new SealBroken('the recovery key belongs to other records')
		return found
	}
	async #find(secret: Uint8Array, slots: readonly Slot[]): Promise<Found | undefined> {
		const stretchings = new Map<string, Uint8Array>()
		for (const slot of slots) {
			// a damaged slot must neither stop the others nor take all memory
			if (!isSensibleCost(slot.cost)) continue
			const name = `${slot.cost}:${Buffer.from(slot.salt).toString('hex')}`
			const stretched = stretchings.get(name) ?? (await stretch(secret, slot.salt, slot.cost))
			stretchings.set(name, stretched)
			const found = this.#tryToOpen(slot, stretched)
			if (found) return found
		}
		return undefined
	}
	#tryToOpen(slot: Slot, stretched: Uint8Array): Found | undefined {
		try {
			const { newest, isOld } = newestIn(slot, stretched)
			// a slot of the first versions knows the first data key; later ones were made without it
			const keys = openDataKeys(newest, isOld ? [] : this.olderKeys())
			const toPut = isOld ? [slotOf(slot, stretched, newest)] : []
			return { slot: slot.slot, keys, toPut }
		} catch (error) {
			if (error instanceof SealBroken) return undefined
			throw error
		}
	}
	/** @throws Error for the two slots without which the records could not be opened again */
	drop(slot: string): void {
		if (slot === ownerSlot || slot === recoverySlot)
			throw new Said('The owner and the recovery key cannot be taken off.')
		this.#database.touched(slotName(slot), undefined)
		this.#database.run('DELETE FROM keyslot WHERE slot = ?', slot)
	}
	/** Slots of the first versions, which a new data key cannot be put into. */
	ofOldForm(): string[] {
		return this.all().flatMap(({ slot, public: key }) => (key === null ? [slot] : []))
	}
	/** Each slot and older key with a digest of all of it, for the inventory. */
	digests(): [name: string, digest: string][] {
		return [
			...this.all().map((slot) => [slotName(slot.slot), slotDigest(slot)] as [string, string]),
			...this.olderKeys().map(
				({ number, sealed, endorsement }) =>
					[olderKeyName(number), digestOfBytes(sealed, endorsement)] as [string, string],
			),
		]
	}
	/** Puts a data key into every slot that can take one; the others open only what was before. */
	putInAll(newest: Uint8Array): void {
		for (const slot of this.all())
			if (slot.public) this.put({ ...slot, box: dropIn(slot.public, slot.slot, 'datakey', newest) })
	}
}
