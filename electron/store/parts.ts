/** What a store is made of, put together once. */
import { Backups } from './backups.ts'
import { Cards } from './cards.ts'
import { Database } from './database.ts'
import { Drafts } from './drafts.ts'
import type { StoreFiles } from './folder.ts'
import { KeySlots } from './key-slots.ts'
import { Keyring } from './keyring.ts'
import { Order } from './order.ts'
import { type RecordParts, Records } from './records.ts'
import { Settings } from './settings.ts'
import { type Actor, Trail } from './trail.ts'
import { Travelling } from './travelling.ts'

export interface Parts extends RecordParts {
	settings: Settings
	slots: KeySlots
	drafts: Drafts
	records: Records
	travelling: Travelling
	backups: Backups
}
/** @param outside scrypt N of new wrappings, the clock, and who acts */
export function assemble(
	files: StoreFiles,
	outside: { cost: number; now: () => Date; actor: () => Actor },
): Parts {
	const database = new Database()
	const settings = new Settings(database)
	const slots = new KeySlots(database)
	const keyring = new Keyring(slots, settings, outside.cost)
	const order = new Order(database, settings)
	const trail = new Trail({ database, keyring, order }, files.head, outside)
	database.tell(trail)
	database.tell(order)
	const cards = new Cards(database, keyring)
	const shared = { database, keyring, order, cards, trail }
	const records = new Records(shared)
	return {
		...shared,
		settings,
		slots,
		drafts: new Drafts(database, keyring),
		records,
		travelling: new Travelling(shared, records),
		backups: new Backups(files.records, { keyring, records, order }),
	}
}
/** Forgets the keys; a search that was being typed is in the trail first. */
export function lockUp({ trail, keyring }: Pick<Parts, 'trail' | 'keyring'>): void {
	trail.settleSearch()
	keyring.lock()
}
