/** Packing at home: one sealed file with what a day elsewhere needs, and nothing more. */

import { z } from 'zod'
import type { InputOf, OutputOf } from '../../../shared/contract.ts'
import type { Carried, CarriedDraft, CarriedPerson } from '../../../shared/desk/outreach/carried.ts'
import { goesOut } from '../../../shared/desk/outreach/travels.ts'
import { dayHere } from '../../../shared/desk/workplace/local-day.ts'
import { digestOf } from '../../../shared/engine/plain/canonical.ts'
import { addDays } from '../../../shared/engine/plain/days.ts'
import { present } from '../../../shared/engine/plain/present.ts'
import { openProtocol } from '../../../shared/engine/protocol/protocol.ts'
import { fullName } from '../../../shared/engine/words/names.ts'
import { type Unfinished, writePack } from '../../store/pack-file.ts'
import { type PackWork, walked } from '../../store/pack-work.ts'
import { damagedWords } from '../../store/record.ts'
import type { Store } from '../../store/store.ts'
import type { PlayerEntry } from '../players/memory.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { Refusal } from '../records/refusal.ts'
import { visitsOf } from '../visits/visits.ts'
import { makerOf } from './arrival.ts'
import { basesOf, draftsToCarry } from './drafts-out.ts'
import type { OutValue } from './pack-log.ts'
import { newFileIn, orNoFile, packWords } from './pack-words.ts'
import { atOneMoment, type WatchedWork, watched } from './work.ts'

type Wish = InputOf<'outreach.makePack'>
/** common practice, no source: an outreach trip is days, not months */
const longestDays = 90

/**
 * One sealed file with the chosen players, their history as far as wanted, clinic, shelf, settings,
 * people and protocol.
 * @throws Refusal in words
 */
export async function makePack(
	memory: Memory,
	deps: Deps,
	wish: Wish,
): Promise<OutputOf<'outreach.makePack'>> {
	return packWords(
		() =>
			watched(memory, deps, 'pack', async (work) => {
				const chosen = await mustBePackable(memory, deps, wish, work)
				return pack(memory, deps, { wish, chosen, work })
			}),
		wish.folder,
	)
}
async function pack(
	memory: Memory,
	deps: Deps,
	{ wish, chosen, work }: Pick<Packing, 'wish' | 'chosen'> & { work: WatchedWork },
): Promise<OutputOf<'outreach.makePack'>> {
	const { store, now } = deps
	const { folder, passphrase, expires } = wish
	const { visits, records, drafts, left } = await carriedBy(memory, deps, wish, work)
	const about = aboutPack(memory, deps, { wish, chosen, visits, records, drafts })
	const name = `pack-${dayHere(now())}-${digestOf(about).slice(0, 6)}.lwpack`
	const file = newFileIn(folder, name)
	const { manifest, bytes } = await writePack(
		file,
		passphrase,
		store.cost,
		{ about, records, drafts },
		work,
	)
	const { packId, madeAt, counts } = manifest
	orNoFile(file, () =>
		noteOut(deps, {
			what: 'out',
			form: manifest.version,
			packId,
			madeAt,
			by: about.madeBy.name,
			expires,
			file: name,
			players: manifest.players,
			counts,
			drafts,
		}),
	)
	return {
		file,
		bytes,
		packId,
		players: manifest.players.length,
		records: manifest.records,
		drafts: manifest.drafts,
		left,
	}
}
/** What travels, as it stands at one moment. */
async function carriedBy(memory: Memory, deps: Deps, wish: Wish, work: WatchedWork) {
	const { store } = deps
	const ids = new Set(wish.playerIds.flatMap((id) => memory.players.idsOf(id)))
	return atOneMoment(store, work, async () => {
		const left: string[] = []
		const visits = visitsToCarry(memory, deps, wish)
		const visitIds = new Set([...visits.values()].flat())
		const records = await recordsToCarry(memory, deps, { playerIds: ids, visitIds, left }, work)
		const drafts = draftsToCarry(
			store,
			memory.drafts.of([...ids]).map(([id]) => id),
			left,
		)
		return { visits, records, drafts, left }
	})
}
interface Packing {
	wish: Wish
	chosen: readonly PlayerEntry[]
	/** by player, the visits that travel */
	visits: ReadonlyMap<string, readonly string[]>
	records: readonly Carried[]
	drafts: readonly CarriedDraft[]
}
/** What the manifest says besides what is packed. */
function aboutPack(
	memory: Memory,
	{ store, now }: Deps,
	{ wish, chosen, visits, records, drafts }: Packing,
): Unfinished {
	const { clinic, shelf, people } = memory
	const person = people.acts()
	return {
		direction: 'out',
		recordsId: store.recordsId,
		...present({ installation: makerOf(store) }),
		people: peopleToCarry(memory, records),
		madeAt: now().toISOString(),
		madeBy: { personId: person.personId, name: person.name },
		expires: wish.expires,
		home: store.origin,
		clinicName: clinic.letterhead?.name ?? '',
		players: chosen.map(({ card }) => ({
			playerId: card.playerId,
			name: fullName(card),
			birthDate: card.birthDate,
			visits: visits.get(card.playerId)?.length ?? 0,
		})),
		bases: basesOf(drafts),
		protocol: openProtocol(clinic.protocol).identity(),
		shelf: shelf.shelf !== undefined,
	}
}
/** @returns the chosen players, each of whom is here and stands in the list once */
async function mustBePackable(
	memory: Memory,
	{ store, now }: Deps,
	{ playerIds, passphrase, expires }: Wish,
	work: PackWork,
): Promise<PlayerEntry[]> {
	if (memory.outreach.pack)
		throw new Refusal(
			'outreach.packs-at-home',
			'These records came in a pack themselves. Packs are made at home; here make the file for ' +
				'the way back.',
		)
	const today = dayHere(now())
	const last = addDays(today, longestDays)
	if (expires < today || expires > last)
		throw new Refusal('outreach.expiry-cannot-stand', 'The day of expiry cannot stand.', [
			{ path: 'expires', message: `given ${expires}, allowed: ${today} to ${last}` },
		])
	await mustBeNew(store, passphrase)
	// the records may have been locked while the passphrase was tried
	await work.at('gathering', 0, store.recordCount)
	const chosen = playerIds.map((id) => memory.players.entry(id))
	if (new Set(playerIds).size !== playerIds.length)
		throw new Refusal(
			'outreach.player-twice',
			'A player stands twice in the list. Choose each once.',
		)
	return chosen
}
/** @throws Refusal where somebody here has this passphrase; whose it is is not told */
async function mustBeNew(store: Store, passphrase: string): Promise<void> {
	if (!(await store.isSomebodysPassphrase(passphrase))) return
	throw new Refusal('outreach.passphrase-in-use', 'A pack has a passphrase of its own.', [
		{
			path: 'passphrase',
			message:
				'given one that opens these records, allowed: a new one, so that a lost laptop opens ' +
				'nothing here',
		},
	])
}
/** The visits of each player that travel, the latest first. */
function visitsToCarry(
	memory: Memory,
	deps: Deps,
	{ playerIds, history }: Wish,
): Map<string, string[]> {
	const most = { all: Number.POSITIVE_INFINITY, last: 1, none: 0 }[history]
	return new Map(
		playerIds.map((id) => {
			const visitIds = visitsOf(memory.players, deps, id).map(({ card }) => card.visitId)
			return [id, visitIds.slice(0, most)]
		}),
	)
}
interface Chosen {
	playerIds: ReadonlySet<string>
	visitIds: ReadonlySet<string>
	/** takes the words for each record that is damaged and stays here */
	left: string[]
}
async function recordsToCarry(
	{ clinic, shelf }: Memory,
	{ store }: Deps,
	{ playerIds, visitIds, left }: Chosen,
	work: PackWork,
): Promise<Carried[]> {
	const latest = new Set([
		clinic.recordIds.letterhead,
		clinic.recordIds.settings,
		shelf.recordId,
		...clinic.protocolVersions.map(({ savedAs }) => savedAs),
	])
	const found = store.carrying(
		[...playerIds],
		(kind, about) =>
			about === undefined ? goesOut(kind) === 'clinic' : goesOut(kind) === 'player',
		(row) => left.push(damagedWords(row)),
	)
	return (await walked(found, work, 'gathering', store.recordCount))
		.flat()
		.filter(({ id, kind, about, value }) => {
			// who works here goes out as a list, without PINs; whose installation wrote what, whole
			if (kind === 'person') return false
			if (about === undefined) return kind === 'installation' || latest.has(id)
			const { data } = ofVisitSchema.safeParse(value)
			return data === undefined || visitIds.has(data.visitId)
		})
}
/** What belongs to a visit says so. */
const ofVisitSchema = z.looseObject({ visitId: z.string() })
const signerSchema = z.looseObject({ signer: z.looseObject({ personId: z.string() }) })
/** Who made the pack, the owner, and who signed what is in it: no PIN, and nobody else. */
function peopleToCarry(
	{ people }: Pick<Memory, 'people'>,
	records: readonly Carried[],
): CarriedPerson[] {
	const needed = new Set([
		people.acts().personId,
		people.owner()?.personId,
		...records.map(({ value }) => signerSchema.safeParse(value).data?.signer.personId),
	])
	return people
		.all()
		.filter(({ personId }) => needed.has(personId))
		.map(({ personId, slot, name, registration, role, active }) => ({
			personId,
			slot,
			name,
			registration,
			role,
			active,
		}))
}
function noteOut({ store, keep }: Deps, value: OutValue): void {
	keep({ kind: 'pack', value, does: 'export' })
	for (const { playerId } of value.players)
		store.audit({
			function: 'export',
			playerId,
			objectRef: `pack-file:${value.packId.slice(0, 8)}`,
		})
}
