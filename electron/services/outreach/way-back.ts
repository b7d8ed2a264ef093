/** On the laptop: the file of the way back. */

import type { InputOf, OutputOf } from '../../../shared/contract.ts'
import type { Carried, CarriedDraft } from '../../../shared/desk/outreach/carried.ts'
import { comesHome } from '../../../shared/desk/outreach/travels.ts'
import { type AwayTrail, chainAway } from '../../../shared/desk/records/away-trail.ts'
import { dayHere } from '../../../shared/desk/workplace/local-day.ts'
import { digestOf } from '../../../shared/engine/plain/canonical.ts'
import { present } from '../../../shared/engine/plain/present.ts'
import { openProtocol } from '../../../shared/engine/protocol/protocol.ts'
import { fullName } from '../../../shared/engine/words/names.ts'
import { type Unfinished, writePack } from '../../store/pack-file.ts'
import { type PackWork, walked } from '../../store/pack-work.ts'
import { damagedWords } from '../../store/record.ts'
import { ownerSlot, type Store } from '../../store/store.ts'
import { destroyedLines } from '../backups/retention.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { Refusal } from '../records/refusal.ts'
import { visitsOf } from '../visits/visits.ts'
import { makerOf } from './arrival.ts'
import { highest } from './drafts-home.ts'
import { basesOf, draftsToCarry } from './drafts-out.ts'
import type { PackNote } from './memory.ts'
import { idOfDigest, newFileIn, orNoFile, packWords } from './pack-words.ts'
import { atOneMoment, type WatchedWork, watched } from './work.ts'

/** Under this name the laptop keeps which file of the way back was made last. */
const returnNote = 'pack-return'
export interface ReturnNote {
	packId: string
	receipt: string
	stamp: string
	at: string
	/** which file for the way back it was, from 1; absent where program 0.1.0 made it */
	turn?: number
}
export const returnNoteOf = (store: Store): ReturnNote | undefined =>
	store.sealedSetting(returnNote) as ReturnNote | undefined
const recordsWanted = (
	{ players }: Pick<Memory, 'players'>,
	store: Store,
	left: string[],
): Iterable<Carried[]> =>
	store.carrying(
		[...players.byId.keys()],
		(kind) => comesHome(kind) && kind !== 'trail',
		(row) => left.push(damagedWords(row)),
	)
const goesHome =
	(store: Store) =>
	({ kind, about, origin }: Carried): boolean =>
		about !== undefined ||
		// a page of a screening day is about several players
		kind === 'document' ||
		(kind === 'installation' && origin === store.origin)
/** Records on a laptop that go home: what it says of players, and its own public key. */
export const recordsForHome = (memory: Pick<Memory, 'players'>, store: Store): Carried[] =>
	[...recordsWanted(memory, store, [])].flat().filter(goesHome(store))

const laptopDrafts = (
	{ drafts }: Pick<Memory, 'drafts'>,
	store: Store,
	left?: string[],
): CarriedDraft[] => draftsToCarry(store, [...drafts.byId.keys()].sort(), left)
/** What tells whether anything was entered since the file of the way back was made. */
export const stampOf = (memory: Pick<Memory, 'drafts'>, store: Store): string =>
	digestOf({ records: store.recordCount, drafts: basesOf(laptopDrafts(memory, store)) })

/**
 * The way back: everything that stands on the laptop, sealed under the pack's passphrase.
 * @throws Refusal in words
 */
export async function makeReturn(
	memory: Memory,
	deps: Deps,
	{ folder, passphrase }: InputOf<'outreach.makeReturn'>,
): Promise<OutputOf<'outreach.makeReturn'>> {
	return packWords(
		() =>
			watched(memory, deps, 'way-back', async (work) => {
				const pack = await mustBeFromPack(memory, deps, passphrase)
				// the records may have been locked while the passphrase was tried
				await work.at('gathering', 0, deps.store.recordCount)
				return writeReturn(memory, deps, { folder, passphrase, pack, work })
			}),
		folder,
	)
}
interface Returning {
	folder: string
	passphrase: string
	pack: PackNote
	work: WatchedWork
}
async function writeReturn(
	memory: Memory,
	deps: Deps,
	{ folder, passphrase, pack, work }: Returning,
): Promise<OutputOf<'outreach.makeReturn'>> {
	const { store, now } = deps
	const { records, drafts, left, stamp } = await carriedHome(memory, deps, pack, work)
	const turn = (returnNoteOf(store)?.turn ?? 0) + 1
	const about = aboutReturn(memory, deps, pack, turn)
	const name = `return-${dayHere(now())}-${digestOf(about).slice(0, 6)}.lwpack`
	const file = newFileIn(folder, name)
	const { manifest, receipt, bytes } = await writePack(
		file,
		passphrase,
		store.cost,
		{ about, records, drafts },
		work,
	)
	const { packId, madeAt: at } = manifest
	const note: ReturnNote = { packId, receipt, stamp, at, turn }
	orNoFile(file, () => {
		store.setSealedSetting(returnNote, note)
		store.audit({ function: 'export', objectRef: `pack-file:${packId.slice(0, 8)}` })
	})
	return { file, bytes, records: manifest.records, drafts: manifest.drafts, left }
}
/**
 * What goes home, as it stands at one moment; the stamp is of that moment, so that what is entered
 * while the file is written is missed when the laptop is to be emptied.
 */
async function carriedHome(memory: Memory, deps: Deps, pack: PackNote, work: PackWork) {
	const { store } = deps
	return atOneMoment(store, work, async () => {
		const left: string[] = []
		const total = store.recordCount
		const found = await walked(recordsWanted(memory, store, left), work, 'gathering', total)
		const records = found.flat().filter(goesHome(store))
		const destroyed = new Set(destroyedLines(store).flatMap(({ recordIds }) => recordIds))
		const verified = (await walked(store.verifying(destroyed), work, 'verifying', total)).at(-1)
		const lastTick = highest(records.map(({ tick }) => tick))
		const trail = trailRecord(deps, pack.packId, lastTick, verified?.problems ?? [])
		const drafts = laptopDrafts(memory, store, left)
		return { records: [...records, trail], drafts, left, stamp: stampOf(memory, store) }
	})
}
async function mustBeFromPack(
	{ outreach: { pack } }: Memory,
	{ store }: Deps,
	passphrase: string,
): Promise<PackNote> {
	if (!pack || pack.removedAt)
		throw new Refusal(
			'outreach.no-pack-here',
			'These records did not come in a pack. There is nothing to bring home from here.',
		)
	if (!(await store.isPassphraseOf(ownerSlot, passphrase)))
		throw new Refusal('outreach.other-passphrase', 'This is not the passphrase of the pack.', [
			{
				path: 'passphrase',
				message: 'given another one, allowed: the passphrase this laptop is unlocked with',
			},
		])
	return pack
}
function aboutReturn(
	{ people, clinic, players, shelf }: Memory,
	deps: Deps,
	pack: PackNote,
	turn: number,
): Unfinished {
	const person = people.acts()
	return {
		direction: 'return',
		answers: pack.packId,
		turn,
		madeAt: deps.now().toISOString(),
		madeBy: { personId: person.personId, name: person.name },
		expires: pack.expires,
		home: pack.home,
		...present({ recordsId: pack.recordsId, installation: makerOf(deps.store) }),
		clinicName: clinic.letterhead?.name ?? '',
		players: players.ordered().map(({ card }) => ({
			playerId: card.playerId,
			name: fullName(card),
			birthDate: card.birthDate,
			visits: visitsOf(players, deps, card.playerId).length,
		})),
		bases: pack.bases,
		protocol: openProtocol(clinic.protocol).identity(),
		shelf: shelf.shelf !== undefined,
	}
}
/**
 * The laptop's own audit rows, checked here where its key is, chained anew so that home can check
 * them without it.
 */
function trailRecord(
	{ store, now }: Deps,
	packId: string,
	lastTick: number,
	problems: string[],
): Carried {
	const rows = store.auditPage(Number.MAX_SAFE_INTEGER, Number.MAX_SAFE_INTEGER).reverse()
	const value: AwayTrail = {
		packId,
		workstationId: store.origin,
		madeAt: now().toISOString(),
		problems,
		rows: chainAway(packId, store.origin, rows),
	}
	return store.signed({
		id: idOfDigest(digestOf(value)),
		kind: 'trail',
		version: 1,
		at: value.madeAt,
		origin: store.origin,
		tick: lastTick + 1,
		number: 0,
		value,
	})
}
