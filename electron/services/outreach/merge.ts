/**
 * Bringing a pack home: union of the records, in one transaction, with counts before and after; and
 * the questions that stay for a person.
 */
import type { Card, InputOf, OutputOf } from '../../../shared/contract.ts'
import type { Carried } from '../../../shared/desk/outreach/carried.ts'
import { countsAgree, draftDigest } from '../../../shared/desk/outreach/merge.ts'
import { type OpenedPack, readPack } from '../../store/pack-file.ts'
import type { Store } from '../../store/store.ts'
import { fileToRead } from '../clinic/places.ts'
import { fullName } from '../players/names.ts'
import type { Deps } from '../records/deps.ts'
import { loadDrafts } from '../records/load.ts'
import type { Memory } from '../records/memory.ts'
import { readRecord } from '../records/open.ts'
import { Refusal } from '../records/refusal.ts'
import { draftOutlineSchema } from '../visits/memory.ts'
import { type Apart, joinDrafts, mergeDrafts } from './drafts-home.ts'
import { duplicatesOf, playersOf } from './duplicates.ts'
import { type MergedValue, packLog } from './pack-log.ts'
import { packWords } from './pack-words.ts'
import { openQuestions } from './questions.ts'
import { takeRecordsIn } from './taking-in.ts'

type Merged = OutputOf<'outreach.merge'>
/**
 * A clock that runs this far ahead or behind is said: common practice, no source (practice standard
 * 5.3).
 */
const skewMinutes = 5
const minuteMs = 60_000
/** Undoes the transaction of a merge that was only looked at. */
class NotKept extends Error {
	readonly result: Merged
	constructor(result: Merged) {
		super('preview')
		this.result = result
	}
}

/** What a merge would do; nothing of it is kept. */
export async function previewMerge(
	memory: Memory,
	deps: Deps,
	input: InputOf<'outreach.previewMerge'>,
): Promise<OutputOf<'outreach.previewMerge'>> {
	try {
		return await merge(memory, deps, input, true)
	} catch (error) {
		if (error instanceof NotKept) return error.result
		throw error
	}
}
/**
 * All or nothing: read and checked whole first, then written in one transaction that ends with its
 * own record.
 */
export const mergePack = (
	memory: Memory,
	deps: Deps,
	input: InputOf<'outreach.merge'>,
): Promise<Merged> => merge(memory, deps, input, false)

async function merge(
	memory: Memory,
	deps: Deps,
	{ file, passphrase }: InputOf<'outreach.merge'>,
	onlyLook: boolean,
): Promise<Merged> {
	const { store, now } = deps
	const pack = await packWords(() => readPack(fileToRead(file), passphrase))
	mustComeHome(store, pack)
	const clockNotices = clockWarnings(pack, now())
	const result = store.together(() => {
		const merged = bringHome(memory, deps, pack, clockNotices)
		if (onlyLook) throw new NotKept(merged)
		return merged
	})
	loadDrafts(memory, deps)
	return result
}
function mustComeHome(store: Store, { manifest }: OpenedPack): void {
	if (manifest.direction !== 'return')
		throw new Refusal(
			'This is a pack that goes out. To bring work home, make the file for the way back on the ' +
				'laptop.',
		)
	if (![store.recordsId, store.origin, ...store.formerOrigins].includes(manifest.home))
		throw new Refusal(
			'This file belongs to other records: it went out from another clinic or another PC. ' +
				'Nothing was changed.',
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
/** Everything that a merge writes, inside its transaction. */
function bringHome(
	memory: Memory,
	deps: Deps,
	pack: OpenedPack,
	clockNotices: readonly string[],
): Merged {
	const { store, keep, now } = deps
	const { manifest, records, drafts, receipt } = pack
	const log = packLog(store)
	const again = log.merged.some(({ packId }) => packId === manifest.packId)
	const { counts, clashes, heldBack } = takeRecordsIn(deps, manifest.packId, records)
	const { joined, open } = bringDraftsHome(store, pack, log)
	if (!countsAgree(counts))
		throw new Refusal(
			'The counts before and after do not agree. Nothing was changed. Make the file for the ' +
				'way back again.',
		)
	const { came, known, newcomers } = whoCame(memory, store, pack)
	const trailRows = records.reduce((sum, record) => sum + rowsOf(record), 0)
	const at = now().toISOString()
	const value: MergedValue = {
		what: 'merged',
		trailRows,
		packId: manifest.packId,
		answers: manifest.answers,
		at,
		by: memory.people.acts().name,
		counts,
		receipt,
		players: came.map(({ playerId }) => playerId),
		taken: drafts.map((draft) => `${draft.id} ${draftDigest(draft)}`),
		draftsBoth: open.map((apart) => ({ ...apart, name: nameIn(known, apart.playerId) })),
		duplicates: duplicatesOf(newcomers, [...known.values()]),
		quarantined: clashes,
		heldBack,
	}
	if (!again) keep({ kind: 'pack', at, value, does: 'merge' })
	return {
		again,
		madeAt: manifest.madeAt,
		madeBy: manifest.madeBy.name,
		players: manifest.players,
		counts,
		receipt,
		drafts: drafts.length,
		draftsBoth: value.draftsBoth,
		duplicates: value.duplicates,
		quarantined: clashes,
		heldBack,
		trailRows,
		notices: [...clockNotices, ...joinedWords(joined)],
		questions: openQuestions(store, value.players).length,
	}
}
/** Rows of the laptop's audit trail that a record brings. */
function rowsOf(record: Carried): number {
	if (record.kind !== 'trail') return 0
	const reading = readRecord('trail', record)
	return reading.state === 'read' ? reading.value.rows.length : 0
}
/** The drafts of the pack taken in, and those of one visit joined as far as they go together. */
function bringDraftsHome(
	store: Store,
	{ manifest, drafts }: OpenedPack,
	{ out, merged }: ReturnType<typeof packLog>,
): { joined: number; open: Apart[] } {
	const taken = new Set(merged.flatMap((value) => value.taken))
	const wentOut = out.find(({ packId }) => packId === manifest.answers)?.drafts ?? []
	const apart = mergeDrafts(store, manifest.bases, drafts, taken)
	const outlines = drafts.flatMap(({ value }) => draftOutlineSchema.safeParse(value).data ?? [])
	const playerIds = new Set(outlines.map(({ playerId }) => playerId))
	return joinDrafts(store, playerIds, wentOut, apart)
}
function joinedWords(joined: number): string[] {
	if (joined === 0) return []
	const [what, verb] = joined === 1 ? ['A draft', 'was'] : [`${joined} drafts`, 'were']
	return [
		`${what} worked at in more than one place ${verb} joined field by field. No field had two ` +
			'different values.',
	]
}
/** The players whose records came, all that are known now, and who of them is new here. */
function whoCame({ players }: Pick<Memory, 'players'>, store: Store, { records }: OpenedPack) {
	const came = playersOf(store, records)
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
