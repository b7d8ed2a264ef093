/**
 * kill -9 at random moments over everything that writes: afterwards the records open, nothing that
 * was acknowledged is gone, and no false alarm is raised.
 */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { clinic } from '../compatibility/scenario/people.ts'
import { type Program, World } from '../compatibility/scenario/program.ts'
import { signed } from '../compatibility/scenario/visits.ts'
import { runUntilKilled } from '../host/killed.ts'
import { type Chance, chance } from './chance.ts'
import { plainProgram } from './everything.ts'
import { type Cast, cast } from './kill-acts.ts'
import { lookAfter } from './kill-look.ts'
import { follow, type Line, type Model, type Standing } from './kill-model.ts'

export interface KillResult {
	seed: number
	kills: number
	/** acts that were acknowledged, and those that a kill cut short */
	done: Record<string, number>
	cutShort: Record<string, number>
	/** a sentence for each fault, with its round */
	faults: string[]
}
const worker = join(import.meta.dirname, 'kill-worker.ts')
const firstPassphrase = 'lantern over nine quarries'
/** Players whose time of keeping passes before the kills begin. */
const due = 40
/** Killed at most so long after the line that was waited for. */
const longestMs = 120
const mostLines = 14
/** The recovery key is tried after each so many kills, and wherever it is in doubt. */
const keysTriedEach = 20

export interface Killed {
	program: Program
	pc: string
	cast: Cast
	model: Model
	/** the clock goes on from round to round */
	ms: number
}
async function begin(program: Program): Promise<Killed> {
	const pc = mkdtempSync(join(tmpdir(), 'lastwright-kills-'))
	const world = new World(program, '2024-03-03T09:00:00.000Z', join(pc, 'outside'))
	const app = world.open(join(pc, 'records'))
	const { recoveryKey } = await app.ask('session.setUp', { clinic, passphrase: firstPassphrase })
	const settings = await app.ask('recordSettings.get')
	const retention = { ...settings.retention, adultYears: 1 }
	await app.ask('recordSettings.save', { ...settings, retention })
	const ids: Record<string, string> = {}
	const old: string[] = []
	for (let at = 0; at < due; at++)
		old.push((await app.ask('players.save', { player: cast.due })).playerId)
	world.until('2027-01-20T09:00:00.000Z')
	await app.ask('session.unlock', { passphrase: firstPassphrase })
	for (const key of ['saved', 'drafted', 'signed'] as const)
		ids[key] = (await app.ask('players.save', { player: { ...cast[key], club: '0' } })).playerId
	const first = await signed(program, app.ask, ids.signed as string, '2027-01-19', { notes: 'one' })
	app.close()
	const now: Standing = {
		passphrase: firstPassphrase,
		recoveryKey,
		saved: 0,
		drafted: 0,
		signed: [first],
		destroyed: [],
	}
	const model: Model = { possible: [now], backups: new Map(), untold: [] }
	return {
		program,
		pc,
		cast: { ...(ids as object), due: old } as unknown as Cast,
		model,
		ms: world.ms,
	}
}
/** @returns what the worker told before it was killed */
async function killedRound(killed: Killed, drawn: Chance, given: object): Promise<Line[]> {
	const file = join(killed.pc, 'given.json')
	writeFileSync(file, JSON.stringify(given))
	const delayMs = drawn.below(longestMs)
	const { lines } = await runUntilKilled(worker, [file], delayMs, 1 + drawn.below(mostLines))
	return lines.map((line) => JSON.parse(line) as Line)
}
function count(result: KillResult, lines: readonly Line[]): void {
	for (const [at, line] of lines.entries()) {
		if (line.told === 'did') result.done[line.does] = (result.done[line.does] ?? 0) + 1
		else if (at === lines.length - 1)
			result.cutShort[line.does] = (result.cutShort[line.does] ?? 0) + 1
	}
}
export async function kills(
	rounds: number,
	seed: number,
	tell: (text: string) => void = () => {},
): Promise<KillResult> {
	const result: KillResult = { seed, kills: 0, done: {}, cutShort: {}, faults: [] }
	const said = new Set<string>()
	const killed = await begin(await plainProgram())
	try {
		for (let round = 1; round <= rounds; round++) {
			const drawn = chance(seed, round, 7)
			const [now] = killed.model.possible
			const { pc, cast: ids, ms } = killed
			const moment = new Date(ms + 60_000).toISOString()
			const lines = await killedRound(killed, drawn, { pc, seed, round, moment, now, cast: ids })
			result.kills++
			count(result, lines)
			killed.ms += 600_000
			const { model, faults } = await lookAfter(
				killed,
				follow(killed.model, lines),
				round % keysTriedEach === 0,
			)
			killed.model = model
			const last = JSON.stringify(lines.at(-1))
			// what was said once is said again at each opening
			const fresh = [...new Set(faults)].filter((fault) => !said.has(fault))
			for (const fault of fresh) said.add(fault)
			result.faults.push(...fresh.map((fault) => `round ${round}, killed after ${last}: ${fault}`))
			tell(
				`round ${round}: ${lines.map(({ does, told }) => `${told} ${does}`).join(', ')}; ${result.faults.length} faults`,
			)
			if (model.possible.length === 0) break
		}
	} finally {
		rmSync(killed.pc, { recursive: true, force: true })
	}
	return result
}
