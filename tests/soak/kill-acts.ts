/** What is done with a store while its program is killed. Each act tells before and after. */
import { rmSync } from 'node:fs'
import { join } from 'node:path'
import { type Opened, World } from '../compatibility/scenario/program.ts'
import { drafted, signed } from '../compatibility/scenario/visits.ts'
import type { Chance } from './chance.ts'
import { type Line, type Standing, unseen } from './kill-model.ts'

/** What the records were begun with. */
export interface Cast {
	/** whose details are saved, whose draft is written, whose visits are signed */
	saved: string
	drafted: string
	signed: string
	/** players whose time of keeping has passed */
	due: readonly string[]
}
export interface Work {
	world: World
	app: Opened
	pc: string
	cast: Cast
	drawn: Chance
	/** what stands, as far as the worker knows */
	now: Standing
	tell: (line: Line) => void
}
export const cast = {
	saved: { givenName: 'Ines', familyName: 'Ashdown', birthDate: '2009-03-02', sex: 'female' },
	drafted: { givenName: 'Lior', familyName: 'Quill', birthDate: '2010-10-10', sex: 'male' },
	signed: { givenName: 'Noor', familyName: 'Haldane', birthDate: '2001-08-02', sex: 'female' },
	due: { givenName: 'Alder', familyName: 'Wexcombe', birthDate: '1990-02-11', sex: 'male' },
} as const
const day = '2027-01-20'
const packPassphrase = 'three mild otters on ice'
const words = ['amber', 'bracken', 'cobalt', 'dune', 'ember', 'fathom', 'gable', 'heron', 'ivory']
const newSecret = (drawn: Chance): string =>
	`${[1, 2, 3, 4, 5].map(() => drawn.pick(words)).join(' ')} ${drawn.below(9000)}`

async function save({ app, cast: ids, now, tell }: Work): Promise<void> {
	const number = now.saved + 1
	tell({ does: 'save', told: 'will', number })
	const player = { ...cast.saved, club: String(number) }
	await app.ask('players.save', { playerId: ids.saved, player })
	now.saved = number
	tell({ does: 'save', told: 'did', number })
}
async function draft({ app, cast: ids, now, tell }: Work): Promise<void> {
	const number = now.drafted + 1
	tell({ does: 'draft', told: 'will', number })
	await drafted(app.ask, ids.drafted, day, { notes: String(number) })
	now.drafted = number
	tell({ does: 'draft', told: 'did', number })
}
async function sign({ app, world, cast: ids, tell }: Work): Promise<void> {
	tell({ does: 'sign', told: 'will' })
	const visitId = await signed(world.program, app.ask, ids.signed, day, { notes: 'limps' })
	tell({ does: 'sign', told: 'did', visitId })
}
async function passphrase({ app, drawn, now, tell }: Work): Promise<void> {
	const next = newSecret(drawn)
	tell({ does: 'passphrase', told: 'will', passphrase: next })
	await app.ask('session.changePassphrase', { old: now.passphrase, passphrase: next })
	now.passphrase = next
	tell({ does: 'passphrase', told: 'did', passphrase: next })
}
async function recovery({ app, drawn, now, tell }: Work): Promise<void> {
	// nobody has a paper: there is nothing to open with
	if (now.recoveryKey === unseen) return
	const newPassphrase = newSecret(drawn)
	await app.ask('session.lock')
	tell({ does: 'recovery', told: 'will', passphrase: newPassphrase })
	await app.ask('session.unlockWithRecoveryKey', { recoveryKey: now.recoveryKey, newPassphrase })
	now.passphrase = newPassphrase
	tell({ does: 'recovery', told: 'did', passphrase: newPassphrase })
}
async function paper({ app, now, tell }: Work): Promise<void> {
	const given = { passphrase: now.passphrase }
	// a paper that nobody confirmed is replaced at once, before the new one can be told
	const { recoveryKeyUnconfirmed } = await app.ask('session.status')
	if (recoveryKeyUnconfirmed) tell({ does: 'paper', told: 'will', recoveryKey: unseen })
	const { recoveryKey } = await app.ask('session.newRecoveryKey', given)
	tell({ does: 'paper', told: 'will', recoveryKey })
	const parts = (recoveryKey as string).split('-')
	const groups = [1, 3].map((group) => ({ group, typed: parts[group - 1] }))
	await app.ask('session.confirmRecoveryKey', { groups })
	now.recoveryKey = recoveryKey
	tell({ does: 'paper', told: 'did', recoveryKey })
}
async function dataKey({ app, tell }: Work): Promise<void> {
	tell({ does: 'data-key', told: 'will' })
	await app.ask('people.changeDataKey')
	tell({ does: 'data-key', told: 'did' })
}
async function backup({ app, tell }: Work): Promise<void> {
	tell({ does: 'backup', told: 'will' })
	const { file } = await app.ask('backups.make')
	tell({ does: 'backup', told: 'did', file })
}
/** The newest backup that somebody asked for, in the place of the records. */
async function restore({ app, now, tell }: Work): Promise<void> {
	const { backups } = await app.ask('backups.list')
	const asked = backups.find((one: { reason: string }) => one.reason === 'asked')
	if (!asked) return
	tell({ does: 'restore', told: 'will', file: asked.file })
	await app.ask('backups.restore', { file: asked.file })
	tell({ does: 'restore', told: 'did', file: asked.file })
	// secrets of now open it: this unlock is the one that makes it safe
	await app.ask('session.unlock', { passphrase: now.passphrase })
	// what stands now is for whoever opens it next
	throw new WorkDone()
}
async function destroy({ app, cast: ids, now, tell }: Work): Promise<void> {
	const playerId = ids.due.find((id) => !now.destroyed.includes(id))
	if (playerId === undefined) return
	tell({ does: 'destroy', told: 'will', playerId })
	await app.ask('retention.destroy', {
		playerId,
		reason: 'kept long enough',
		name: `${cast.due.givenName} ${cast.due.familyName}`,
		alsoBackups: false,
	})
	now.destroyed = [...now.destroyed, playerId]
	tell({ does: 'destroy', told: 'did', playerId })
}
/** A player goes out with a laptop, is seen there and comes home. */
async function merge({ app, world, pc, cast: ids, tell }: Work): Promise<void> {
	const [stick, laptopFolder] = [join(pc, 'stick'), join(pc, 'laptop')]
	for (const there of [stick, laptopFolder]) rmSync(there, { recursive: true, force: true })
	const given = { folder: world.folder('stick'), passphrase: packPassphrase }
	const pack = { ...given, playerIds: [ids.signed], history: 'none', expires: '2027-03-01' }
	const { file } = await app.ask('outreach.makePack', pack)
	const away = new World(world.program, world.now().toISOString())
	const laptop = away.open(away.folder('laptop'))
	await laptop.ask('session.moveHere', { file, passphrase: packPassphrase })
	await laptop.ask('session.unlock', { passphrase: packPassphrase })
	const visitId = await signed(world.program, laptop.ask, ids.signed, day, { notes: 'seen away' })
	const back = (await laptop.ask('outreach.makeReturn', given)).file
	laptop.close()
	tell({ does: 'merge', told: 'will' })
	await app.ask('outreach.merge', { file: back, passphrase: packPassphrase })
	tell({ does: 'merge', told: 'did', visitId })
}
/** The worker has nothing more to do. */
export class WorkDone extends Error {}
/** Each as often as it stands here. */
export const acts: readonly ((work: Work) => Promise<void>)[] = [
	save,
	save,
	draft,
	draft,
	sign,
	passphrase,
	passphrase,
	recovery,
	recovery,
	paper,
	dataKey,
	backup,
	backup,
	restore,
	destroy,
	merge,
]
