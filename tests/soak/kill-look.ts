/** Opens what a kill left behind, and finds which of the possible states stands. */
import { cpSync, mkdtempSync, readdirSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { openChecked } from '../../electron/store/backup-file.ts'
import { type Opened, World } from '../compatibility/scenario/program.ts'
import { type Model, type Standing, unseen } from './kill-model.ts'
import type { Killed } from './kills.ts'

interface Found {
	saved: number
	drafted: number
	signed: Set<string>
	players: Set<string>
}
async function findIn({ ask }: Opened, { cast }: Killed): Promise<Found> {
	const { cards } = await ask('players.search', { query: '', limit: 500 })
	const player = (await ask('players.open', { playerId: cast.saved })).player
	const { drafts } = await ask('players.open', { playerId: cast.drafted })
	const written = drafts.length
		? (await ask('drafts.open', { playerId: cast.drafted, visitDate: '2027-01-20' })).draft
		: undefined
	const { visits } = await ask('players.open', { playerId: cast.signed })
	for (const { visitId } of visits.slice(0, 2)) await ask('reports.open', { visitId })
	return {
		saved: Number(player.club),
		drafted: Number(written?.content.visit.notes ?? 0),
		signed: new Set(visits.map(({ visitId }: { visitId: string }) => visitId)),
		players: new Set(cards.map(({ playerId }: { playerId: string }) => playerId)),
	}
}
const missing = (standing: Standing, found: Found, due: readonly string[]): string[] => [
	...(found.saved === standing.saved ? [] : [`saved ${standing.saved}, found ${found.saved}`]),
	...(found.drafted === standing.drafted
		? []
		: [`drafted ${standing.drafted}, found ${found.drafted}`]),
	...standing.signed.filter((id) => !found.signed.has(id)).map((id) => `visit ${id} is gone`),
	...due
		.filter((id) => found.players.has(id) === standing.destroyed.includes(id))
		.map((id) => `player ${id} is ${found.players.has(id) ? 'back' : 'gone'}`),
]
/** Unlocks by the first passphrase that opens. */
async function unlocked(app: Opened, possible: readonly Standing[]): Promise<string | undefined> {
	for (const passphrase of new Set(possible.map((one) => one.passphrase)))
		if ((await app.call('session.unlock', { passphrase })).ok) return passphrase
	return undefined
}
/**
 * Which recovery keys open, tried on a copy: the use of one changes the passphrase. Where none does,
 * it may be that nobody saw the one that would.
 */
async function withKeysThatOpen(
	killed: Killed,
	possible: readonly Standing[],
): Promise<Standing[]> {
	const keys = new Set<string>()
	for (const recoveryKey of new Set(possible.map((one) => one.recoveryKey))) {
		if (recoveryKey === unseen) continue
		const copy = mkdtempSync(join(tmpdir(), 'lastwright-copy-'))
		for (const part of ['records', 'outside'])
			cpSync(join(killed.pc, part), join(copy, part), { recursive: true })
		const app = new World(
			killed.program,
			new Date(killed.ms).toISOString(),
			join(copy, 'outside'),
		).open(join(copy, 'records'))
		const given = { recoveryKey, newPassphrase: 'amber heron crosses dune 77' }
		if ((await app.call('session.unlockWithRecoveryKey', given)).ok) keys.add(recoveryKey)
		app.close()
		rmSync(copy, { recursive: true, force: true })
	}
	const opened = possible.filter((one) => keys.has(one.recoveryKey))
	return opened.length > 0 ? opened : possible.filter((one) => one.recoveryKey === unseen)
}
/**
 * What the owner decides after a restore: everything as it stands already.
 * @returns whether a list waited for that
 */
async function decideAll({ ask }: Opened): Promise<boolean> {
	const { lists } = await ask('backups.cameBack')
	for (const { restoreId, lines } of lists) {
		const decisions = lines
			.filter((line: { decided?: unknown }) => line.decided === undefined)
			.map((line: { lineId: string; choices: { choice: string }[] }) => ({
				lineId: line.lineId,
				choice: line.choices[0]?.choice,
			}))
		if (decisions.length > 0) await ask('backups.decide', { restoreId, decisions })
	}
	return lists.some(({ open }: { open: number }) => open > 0)
}
/** Every file that has the name of a backup is a whole one. */
function brokenBackups(folder: string): string[] {
	return readdirSync(folder)
		.filter((file) => /^lastwright-backup-.*\.db$/.test(file))
		.flatMap((file) => {
			try {
				openChecked(join(folder, file)).db.close()
				return []
			} catch (error) {
				return [error instanceof Error ? error.message : String(error)]
			}
		})
}
/** What is said while a list waits, and only then. */
const held = /^Nothing is sent by itself until the owner has decided/
/** Warnings before and after the lists were decided: what is in the way then, and no more. */
async function warningsAround(app: Opened): Promise<string[]> {
	const warnings = async (): Promise<string[]> => (await app.ask('session.status')).warnings
	const before = await warnings()
	const waited = await decideAll(app)
	const after = await warnings()
	const isSaid = before.some((text) => held.test(text))
	return [
		...before.filter((text) => !held.test(text)),
		...after.filter((text) => !before.includes(text) || held.test(text)),
		...(isSaid === waited ? [] : [`a list waits: ${waited}, and it is said: ${isSaid}`]),
	]
}

async function lookInto(app: Opened, killed: Killed, model: Model) {
	const faults: string[] = []
	const passphrase = await unlocked(app, model.possible)
	if (passphrase === undefined) return { faults: ['no passphrase opens the records'], possible: [] }
	faults.push(...(await warningsAround(app)))
	const { problems } = await app.ask('audit.verify')
	faults.push(...problems)
	const found = await findIn(app, killed)
	const opened = model.possible.filter((one) => one.passphrase === passphrase)
	const stands = opened.filter((one) => missing(one, found, killed.cast.due).length === 0)
	const [first] = opened
	if (stands.length > 0 || !first) return { faults, possible: stands }
	faults.push(...missing(first, found, killed.cast.due))
	const { saved, drafted, players } = found
	const destroyed = killed.cast.due.filter((id) => !players.has(id))
	const signed = first.signed.filter((id) => found.signed.has(id))
	return { faults, possible: [{ ...first, saved, drafted, signed, destroyed }] }
}
/**
 * @param tryKeys tries the recovery key even where there is no doubt which one it is
 * @returns what stands, and a sentence for each thing that should be otherwise
 */
export async function lookAfter(
	killed: Killed,
	model: Model,
	tryKeys: boolean,
): Promise<{ model: Model; faults: string[] }> {
	const world = new World(
		killed.program,
		new Date(killed.ms).toISOString(),
		join(killed.pc, 'outside'),
	)
	const app = world.open(join(killed.pc, 'records'))
	try {
		const { faults, possible } = await lookInto(app, killed, model)
		const { recoveryKeyUnconfirmed } = await app.ask('session.status')
		app.close()
		faults.push(...brokenBackups(join(killed.pc, 'records')))
		const isOneKey = new Set(possible.map((one) => one.recoveryKey)).size <= 1
		const whole = tryKeys || !isOneKey ? await withKeysThatOpen(killed, possible) : possible
		if (possible.length > 0 && whole.length === 0) faults.push('no recovery key opens the records')
		if (whole.some((one) => one.recoveryKey === unseen) && !recoveryKeyUnconfirmed)
			faults.push('nobody has a recovery key that opens, and it is not said')
		return { model: { ...model, possible: whole }, faults }
	} catch (error) {
		const says = error instanceof Error ? error.message : String(error)
		return { model: { ...model, possible: [] }, faults: [`stopped: ${says}`] }
	} finally {
		app.close()
	}
}
