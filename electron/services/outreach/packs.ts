/**
 * Packs on both sides: made at home, opened on a laptop as records of its own, brought back, and
 * taken off the laptop.
 */
import { existsSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import type { InputOf, OutputOf } from '../../../shared/contract.ts'
import type {
	Carried,
	CarriedDraft,
	DraftBase,
	Manifest,
} from '../../../shared/desk/outreach/carried.ts'
import { draftDigest } from '../../../shared/desk/outreach/merge.ts'
import { type AwayTrail, chainAway } from '../../../shared/desk/records/away-trail.ts'
import type { RegisterLine } from '../../../shared/desk/records/retention.ts'
import { dayHere } from '../../../shared/desk/workplace/local-day.ts'
import { protocolIdentity } from '../../../shared/engine/assess.ts'
import { digestOf } from '../../../shared/engine/plain/canonical.ts'
import { addDays } from '../../../shared/engine/visit/age.ts'
import { PackRefused, readPack, type Unfinished, writePack } from '../../store/pack-file.ts'
import { type Kind, ownerSlot, type Store } from '../../store/store.ts'
import { destroyedLines } from '../backups/retention.ts'
import { fileToRead, folderToWrite, writeTrouble } from '../clinic/places.ts'
import { reloadMemory } from '../records/load.ts'
import { type Deps, type PackNote, Refusal, type State } from '../records/state.ts'
import { visitsOf } from '../visits/visits.ts'

/** What is about a player and travels; what was sent stays at home. */
const travels: readonly Kind[] = [
	'player',
	'visit',
	'report',
	'visit-note',
	'consent',
	'hold',
	'merge',
	'season',
	'answer',
	'squad',
	'sending-note',
]
const ofVisits: readonly Kind[] = ['visit', 'report', 'visit-note']
/** What a store keeps to itself on the way home. */
const stays: readonly Kind[] = ['anchor', 'register', 'pack', 'quarantine', 'trail']
const noteName = 'pack'
const returnName = 'pack-return'
/** common practice, no source: an outreach trip is days, not months */
const longestDays = 90

const today = (deps: Deps): string => dayHere(deps.now())
const nameOf = ({ givenName, familyName }: { givenName: string; familyName: string }) =>
	`${givenName} ${familyName}`
/** Packs and stores refuse in words. @param folder where the work writes to */
export async function packWords<T>(work: () => Promise<T>, folder = ''): Promise<T> {
	try {
		return await work()
	} catch (error) {
		if (error instanceof PackRefused) throw new Refusal(error.message)
		const words = folder === '' ? undefined : writeTrouble(error, folder, 'No half pack')
		if (words !== undefined) throw new Refusal(words)
		throw error
	}
}
function placeOf(folder: string, name: string): string {
	const file = join(folderToWrite(folder), name)
	if (existsSync(file))
		throw new Refusal(
			`There is a file ${name} in this folder already. It was not overwritten: choose another ` +
				'folder.',
		)
	return file
}
/**
 * A random-looking id that the same content always gets: the same pack twice makes the same record.
 */
export const idOfDigest = (digest: string): string =>
	`${digest.slice(0, 8)}-${digest.slice(8, 12)}-4${digest.slice(13, 16)}-8${digest.slice(17, 20)}-${digest.slice(20, 32)}`
const protocolNow = (state: State): Manifest['protocol'] => protocolIdentity(state.protocol)
const draftsOf = (store: Store, ids: readonly string[]): CarriedDraft[] =>
	ids.flatMap((id) => {
		const draft = store.draft(id)
		return draft ? [{ id, at: draft.at, value: draft.value }] : []
	})
const basesOf = (drafts: readonly CarriedDraft[]): DraftBase[] =>
	drafts.map((draft) => ({ id: draft.id, digest: draftDigest(draft) }))

/**
 * One sealed file with the chosen players, their history as far as wanted, clinic, shelf, settings,
 * people and protocol.
 */
export async function makePack(
	state: State,
	deps: Deps,
	{ playerIds, history, folder, passphrase, expires }: InputOf<'outreach.makePack'>,
): Promise<OutputOf<'outreach.makePack'>> {
	const { store, now } = deps
	if (state.pack)
		throw new Refusal(
			'These records came in a pack themselves. Packs are made at home; here make the file for ' +
				'the way back.',
		)
	const last = addDays(dayHere(now()), longestDays)
	if (expires < today(deps) || expires > last)
		throw new Refusal('The day of expiry cannot stand.', [
			{ path: 'expires', message: `given ${expires}, allowed: ${today(deps)} to ${last}` },
		])
	if (await store.isPassphraseOf(state.acts().slot, passphrase))
		throw new Refusal('A pack has a passphrase of its own.', [
			{
				path: 'passphrase',
				message:
					'given your own passphrase, allowed: another one, so that a lost laptop opens nothing ' +
					'here',
			},
		])
	const chosen = playerIds.map((id) => state.entry(id))
	if (new Set(playerIds).size !== playerIds.length)
		throw new Refusal('A player stands twice in the list. Choose each once.')
	const ids = new Set(playerIds.flatMap((id) => state.idsOf(id)))
	const visits = new Map(
		playerIds.map((id) => {
			const all = visitsOf(state, deps, id).map((line) => line.card.visitId)
			return [id, history === 'all' ? all : history === 'last' ? all.slice(0, 1) : []]
		}),
	)
	const visitIds = new Set([...visits.values()].flat())
	const general = new Set([
		state.clinicRecord,
		state.settingsRecord,
		state.shelfRecord,
		...state.protocolVersions.map((protocolVersion) => protocolVersion.savedAs),
		...[...state.people.values()].map((entry) => entry.recordId),
	])
	const records = store
		.carry([...ids], (kind, about) =>
			about === undefined
				? ['clinic', 'settings', 'shelf', 'protocol', 'person'].includes(kind)
				: ids.has(about) && travels.includes(kind),
		)
		.filter((one) =>
			one.about === undefined
				? general.has(one.id)
				: !ofVisits.includes(one.kind as Kind) ||
					visitIds.has((one.value as { visitId: string }).visitId),
		)
	const drafts = draftsOf(
		store,
		[...state.drafts].filter(([, draft]) => ids.has(draft.playerId)).map(([id]) => id),
	)
	const person = state.acts()
	const about: Unfinished = {
		direction: 'out',
		madeAt: now().toISOString(),
		madeBy: { personId: person.personId, name: person.name },
		expires,
		home: store.origin,
		clinicName: state.clinic?.name ?? '',
		players: chosen.map(({ card }) => ({
			playerId: card.playerId,
			name: nameOf(card),
			birthDate: card.birthDate,
			visits: visits.get(card.playerId)?.length ?? 0,
		})),
		bases: basesOf(drafts),
		protocol: protocolNow(state),
		shelf: state.shelf !== undefined,
	}
	const name = `pack-${today(deps)}-${digestOf(about).slice(0, 6)}.lwpack`
	const file = placeOf(folder, name)
	const { manifest, bytes } = await packWords(
		() => writePack(file, passphrase, store.cost, about, records, drafts),
		folder,
	)
	store.append({
		kind: 'pack',
		at: now().toISOString(),
		value: {
			what: 'out',
			packId: manifest.packId,
			madeAt: manifest.madeAt,
			by: person.name,
			expires,
			file: name,
			players: manifest.players,
			counts: manifest.counts,
			drafts,
		},
		does: 'export',
	})
	for (const { playerId } of manifest.players)
		store.audit({
			function: 'export',
			playerId,
			objectRef: `pack-file:${manifest.packId.slice(0, 8)}`,
		})
	return {
		file,
		bytes,
		packId: manifest.packId,
		players: manifest.players.length,
		records: manifest.records,
		drafts: manifest.drafts,
	}
}
/**
 * On a PC without records: the pack becomes a store of its own, whole or not at all. Its passphrase
 * opens it.
 */
export async function openPackHere(
	{ store, now }: Deps,
	file: string,
	passphrase: string,
): Promise<{ records: number; visits: number; recoveryKey: string }> {
	if (store.isSetUp)
		throw new Refusal(
			'There are records on this PC already. A pack opens on a laptop without records, or in ' +
				'another data folder.',
		)
	const { manifest, records, drafts } = await packWords(() =>
		readPack(fileToRead(file), passphrase),
	)
	if (manifest.direction !== 'out')
		throw new Refusal(
			'This is the file of the way back. At home open Outreach and bring it in there.',
		)
	if (manifest.expires < dayHere(now()))
		throw new Refusal(`This pack ran out on ${manifest.expires}. Make a new one at home.`)
	const note: PackNote = {
		packId: manifest.packId,
		madeAt: manifest.madeAt,
		personId: manifest.madeBy.personId,
		by: manifest.madeBy.name,
		expires: manifest.expires,
		home: manifest.home,
		players: manifest.players,
		counts: manifest.counts,
		bases: manifest.bases,
		protocol: manifest.protocol,
		shelf: manifest.shelf,
		openedAt: now().toISOString(),
	}
	const recoveryKey = await store.setUp(passphrase, () => {
		for (const record of records) store.takeIn(record)
		for (const draft of drafts) store.saveDraft(draft.id, draft.at, draft.value)
		store.setSealedSetting(noteName, note)
	})
	store.lock()
	return { records: records.length, visits: manifest.counts.visit ?? 0, recoveryKey }
}
/** What stands in the way of a call on a laptop whose pack has run out. */
export function packRefusal(state: State, deps: Deps, name: string): string | undefined {
	const { pack } = state
	if (
		!pack ||
		pack.removedAt ||
		pack.expires >= today(deps) ||
		/^(session|outreach|backups)\.|^clinic\.get$/.test(name)
	)
		return undefined
	return (
		`The pack on this laptop ran out on ${pack.expires}. Nothing is lost: open Outreach, ` +
		'make the file for the way back and bring it home.'
	)
}
const laptopDrafts = (state: State, store: Store): CarriedDraft[] =>
	draftsOf(store, [...state.drafts.keys()].sort())
/** What tells whether anything was entered since the file of the way back was made. */
const stampOf = (state: State, store: Store): string =>
	digestOf({ records: store.recordCount, drafts: basesOf(laptopDrafts(state, store)) })
/**
 * The laptop's own audit rows, checked here where its key is, chained anew so that home can check
 * them without it.
 */
function trailRecord({ store, now }: Deps, packId: string, lastTick: number): Carried {
	const { problems } = store.verify(new Set(destroyedLines(store).flatMap((one) => one.recordIds)))
	const rows = store.auditPage(Number.MAX_SAFE_INTEGER, Number.MAX_SAFE_INTEGER).reverse()
	const value: AwayTrail = {
		packId,
		workstationId: store.origin,
		madeAt: now().toISOString(),
		problems,
		rows: chainAway(packId, store.origin, rows),
	}
	return {
		id: idOfDigest(digestOf(value)),
		kind: 'trail',
		at: value.madeAt,
		origin: store.origin,
		tick: lastTick + 1,
		value,
	}
}
/** The way back: everything that stands on the laptop, sealed under the pack's passphrase. */
export async function makeReturn(
	state: State,
	deps: Deps,
	{ folder, passphrase }: InputOf<'outreach.makeReturn'>,
): Promise<OutputOf<'outreach.makeReturn'>> {
	const { store, now } = deps
	const pack = state.pack
	if (!pack || pack.removedAt)
		throw new Refusal(
			'These records did not come in a pack. There is nothing to bring home from here.',
		)
	if (!(await store.isPassphraseOf(ownerSlot, passphrase)))
		throw new Refusal('This is not the passphrase of the pack.', [
			{
				path: 'passphrase',
				message: 'given another one, allowed: the passphrase this laptop is unlocked with',
			},
		])
	const records = store.carry([...state.players.keys()], (kind) => !stays.includes(kind))
	const trail = trailRecord(deps, pack.packId, Math.max(0, ...records.map((record) => record.tick)))
	const drafts = laptopDrafts(state, store)
	const person = state.acts()
	const players = state.ordered().map(({ card }) => ({
		playerId: card.playerId,
		name: nameOf(card),
		birthDate: card.birthDate,
		visits: visitsOf(state, deps, card.playerId).length,
	}))
	const about: Unfinished = {
		direction: 'return',
		answers: pack.packId,
		madeAt: now().toISOString(),
		madeBy: { personId: person.personId, name: person.name },
		expires: pack.expires,
		home: pack.home,
		clinicName: state.clinic?.name ?? '',
		players,
		bases: pack.bases,
		protocol: protocolNow(state),
		shelf: state.shelf !== undefined,
	}
	const file = placeOf(folder, `return-${today(deps)}-${digestOf(about).slice(0, 6)}.lwpack`)
	const { manifest, receipt, bytes } = await packWords(
		() => writePack(file, passphrase, store.cost, about, [...records, trail], drafts),
		folder,
	)
	store.setSealedSetting(returnName, {
		packId: manifest.packId,
		receipt,
		stamp: stampOf(state, store),
		at: manifest.madeAt,
	})
	store.audit({ function: 'export', objectRef: `pack-file:${manifest.packId.slice(0, 8)}` })
	return { file, bytes, records: manifest.records, drafts: manifest.drafts }
}
/**
 * Takes the records off the laptop, once home has shown by its receipt that it read just this file.
 * A register line for each player stays.
 */
export async function removeHere(
	state: State,
	deps: Deps,
	{ receipt }: InputOf<'outreach.remove'>,
): Promise<OutputOf<'outreach.remove'>> {
	const { store } = deps
	const pack = state.pack
	const back = store.sealedSetting(returnName) as
		| { packId: string; receipt: string; stamp: string }
		| undefined
	if (!pack || pack.removedAt)
		throw new Refusal('There is no pack on these records. Nothing was removed.')
	if (!back)
		throw new Refusal(
			'The file for the way back was not made yet. Make it and bring it home first.',
		)
	if (receipt.trim().toLowerCase() !== back.receipt)
		throw new Refusal(
			'This is not the receipt of the last file for the way back. Nothing was removed.',
			[
				{
					path: 'receipt',
					message:
						`given "${receipt}", allowed: the receipt that Outreach at home shows after ` +
						'the merge',
				},
			],
		)
	if (stampOf(state, store) !== back.stamp)
		throw new Refusal(
			'Something was entered here after the file for the way back was made. Make it again and ' +
				'bring it home first. Nothing was removed.',
		)
	await store.backupsDone()
	const keep: readonly Kind[] = ['register', 'clinic', 'person', 'settings', 'shelf', 'protocol']
	const all = store
		.carry([...state.players.keys()], () => true)
		.filter((one) => !keep.includes(one.kind as Kind))
	const by = state.acts().name
	const general = all.filter((one) => one.about === undefined).map((one) => one.id)
	const lines: RegisterLine[] = [...state.players.values()].map(({ card }, index) => {
		const times = all
			.filter((one) => one.about === card.playerId)
			.map((one) => one.at.slice(0, 10))
			.sort()
		return {
			playerId: card.playerId,
			name: nameOf(card),
			from: times[0] ?? '',
			to: times.at(-1) ?? '',
			destroyedOn: today(deps),
			by,
			rule: 'pack brought home',
			reason: `pack ${pack.packId} was merged at home, receipt ${back.receipt}`,
			recordIds: [
				...all.filter((one) => one.about === card.playerId).map((one) => one.id),
				...(index === 0 ? general : []),
			],
		}
	})
	store.destroy(
		all.map((one) => one.id),
		[...state.drafts.keys()],
		() => {
			for (const value of lines)
				store.append({ kind: 'register', at: deps.now().toISOString(), value, does: 'destroy' })
			store.setSealedSetting(noteName, {
				...pack,
				players: [],
				bases: [],
				removedAt: deps.now().toISOString(),
			} satisfies PackNote)
		},
	)
	for (const { folder, file } of store.backups()) rmSync(join(folder, file), { force: true })
	reload(state, deps)
	return { records: all.length, lines: lines.length }
}
/** Fills the state anew from the store; whoever works here goes on. */
export function reload(state: State, deps: Deps): void {
	reloadMemory(state.memory, deps)
}
