/** People to be written to, their consents, what waits in the outbox and what left it. */

import type { Ask } from './asking.ts'
import type { Entry } from './fill.ts'
import type { Scenario, SendingTold } from './scenario.ts'
import type { Known } from './visits.ts'

type Step = SendingTold['steps'][number]

/** Compares the first page with its recipient, as the screen asks for it, and releases it. */
async function release(ask: Ask, itemId: string): Promise<void> {
	const { sha256 } = await ask('outbox.look', { itemId })
	await ask('outbox.release', { itemId, sha256, compared: true, warningsRead: true })
}
async function takeStep(ask: Ask, itemId: string, { do: what, note = '' }: Step): Promise<void> {
	if (what === 'release') await release(ask, itemId)
	else if (what === 'give') await ask('outbox.take', { itemId })
	else if (what === 'close') await ask('outbox.close', { itemId, note })
	else await ask('outbox.confirm', { itemId, what, note })
}
/** Puts a page into the outbox, and lets each of its steps follow on its day. */
function sendingEntries(ask: Ask, known: Known, told: SendingTold): Entry[] {
	const { player, visit, kind, to, way: channel, due, on, steps } = told
	let itemId = ''
	const prepare = async () => {
		const visitId = known.visit(player, visit)
		const { recipients } = await ask('outbox.recipients', { visitId })
		const found = recipients.find(({ recipient }) => recipient.name === to)
		if (!found) throw new Error(`demo: nobody named ${to} is on the record of ${player}`)
		const { recipientId } = found.recipient
		itemId = (await ask('outbox.add', { visitId, kind, recipientId, channel, due })).itemId
	}
	return [
		{ day: on, enter: prepare },
		...steps.map((step) => ({
			day: step.on ?? on,
			enter: () => takeStep(ask, itemId, step),
		})),
	]
}
/** A consent, and its withdrawal where it was withdrawn. */
function consentEntries(
	ask: Ask,
	known: Known,
	{ player, consent, withdrawn }: Scenario['rooms']['consents'][number],
): Entry[] {
	let consentId = ''
	const give = async () => {
		const playerId = known.player(player)
		consentId = (await ask('consents.record', { playerId, consent })).consentId
	}
	const given: Entry = { day: consent.given, enter: give }
	if (withdrawn === undefined) return [given]
	const withdraw = async () => {
		const withdrawnBy = consent.grantor.name
		const playerId = known.player(player)
		await ask('consents.withdraw', { playerId, consentId, withdrawn, withdrawnBy })
	}
	return [given, { day: withdrawn, enter: withdraw }]
}
export const outboxEntries = (ask: Ask, known: Known, { rooms }: Scenario): Entry[] => [
	...rooms.contacts.map(({ player, on, email = '', ...contact }) => ({
		day: on,
		enter: async () => {
			const playerId = known.player(player)
			const typed = { ...contact, email, emailAgain: email, warningsRead: true }
			await ask('outbox.addContact', { playerId, ...typed })
		},
	})),
	...rooms.consents.flatMap((told) => consentEntries(ask, known, told)),
	...rooms.notes.map(({ player, text, on }) => ({
		day: on,
		enter: async () => {
			await ask('outbox.addNote', { playerId: known.player(player), text })
		},
	})),
	...rooms.sendings.flatMap((told) => sendingEntries(ask, known, told)),
]
