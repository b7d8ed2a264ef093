/** The acts on a signed visit: their names, what each does at the host, and what it says then. */

import type { InputOf } from '../../../shared/contract.ts'
import { call } from '../../host.ts'
import { goTo } from '../../parts/goTo.ts'
import { change } from '../../query.ts'

export type Act = 'amend' | 'late' | 'handed' | 'error' | 'countersign'
type Channel = InputOf<'reports.handedOver'>['channel']
export const channels: readonly Channel[] = ['by-hand', 'print', 'export', 'send']
export const lateKinds = { occurred: 'late entry', statement: 'statement of the player' } as const

export interface Typed {
	reason: string
	text: string
	/** one of `lateKinds` */
	what: string
	occurredOn: string
	recipient: string
	/** one of `channels` */
	channel: string
}
const leastReason = 3
/** @throws Error where it says too little */
function reasonOf(text: string, what: string): string {
	const reason = text.trim()
	if (reason.length < leastReason)
		throw new Error(
			`The reason for ${what} is ${reason ? `"${reason}"` : 'empty'}. Write at least ` +
				`${leastReason} letters.`,
		)
	return reason
}
interface ActRow {
	name: string
	/** the words of the button that does it */
	submit: string
	/** @returns what was done, in words; @throws Error or HostRefusal in words */
	run: (typed: Typed, of: { visitId: string; playerId: string }) => Promise<string>
}
export const acts: Readonly<Record<Act, ActRow>> = {
	amend: {
		name: 'Amend',
		submit: 'Open the amendment',
		run: async ({ reason }, { visitId, playerId }) => {
			// this page is left: nothing on it is read again
			await call('visits.amend', { visitId, reason: reasonOf(reason, 'the amendment') })
			goTo(`/assessment/${playerId}`)
			return ''
		},
	},
	late: {
		name: 'Late entry',
		submit: 'Add this entry',
		run: async ({ text, what, occurredOn }, { visitId }) => {
			if (!text.trim()) throw new Error('The text is empty. Write what happened.')
			await change('visits.addNote', {
				visitId,
				what: what === lateKinds.statement ? 'statement' : 'late-entry',
				text,
				occurredOn,
			})
			return 'Added beside the visit, with today as the day it was written.'
		},
	},
	handed: {
		name: 'Report was handed over',
		submit: 'Note it',
		run: async ({ recipient, channel }, { visitId }) => {
			const way = channels.find((known) => known === channel)
			if (!recipient.trim() || !way)
				throw new Error('Recipient and way are needed. Fill in whom it went to and choose how.')
			await change('reports.handedOver', { visitId, recipient, channel: way })
			return 'Noted.'
		},
	},
	error: {
		name: 'Entered in error',
		submit: 'Mark as entered in error',
		run: async ({ reason }, { visitId }) => {
			await change('visits.markInError', { visitId, reason: reasonOf(reason, 'the mark') })
			return 'Marked as entered in error. It is left out of summaries and kept here.'
		},
	},
	countersign: {
		name: 'Countersign',
		submit: 'Countersign this version',
		run: async ({ text }, { visitId }) => {
			await change('visits.countersign', { visitId, text })
			return 'Countersigned.'
		},
	},
}
