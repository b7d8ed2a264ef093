/** Holds the records against the heads once the key is there, and keeps the heads up from then on. */
import { createHmac, hkdfSync, timingSafeEqual } from 'node:crypto'
import { z } from 'zod'
import type { Finding } from './alarms.ts'
import { type AuditChain, missingRows } from './audit-chain.ts'
import type { Around } from './database.ts'
import type { Head, HeadState, Heads, ReadHead } from './heads.ts'
import type { Inventory } from './inventory.ts'
import type { Keyring } from './keyring.ts'
import type { Order } from './order.ts'
import type { Roll } from './roll.ts'

interface Parts {
	keyring: Keyring
	order: Order
	roll: Roll
	inventory: Inventory
	chain: AuditChain
	heads: Heads
}
/** Under this name stands, sealed, what a destruction made of the roll: no cut of anybody's. */
const movedSetting = 'roll-moved'
const movedSchema = z.object({
	/** every state that was left by a destruction, and the rows that it had */
	from: z.array(z.object({ rows: z.int(), digest: z.string() })),
})
const oldHeadSchema = z.object({ seq: z.int(), hash: z.string(), mac: z.string() })
/** So many past states are kept: the head may lag behind by some destructions, not by years. */
const mostMoved = 50

export class HeadKeeper implements Around {
	readonly #parts: Parts
	#isCompared = false
	constructor(parts: Parts) {
		this.#parts = parts
	}
	committed(): void {
		const { keyring, heads } = this.#parts
		if (this.#isCompared && keyring.keys) heads.note(keyring.keys, this.#state())
	}
	/** Locked, or another file was opened. */
	forget(): void {
		this.#isCompared = false
	}
	#state(): HeadState {
		const { order, roll, chain, inventory } = this.#parts
		const { seq, hash } = chain.last()
		return {
			recordsId: order.recordsId,
			rows: roll.count,
			digest: roll.digest,
			audit: { seq, hash: Buffer.from(hash).toString('hex') },
			inventory: inventory.count,
		}
	}
	/**
	 * What the heads say against the records, in words; empty where they agree.
	 * @param isMoved whether the file was put here from elsewhere: it need not have a head then
	 */
	differences(isMoved = false): Finding[] {
		const { keyring, heads } = this.#parts
		const found = heads
			.read(keyring.opened())
			.flatMap((one) => (isMoved && !one.head ? [] : this.#differencesOf(one)))
		return [...new Map(found.map((one) => [one.says, one])).values()]
	}
	/** From now on the heads are kept up, unless one disagrees. */
	begin(): void {
		const { heads, keyring } = this.#parts
		heads.held = heads
			.read(keyring.opened())
			.some(({ head }) => head && this.#against(head).length > 0)
		this.#isCompared = true
	}
	/** The owner has looked into what the heads said: from now on they go by what is there. */
	settle(): void {
		this.#parts.heads.held = false
		this.#isCompared = true
		this.committed()
	}
	#differencesOf({ isInside, isThere, head }: ReadHead): Finding[] {
		if (head) return this.#against(head)
		const { chain, roll, inventory } = this.#parts
		if (!isInside || roll.count === 0) return []
		if (chain.firstKeyed === Number.POSITIVE_INFINITY)
			return this.#againstOldHead(isThere).map((says) => ({ says }))
		// a set-up that was cut off before its first head: nothing was written since
		if (!isThere && inventory.count <= writtenBySetUp) return []
		const says =
			'The second copy of the head is missing or damaged. Open the audit trail and have it verified.'
		return [{ says }]
	}
	/** What each part of a head says against the records, by the part and the number of the head. */
	#against(head: Head): Finding[] {
		const { order, inventory } = this.#parts
		if (head.recordsId !== order.recordsId)
			return [
				{ says: 'The head belongs to other records: another file was put in the place of these.' },
			]
		const isInventoryOld = head.inventory > inventory.count
		const parts: [part: string, says: string][] = [
			['audit', this.#trailAgainst(head)],
			['roll', this.#rollAgainst(head)],
			['inventory', isInventoryOld ? 'Drafts and settings are older than they should be.' : ''],
		]
		return parts.flatMap(([part, says]) =>
			says ? [{ says: `${says} ${compareWords}`, of: `${part} ${head.number}` }] : [],
		)
	}
	#trailAgainst({ audit: { seq, hash } }: Head): string {
		const { chain } = this.#parts
		const last = chain.last().seq
		if (seq > last) return `${missingRows(last + 1, seq)} They were cut off at the end.`
		if (chain.hashAt(seq) === hash) return ''
		return `Row ${seq} of the audit trail is not the one whose digest was kept.`
	}
	#rollAgainst(head: Head): string {
		const { roll } = this.#parts
		if (this.#isRollKnown(head)) return ''
		if (head.rows <= roll.count) return 'The list of the records is not as it was written last.'
		return (
			`${head.rows - roll.count} of ${head.rows} records are gone: the records file is older than ` +
			'it should be, or its end was cut off.'
		)
	}
	#isRollKnown({ rows, digest }: Head): boolean {
		if (this.#parts.roll.digestAfter(rows) === digest) return true
		return this.#moved().some((state) => state.rows === rows && state.digest === digest)
	}
	#moved(): { rows: number; digest: string }[] {
		const bytes = this.#parts.keyring.sealedSetting(movedSetting)
		if (!bytes) return []
		return movedSchema.parse(JSON.parse(Buffer.from(bytes).toString('utf8'))).from
	}
	/**
	 * A backup took the place of the records while their key was open: the heads go by it from here on,
	 * before anything is written in it.
	 */
	goBack(): void {
		const { heads, keyring } = this.#parts
		heads.restate(keyring.opened(), this.#state())
	}
	/** Before records are destroyed, in the same transaction: the heads may still say how it was. */
	noteMove(): void {
		const { roll, keyring } = this.#parts
		const from = [...this.#moved(), { rows: roll.count, digest: roll.digest }].slice(-mostMoved)
		keyring.putSealedSetting(movedSetting, Buffer.from(JSON.stringify({ from }), 'utf8'))
	}
	/** The head as the first version kept it: the number and digest of the last audit row. */
	#againstOldHead(isThere: boolean): string[] {
		const { chain, heads } = this.#parts
		const last = chain.last().seq
		if (last === 0) return []
		const old = isThere ? this.#oldHead(heads.oldText() ?? '') : undefined
		if (!old)
			return [
				"The second copy of the audit trail's head is missing or damaged. Open the audit trail " +
					'and have it verified.',
			]
		if (old.seq > last)
			return [`${missingRows(last + 1, old.seq)} They were cut off at the end. ${compareWords}`]
		return chain.hashAt(old.seq) === old.hash
			? []
			: [`Row ${old.seq} of the audit trail is not the one whose digest was kept. ${compareWords}`]
	}
	#oldHead(text: string): { seq: number; hash: string } | undefined {
		try {
			const { seq, hash, mac } = oldHeadSchema.parse(JSON.parse(text))
			const root = this.#parts.keyring.opened().root.bytes
			const key = Buffer.from(hkdfSync('sha256', root, '', 'lastwright head', 32))
			const expected = createHmac('sha256', key)
				.update(`${seq}|`)
				.update(Buffer.from(hash, 'hex'))
				.digest()
			const given = Buffer.from(mac, 'hex')
			const isTrue = given.length === expected.length && timingSafeEqual(given, expected)
			return isTrue ? { seq, hash } : undefined
		} catch {
			return undefined
		}
	}
}
/** How often a set-up writes the inventory: once, in its one transaction. */
const writtenBySetUp = 1
const compareWords = 'Compare with a backup.'
