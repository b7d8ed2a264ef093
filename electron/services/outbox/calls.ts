/** The calls of the outbox, its mail settings, and what follows an error. */
import type { Handlers } from '../../calls/handlers.ts'
import type { Deps } from '../records/deps.ts'
import { listBreaches, sentInError, takeStep } from './breaches.ts'
import { Checking } from './checking.ts'
import { addContact, removeContact } from './contacts.ts'
import { giveOut, tellPassword } from './giving-out.ts'
import { viewsOf } from './list.ts'
import { getMail, saveMail } from './mail.ts'
import { actOnMany } from './many.ts'
import type { OutboxNeeds } from './needs.ts'
import { addNote, listNotes, removeNote } from './notes.ts'
import { callBack, closeItem, confirm, takeOver } from './outcome.ts'
import type { Post } from './post.ts'
import { addItem, resend } from './preparing.ts'
import { printItem } from './printing.ts'
import { putMany } from './put-many.ts'
import { listRecipients } from './recipients.ts'
import { readReport } from './returned.ts'
import { printSheet, whoIsToBeTold } from './sheet.ts'
import { listUnsent } from './unsent.ts'

export function outboxCalls(memory: OutboxNeeds, deps: Deps, post: Post) {
	const checking = new Checking(memory, deps, post)
	return {
		'outbox.recipients': (input) => listRecipients(memory, deps, input),
		'outbox.addContact': (input) => addContact(memory, deps, input),
		'outbox.removeContact': (input) => removeContact(memory, deps, input),
		'outbox.add': (input) => addItem(memory, deps, input),
		'outbox.list': async () => {
			// names what a stop of the program left uncertain before anything is shown; sending goes on
			// behind
			void post.run()
			return {
				items: viewsOf(memory, deps, { inFlight: post.inFlight, isCompared: checking.isCompared }),
				queue: post.status(),
				mailSet: memory.outbox.mail.smtp !== undefined,
			}
		},
		'outbox.look': (input) => checking.look(input),
		'outbox.release': (input) => checking.release(input),
		'outbox.compared': (input) => checking.compare(input),
		'outbox.many': (input) => actOnMany(memory, deps, { post, checking }, input),
		'outbox.unsent': (input) => listUnsent(memory, deps, input),
		'outbox.putMany': (input) => putMany(memory, deps, input),
		'outbox.print': (input) => printItem(memory, deps, { post, checking }, input),
		'outbox.back': (input) => callBack(memory, deps, post, input),
		'outbox.take': (input) => giveOut(memory, deps, post, input),
		'outbox.confirm': (input) => confirm(memory, deps, post, input),
		'outbox.close': (input) => closeItem(memory, deps, post, input),
		'outbox.mine': (input) => takeOver(memory, deps, post, input),
		'outbox.password': (input) => tellPassword(memory, deps, input),
		'outbox.resend': (input) => resend(memory, deps, post, input),
		'outbox.readReport': (input) => readReport(memory, deps, input),
		'outbox.sendNow': async () => {
			await post.run(true)
			return {}
		},
		'outbox.notes': (input) => listNotes(memory, input),
		'outbox.addNote': (input) => addNote(memory, deps, input),
		'outbox.removeNote': (input) => removeNote(memory, deps, input),
		'outbox.tell': (input) => whoIsToBeTold(memory, deps, input),
		'outbox.sheet': (input) => printSheet(memory, deps, input),
		'mail.get': () => getMail(memory),
		'mail.save': (input) => saveMail(memory, deps, post, input),
		'mail.test': async () => ({ says: await post.test() }),
		'outbox.sentInError': (input) => sentInError(memory, deps, input),
		'breaches.list': () => listBreaches(memory, deps),
		'breaches.step': (input) => takeStep(memory, deps, input),
	} satisfies Partial<Handlers>
}
