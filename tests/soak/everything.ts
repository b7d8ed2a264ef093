/** A store with records of every kind, made by this version, for those that damage and forge. */
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, statSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { makeHome } from '../compatibility/scenario/home.ts'
import { fillOutbox } from '../compatibility/scenario/outbox.ts'
import { stillAway, wentAndCame } from '../compatibility/scenario/outreach.ts'
import { secrets } from '../compatibility/scenario/people.ts'
import { type Opened, type Program, programAt, World } from '../compatibility/scenario/program.ts'
import { planSeason, screenSquad } from '../compatibility/scenario/season.ts'

export const ownerPassphrase = secrets.owner
/** The moment at which every store of the soak is looked at. */
export const lookedAt = '2027-01-21T10:00:00.000Z'
/** Short pages: a damage then falls oftener on what holds the records together. */
const shortPage = async (): Promise<Uint8Array> => Buffer.from('%PDF-1.7 a page of fixed bytes')

/** This version's program with a page that is always the same. */
export async function plainProgram(): Promise<Program> {
	return { ...(await programAt(join(import.meta.dirname, '../..'))), renderPdf: shortPage }
}
export interface Everything {
	program: Program
	/** the folder of one PC: `records`, what stands `outside` of them, and a backup of yesterday */
	pc: string
	recoveryKey: string
}
/**
 * Opens the records of a PC at a moment.
 * @param pc the folder that holds `records` and `outside`
 */
export function openedAt(program: Program, pc: string, moment = lookedAt): Opened {
	mkdirSync(join(pc, 'records'), { recursive: true })
	return new World(program, moment, join(pc, 'outside')).open(join(pc, 'records'))
}
/** Plays everything that a clinic does, and ends with a backup, so that no opening makes one. */
export async function makeEverything(): Promise<Everything> {
	const program = await plainProgram()
	const pc = mkdtempSync(join(tmpdir(), 'lastwright-everything-'))
	const world = new World(program, '2025-03-03T09:00:00.000Z', join(pc, 'outside'))
	const app = world.open(join(pc, 'records'))
	const home = await makeHome(world, app)
	await fillOutbox(app.ask, home)
	await planSeason(world, app.ask, home)
	await screenSquad(world, app.ask)
	await wentAndCame(world, app.ask, home)
	await stillAway(world, app.ask, home)
	world.until(lookedAt)
	await app.ask('session.unlock', { passphrase: ownerPassphrase })
	await app.ask('backups.make')
	await app.ask('session.lock')
	app.close()
	return { program, pc, recoveryKey: home.recoveryKey }
}
/** All files of a folder by their paths in it. */
export function filesOf(folder: string): Map<string, Buffer> {
	const names = readdirSync(folder, { recursive: true, encoding: 'utf8' })
	const files = names.filter((name) => statSync(join(folder, name)).isFile())
	return new Map(files.map((name) => [name, readFileSync(join(folder, name))]))
}
