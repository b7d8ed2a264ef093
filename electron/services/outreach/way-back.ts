/** On the laptop: the file of the way back, and taking the records off once home has them. */

import { rmSync } from 'node:fs'
import { join } from 'node:path'
import type { InputOf, OutputOf } from '../../../shared/contract.ts'
import type { Carried, CarriedDraft } from '../../../shared/desk/outreach/carried.ts'
import { comesHome, goesOut } from '../../../shared/desk/outreach/travels.ts'
import { type AwayTrail, chainAway } from '../../../shared/desk/records/away-trail.ts'
import type { RegisterLine } from '../../../shared/desk/records/retention.ts'
import { dayHere } from '../../../shared/desk/workplace/local-day.ts'
import { digestOf } from '../../../shared/engine/plain/canonical.ts'
import { present } from '../../../shared/engine/plain/present.ts'
import { openProtocol } from '../../../shared/engine/protocol/protocol.ts'
import { fullName } from '../../../shared/engine/words/names.ts'
import { type Unfinished, writePack } from '../../store/pack-file.ts'
import { damagedWords } from '../../store/record.ts'
import { ownerSlot, type Store } from '../../store/store.ts'
import { destroyedLines } from '../backups/retention.ts'
import { typedBy } from '../players/typed.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { Refusal } from '../records/refusal.ts'
import { forget } from '../records/remember.ts'
import { visitsOf } from '../visits/visits.ts'
import { makerOf } from './arrival.ts'
import { highest } from './drafts-home.ts'
import { basesOf, draftsToCarry } from './drafts-out.ts'
import { packNote } from './laptop.ts'
import type { PackNote } from './memory.ts'
import { idOfDigest, newFileIn, packWords } from './pack-words.ts'

/** Under this name the laptop keeps which file of the way back was made last. */
const returnNote = 'pack-return'
interface ReturnNote {
	packId: string
	receipt: string
	stamp: string
	at: string
	/** which file for the way back it was, from 1; absent where program 0.1.0 made it */
	turn?: number
}
/**
 * Records on a laptop that go home: what it says of players, and its own public key.
 * @param left takes the words for each that is damaged and stays here
 */
export const recordsForHome = (
	{ players }: Pick<Memory, 'players'>,
	store: Store,
	left: string[] = [],
): Carried[] =>
	store
		.carry(
			[...players.byId.keys()],
			(kind) => comesHome(kind) && kind !== 'trail',
			(row) => left.push(damagedWords(row)),
		)
		.filter(
			({ kind, about, origin }) =>
				about !== undefined ||
				// a page of a screening day is about several players
				kind === 'document' ||
				(kind === 'installation' && origin === store.origin),
		)

const laptopDrafts = (
	{ drafts }: Pick<Memory, 'drafts'>,
	store: Store,
	left?: string[],
): CarriedDraft[] => draftsToCarry(store, [...drafts.byId.keys()].sort(), left)
/** What tells whether anything was entered since the file of the way back was made. */
const stampOf = (memory: Pick<Memory, 'drafts'>, store: Store): string =>
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
	const { store, now } = deps
	const pack = await mustBeFromPack(memory, deps, passphrase)
	const left: string[] = []
	const records = recordsForHome(memory, store, left)
	const trail = trailRecord(deps, pack.packId, highest(records.map(({ tick }) => tick)))
	const drafts = laptopDrafts(memory, store, left)
	const turn = (returnNoteOf(store)?.turn ?? 0) + 1
	const about = aboutReturn(memory, deps, pack, turn)
	const name = `return-${dayHere(now())}-${digestOf(about).slice(0, 6)}.lwpack`
	const file = newFileIn(folder, name)
	const { manifest, receipt, bytes } = await packWords(
		() => writePack(file, passphrase, store.cost, about, [...records, trail], drafts),
		folder,
	)
	const note: ReturnNote = {
		packId: manifest.packId,
		receipt,
		stamp: stampOf(memory, store),
		at: manifest.madeAt,
		turn,
	}
	store.setSealedSetting(returnNote, note)
	store.audit({ function: 'export', objectRef: `pack-file:${manifest.packId.slice(0, 8)}` })
	return { file, bytes, records: manifest.records, drafts: manifest.drafts, left }
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
function trailRecord({ store, now }: Deps, packId: string, lastTick: number): Carried {
	const destroyed = new Set(destroyedLines(store).flatMap(({ recordIds }) => recordIds))
	const { problems } = store.verify(destroyed)
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

/**
 * Takes the records off the laptop, once home has shown by its receipt that it read just this file.
 * A register line for each player stays.
 * @throws Refusal in words; nothing is removed then
 */
export async function removeHere(
	memory: Memory,
	deps: Deps,
	{ receipt }: InputOf<'outreach.remove'>,
): Promise<OutputOf<'outreach.remove'>> {
	const { store, keep, now } = deps
	const { pack, back } = mustBeHome(memory, store, receipt)
	await store.backupsDone()
	const leaving = store.carry([...memory.players.byId.keys()], leavesLaptop)
	const lines = registerLines(memory, deps, leaving, {
		rule: 'pack brought home',
		reason: `pack ${pack.packId} was merged at home, receipt ${back.receipt}`,
	})
	const emptied: PackNote = { ...pack, players: [], bases: [], removedAt: now().toISOString() }
	store.destroy(
		leaving.map(({ id }) => id),
		[...memory.drafts.byId.keys()],
		() => {
			for (const value of lines) keep({ kind: 'register', value })
			store.setSealedSetting(packNote, emptied)
		},
	)
	for (const { folder, file, madeBy } of store.backups())
		if (madeBy !== 'other') rmSync(join(folder, file), { force: true })
	store.removeLeftovers()
	forget(memory, new Set(leaving.map(({ id }) => id)))
	memory.drafts.clear()
	memory.outreach.pack = emptied
	return { records: leaving.length, lines: lines.length }
}
/** The clinic's own records stay on a laptop that was emptied, and its register. */
const leavesLaptop = (kind: string): boolean => goesOut(kind) !== 'clinic' && kind !== 'register'
const returnNoteOf = (store: Store): ReturnNote | undefined =>
	store.sealedSetting(returnNote) as ReturnNote | undefined
/** @returns the pack of these records and the file of the way back that home has read */
function mustBeHome(
	memory: Memory,
	store: Store,
	receipt: string,
): { pack: PackNote; back: ReturnNote } {
	const { pack } = memory.outreach
	const back = returnNoteOf(store)
	if (!pack || pack.removedAt)
		throw new Refusal(
			'outreach.no-pack-here',
			'There is no pack on these records. Nothing was removed.',
		)
	if (!back)
		throw new Refusal(
			'outreach.way-back-not-made',
			'The file for the way back was not made yet. Make it and bring it home first.',
		)
	if (receipt.trim().toLowerCase() !== back.receipt)
		throw new Refusal(
			'outreach.other-receipt',
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
	const typing = typedBy(store)
	if (typing.length > 0)
		throw new Refusal(
			'outreach.details-not-saved',
			`Details of players were typed here and not saved, by ${whoTyped(memory, typing)}. Save or ` +
				'discard them on the page of the player first. Nothing was removed.',
		)
	if (stampOf(memory, store) !== back.stamp)
		throw new Refusal(
			'outreach.entered-since',
			'Something was entered here after the file for the way back was made. Make it again and ' +
				'bring it home first. Nothing was removed.',
		)
	return { pack, back }
}
const whoTyped = ({ people }: Memory, ids: readonly string[]): string =>
	[...new Set(ids.map((id) => people.nameOf(id) ?? 'a person who left'))].join(', ')
/** A line for each player; what is about nobody is named in the first one. */
function registerLines(
	memory: Memory,
	{ now }: Deps,
	leaving: readonly Carried[],
	why: { rule: string; reason: string },
): RegisterLine[] {
	const by = memory.people.acts().name
	const destroyedOn = dayHere(now())
	const aboutNobody = leaving.filter(({ about }) => about === undefined).map(({ id }) => id)
	return [...memory.players.byId.values()].map(({ card }, index) => {
		const own = leaving.filter(({ about }) => about === card.playerId)
		const days = own.map(({ at }) => at.slice(0, 10)).sort()
		return {
			playerId: card.playerId,
			name: fullName(card),
			from: days[0] ?? '',
			to: days.at(-1) ?? '',
			destroyedOn,
			by,
			...why,
			recordIds: [...own.map(({ id }) => id), ...(index === 0 ? aboutNobody : [])],
		}
	})
}
