/** Packing at home: one sealed file with what a day elsewhere needs, and nothing more. */
import type { InputOf, OutputOf } from '../../../shared/contract.ts'
import type { Carried } from '../../../shared/desk/outreach/carried.ts'
import { dayHere } from '../../../shared/desk/workplace/local-day.ts'
import { protocolIdentity } from '../../../shared/engine/assess.ts'
import { digestOf } from '../../../shared/engine/plain/canonical.ts'
import { addDays } from '../../../shared/engine/plain/days.ts'
import { type Unfinished, writePack } from '../../store/pack-file.ts'
import type { Kind } from '../../store/store.ts'
import type { PlayerEntry } from '../players/memory.ts'
import { fullName } from '../players/names.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { Refusal } from '../records/refusal.ts'
import { visitsOf } from '../visits/visits.ts'
import { basesOf, draftsToCarry } from './drafts-out.ts'
import type { OutValue } from './pack-log.ts'
import { newFileIn, packWords } from './pack-words.ts'

type Wish = InputOf<'outreach.makePack'>
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
const ofVisits: readonly string[] = ['visit', 'report', 'visit-note'] satisfies readonly Kind[]
/** What is about nobody and travels, its latest version only. */
const ofClinic: readonly Kind[] = ['clinic', 'settings', 'shelf', 'protocol', 'person']
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
	const { store, now } = deps
	const { playerIds, folder, passphrase, expires } = wish
	const { players, clinic, people, shelf } = memory
	const chosen = await mustBePackable(memory, deps, wish)
	const ids = new Set(playerIds.flatMap((id) => players.idsOf(id)))
	const visits = visitsToCarry(memory, deps, wish)
	const records = recordsToCarry(memory, deps, ids, new Set([...visits.values()].flat()))
	const drafts = draftsToCarry(
		store,
		memory.drafts.of([...ids]).map(([id]) => id),
	)
	const person = people.acts()
	const about: Unfinished = {
		direction: 'out',
		madeAt: now().toISOString(),
		madeBy: { personId: person.personId, name: person.name },
		expires,
		home: store.origin,
		clinicName: clinic.letterhead?.name ?? '',
		players: chosen.map(({ card }) => ({
			playerId: card.playerId,
			name: fullName(card),
			birthDate: card.birthDate,
			visits: visits.get(card.playerId)?.length ?? 0,
		})),
		bases: basesOf(drafts),
		protocol: protocolIdentity(clinic.protocol),
		shelf: shelf.shelf !== undefined,
	}
	const name = `pack-${dayHere(now())}-${digestOf(about).slice(0, 6)}.lwpack`
	const file = newFileIn(folder, name)
	const { manifest, bytes } = await packWords(
		() => writePack(file, passphrase, store.cost, about, records, drafts),
		folder,
	)
	const { packId, madeAt, counts } = manifest
	noteOut(deps, {
		what: 'out',
		packId,
		madeAt,
		by: person.name,
		expires,
		file: name,
		players: manifest.players,
		counts,
		drafts,
	})
	return {
		file,
		bytes,
		packId,
		players: manifest.players.length,
		records: manifest.records,
		drafts: manifest.drafts,
	}
}
/** @returns the chosen players, each of whom is here and stands in the list once */
async function mustBePackable(
	memory: Memory,
	{ store, now }: Deps,
	{ playerIds, passphrase, expires }: Wish,
): Promise<PlayerEntry[]> {
	if (memory.outreach.pack)
		throw new Refusal(
			'These records came in a pack themselves. Packs are made at home; here make the file for ' +
				'the way back.',
		)
	const today = dayHere(now())
	const last = addDays(today, longestDays)
	if (expires < today || expires > last)
		throw new Refusal('The day of expiry cannot stand.', [
			{ path: 'expires', message: `given ${expires}, allowed: ${today} to ${last}` },
		])
	if (await store.isPassphraseOf(memory.people.acts().slot, passphrase))
		throw new Refusal('A pack has a passphrase of its own.', [
			{
				path: 'passphrase',
				message:
					'given your own passphrase, allowed: another one, so that a lost laptop opens nothing ' +
					'here',
			},
		])
	const chosen = playerIds.map((id) => memory.players.entry(id))
	if (new Set(playerIds).size !== playerIds.length)
		throw new Refusal('A player stands twice in the list. Choose each once.')
	return chosen
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
function recordsToCarry(
	{ clinic, shelf, people }: Memory,
	{ store }: Deps,
	playerIds: ReadonlySet<string>,
	visitIds: ReadonlySet<string>,
): Carried[] {
	const latest = new Set([
		clinic.recordIds.letterhead,
		clinic.recordIds.settings,
		shelf.recordId,
		...clinic.protocolVersions.map(({ savedAs }) => savedAs),
		...people.all().map(({ recordId }) => recordId),
	])
	return store
		.carry([...playerIds], (kind, about) =>
			about === undefined
				? ofClinic.includes(kind)
				: playerIds.has(about) && travels.includes(kind),
		)
		.filter(({ id, kind, about, thing = '' }) => {
			if (about === undefined) return latest.has(id)
			return !ofVisits.includes(kind) || visitIds.has(thing)
		})
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
