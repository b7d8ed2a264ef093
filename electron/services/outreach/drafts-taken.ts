/** The drafts of a file for the way back, brought in and joined as far as they go together. */
import { z } from 'zod'
import type { Carried, CarriedDraft } from '../../../shared/desk/outreach/carried.ts'
import { digestOf } from '../../../shared/engine/plain/canonical.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import type { DraftValue } from '../visits/memory.ts'
import { visitsOf } from '../visits/visits.ts'
import type { Arrival } from './arrival.ts'
import { playerName } from './aside-words.ts'
import {
	type Apart,
	changesKnown,
	type DraftNews,
	type DraftTrouble,
	highest,
	joinDrafts,
	mergeDrafts,
} from './drafts-home.ts'
import { basesOf } from './drafts-out.ts'
import { type Aside, setAside } from './set-aside.ts'

interface DraftsTaken {
	/** those that came and may stand, as they came */
	taken: CarriedDraft[]
	open: Apart[]
	news: DraftNews[]
	asides: Aside[]
	/** ids of the drafts that may be others now, or gone */
	touched: string[]
	notices: string[]
}
const nothing: DraftsTaken = {
	taken: [],
	open: [],
	news: [],
	asides: [],
	touched: [],
	notices: [],
}
export function bringDraftsHome(arrival: Arrival, added: readonly Carried[]): DraftsTaken {
	const { memory, deps, pack, log, wentOut } = arrival
	const { store } = deps
	if (isEarlier(arrival))
		return {
			...nothing,
			notices: [
				'A later file of this laptop was brought in before this one. Its records were looked at; ' +
					'its drafts were left out, since the later ones stand here.',
			],
		}
	const newcomers = new Set(
		added.flatMap(({ kind, about }) => (kind === 'player' ? (about ?? []) : [])),
	)
	const origins = [store.origin, store.recordsId, ...store.formerOrigins]
	const { apart, news, troubles, touched } = mergeDrafts(store, pack.drafts, {
		// what went out is known here; the file's own word is taken only where it was not noted
		bases: wentOut ? (wentOut.drafts ? basesOf(wentOut.drafts) : pack.manifest.bases) : [],
		taken: new Set(log.merged.flatMap((value) => value.taken)),
		origins,
		changesOut: wentOut
			? highest((wentOut.drafts ?? []).map(({ value }) => changesKnown(value, origins)))
			: Number.POSITIVE_INFINITY,
		isPlayer: (playerId) => memory.players.byId.has(playerId) || newcomers.has(playerId),
		isSigned: (playerId, visitDate) => isSigned(memory, deps, playerId, visitDate),
	})
	const refused = new Set(troubles.map(({ draft }) => draft))
	const taken = pack.drafts.filter((draft) => !refused.has(draft))
	const playerIds = new Set(taken.map(({ value }) => (value as DraftValue).playerId))
	const { joined, open, ...join } = joinDrafts(store, playerIds, wentOut?.drafts ?? [], apart)
	return {
		taken,
		open,
		news: [...news, ...joined],
		asides: troubles.map((trouble) => asideDraft(arrival, trouble)),
		touched: [...touched, ...join.touched],
		notices: joinedWords(joined.length),
	}
}
/** Whether a file that this laptop made later was brought in already. */
function isEarlier({ pack: { manifest }, log }: Arrival): boolean {
	const { installation, turn, madeAt } = manifest
	if (!installation) return false
	return log.merged.some((merged) => {
		if (merged.origin !== installation.origin || merged.answers !== manifest.answers) return false
		return turn !== undefined && merged.turn !== undefined
			? merged.turn > turn
			: (merged.madeAt ?? '') > madeAt
	})
}
/** Whether a visit of this day is signed here, whenever it came. */
function isSigned(
	{ players }: Pick<Memory, 'players'>,
	deps: Deps,
	playerId: string,
	visitDate: string,
): boolean {
	return visitsOf(players, deps, playerId).some(({ card }) => card.visitDate === visitDate)
}
const ownerSchema = z.looseObject({ playerId: z.string() })
function asideDraft(arrival: Arrival, { draft, because }: DraftTrouble): Aside {
	const { deps, pack } = arrival
	const name = playerName(arrival, ownerSchema.safeParse(draft.value).data?.playerId)
	const aside: Aside = {
		of: draft.id,
		kind: 'draft',
		says:
			`An open draft${name ? ` of ${name}` : ''} was not taken in: it ${because}. It is kept ` +
			'aside; ask who worked with the laptop.',
		why: 'refused',
		record: draft,
	}
	setAside(deps, pack.manifest.packId, aside, digestOf({ draft }))
	return aside
}
function joinedWords(joined: number): string[] {
	if (joined === 0) return []
	const [what, verb] = joined === 1 ? ['A draft', 'was'] : [`${joined} drafts`, 'were']
	return [
		`${what} worked at in more than one place ${verb} joined field by field. No field had two ` +
			'different values.',
	]
}
