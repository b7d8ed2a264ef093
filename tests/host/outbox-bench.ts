import { afterEach } from 'vitest'
import { plainWords } from '../../shared/desk/outbox/mail-settings.ts'
import { clinic, folder, type Opened, open, passphrase, signed } from './bench-app.ts'
import { startSmtp, startWire } from './mail-bench.ts'

export const stops: (() => Promise<void> | void)[] = []
afterEach(async () => {
	for (const stop of stops.splice(0).reverse()) await stop()
})
export const adult = {
	givenName: 'Owain',
	familyName: 'Trescott',
	birthDate: '1994-03-30',
	sex: 'male' as const,
	email: 'owain@player.example',
}
export const minor = {
	givenName: 'Tui',
	familyName: 'Ashdown',
	birthDate: '2013-05-02',
	sex: 'male' as const,
	email: 'tui@player.example',
	guardian: {
		name: 'Rae Ashdown',
		relation: 'parent',
		email: 'rae@guardian.example',
		phone: '555 0177',
	},
}
/** A sign that asks for a letter: without one there is none to be sent. */
export const toRefer = { reducedSensation: true }
export const consent = (
	purpose: string,
	recipient: string,
	by = recipient,
	relation = 'player',
) => ({
	purpose,
	recipient,
	decision: 'permit',
	grantor: { name: by, relation },
	method: 'written',
	given: '2027-01-20',
})
export async function mailed(port: number, here = folder(), player: object = adult) {
	const app = open(here)
	stops.push(() => app.close())
	await app.ask('session.setUp', {
		clinic: { ...clinic, email: 'desk@clinic.example' },
		passphrase,
	})
	await app.ask('mail.save', {
		smtp: {
			host: '127.0.0.1',
			port,
			security: 'none',
			inSoManyWords: plainWords,
			user: 'desk',
			password: 'right words',
			from: { name: 'Invented Clinic', email: 'desk@clinic.example' },
		},
		clock: { assessWithinDays: 30, authorityWithinHours: 72 },
	})
	const { playerId } = await app.ask('players.save', { player })
	const visitId = await signed(app, playerId, { screening: toRefer })
	return { app, here, playerId: playerId as string, visitId }
}
export async function bench(player: object = adult) {
	const smtp = await startSmtp()
	stops.push(smtp.stop)
	const wire = await startWire(smtp.port)
	stops.push(wire.stop)
	return { smtp, wire, ...(await mailed(wire.port, undefined, player)) }
}
export const put = async (app: Opened, visitId: string, change: object = {}): Promise<string> =>
	(
		await app.ask('outbox.add', {
			visitId,
			kind: 'player',
			recipientId: 'player',
			channel: 'smtp',
			due: '2027-01-22',
			// several tests send the same several times
			again: 'asked for once more',
			...change,
		})
	).itemId
export async function release(app: Opened, itemId: string) {
	const { sha256 } = await app.ask('outbox.look', { itemId })
	await app.ask('outbox.release', { itemId, sha256, compared: true, warningsRead: false })
}
// biome-ignore lint/suspicious/noExplicitAny: answers are looked at field by field
export const item = async (app: Opened, itemId: string): Promise<any> =>
	(await app.ask('outbox.list')).items.find(
		(listed: { itemId: string }) => listed.itemId === itemId,
	)
/** Until the queue is at rest. */
export const settle = async (app: Opened) => {
	await app.ask('outbox.sendNow')
}
export const sendings = async (app: Opened, visitId: string) =>
	(await app.ask('visits.history', { visitId })).handedOver
/** Opened beside its page and found right. */
export async function lookRight(app: Opened, itemId: string): Promise<void> {
	const { sha256 } = await app.ask('outbox.look', { itemId })
	await app.ask('outbox.compared', { itemId, sha256, warningsRead: false })
}
/** One act on several items. */
export const many = async (app: Opened, act: string, itemIds: string[], note = '') =>
	(await app.ask('outbox.many', { act, itemIds, note })).lines as {
		itemId: string
		number: string
		done: boolean
		says: string
	}[]
