/** Whoever has a laptop and its passphrase brings home what they please: none of it takes effect. */
import { beforeAll, expect, test } from 'vitest'
import { digestOf } from '../../shared/engine/plain/canonical.ts'
import { player } from './bench-app.ts'
import { type Forger, forged, installation, signedWith } from './bench-forger.ts'
import { detailsOf, type Homecoming, homecoming, of } from './bench-homecoming.ts'
import { bring, packPassphrase } from './bench-pack.ts'

let home: Homecoming

beforeAll(async () => {
	home = await homecoming()
})
test('a control: what the forger writes as a laptop may is taken in, and told', async () => {
	const path = await forged(home.file, (forger) => ({
		records: [
			forger.written(
				'player',
				{
					playerId: home.other,
					player: { ...player, givenName: 'Other', familyName: 'Player', club: 'Lane' },
				},
				{
					about: home.other,
					follows: detailsOf(forger, home.other).id,
				},
			),
		],
	}))
	const { counts, changes } = await bring(home.app, path)
	expect(counts).toMatchObject({ in: 1, added: 1, refused: 0 })
	expect(changes).toMatchObject([
		{ name: 'Other Player', isNew: false, lines: ['Club: Lane, where nothing stood.'] },
	])
})
test('people, PINs, settings and mail settings never come home', async () => {
	await home.without(
		({ written }) => [
			written('person', {
				personId: 'mallory',
				slot: 'mallory',
				name: 'M. Invented',
				registration: '',
				role: 'owner',
				active: true,
				pin: { salt: '00', hash: '00' },
			}),
			written('settings', { idleMinutes: 600 }),
			written('mail', { smtp: { host: 'mail.example.org' } }),
			written('clinic', { format: 'lastwright-clinic', version: 1, name: 'Other Clinic' }),
			written('protocol', {}),
			written('shelf', {}),
			written('register', {}),
			written('outbox', {}),
			written('quarantine', {}),
			written('pack', { what: 'out' }),
		],
		/never comes with a file of the way back/,
	)
})
test('nobody writes in the name of home, of another laptop, or under a signature of another', async () => {
	const ours = (forger: Forger) => of(forger, 'player').origin
	await home.without(
		(forger) => [home.visitWith(forger, {}, { origin: ours(forger) })],
		/says that this PC wrote it/,
	)
	await home.without(
		(forger) => [home.visitWith(forger, {}, { origin: '0123456789ab' })],
		/neither these records nor the file names/,
	)
	await home.without((forger) => {
		const record = home.visitWith(forger, {})
		return [signedWith(installation().privateKey, record)]
	}, /signature that is not of the installation/)
	await home.without((forger) => {
		const { signature: _, ...record } = home.visitWith(forger, {})
		return [record]
	}, /bears no signature/)
	await home.without(
		(forger) => [{ ...home.visitWith(forger, {}), tick: 9999 }],
		/signature that is not of the installation/,
	)
})
test('kinds and forms of a newer version wait, and stand aside until then', async () => {
	await home.without(
		(forger) => [
			forger.written('gait', { steps: 12 }, { about: home.playerId }),
			home.visitWith(forger, {}, { version: 99 }),
		],
		/waits until this PC has the newer version/,
		'waits',
	)
})
test('an enormous record is refused, one that unfolds without end too', async () => {
	await home.without(
		(forger) => [home.visitWith(forger, { assessment: { filler: 'x'.repeat(4 * 2 ** 20) } })],
		/more than a record may have/,
	)
	await home.without(
		(forger) => [home.visitWith(forger, { assessment: { filler: nested(200) } })],
		/not a record as the program writes them/,
	)
})
const nested = (deep: number): unknown => (deep === 0 ? 1 : [nested(deep - 1)])

test('a consent of tomorrow, and an answer about others, are refused', async () => {
	const consentId = '6f1c1a2e-0000-4000-8000-000000000001'
	const value = {
		consentId,
		purpose: 'photos',
		recipient: '',
		decision: 'permit',
		grantor: { name: 'Rae', relation: 'parent' },
		method: 'verbal',
		given: '2027-03-01',
		recordedAt: '2027-01-20T09:00:00.000Z',
	}
	await home.without(
		({ written }) => [written('consent', value, { about: home.playerId, thing: consentId })],
		/cannot stand \(given: in the future/,
	)
	await home.without(
		(forger) => [
			forger.written(
				'answer',
				{
					what: 'consent',
					of: 'x',
					joins: [detailsOf(forger, home.other).id],
					chosen: [],
					by: 'M.',
				},
				{ about: home.playerId },
			),
		],
		/puts records of others to rest/,
	)
})
test('a record can neither take a name that none has, nor use up the count, nor the calendar', async () => {
	const written = (over: object) => (forger: Forger) => [
		forger.written('player', { playerId: home.other, player }, { about: home.other, ...over }),
	]
	await home.without(written({ id: 'no-record-id' }), /bears a name that no record has/)
	await home.without(written({ tick: Number.MAX_SAFE_INTEGER }), /stands at place 9007199254740991/)
	await home.without(written({ at: '2099-01-01T00:00:00.000Z' }), /written on 2099-01-01/)
})
test('two players are not joined in a ring', async () => {
	const { mergeId } = await home.app.ask('players.merge', {
		from: home.other,
		into: home.playerId,
		reason: 'one person',
	})
	const join = (from: string, into: string) => (forger: Forger) => [
		forger.written(
			'merge',
			{ mergeId: 'forged', from, into, undone: false, reason: 'as I like' },
			{ about: into },
		),
	]
	await home.without(join(home.playerId, home.other), /the other way round than here/)
	await home.without(join(home.other, home.playerId), /joined with another one already/)
	await home.app.ask('players.unmerge', { mergeId, reason: 'two people' })
	await home.without(join(home.other, home.other), /the other way round than here/)
})
test('nobody countersigns, or marks in error, in the name of who may not', async () => {
	const note = (what: string, by: string) => (forger: Forger) => [
		forger.written(
			'visit-note',
			{ visitId: home.own, what, text: 'so be it', by, at: forger.manifest.madeAt, version: 1 },
			{
				about: home.playerId,
				thing: home.own,
				card: { visitId: home.own, what, version: 1 },
			},
		),
	]
	for (const by of ['Rae Desk', 'M. Invented, X9', 'A. Examples'])
		await home.without(note('in-error', by), /not here one who may write it/)
})
test('a file that names another maker than it has is refused whole', async () => {
	const before = await home.picture()
	const { rows } = await home.app.ask('audit.page', { limit: 1 })
	const origin: string = rows[0].workstationId
	const { publicKey } = installation()
	const file = await forged(home.file, () => ({
		manifest: { installation: { origin, publicKey } },
	}))
	const { code } = await home.app.refused('outreach.merge', {
		file,
		passphrase: packPassphrase,
	})
	expect(code).toBe('outreach.wrong-maker')
	expect(await home.picture()).toEqual(before)
})
test('drafts here are measured against what went out, not against the word of the file', async () => {
	const { draft } = await home.app.ask('drafts.open', {
		playerId: home.other,
		visitDate: '2027-01-20',
	})
	await home.app.ask('drafts.save', {
		draftId: draft.draftId,
		content: { ...draft.content, visit: { ...draft.content.visit, notes: 'ours' } },
	})
	const { drafts: before } = await home.app.ask('players.open', { playerId: home.other })
	const mine = {
		playerId: home.other,
		content: { ...draft.content, visit: { ...draft.content.visit, notes: 'ours' } },
	}
	const bases = [{ id: draft.draftId, digest: digestOf(mine) }]
	await bring(home.app, await forged(home.file, () => ({ records: [], manifest: { bases } })))
	expect((await home.app.ask('players.open', { playerId: home.other })).drafts).toEqual(before)
	const stolen = await forged(home.file, () => ({
		records: [],
		drafts: [
			{ id: draft.draftId, at: draft.savedAt, value: { ...mine, playerId: home.playerId } },
			{ id: 'no-draft', at: draft.savedAt, value: { playerId: home.playerId, content: 'nothing' } },
		],
		manifest: { bases },
	}))
	const { quarantined } = await bring(home.app, stolen)
	expect(quarantined.map(({ says }: { says: string }) => says)).toEqual([
		expect.stringMatching(/take the place of a draft of another player/),
		expect.stringMatching(/entries that cannot stand/),
	])
	expect((await home.app.ask('players.open', { playerId: home.other })).drafts).toEqual(before)
})
