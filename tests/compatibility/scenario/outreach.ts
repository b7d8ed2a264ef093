/** Packs: one that went out and came home with questions, one that is still away. */
import { join } from 'node:path'
import type { Home } from './home.ts'
import { players, secrets } from './people.ts'
import { type Ask, cheapCost, type Program, type World } from './program.ts'
import { drafted, signed } from './visits.ts'

const expires = '2027-02-10'
async function packed(world: World, ask: Ask, playerIds: string[], passphrase: string) {
	const folder = world.folder(`stick-${passphrase.slice(0, 5)}`)
	const given = { playerIds, history: 'none', folder, passphrase, expires }
	return { folder, file: (await ask('outreach.makePack', given)).file as string }
}
/** What a bad stick or a meddler makes of a file: one record comes with other content. */
async function altered({ readPack, writePack }: Program, file: string, folder: string) {
	const { manifest, records, drafts } = await readPack(file, secrets.pack)
	const changed = records.map((one: { kind: string; value: object }) =>
		one.kind === 'player' && 'player' in one.value
			? { ...one, value: { ...one.value, player: { ...players.apart, club: 'Altered' } } }
			: one,
	)
	const { format: _1, version: _2, packId: _3, sha256: _4, ...about } = manifest
	const { records: _5, drafts: _6, counts: _7, ...unfinished } = about
	const there = join(folder, 'altered.lwpack')
	await writePack(there, secrets.pack, cheapCost, {
		about: unfinished,
		records: changed,
		drafts,
	})
	return there
}
/** Worked at in two places: details, consents and a draft. */
async function workApart(world: World, home: Ask, away: Ask, playerId: string): Promise<void> {
	const consent = (decision: string) => ({
		purpose: 'photos',
		recipient: '',
		decision,
		grantor: { name: 'Kim Marlowe', relation: 'parent' },
		method: 'verbal',
		given: '2027-01-20',
	})
	await home('players.save', { playerId, player: { ...players.apart, club: 'Harrow Rovers' } })
	await away('players.save', { playerId, player: { ...players.apart, club: 'Lane United' } })
	await home('consents.record', { playerId, consent: consent('permit') })
	await away('consents.record', { playerId, consent: consent('deny') })
	await drafted(home, playerId, '2027-01-20', { notes: 'written at home' })
	await drafted(away, playerId, '2027-01-20', { notes: 'written away' })
	const comer = { givenName: 'Lior', familyName: 'Quill', birthDate: '2010-10-10', sex: 'male' }
	const { playerId: newId } = await away('players.save', { player: comer })
	await signed(world.program, away, newId, '2027-01-20', { notes: 'seen away' })
}
/** Goes out, is worked at on both sides, comes home altered and then whole; one question is answered. */
export async function wentAndCame(world: World, ask: Ask, { playerIds }: Home): Promise<void> {
	const { folder, file } = await packed(world, ask, [playerIds.apart], secrets.pack)
	const laptop = world.open(world.folder('first-laptop'))
	await laptop.ask('session.moveHere', { file, passphrase: secrets.pack })
	await laptop.ask('session.unlock', { passphrase: secrets.pack })
	await workApart(world, ask, laptop.ask, playerIds.apart)
	const given = { folder, passphrase: secrets.pack }
	const home = (await laptop.ask('outreach.makeReturn', given)).file
	laptop.close()
	await ask('outreach.merge', { file: home, passphrase: secrets.pack })
	const other = await altered(world.program, home, folder)
	await ask('outreach.merge', { file: other, passphrase: secrets.pack })
	const { questions } = await ask('outreach.list')
	const asked = questions.find((one: { what: string }) => one.what === 'details')
	const [field] = asked.fields
	await ask('outreach.answer', {
		what: 'details',
		id: asked.id,
		playerId: asked.playerId,
		choices: { [field.field]: field.values[0].record },
	})
}
/** A pack that is still away. @returns the pack, the laptop's records and the file of the way back */
export async function stillAway(world: World, ask: Ask, { playerIds }: Home) {
	const { folder, file } = await packed(world, ask, [playerIds.season], secrets.laterPack)
	const laptopFolder = world.folder('laptop')
	const laptop = world.open(laptopFolder)
	const moved = { file, passphrase: secrets.laterPack }
	const { recoveryKey } = await laptop.ask('session.moveHere', moved)
	await laptop.ask('session.unlock', { passphrase: secrets.laterPack })
	const playerId = playerIds.season
	await laptop.ask('players.save', { playerId, player: { ...players.season, phone: '555 0190' } })
	await drafted(laptop.ask, playerId, '2027-01-20', { notes: 'measured in the bus' })
	const given = { folder, passphrase: secrets.laterPack }
	const back = (await laptop.ask('outreach.makeReturn', given)).file as string
	laptop.close()
	return { pack: file, laptopFolder, back, recoveryKey: recoveryKey as string }
}
