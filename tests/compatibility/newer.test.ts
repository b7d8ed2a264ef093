/**
 * What a newer version writes is met with a sentence, never with a stop: in a clinic with records
 * of every kind, everything else is seen as before.
 */
import { join } from 'node:path'
import { DatabaseSync } from 'node:sqlite'
import { beforeAll, describe, expect, test } from 'vitest'
import { migrations } from '../../electron/store/migrations.table.ts'
import { Store, type StoredRecord } from '../../electron/store/store.ts'
import type { CameBack } from '../../shared/desk/backups/came-back.ts'
import { kindNames, kinds } from '../../shared/desk/ledger/ledger.ts'
import { lostSince } from './compare.ts'
import { fixtures, readManifest, versionsKept } from './manifest.ts'
import { openedFrom } from './scenario/look.ts'
import { cheapCost, type Opened, programAt, World } from './scenario/program.ts'
import { type Views, viewsOf } from './views.ts'

const program = await programAt(join(import.meta.dirname, '../..'))
const newest = versionsKept().at(-1) as string
const manifest = readManifest(newest)
const clinic = manifest.openings.find((opening) => opening.name === 'the clinic')!
const { passphrase } = clinic
const schemaOf010 = 2
const newKey = 'ofANewerVersion'
/** Kinds that belong to the store itself: what it writes of itself is bound otherwise. */
const ofTheStore: readonly string[] = ['anchor', 'installation']
const ofPeople = kindNames.filter((kind) => !ofTheStore.includes(kind))

interface There {
	world: World
	folder: string
}
/** A list after a restore, decided long ago: the scenario of the fixtures restores nothing. */
const decidedList: CameBack = {
	restoreId: 'a-restore',
	at: manifest.lookedAt,
	how: 'restore',
	backup: 'a-backup.db',
	backupAt: manifest.lookedAt,
	lines: [
		{
			lineId: 'destroyed:others',
			subject: { what: 'destroyed', records: 1 },
			allowed: ['as-before'],
			decided: { choice: 'as-before', by: 'the owner', at: manifest.lookedAt },
		},
	],
}
/** The clinic of the newest fixture on a PC of its own, with a record of every kind, closed. */
async function clinicClosed(): Promise<There> {
	const world = new World(program, manifest.lookedAt)
	const app = await openedFrom(world, join(fixtures, newest), clinic)
	app.close()
	const there = { world, folder: app.dataFolder }
	await writing(there, (store) => {
		const thing = decidedList.restoreId
		if (!lastOf(store, 'restored'))
			store.append({ kind: 'restored', at: decidedList.at, thing, value: decidedList })
	})
	return there
}
/** What is seen of it before anything newer is in it. */
async function seenBefore(): Promise<Views> {
	const app = await reopened(await clinicClosed())
	const { views } = await viewsOf(app.call, clinic.lastRow)
	app.close()
	return views
}
const before = await seenBefore()
/** Writes behind the program's back, as a newer version of it would. */
async function writing({ world, folder }: There, write: (store: Store) => void): Promise<void> {
	const { outside } = world
	const store = new Store(folder, { cost: cheapCost, now: world.now, outside })
	await store.unlock(passphrase)
	store.together(() => write(store))
	store.close()
}
function lastOf(store: Store, kind: string): StoredRecord | undefined {
	return store.load([kind]).records.at(-1)
}
/** The next version of the last record of a kind, in a form that only a newer version knows. */
function writeNext(store: Store, kind: string, version: number, value: (was: unknown) => unknown) {
	const last = lastOf(store, kind)
	if (!last) throw new Error(`the fixture holds no ${kind}`)
	const { id: follows, about, thing, card } = last
	const found = {
		...(about ? { about } : {}),
		...(thing ? { thing } : {}),
		...(card ? { card } : {}),
	}
	return store.append({ kind, version, at: last.at, follows, ...found, value: value(last.value) })
}
/** Answers that go with the clock, or name the records that are newer. */
const ofTheMoment = /^(breaches\.list|audit\.verify)/
const withNewKey = (was: unknown): unknown => ({ ...(was as object), [newKey]: { deep: [1] } })
const refusalsIn = (views: Views): string[] =>
	Object.entries(views).flatMap(([view, value]) => {
		const { refused } = value as { refused?: string }
		return refused === undefined ? [] : [`${view}: ${refused}`]
	})
const raw = /could not finish|SQLITE|undefined|\bNaN\b|\[object/
/** Work goes on: a player, a draft, a backup, a pack. */
async function goesOn({ ask }: Opened, world: World): Promise<void> {
	const player = { givenName: 'Ada', familyName: 'Newcome', birthDate: '2001-01-02', sex: 'female' }
	const { playerId } = await ask('players.save', { player })
	await ask('drafts.open', { playerId, visitDate: '2027-01-21' })
	expect((await ask('backups.make')).bytes).toBeGreaterThan(0)
	const { cards } = await ask('players.search', { query: 'trescott', limit: 5 })
	await ask('outreach.makePack', {
		playerIds: [cards[0].playerId],
		history: 'all',
		folder: world.folder('stick'),
		passphrase: 'seven mild otters on ice',
		expires: '2027-02-10',
	})
}
async function reopened({ world, folder }: There): Promise<Opened> {
	const app = world.open(folder)
	await app.ask('session.unlock', { passphrase })
	return app
}

describe('the schema', () => {
	test('is newer than that of 0.1.0, which refuses it by its number', async () => {
		const there = await clinicClosed()
		const db = new DatabaseSync(join(there.folder, 'lastwright.db'))
		const { value } = db.prepare("SELECT value FROM meta WHERE name = 'schema'").get() as {
			value: number
		}
		db.close()
		expect(Number(value)).toBe(migrations.length)
		expect(Number(value)).toBeGreaterThan(schemaOf010)
	})
	test('of a newer version is refused in words, and nothing is changed', async () => {
		const there = await clinicClosed()
		const file = join(there.folder, 'lastwright.db')
		const db = new DatabaseSync(file)
		db.prepare("UPDATE meta SET value = ? WHERE name = 'schema'").run(migrations.length + 1)
		db.close()
		expect(() => there.world.open(there.folder)).toThrow(
			/written by a newer Lastwright.*newer version/,
		)
	})
})
describe('kinds that this version does not know', () => {
	test('are kept, and everything else is seen as before', async () => {
		const there = await clinicClosed()
		await writing(there, (store) => {
			const about = store.load(['player']).records[0]?.about
			for (const value of [{ gait: [1, 2] }, null, 'text', 7])
				store.append({ kind: 'gait-film', version: 3, at: manifest.lookedAt, value })
			if (about) store.append({ kind: 'gait-film', at: manifest.lookedAt, about, value: {} })
		})
		const app = await reopened(there)
		const { views } = await viewsOf(app.call, clinic.lastRow)
		const untouched = (all: Views) =>
			Object.fromEntries(Object.entries(all).filter(([view]) => !ofTheMoment.test(view)))
		expect(
			lostSince({ version: 'itself', opening: clinic.name }, untouched(before), untouched(views)),
		).toEqual([])
		await goesOn(app, there.world)
		app.close()
	})
})
describe('entries that this version does not know, in every kind', () => {
	let there: There
	let app: Opened
	beforeAll(async () => {
		there = await clinicClosed()
		await writing(there, (store) => {
			for (const kind of ofPeople) writeNext(store, kind, kinds[kind].version + 1, withNewKey)
		})
		app = await reopened(there)
		return () => app.close()
	})
	test('refuse nobody anything', async () => {
		const { views } = await viewsOf(app.call, clinic.lastRow)
		expect(refusalsIn(views)).toEqual(refusalsIn(before))
	})
	test('let work go on', () => goesOn(app, there.world))
})
describe.each(ofPeople)('a later form of %s', (kind) => {
	test('that this version cannot read is named, and stops nothing else', async () => {
		const there = await clinicClosed()
		await writing(there, (store) => {
			writeNext(store, kind, kinds[kind].version + 1, () => ({ whollyOther: [kind] }))
		})
		const app = await reopened(there)
		const { views } = await viewsOf(app.call, clinic.lastRow)
		const refusals = refusalsIn(views).filter((one) => !refusalsIn(before).includes(one))
		expect(refusals.filter((one) => raw.test(one))).toEqual([])
		for (const refusal of refusals) expect(refusal).toMatch(/newer|cannot be read|backup/)
		const { warnings } = await app.ask('session.status')
		const { problems } = await app.ask('audit.verify')
		const said = [...warnings, ...problems, ...refusals]
		expect(said.filter((one) => /newer/.test(one))).not.toEqual([])
		await goesOn(app, there.world)
		app.close()
	})
})
