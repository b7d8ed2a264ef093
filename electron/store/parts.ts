/** What a store is made of, put together once. */
import { Alarms } from './alarms.ts'
import { AuditChain } from './audit-chain.ts'
import { Backups } from './backups.ts'
import { Cards, type RemakeCard } from './cards.ts'
import { Database } from './database.ts'
import { Drafts } from './drafts.ts'
import { filesBeside, type StoreFiles } from './folder.ts'
import { HeadKeeper } from './head-keeper.ts'
import { Heads } from './heads.ts'
import { Installation } from './installation.ts'
import { Inventory } from './inventory.ts'
import { KeySlots } from './key-slots.ts'
import { Keyring } from './keyring.ts'
import { Order } from './order.ts'
import { type RecordParts, Records } from './records.ts'
import { Roll } from './roll.ts'
import { Settings } from './settings.ts'
import { Sharing } from './sharing.ts'
import { type Actor, Trail } from './trail.ts'
import { Travelling } from './travelling.ts'

export interface Parts extends RecordParts {
	settings: Settings
	slots: KeySlots
	drafts: Drafts
	records: Records
	travelling: Travelling
	sharing: Sharing
	backups: Backups
	chain: AuditChain
	heads: Heads
	keeper: HeadKeeper
	inventory: Inventory
	alarms: Alarms
}
export interface Outside {
	/** scrypt N of new slots */
	cost: number
	now: () => Date
	/** who acts */
	actor: () => Actor
	/** cards of records of the first versions, which do not hold them */
	remake: RemakeCard
}
export function assemble(files: StoreFiles, outside: Outside): Parts {
	const beside = (file: string) => assembleBeside(file, outside)
	const database = new Database()
	const settings = new Settings(database)
	const slots = new KeySlots(database)
	const keyring = new Keyring(slots, settings, outside.cost)
	const roll = new Roll(database)
	const order = new Order(settings, roll)
	const chain = new AuditChain(database)
	const trail = new Trail({ database, keyring, order, chain }, outside)
	const drafts = new Drafts(database, keyring)
	const inventory = inventoryOf({ keyring, settings, slots, drafts })
	const heads = new Heads(files.head, files.outsideHead)
	const keeper = new HeadKeeper({ keyring, order, roll, inventory, chain, heads })
	// the inventory writes in the transaction that changed it, the heads once that is committed
	for (const part of [trail, roll, order, inventory, keeper]) database.tell(part)
	const cards = new Cards(database, keyring, roll, outside.remake)
	const installation = new Installation(keyring, order)
	const shared = { database, keyring, order, roll, cards, trail, installation }
	const records = new Records(shared)
	const travelling = new Travelling(shared, records)
	return {
		...shared,
		...{ settings, slots, drafts, records, chain, heads, keeper, inventory },
		alarms: new Alarms(keyring),
		travelling,
		sharing: new Sharing(shared, records, travelling),
		backups: new Backups({
			file: files.records,
			parts: { keyring, roll, records, order },
			beside,
		}),
	}
}
/** A store in another file of the same folder, for work on a copy. */
export const assembleBeside = (file: string, outside: Outside): Parts =>
	assemble(filesBeside(file), outside)
/** Under this name the inventory lies sealed. */
const inventorySetting = 'inventory'
function inventoryOf({
	keyring,
	settings,
	slots,
	drafts,
}: Pick<Parts, 'keyring' | 'settings' | 'slots' | 'drafts'>): Inventory {
	return new Inventory({
		isOpen: () => keyring.isOpen,
		read: () => keyring.sealedSetting(inventorySetting),
		write: (bytes) => keyring.putSealedSetting(inventorySetting, bytes),
		actual: () => [...settings.digests(), ...slots.digests(), ...drafts.digests()],
	})
}
