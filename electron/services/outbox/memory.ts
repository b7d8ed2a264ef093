/** What is remembered of the outbox: items, contacts, notes on a record, steps after an error. */
import type { Breach } from '../../../shared/desk/outbox/breach.ts'
import type { Contact, OutboxItem } from '../../../shared/desk/outbox/item.ts'
import {
	defaultMailSettings,
	type MailSettings,
} from '../../../shared/desk/outbox/mail-settings.ts'
import type { SendingNote } from '../../../shared/desk/outbox/sending-note.ts'
import { Latest, Newest, type Taken } from '../records/newest.ts'

export class OutboxMemory {
	readonly items = new Newest<OutboxItem>()
	readonly contacts = new Newest<Contact>()
	readonly notes = new Newest<SendingNote>()
	readonly breaches = new Newest<Breach>()
	readonly #mail = new Latest<MailSettings>()

	get mail(): MailSettings {
		return this.#mail.value ?? defaultMailSettings
	}
	/** The record that holds the mail settings; what is saved next follows it. */
	get mailRecordId(): string | undefined {
		return this.#mail.recordId
	}
	takeItem(taken: Taken<OutboxItem>): void {
		this.items.take(taken.value.itemId, taken)
	}
	takeContact(taken: Taken<Contact>): void {
		this.contacts.take(taken.value.contactId, taken)
	}
	takeNote(taken: Taken<SendingNote>): void {
		this.notes.take(taken.value.noteId, taken)
	}
	takeBreach(taken: Taken<Breach>): void {
		this.breaches.take(taken.value.breachId, taken)
	}
	takeMail(taken: Taken<MailSettings>): void {
		this.#mail.take(taken)
	}
	forget(records: ReadonlySet<string>): void {
		for (const things of this.#all) things.forget(records)
	}
	clear(): void {
		for (const things of this.#all) things.clear()
	}
	get #all() {
		return [this.items, this.contacts, this.notes, this.breaches, this.#mail]
	}
}
