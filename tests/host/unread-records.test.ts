/** Records that this version cannot read, or not wholly: the rest goes on, and each is named. */
import fc from 'fast-check'
import { beforeAll, describe, expect, it } from 'vitest'
import { rememberedKinds } from '../../electron/services/records/remember.ts'
import { Store } from '../../electron/store/store.ts'
import { type KindName, kindNames, kinds } from '../../shared/desk/ledger/ledger.ts'
import { recordOf } from '../engine/random-records.ts'
import { folder, type Opened, open, passphrase, signed, withPlayer } from './bench-app.ts'
import { packed } from './bench-pack.ts'

interface Written {
	id: string
	kind: string
}
const newKey = 'ofANewerVersion'
/** Forms of values that no version of a kind ever had. */
const nonsense = [null, 42, 'text', [], { [newKey]: true }]

/** A store with a player and a signed visit, then closed. */
async function atWork() {
	const { app, here, playerId } = await withPlayer()
	const visitId = await signed(app, playerId)
	await app.ask('consents.record', {
		playerId,
		consent: {
			purpose: 'photos',
			recipient: '',
			decision: 'permit',
			grantor: { name: 'Rae Ashdown', relation: 'guardian' },
			method: 'written',
			given: '2027-01-19',
		},
	})
	app.close()
	return { here, playerId, visitId }
}
/** Writes records behind the program's back, as another version of it would. */
async function writing(here: string, write: (store: Store) => Written[]): Promise<Written[]> {
	const store = new Store(here, { cost: 1024 })
	await store.unlock(passphrase)
	const written = store.together(() => write(store))
	store.close()
	return written
}
const sample = (kind: KindName): Record<string, unknown> =>
	JSON.parse(JSON.stringify(fc.sample(recordOf(kind), { numRuns: 1, seed: 7 })[0]))
const at = '2027-01-20T09:30:00.000Z'

/** What a person does all day still goes. */
async function goesOn(app: Opened, playerId: string, visitId: string) {
	await app.ask('session.unlock', { passphrase })
	const { cards } = await app.ask('players.search', { query: 'marlowe', limit: 10 })
	expect(cards).toMatchObject([{ playerId }])
	const { visits } = await app.ask('players.open', { playerId })
	expect(visits).toMatchObject([{ visitId }])
	await app.ask('visits.open', { visitId })
	await app.ask('reports.open', { visitId })
	const { consents } = await app.ask('consents.list', { playerId })
	expect(consents.some(({ purpose }: { purpose: string }) => purpose === 'photos')).toBe(true)
	for (const call of ['outbox.list', 'squad.list', 'shelf.get', 'clinic.get', 'outreach.list'])
		await app.ask(call)
	await app.ask('players.save', { player: { ...player, givenName: 'Iris' } })
	const made = await app.ask('backups.make')
	expect(made.bytes).toBeGreaterThan(0)
	await packed(app, [playerId])
}
const player = { familyName: 'Coppersmith', birthDate: '2010-01-01', sex: 'female' as const }
const named = (sentences: string[], { id }: Written) =>
	sentences.filter((sentence) => sentence.includes(id))

describe('records that cannot be read, of every kind', () => {
	let app: Opened
	let written: Written[]
	let ids: { here: string; playerId: string; visitId: string }
	beforeAll(async () => {
		ids = await atWork()
		written = await writing(ids.here, (store) =>
			// the anchor is the store's own: it holds the first records against it
			kindNames
				.filter((kind) => kind !== 'anchor')
				.flatMap((kind, index) => {
					const value = nonsense[index % nonsense.length]
					const about = kinds[kind].travels.pack === 'player' ? ids.playerId : undefined
					return [{ kind, id: store.append({ kind, at, value, about }) }]
				}),
		)
		app = open(ids.here)
	})
	it('stop neither unlocking, lists, the other records, a backup nor a pack', () =>
		goesOn(app, ids.playerId, ids.visitId))
	it('are named with their day and the remedy', async () => {
		const { warnings } = await app.ask('session.status')
		const { problems } = await app.ask('audit.verify')
		for (const record of written) {
			const isRemembered = rememberedKinds.some((kind) => kind === record.kind)
			const says = named(isRemembered ? warnings : problems, record)
			expect(says, record.kind).toHaveLength(1)
			expect(says[0]).toContain(kinds[record.kind as KindName].words.one)
			expect(says[0]).toMatch(/2027-01-20 09:30 UTC.*backup/)
		}
	})
	it('never permit: a consent that cannot be read may be a withdrawal', async () => {
		const answer = await app.ask('consents.check', {
			playerId: ids.playerId,
			purpose: 'photos',
			recipient: '',
		})
		expect(answer).toMatchObject({ inForce: false })
		expect(answer.because).toMatch(/consent of this player cannot be read/)
		// what a list went on without is said from then on
		const { warnings } = await app.ask('session.status')
		const consent = written.find(({ kind }) => kind === 'consent')!
		expect(named(warnings, consent)).toHaveLength(1)
	})
})

describe('entries of a newer program, in every kind', () => {
	it('are passed over by name, and everything goes on', async () => {
		const { here, playerId, visitId } = await atWork()
		await writing(here, (store) =>
			kindNames.map((kind) => {
				const value = { ...sample(kind), [newKey]: { deep: [1] } }
				return { kind, id: store.append({ kind, at, value }) }
			}),
		)
		const app = open(here)
		await goesOn(app, playerId, visitId)
		const { warnings } = await app.ask('session.status')
		for (const kind of rememberedKinds)
			expect(
				warnings.filter(
					(says: string) =>
						says.includes(newKey) && says.startsWith(`The ${kinds[kind].words.one} holds`),
				),
				kind,
			).toHaveLength(1)
		const { problems } = await app.ask('audit.verify')
		expect(problems.filter((says: string) => says.includes('cannot be read'))).toEqual([])
	})
	it('stay when a record is rewritten here', async () => {
		const { here, playerId } = await atWork()
		let app = open(here)
		await app.ask('session.unlock', { passphrase })
		const { player: known } = await app.ask('players.open', { playerId })
		app.close()
		await writing(here, (store) => {
			const last = store.cardsAbout('player', playerId).at(-1)!
			const guardian = { name: 'Rae Ashdown', [newKey]: 'evenings' }
			const value = { playerId, [newKey]: 1, player: { ...known, guardian } }
			const follows = last.record
			return [
				{
					kind: 'player',
					id: store.append({ kind: 'player', at, follows, value, about: playerId }),
				},
			]
		})
		app = open(here)
		await app.ask('session.unlock', { passphrase })
		const { player: shown } = await app.ask('players.open', { playerId })
		expect(shown).toEqual({ ...known, guardian: { name: 'Rae Ashdown' } })
		await app.ask('players.save', { playerId, player: { ...shown, club: 'Harbour' } })
		app.close()
		await writing(here, (store) => {
			const last = store.cardsAbout('player', playerId).at(-1)!
			expect(store.read(last.record).value).toEqual({
				playerId,
				[newKey]: 1,
				player: {
					...known,
					club: 'Harbour',
					guardian: { name: 'Rae Ashdown', [newKey]: 'evenings' },
				},
			})
			return []
		})
	})
})

describe('records of a newer version, of every kind', () => {
	it('are told apart from damaged ones, and everything goes on', async () => {
		const { here, playerId, visitId } = await atWork()
		const written = await writing(here, (store) =>
			kindNames
				.filter((kind) => kind !== 'anchor')
				.map((kind, index) => {
					const version = kinds[kind].version + 1
					const value = nonsense[index % nonsense.length]
					return { kind, id: store.append({ kind, at, version, value }) }
				}),
		)
		const app = open(here)
		await goesOn(app, playerId, visitId)
		const { warnings } = await app.ask('session.status')
		const { problems } = await app.ask('audit.verify')
		for (const record of written) {
			const isRemembered = rememberedKinds.some((kind) => kind === record.kind)
			const [says, ...more] = named(isRemembered ? warnings : problems, record)
			expect(more, record.kind).toEqual([])
			expect(says, record.kind).toMatch(/newer version.*Install the newer version.*Nothing is lost/)
		}
	})
	it('are read as far as they go, a visit too, and what was left out is said', async () => {
		const { here, playerId, visitId } = await atWork()
		await writing(here, (store) => {
			const [last] = store.cardsAbout('visit', playerId)
			const { value, card } = store.read(last!.record) as { value: { visit: object }; card: object }
			const play = { code: 'a-code-to-come', kickingFoot: 'left' }
			const newer = {
				...value,
				version: 2,
				visit: { ...value.visit, play, gait: { cadence: 170 } },
			}
			const { version } = kinds.visit
			const record = { kind: 'visit', at, version: version + 1, about: playerId, thing: visitId }
			return [
				{
					kind: 'visit',
					id: store.append({ ...record, card: { ...card, version: 2 }, value: newer }),
				},
			]
		})
		const app = open(here)
		await app.ask('session.unlock', { passphrase })
		const { visit } = await app.ask('visits.open', { visitId })
		expect(visit.play).toEqual({ kickingFoot: 'left' })
		expect(visit).not.toHaveProperty('gait')
		const { warnings } = await app.ask('session.status')
		expect(warnings.join('\n')).toMatch(/signed visit holds.*visit.gait, visit.play.code/)
	})
	it('are read as far as they go, those that lists hold too', async () => {
		const { here, playerId, visitId } = await atWork()
		await writing(here, (store) => {
			const [last] = store.cardsAbout('player', playerId)
			const { value } = store.read(last!.record) as { value: { player: object } }
			const newer = {
				playerId,
				player: { ...value.player, club: 'Harbour', phone: { mobile: '1' }, nickname: 'Z' },
			}
			const version = kinds.player.version + 1
			const record = { kind: 'player', at, version, follows: last!.record, about: playerId }
			return [{ kind: 'player', id: store.append({ ...record, value: newer }) }]
		})
		const app = open(here)
		await goesOn(app, playerId, visitId)
		const { player: shown } = await app.ask('players.open', { playerId })
		expect(shown).toMatchObject({ club: 'Harbour' })
		expect(shown).not.toHaveProperty('phone')
		const { warnings } = await app.ask('session.status')
		expect(warnings.join('\n')).toMatch(/does not know: player.nickname, player.phone\./)
	})
})

describe('a kind that this version does not know', () => {
	it('is named, and everything goes on', async () => {
		const { here, playerId, visitId } = await atWork()
		const [record] = await writing(here, (store) => [
			{ kind: 'weather', id: store.append({ kind: 'weather', at, value: { mm: 3 } }) },
		])
		const app = open(here)
		await goesOn(app, playerId, visitId)
		const { warnings } = await app.ask('session.status')
		expect(named(warnings, record!)).toHaveLength(1)
		expect(named(warnings, record!)[0]).toMatch(/"weather".*newer version.*Nothing is lost/)
	})
})

describe('the only record of the owner and of the clinic', () => {
	it('may be unreadable: whoever has the owner’s key comes in', async () => {
		const here = folder()
		const store = new Store(here, { cost: 1024 })
		await store.setUp(passphrase)
		store.append({ kind: 'clinic', at, value: 1 })
		store.append({ kind: 'person', at, value: 2 })
		store.close()
		const app = open(here)
		await app.ask('session.unlock', { passphrase })
		expect(await app.ask('session.status')).toMatchObject({
			state: 'open',
			person: { personId: 'owner', role: 'owner' },
		})
	})
})
