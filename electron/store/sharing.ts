/** The store's side of records shared over a server: what is still to be sent, how it is sealed, what comes. */
import { z } from 'zod'
import { type Carried, carriedSchema } from '../../shared/desk/outreach/carried.ts'
import { present } from '../../shared/engine/plain/present.ts'
import { isSignedBy, signContent } from './author.ts'
import { open, shut } from './envelope.ts'
import { decode, encode, mustBeRecordId } from './record.ts'
import type { RecordParts, Records } from './records.ts'
import type { RollRow } from './roll.ts'
import { SealBroken } from './seal.ts'
import { installationIn, knownAuthors, type Signature, signatureOf } from './signatures.ts'
import type { Travelling } from './travelling.ts'

/** Under this name stands, sealed, how far this store is with the server. */
const setting = 'share'
const origin = z.string().regex(/^[0-9a-f]{12}$/)
const markSchema = z.object({
	/** the server's own name; another one is another server, or one made anew */
	generation: z.string(),
	/** the last of the records here that the server is known to hold, by its place in the file */
	sent: z.int().min(0),
	/** how many this installation has brought there */
	number: z.int().min(0),
	/** up to which position of the server everything was fetched, and what stood there */
	position: z.int().min(0),
	positionId: z.string(),
	/** of each installation the last number that was fetched */
	last: z.record(origin, z.int().min(0)),
	/** numbers that are not on the server though later ones are */
	gaps: z.array(z.object({ origin, from: z.int(), to: z.int() })),
	/** what came and cannot be ours: its id and why */
	refused: z.array(z.object({ id: z.string(), why: z.string() })),
})
export type ShareMark = z.infer<typeof markSchema>
export const freshMark = (generation: string): ShareMark => ({
	generation,
	...{ sent: 0, number: 0, position: 0, positionId: '' },
	...{ last: {}, gaps: [], refused: [] },
})
/** Who brings a record to the server, and as which of theirs. */
export interface ItemPlace {
	id: string
	origin: string
	number: number
}
const boundTo = ({ id, origin: by, number }: ItemPlace) => ['shared', id, by, number]
const itemSchema = z.object({
	record: carriedSchema,
	/** of who brings it, where it was not written there: base64 */
	vouch: z.string().max(200).optional(),
})
/** A record that came from the server, open. */
export type SharedItem = z.infer<typeof itemSchema>

const whole = (record: Carried) => {
	const { version = 1, number = 0 } = record
	return { ...record, version, number }
}
export class Sharing {
	readonly #parts: RecordParts
	readonly #records: Records
	readonly #travelling: Travelling
	constructor(parts: RecordParts, records: Records, travelling: Travelling) {
		this.#parts = parts
		this.#records = records
		this.#travelling = travelling
	}
	/** The name under which this store brings its records. */
	get origin(): string {
		return this.#parts.order.origin
	}
	/** How far it is; undefined where it never shared. @throws Error while locked */
	get mark(): ShareMark | undefined {
		const bytes = this.#parts.keyring.sealedSetting(setting)
		return bytes && markSchema.parse(decode(bytes))
	}
	putMark(mark: ShareMark): void {
		this.#parts.keyring.putSealedSetting(setting, encode(mark))
	}
	has(id: string): boolean {
		return this.#records.has(id)
	}
	/** The place in the file of the record written last. */
	get lastPlace(): number {
		return this.#parts.roll.all().at(-1)?.seq ?? 0
	}
	/** Rows behind a place in the file, in order of writing. */
	behind(place: number, most: number): readonly RollRow[] {
		const rows = this.#parts.roll.all()
		let [low, high] = [0, rows.length]
		while (low < high) {
			const middle = (low + high) >>> 1
			if ((rows[middle]?.seq ?? 0) > place) high = middle
			else low = middle + 1
		}
		return rows.slice(low, low + most)
	}
	/** A record as it travels; undefined where it is damaged and stays here. */
	carried(row: RollRow, players: ReadonlyMap<string, string>): Carried | undefined {
		const about = row.about === null ? undefined : players.get(row.about)
		return this.#travelling.one(row, about)
	}
	/** Seals a record for the server; what was not written here is vouched for. */
	sealItem(record: Carried, number: number): Uint8Array {
		const { keyring, installation } = this.#parts
		const isOwn = record.origin === this.origin && record.signature !== undefined
		const vouch = isOwn ? undefined : signContent(installation.signer(), whole(record))
		const item: SharedItem = { record, ...present({ vouch }) }
		const place = { id: record.id, origin: this.origin, number }
		return shut(keyring.opened().newest, encode(item), boundTo(place))
	}
	/** @throws SealBroken where it is another one's, damaged, or sealed with a key that is not here */
	openItem(place: ItemPlace, sealed: Uint8Array): SharedItem {
		const read = itemSchema.safeParse(
			decode(open(this.#parts.keyring.opened(), sealed, boundTo(place))),
		)
		if (!read.success || read.data.record.id !== place.id)
			throw new SealBroken(`what came as ${place.id} is no such record`)
		return read.data
	}
	/** The public keys that are known here, and those that the items themselves introduce. */
	authors(coming: readonly SharedItem[]): ReadonlyMap<string, string> {
		const known = knownAuthors(this.#records)
		for (const { record } of coming) {
			const told = installationIn(record)
			if (told && !known.has(told.origin)) known.set(told.origin, told.publicKey)
		}
		return known
	}
	/** Who proves that a record is what it says: its author, or else who brought it. */
	provenBy(
		{ record, vouch }: SharedItem,
		by: string,
		authors: ReadonlyMap<string, string>,
	): Signature {
		const own = signatureOf(whole(record), authors)
		const key = authors.get(by)
		if (own === 'good' || own === 'wrong' || vouch === undefined || key === undefined) return own
		return isSignedBy(key, whole(record), vouch) ? 'good' : 'wrong'
	}
	/**
	 * Takes in what came, in one transaction with one row of the audit trail. Where nothing here was
	 * waiting to be sent, what came is not sent back.
	 */
	takeAll(records: readonly Carried[], mark: ShareMark): void {
		const { database, order, trail } = this.#parts
		database.together(() => {
			const isAllSent = mark.sent >= this.lastPlace
			for (const record of records) {
				mustBeRecordId(record.id)
				this.#records.insert(whole(record))
				order.standBehind(record.tick)
			}
			if (records.length > 0)
				trail.note({ function: 'merge', objectRef: `share:${records.length}` })
			this.putMark({ ...mark, sent: isAllSent ? this.lastPlace : mark.sent })
		})
	}
}
