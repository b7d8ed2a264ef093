/**
 * A forger with all files of the folder and no key, while the head outside the folder stays as it
 * is: each forgery is found in words, and once found it is not silenced by opening the records again.
 */
import { linkSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { DatabaseSync } from 'node:sqlite'
import { secrets } from '../compatibility/scenario/people.ts'
import type { Ask } from '../compatibility/scenario/program.ts'
import { drafted, measured, signed } from '../compatibility/scenario/visits.ts'
import {
	type Everything,
	filesOf,
	makeEverything,
	openedAt,
	ownerPassphrase,
} from './everything.ts'
import { type Forgery, forgeries } from './forgeries.table.ts'
import { type Look, lookAt } from './looks.ts'

export interface Forged {
	name: string
	cannotBeFound?: string
	/** what was said at the first opening, and at the second one */
	first: string[]
	second: string[]
	/** answers that were changed by it */
	changed: string[]
	faults: string[]
}
type Files = Map<string, Buffer>
const records = 'lastwright.db'
const headName = 'lastwright.head'
const evening = '2027-01-21T11:00:00.000Z'
/** a moment of its own, so that its backup has a name of its own */
const restoredAt = '2027-01-21T10:00:30.000Z'
const restoreSeen = { moment: '2027-01-21T10:10:00.000Z' }
/** everything is looked at after all that was written: the clock gives nothing away */
const forgedAt = { moment: '2027-01-21T12:00:00.000Z' }

/** What the forger can look up: what stood in the morning and what stands in the evening. */
interface Bench {
	everything: Everything
	morning: { records: Files; outside: Files }
	evening: { records: Files; outside: Files }
	kept: string
	restoreNote: Uint8Array
}
const both = (pc: string) => ({
	records: filesOf(join(pc, 'records')),
	outside: filesOf(join(pc, 'outside')),
})
/** A day's work: a withdrawal, details, two drafts, a visit, a passphrase, a wrong try at the end. */
async function work(everything: Everything): Promise<void> {
	const { program, pc } = everything
	const app = openedAt(program, pc, evening)
	const { ask } = app
	await ask('session.unlock', { passphrase: ownerPassphrase })
	const { cards } = await ask('players.search', { query: '', limit: 100 })
	const idOf = (name: string): string =>
		cards.find((card: { familyName: string }) => card.familyName === name).playerId
	await withdraw(ask, idOf('Trescott'))
	const { player } = await ask('players.open', { playerId: idOf('Haldane') })
	await ask('players.save', { playerId: idOf('Haldane'), player: { ...player, club: 'Lane' } })
	for (const name of ['Haldane', 'Calloway'])
		await drafted(ask, idOf(name), '2027-01-20', { notes: 'written in the evening' })
	await signed(program, ask, idOf('Solberg'), '2027-01-21', measured(251))
	await ask('session.lock')
	await ask('session.unlock', { passphrase: secrets.clinician })
	const passphrase = 'harbour bell under moss'
	await ask('session.changePassphrase', { old: secrets.clinician, passphrase })
	await ask('session.lock')
	await app.call('session.unlock', { passphrase: 'lantern over ten quarries' })
	app.close()
}
async function withdraw(ask: Ask, playerId: string): Promise<void> {
	const { consents } = await ask('consents.list', { playerId })
	const standing = consents.find(
		(one: { purpose: string; withdrawn?: string }) => one.purpose === 'email' && !one.withdrawn,
	)
	await ask('consents.withdraw', {
		playerId,
		consentId: standing.consentId,
		withdrawn: '2027-01-21',
		withdrawnBy: 'Owain Trescott',
	})
}
/** A restore by the owner, closed before anybody unlocks. @returns what it noted in the file */
async function restoredOnce({ program, pc }: Everything): Promise<Uint8Array> {
	const app = openedAt(program, pc, restoredAt)
	await app.ask('session.unlock', { passphrase: ownerPassphrase })
	const { file } = await app.ask('backups.make')
	await app.ask('backups.restore', { file })
	app.close()
	const db = new DatabaseSync(join(pc, 'records', records))
	const note = db.prepare("SELECT value FROM setting WHERE name = 'restored'").get()
	db.close()
	return (note as { value: Uint8Array }).value
}
async function prepare(): Promise<Bench> {
	const everything = await makeEverything()
	const { program, pc } = everything
	const restoreNote = await restoredOnce(everything)
	await lookAt(program, pc, restoreSeen)
	const kept = join(pc, 'kept.db')
	linkSync(join(pc, 'records', records), kept)
	const morning = both(pc)
	await work(everything)
	return { everything, morning, evening: both(pc), kept, restoreNote }
}
/** Everything as it stood in the evening; the records file keeps its place on the disk. */
function put({ everything, evening: stood, kept }: Bench): void {
	for (const part of ['records', 'outside'] as const) {
		const here = join(everything.pc, part)
		for (const name of readdirSync(here)) rmSync(join(here, name), { recursive: true, force: true })
		for (const [name, bytes] of stood[part])
			if (name !== records) writeFileSync(join(here, name), bytes)
	}
	writeFileSync(kept, stood.records.get(records) as Buffer)
	linkSync(kept, join(everything.pc, 'records', records))
}
/** Works on the file with SQLite's own means; what guards its tables is taken off and put back. */
function forgeIn({ everything, morning, restoreNote }: Bench, { forge }: Forgery): void {
	const head = join(everything.pc, 'records', headName)
	const db = new DatabaseSync(join(everything.pc, 'records', records))
	const scratch = mkdtempSync(join(tmpdir(), 'lastwright-morning-'))
	writeFileSync(join(scratch, records), morning.records.get(records) as Buffer)
	const older = new DatabaseSync(join(scratch, records))
	try {
		const triggers = db
			.prepare("SELECT name, sql FROM sqlite_master WHERE type = 'trigger'")
			.all() as { name: string; sql: string }[]
		for (const { name } of triggers) db.exec(`DROP TRIGGER ${name}`)
		forge({
			db,
			morning: older,
			restoreNote,
			headOfMorning: () => writeFileSync(head, morning.records.get(headName) as Buffer),
			dropHead: () => rmSync(head),
		})
		for (const { sql } of triggers) db.exec(sql)
	} finally {
		db.close()
		older.close()
		rmSync(scratch, { recursive: true, force: true })
	}
}
const saidIn = (look: Look, clean: Look): string[] => {
	const known = [...clean.warnings, ...clean.problems]
	const said = [look.opening ?? '', look.unlock ?? '', ...look.warnings, ...look.problems]
	return [...new Set(said)].filter((text) => text !== '' && !known.includes(text))
}
/** What a forger would take out once something was found. */
function silence(pc: string): void {
	const db = new DatabaseSync(join(pc, 'records', records))
	db.exec("DELETE FROM setting WHERE name = 'alarms'")
	db.close()
}
async function tryOne(bench: Bench, forgery: Forgery, clean: Look): Promise<Forged> {
	const { program, pc } = bench.everything
	put(bench)
	forgeIn(bench, forgery)
	const first = await lookAt(program, pc, forgedAt)
	silence(pc)
	const second = await lookAt(program, pc, forgedAt)
	const changed = Object.keys(clean.views).filter(
		(view) =>
			!view.startsWith('audit') &&
			JSON.stringify(clean.views[view]) !== JSON.stringify(first.views[view]),
	)
	const { name, cannotBeFound } = forgery
	return {
		name,
		...(cannotBeFound === undefined ? {} : { cannotBeFound }),
		first: saidIn(first, clean),
		second: saidIn(second, clean),
		changed,
		faults: [...first.faults, ...second.faults],
	}
}
/** The whole folder and the head outside of it, as they were in the morning. */
async function rolledBack(bench: Bench, clean: Look): Promise<Forged> {
	const { program, pc } = bench.everything
	put({ ...bench, evening: bench.morning })
	const first = await lookAt(program, pc, forgedAt)
	return {
		name: 'folder and head outside of it are both put back to the morning',
		cannotBeFound: 'nothing on this PC knows any more what came later: compare with a backup',
		first: saidIn(first, clean),
		second: [],
		changed: [],
		faults: first.faults,
	}
}
export async function forger(tell: (text: string) => void = () => {}): Promise<Forged[]> {
	const bench = await prepare()
	const { program, pc } = bench.everything
	put(bench)
	const clean = await lookAt(program, pc, forgedAt)
	const results: Forged[] = []
	for (const forgery of forgeries) {
		const forged = await tryOne(bench, forgery, clean)
		results.push(forged)
		tell(
			`${verdictOf(forged)}: ${forged.name}${forged.first.map((text) => `\n\t${text}`).join('')}`,
		)
	}
	results.push(await rolledBack(bench, clean))
	rmSync(pc, { recursive: true, force: true })
	return results
}
/** What is wrong with how a forgery was met; empty where all is well. */
export function wrongWith({ cannotBeFound, first, second, changed, faults }: Forged): string[] {
	if (cannotBeFound !== undefined)
		return [
			...faults,
			...(first.length > 0 ? ['it was found, though it is said that nobody can'] : []),
			...changed.map((view) => `it changed ${view}`),
		]
	return [
		...faults,
		...(first.length === 0 ? ['it was not found'] : []),
		...(first.length > 0 && second.length === 0 ? ['it was silenced by the next opening'] : []),
	]
}
export const verdictOf = (forged: Forged): string =>
	wrongWith(forged).length > 0
		? `WRONG (${wrongWith(forged).join('; ').slice(0, 200)})`
		: forged.cannotBeFound
			? 'cannot be found'
			: 'found'
