/** What a program sees of a fixture: each opening is a copy, looked at in the same moment. */
import { cpSync } from 'node:fs'
import { join } from 'node:path'
import type { Homecoming, Opening } from '../manifest.ts'
import { viewsOf } from '../views.ts'
import { type Opened, type Program, World } from './program.ts'

export type Unseen = Omit<Opening, 'views' | 'lastRow' | 'people'>
type UnseenHomecoming = Omit<Homecoming, 'result'>

/** A data folder as it stands, without lock and backups. */
export const copyStore = (from: string, to: string): void =>
	cpSync(from, to, {
		recursive: true,
		filter: (source) => !/lock$|lastwright-backup-|-(wal|shm)$/.test(source),
	})
let count = 0
/** Opens the records of a fixture on a PC of its own. */
export async function openedFrom(
	world: World,
	fixture: string,
	{ from, kind, passphrase }: Unseen,
): Promise<Opened> {
	const there = world.folder(`opening-${++count}`)
	if (kind === 'folder') copyStore(join(fixture, from), there)
	const opened = world.open(there)
	if (kind === 'folder') return opened
	const file = join(fixture, from)
	await opened.ask('session.moveHere', kind === 'pack' ? { file, passphrase } : { file })
	return opened
}
async function look(program: Program, fixture: string, lookedAt: string, opening: Unseen) {
	const world = new World(program, lookedAt)
	const opened = await openedFrom(world, fixture, opening)
	await opened.ask('session.unlock', { passphrase: opening.passphrase })
	const seen = await viewsOf(opened.call, { before: lookedAt })
	opened.close()
	return seen
}
/** How the program answers to a passphrase: who works then, or the words of the refusal. */
export async function answeredTo(opened: Opened, passphrase: string): Promise<unknown> {
	const answer = await opened.call('session.unlock', { passphrase })
	if (!answer.ok) return { refused: answer.message }
	const { person } = await opened.ask('session.status')
	await opened.ask('session.lock')
	return person
}
async function tryEach(
	program: Program,
	fixture: string,
	lookedAt: string,
	opening: Unseen,
	passphrases: readonly string[],
) {
	const opened = await openedFrom(new World(program, lookedAt), fixture, opening)
	const people: Opening['people'] = []
	for (const passphrase of passphrases)
		people.push({ passphrase, answered: await answeredTo(opened, passphrase) })
	opened.close()
	return people
}
/** @param passphrases of everybody who works or worked there */
export async function seenBy(
	program: Program,
	fixture: string,
	lookedAt: string,
	unseen: Unseen,
	passphrases: readonly string[],
): Promise<Opening> {
	const { views, lastRow: last } = await look(program, fixture, lookedAt, unseen)
	// records that came in a pack begin a trail of their own at each opening
	const lastRow = unseen.kind === 'pack' ? 0 : last
	if (lastRow === 0) views['audit.page'] = []
	const people = await tryEach(program, fixture, lookedAt, unseen, passphrases)
	return { ...unseen, views, lastRow, people }
}
export async function previewed(
	program: Program,
	fixture: string,
	lookedAt: string,
	home: Unseen,
	coming: UnseenHomecoming,
): Promise<Homecoming> {
	const opened = await openedFrom(new World(program, lookedAt), fixture, home)
	await opened.ask('session.unlock', { passphrase: home.passphrase })
	const file = join(fixture, coming.from)
	const given = { file, passphrase: coming.passphrase }
	const result = await opened.ask('outreach.previewMerge', given)
	opened.close()
	return { ...coming, result }
}
