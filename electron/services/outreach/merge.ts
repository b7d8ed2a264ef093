/**
 * Bringing a pack home: each record checked and taken in or set aside, in one transaction, with
 * counts before and after; and the questions that stay for a person.
 */

import type { Card, InputOf, OutputOf } from '../../../shared/contract.ts'
import type { Carried } from '../../../shared/desk/outreach/carried.ts'
import { countsAgree, draftDigest } from '../../../shared/desk/outreach/merge.ts'
import { awayTrailSchema } from '../../../shared/desk/records/away-trail.ts'
import { present } from '../../../shared/engine/plain/present.ts'
import { fullName } from '../../../shared/engine/words/names.ts'
import { type OpenedPack, readPack } from '../../store/pack-file.ts'
import { fileToRead } from '../clinic/places.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { Refusal } from '../records/refusal.ts'
import { type Arrival, arrivalNotices, arrivalOf } from './arrival.ts'
import { bringDraftsHome } from './drafts-taken.ts'
import { duplicatesOf, playersOf } from './duplicates.ts'
import type { Clash, MergedValue } from './pack-log.ts'
import { packWords } from './pack-words.ts'
import { openQuestions } from './questions.ts'
import { rememberDrafts } from './remembering.ts'
import { lookedAt } from './seen-before.ts'
import type { Aside } from './set-aside.ts'
import { takeRecordsIn } from './taking-in.ts'
import { whatChanged } from './what-changed.ts'
import { watched } from './work.ts'

type Merged = OutputOf<'outreach.merge'>
/**
 * A clock that runs this far ahead or behind is said: common practice, no source (practice standard
 * 5.3).
 */
const skewMinutes = 5
const minuteMs = 60_000
/** What was set aside is told one by one up to this many; all of it is counted and kept. */
const mostAsides = 100
/** Undoes the transaction of a merge that was only looked at. */
class NotKept extends Error {
	readonly result: Merged
	constructor(result: Merged) {
		super('preview')
		this.result = result
	}
}

/** What a merge would do; nothing of it is kept, here or in memory. */
export const previewMerge = (
	memory: Memory,
	deps: Deps,
	input: InputOf<'outreach.previewMerge'>,
): Promise<OutputOf<'outreach.previewMerge'>> =>
	homecoming(memory, deps, 'look', input, (bring) => {
		try {
			deps.store.together(() => {
				throw new NotKept(bring().result)
			})
		} catch (error) {
			if (error instanceof NotKept) return error.result
			throw error
		}
		throw new Error('a preview always undoes its transaction')
	})
/**
 * All or nothing: read and checked whole first, then written in one transaction that ends with its
 * own record. Memory is extended by what was taken in once all of it is committed.
 */
export const mergePack = (
	memory: Memory,
	deps: Deps,
	input: InputOf<'outreach.merge'>,
): Promise<Merged> =>
	homecoming(memory, deps, 'merge', input, (bring) => {
		const { result, drafts } = deps.store.together(bring)
		rememberDrafts(memory, deps, drafts)
		return result
	})
/** Reads and checks a file with pauses, then does the rest at once. */
async function homecoming(
	memory: Memory,
	deps: Deps,
	what: 'look' | 'merge',
	{ file, passphrase }: InputOf<'outreach.merge'>,
	end: (bring: () => Brought) => Merged,
): Promise<Merged> {
	return packWords(() =>
		watched(memory, deps, what, async (work) => {
			const pack = await readPack(fileToRead(file), passphrase, work)
			const seen = await lookedAt(arrivalOf(memory, deps, pack), work)
			await work.last('taking')
			// what was written meanwhile may make what was seen untrue
			const still = seen.state === deps.store.state ? seen.byRecord : undefined
			return end(() => bringHome({ ...arrivalOf(memory, deps, pack), ...present({ seen: still }) }))
		}),
	)
}
function clockWarnings({ manifest, records }: OpenedPack, now: Date): string[] {
	const times = [manifest.madeAt, ...records.map(({ at }) => at)].sort()
	const newest = times.at(-1) ?? manifest.madeAt
	const aheadMinutes = Math.round((Date.parse(newest) - now.getTime()) / minuteMs)
	return aheadMinutes > skewMinutes
		? [
				`The clock of the laptop runs ${aheadMinutes} minutes ahead of this PC's. The order of ` +
					'the records does not depend on it; check both clocks.',
			]
		: []
}
interface Brought {
	result: Merged
	/** ids of the drafts that may be others now */
	drafts: string[]
}
/** Everything that a merge writes, inside its transaction. */
function bringHome(arrival: Arrival): Brought {
	const { memory, deps, pack, log } = arrival
	const { keep, now } = deps
	const { manifest, drafts, receipt } = pack
	const again = log.merged.some(({ packId }) => packId === manifest.packId)
	const { counts, added, asides, heldBack } = takeRecordsIn(arrival)
	const home = bringDraftsHome(arrival, added)
	if (!countsAgree(counts))
		throw new Refusal(
			'outreach.counts-differ',
			'The counts before and after do not agree. Nothing was changed. Make the file for the ' +
				'way back again.',
		)
	const { came, known, newcomers } = whoCame(arrival, added)
	const changes = whatChanged(arrival, added, home.news)
	const aside = toldAsides([...asides, ...home.asides])
	const value: MergedValue = {
		what: 'merged',
		trailRows: trailRowsOf(added),
		packId: manifest.packId,
		...present({ origin: manifest.installation?.origin, turn: manifest.turn }),
		madeAt: manifest.madeAt,
		answers: manifest.answers,
		at: now().toISOString(),
		by: memory.people.acts().name,
		counts,
		receipt,
		players: came.map(({ playerId }) => playerId),
		taken: home.taken.map((draft) => `${draft.id} ${draftDigest(draft)}`),
		draftsBoth: home.open.map((apart) => ({ ...apart, name: nameIn(known, apart.playerId) })),
		duplicates: duplicatesOf(newcomers, [...known.values()]),
		quarantined: aside,
		heldBack,
		changes: changes.players,
	}
	if (!again) keep({ kind: 'pack', at: value.at, value, does: 'merge' })
	const result: Merged = {
		again,
		madeAt: manifest.madeAt,
		madeBy: manifest.madeBy.name,
		players: manifest.players,
		counts,
		receipt,
		drafts: drafts.length,
		draftsBoth: value.draftsBoth,
		duplicates: value.duplicates,
		quarantined: aside,
		heldBack,
		trailRows: value.trailRows ?? 0,
		notices: [...clockWarnings(pack, now()), ...arrivalNotices(arrival), ...home.notices],
		questions: openQuestions(deps, value.players).length,
		changes: changes.players,
		morePlayers: changes.more,
	}
	return { result, drafts: home.touched }
}
function toldAsides(asides: readonly Aside[]): Clash[] {
	return asides
		.slice(0, mostAsides)
		.map(({ of, kind, says, why }) => ({ record: of, kind, says, why }))
}
const trailRowsOf = (records: readonly Carried[]): number =>
	records
		.flatMap(({ kind, value }) =>
			kind === 'trail' ? (awayTrailSchema.safeParse(value).data ?? []) : [],
		)
		.reduce((sum, trail) => sum + trail.rows.length, 0)
/** The players whose records came, all that are known now, and who of them is new here. */
function whoCame({ memory: { players }, deps, pack }: Arrival, added: readonly Carried[]) {
	const came = playersOf(deps, [...pack.records, ...added])
	const before = [...players.byId].map(([playerId, { card }]) => [playerId, card] as const)
	const known = new Map<string, Card>([
		...before,
		...came.map((card) => [card.playerId, card] as const),
	])
	return { came, known, newcomers: came.filter(({ playerId }) => !players.byId.has(playerId)) }
}
function nameIn(known: ReadonlyMap<string, Card>, playerId: string): string {
	const card = known.get(playerId)
	return card ? fullName(card) : 'a player'
}
