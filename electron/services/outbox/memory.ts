/** What is remembered of the outbox: items, contacts, notes on a record, steps after an error. */
import { type Breach, breachSchema } from '../../../shared/desk/outbox/breach.ts'
import {
	type Contact,
	contactSchema,
	type OutboxItem,
	outboxItemSchema,
} from '../../../shared/desk/outbox/item.ts'
import {
	defaultMailSettings,
	type MailSettings,
	mailSettingsSchema,
} from '../../../shared/desk/outbox/mail-settings.ts'
import { type SendingNote, sendingNoteSchema } from '../../../shared/desk/outbox/sending-note.ts'
import { Newest } from '../records/newest.ts'
import type { Remembered } from '../records/remember.ts'

export class OutboxMemory {
	readonly items = new Newest<OutboxItem>()
	readonly contacts = new Newest<Contact>()
	readonly notes = new Newest<SendingNote>()
	readonly breaches = new Newest<Breach>()
	mail: MailSettings = defaultMailSettings
	/** the record that holds the mail settings; what is saved next follows it */
	mailRecordId: string | undefined

	takeItem({ id, value }: Remembered): void {
		const item = outboxItemSchema.parse(value)
		this.items.take(item.itemId, item, id)
	}
	takeContact({ id, value }: Remembered): void {
		const contact = contactSchema.parse(value)
		this.contacts.take(contact.contactId, contact, id)
	}
	takeNote({ id, value }: Remembered): void {
		const note = sendingNoteSchema.parse(value)
		this.notes.take(note.noteId, note, id)
	}
	takeBreach({ id, value }: Remembered): void {
		const breach = breachSchema.parse(value)
		this.breaches.take(breach.breachId, breach, id)
	}
	takeMail({ id, value }: Remembered): void {
		this.mail = mailSettingsSchema.parse(value)
		this.mailRecordId = id
	}
	clear(): void {
		for (const things of [this.items, this.contacts, this.notes, this.breaches]) things.clear()
		this.mail = defaultMailSettings
		this.mailRecordId = undefined
	}
}
