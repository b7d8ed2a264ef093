/** The clinic itself: people, players, visits, consents, what the law asks, shelf and protocol. */
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { clinic, pins, players, secrets, staff } from './people.ts'
import type { Ask, Opened, World } from './program.ts'
import { drafted, measured, signDraft, signed } from './visits.ts'

export interface Home {
	recoveryKey: string
	playerIds: Record<keyof typeof players, string>
	visits: { amended: string; countersigned: string; adult: string }
}
/** Works as somebody for a while; afterwards the owner works again. */
async function as(app: Opened, who: keyof typeof secrets, work: () => Promise<void>) {
	await app.ask('session.lock')
	await app.ask('session.unlock', { passphrase: secrets[who] })
	await work()
	await app.ask('session.lock')
	await app.ask('session.unlock', { passphrase: secrets.owner })
}
async function hire(app: Opened): Promise<void> {
	const ids = new Map<string, string>()
	for (const { key, ...person } of staff) {
		const given = { ...person, passphrase: secrets[key] }
		ids.set(key, (await app.ask('people.save', given)).personId)
	}
	await app.ask('session.setPin', { passphrase: secrets.owner, pin: pins.owner })
	await as(app, 'clinician', async () => {
		await app.ask('session.setPin', { passphrase: secrets.clinician, pin: pins.clinician })
	})
	await app.ask('session.switch', { personId: ids.get('clinician'), pin: pins.clinician })
	await app.ask('session.switch', { personId: 'owner', pin: pins.owner })
	await app.ask('people.retire', { personId: ids.get('retired'), reason: 'moved to another town' })
}
async function settle({ ask }: Opened, root: string): Promise<void> {
	const settings = await ask('recordSettings.get')
	await ask('recordSettings.save', {
		...settings,
		retention: { ...settings.retention, adultYears: 1, minorUntilAgeYears: 20 },
	})
	const demo = JSON.parse(readFileSync(join(root, 'assets/demo/shelf.json'), 'utf8'))
	const few = { ...demo, models: demo.models.slice(0, 2) }
	const { savedAs } = await ask('shelf.save', { shelf: few })
	await ask('shelf.save', { shelf: { ...few, note: 'two models' }, follows: savedAs })
	const first = await ask('protocol.save', {
		values: { 'season.trainingMinutes': 80 },
		why: 'our trainings are longer',
	})
	await ask('protocol.save', {
		values: { 'season.trainingMinutes': 85 },
		why: 'longer again since spring',
		follows: first.savedAs,
	})
}
const grant = (purpose: string, recipient: string, more: object = {}) => ({
	purpose,
	recipient,
	decision: 'permit',
	grantor: { name: 'Owain Trescott', relation: 'player' },
	method: 'written',
	given: '2027-01-20',
	...more,
})
async function consents(ask: Ask, adult: string, minor: string): Promise<void> {
	const rae = { grantor: { name: 'Rae Ashdown', relation: 'parent' } }
	await ask('consents.record', { playerId: adult, consent: grant('email', 'Owain Trescott') })
	await ask('consents.record', {
		playerId: adult,
		consent: grant('share-with-care', 'Dr Sol Vance', { expires: '2028-01-20' }),
	})
	await ask('consents.record', { playerId: adult, consent: grant('email', 'Dr Sol Vance') })
	const { consentId } = await ask('consents.record', {
		playerId: adult,
		consent: grant('share-with-coach', 'Coach Hale'),
	})
	await ask('consents.withdraw', {
		playerId: adult,
		consentId,
		withdrawn: '2027-01-20',
		withdrawnBy: 'Owain Trescott',
	})
	await ask('consents.record', { playerId: minor, consent: grant('email', 'Rae Ashdown', rae) })
	await ask('consents.record', {
		playerId: minor,
		consent: grant('photos', '', { ...rae, decision: 'deny', method: 'verbal' }),
	})
}
async function adultVisits({ program }: World, ask: Ask, playerId: string) {
	const first = await signed(program, ask, playerId, '2027-01-18', measured(262))
	await ask('reports.handedOver', { visitId: first, recipient: 'Owain Trescott', channel: 'print' })
	await ask('visits.amend', { visitId: first, reason: 'left and right were swapped' })
	await signDraft(program, ask, playerId, '2027-01-18', { notes: 'sides put right' })
	await ask('visits.addNote', {
		visitId: first,
		what: 'late-entry',
		text: 'He wore thick socks that day.',
		occurredOn: '2027-01-18',
	})
	await ask('visits.addNote', {
		visitId: first,
		what: 'statement',
		text: 'The player says the left boot was new.',
		occurredOn: '2027-01-19',
	})
	const wrong = await signed(program, ask, playerId, '2027-01-19', { notes: 'another player' })
	await ask('visits.markInError', { visitId: wrong, reason: 'entered for another player' })
	const adult = await signed(program, ask, playerId, '2027-01-20', measured(263))
	return { amended: first, adult }
}
async function minorVisits({ program }: World, app: Opened, playerId: string): Promise<string> {
	const { ask } = app
	let countersigned = ''
	await as(app, 'student', async () => {
		countersigned = await signed(program, ask, playerId, '2027-01-19', measured(246))
	})
	await ask('visits.countersign', { visitId: countersigned, text: 'Looked at together.' })
	await as(app, 'student', async () => {
		await signed(program, ask, playerId, '2027-01-20', { notes: 'awaits a second look' })
	})
	await ask('visits.amend', { visitId: countersigned, reason: 'the lunge is to be measured again' })
	return countersigned
}
/** Two records of one person are joined, two of different ones are taken apart again. */
async function joined(ask: Ask, ids: Record<string, string>): Promise<void> {
	await ask('players.merge', {
		from: ids.twice,
		into: ids.adult,
		reason: 'one person, typed twice',
	})
	const { mergeId } = await ask('players.merge', {
		from: ids.apart,
		into: ids.minor,
		reason: 'taken for one person',
	})
	await ask('players.unmerge', { mergeId, reason: 'they are two persons' })
	await ask('retention.hold', { playerId: ids.minor, reason: 'a complaint is open', on: true })
	await ask('retention.hold', { playerId: ids.apart, reason: 'asked by the insurer', on: true })
	await ask('retention.hold', { playerId: ids.apart, reason: 'the insurer is done', on: false })
}
/** Sets up the clinic in 2025, and works there in January 2027. */
export async function makeHome(world: World, app: Opened): Promise<Home> {
	const { ask } = app
	const { recoveryKey } = await ask('session.setUp', { clinic, passphrase: secrets.owner })
	const gone = (await ask('players.save', { player: players.gone })).playerId
	await signed(world.program, ask, gone, '2025-03-03', { notes: 'limps after training' })
	world.until('2027-01-20T09:00:00.000Z')
	// a wrong try leaves its row while the records are locked
	await app.call('session.unlock', { passphrase: 'lantern over ten quarries' })
	await ask('session.unlock', { passphrase: secrets.owner })
	await hire(app)
	await settle(app, world.program.root)
	const ids: Record<string, string> = { gone }
	for (const [key, player] of Object.entries(players))
		if (key !== 'gone') ids[key] = (await ask('players.save', { player })).playerId
	await signed(world.program, ask, ids.twice as string, '2027-01-17', { notes: 'typed twice' })
	const visits = await adultVisits(world, ask, ids.adult as string)
	const countersigned = await minorVisits(world, app, ids.minor as string)
	await consents(ask, ids.adult as string, ids.minor as string)
	await joined(ask, ids)
	await ask('retention.destroy', {
		playerId: gone,
		reason: 'kept long enough',
		name: 'Alder Wexcombe',
		alsoBackups: false,
	})
	await drafted(ask, ids.apart as string, '2027-01-20', measured(239), {
		'body.statureCm': 'about 150',
	})
	return {
		recoveryKey,
		playerIds: ids as Home['playerIds'],
		visits: { ...visits, countersigned },
	}
}
