/**
 * Restores while people work: nothing leaves by mail without a person, what was acknowledged is in
 * the records or in the copy made before, and what comes back is told.
 */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { clinic } from '../compatibility/scenario/people.ts'
import { type Ask, type Opened, type Program, World } from '../compatibility/scenario/program.ts'
import { signed } from '../compatibility/scenario/visits.ts'
import { type Smtp, startSmtp } from '../host/mail-bench.ts'
import { type Chance, chance } from './chance.ts'
import { plainProgram } from './everything.ts'

export interface RestoreResult {
	seed: number
	rounds: number
	/** saves that were acknowledged while a restore ran */
	savedMeanwhile: number
	/** messages that left before the restores, and after them without a person */
	sentBefore: number
	sentAfter: number
	faults: string[]
}
const passphrase = 'lantern over nine quarries'
const mostSaves = 40
const player = {
	givenName: 'Owain',
	familyName: 'Trescott',
	birthDate: '1994-03-30',
	sex: 'male',
	email: 'owain@player.example',
}
const old = { givenName: 'Alder', familyName: 'Wexcombe', birthDate: '1990-02-11', sex: 'male' }
interface Day {
	app: Opened
	world: World
	records: string
	smtp: Smtp
	ids: { playerId: string; goneId: string; consentId: string }
	items: string[]
}
const mailBy = (port: number) => ({
	smtp: {
		host: '127.0.0.1',
		port,
		security: 'none',
		inSoManyWords: 'send without encryption',
		from: { name: clinic.name, email: clinic.email },
	},
	clock: { assessWithinDays: 30, authorityWithinHours: 72 },
})
async function released(ask: Ask, visitId: string): Promise<string> {
	const given = { visitId, kind: 'player', recipientId: 'player', channel: 'smtp' }
	const { itemId } = await ask('outbox.add', {
		...given,
		due: '2027-01-25',
		again: 'asked for once more',
	})
	const { sha256 } = await ask('outbox.look', { itemId })
	await ask('outbox.release', { itemId, sha256, compared: true, warningsRead: true })
	return itemId
}
/** A clinic with two released messages that nobody takes yet, and a backup of that moment. */
async function morning(program: Program, pc: string): Promise<Day> {
	const records = join(pc, 'records')
	const world = new World(program, '2024-01-10T09:00:00.000Z', join(pc, 'outside'))
	const app = world.open(records)
	const { ask } = app
	await ask('session.setUp', { clinic, passphrase })
	const settings = await ask('recordSettings.get')
	const retention = { ...settings.retention, adultYears: 1 }
	await ask('recordSettings.save', { ...settings, retention })
	const goneId = (await ask('players.save', { player: old })).playerId
	world.until('2027-01-20T09:00:00.000Z')
	await ask('session.unlock', { passphrase })
	const smtp = await startSmtp()
	await ask('mail.save', mailBy(9))
	const { playerId } = await ask('players.save', { player })
	const visitId = await signed(program, ask, playerId, '2027-01-20', { notes: 'limps' })
	const consent = {
		purpose: 'email',
		recipient: 'Owain Trescott',
		decision: 'permit',
		grantor: { name: 'Owain Trescott', relation: 'player' },
		method: 'written',
		given: '2027-01-20',
	}
	const { consentId } = await ask('consents.record', { playerId, consent })
	const items = [await released(ask, visitId), await released(ask, visitId)]
	await ask('backups.make')
	return { app, world, records, smtp, ids: { playerId, goneId, consentId }, items }
}
/** One message goes out, one is called back; a consent and a record end. */
async function afternoon({ app: { ask }, smtp, ids, items }: Day): Promise<void> {
	await ask('outbox.back', { itemId: items[1], reason: 'the wrong visit' })
	await ask('mail.save', mailBy(smtp.port))
	await ask('outbox.sendNow')
	await ask('consents.withdraw', {
		playerId: ids.playerId,
		consentId: ids.consentId,
		withdrawn: '2027-01-20',
		withdrawnBy: 'Owain Trescott',
	})
	const name = `${old.givenName} ${old.familyName}`
	const given = { playerId: ids.goneId, reason: 'kept long enough', name, alsoBackups: false }
	await ask('retention.destroy', given)
}
/** Saves on and on while the backup takes the place of the records. @returns the last number kept */
async function restoredMeanwhile({ app, ids }: Day, drawn: Chance) {
	const { backups } = await app.ask('backups.list')
	const { file } = backups.find((one: { reason: string }) => one.reason === 'asked')
	let last = 0
	let isDone = false
	const saving = (async () => {
		const pause = drawn.below(3)
		for (let number = 1; number <= mostSaves && !isDone; number++) {
			const club = String(number)
			const given = { playerId: ids.playerId, player: { ...player, club } }
			if ((await app.call('players.save', given)).ok) last = number
			for (let at = 0; at <= pause; at++) await new Promise((resolve) => setImmediate(resolve))
		}
	})()
	for (let at = drawn.below(20); at > 0; at--) await new Promise((resolve) => setImmediate(resolve))
	const { before } = await app.ask('backups.restore', { file })
	isDone = true
	await saving
	return { last, before: before as string }
}
const clubOf = async (ask: Ask, playerId: string): Promise<number> =>
	Number((await ask('players.open', { playerId })).player.club ?? 0)
/** What the copy made before holds, opened on another PC. */
async function inCopy({ world, records, ids }: Day, before: string): Promise<number> {
	const other = new World(world.program, world.now().toISOString())
	const app = other.open(other.folder('records'))
	await app.ask('session.moveHere', { file: join(records, before) })
	await app.ask('session.unlock', { passphrase })
	const club = await clubOf(app.ask, ids.playerId)
	app.close()
	return club
}
/** The first item left before the restore and stays sent; the other one is for a person. */
const itemFaults = (listed: { itemId: string; state: string }[], [left, back]: string[]) =>
	listed
		.filter(({ itemId, state }) =>
			itemId === left ? state !== 'sent' : itemId === back && state !== 'to-check',
		)
		.map(({ itemId, state }) => `item ${itemId} is ${state} after the restore`)
async function evening(day: Day, { last, before }: { last: number; before: string }) {
	const { app, smtp, ids, items } = day
	const { ask } = app
	const faults: string[] = []
	const sent = smtp.received.length
	await ask('session.unlock', { passphrase })
	await ask('outbox.list')
	await ask('outbox.sendNow')
	if (smtp.received.length > sent) faults.push('a message left after the restore by itself')
	faults.push(...itemFaults((await ask('outbox.list')).items, items))
	const kept = Math.max(await clubOf(ask, ids.playerId), await inCopy(day, before))
	if (kept < last) faults.push(`saved ${last} while restoring, found ${kept} at most`)
	const { cards } = await ask('players.search', { query: 'wexcombe', limit: 5 })
	if (cards.length > 0) faults.push('a destroyed player is back')
	const told = JSON.stringify((await ask('backups.cameBack')).lists)
	for (const what of ['consent', 'sending', 'destroyed'])
		if (!told.includes(what)) faults.push(`what came back does not tell of a ${what}`)
	faults.push(...(await ask('audit.verify')).problems)
	return { faults, after: smtp.received.length - sent }
}
export async function restores(
	rounds: number,
	seed: number,
	tell: (text: string) => void = () => {},
): Promise<RestoreResult> {
	const program = await plainProgram()
	const result = { seed, rounds: 0, savedMeanwhile: 0, sentBefore: 0, sentAfter: 0 }
	const faults: string[] = []
	for (let round = 1; round <= rounds; round++) {
		const pc = mkdtempSync(join(tmpdir(), 'lastwright-restore-'))
		const day = await morning(program, pc)
		try {
			await afternoon(day)
			result.sentBefore += day.smtp.received.length
			const meanwhile = await restoredMeanwhile(day, chance(seed, round))
			const looked = await evening(day, meanwhile)
			result.rounds++
			result.savedMeanwhile += meanwhile.last
			result.sentAfter += looked.after
			faults.push(...looked.faults.map((fault) => `round ${round}: ${fault}`))
			tell(`round ${round}: ${meanwhile.last} saved meanwhile; ${faults.length} faults`)
		} finally {
			day.app.close()
			await day.smtp.stop()
			rmSync(pc, { recursive: true, force: true })
		}
	}
	return { ...result, faults }
}
