/**
 * Fills memory from the store after unlock. Visits stay sealed until someone opens them. A damaged
 * record is named; the rest loads.
 */
import { joinFields } from '../../../shared/desk/outreach/heads.ts'
import { playerOf } from '../../../shared/desk/outreach/merge.ts'
import { playerSchema } from '../../../shared/engine/visit/visit.ts'
import { ownerSlot, type Store, type StoredRecord } from '../../store/store.ts'
import type { PackNote } from '../outreach/memory.ts'
import type { PersonValue } from '../people/memory.ts'
import type { PlayerValue } from '../players/memory.ts'
import type { DraftValue } from '../visits/memory.ts'
import type { Deps } from './deps.ts'
import type { Memory } from './memory.ts'
import { remember, rememberedKinds } from './remember.ts'

/** The last versions of each player's details: more than one after changes in two places. */
type LastVersions = Map<string, Set<string>>

/** Forgets everything and reads the store anew; nobody is at work after that. */
export function loadMemory(memory: Memory, { store }: Pick<Deps, 'store'>): void {
	memory.clear()
	const damaged: string[] = []
	const lastVersions: LastVersions = new Map()
	store.each(
		rememberedKinds,
		(record) => {
			remember(memory, record)
			if (record.kind === 'player') followVersion(lastVersions, record)
		},
		damaged,
	)
	joinPlayers(memory, store, lastVersions)
	memory.outreach.pack = store.sealedSetting('pack') as PackNote | undefined
	memory.warn(...damaged, ...store.notices)
	loadDrafts(memory, store)
}
/** Reads the store anew; whoever works here goes on. */
export function reloadMemory(memory: Memory, deps: Pick<Deps, 'store'>): void {
	const personId = memory.people.atWork?.personId
	loadMemory(memory, deps)
	memory.people.atWork = personId === undefined ? undefined : memory.people.byId.get(personId)
}
function followVersion(lastVersions: LastVersions, record: StoredRecord): void {
	const { playerId } = record.value as PlayerValue
	const last = lastVersions.get(playerId) ?? new Set()
	if (record.follows !== undefined) last.delete(record.follows)
	lastVersions.set(playerId, last.add(record.id))
}
/** Players changed in two places: what only one of them changed is taken, field by field. */
function joinPlayers({ players, outreach }: Memory, store: Store, lastVersions: LastVersions) {
	for (const [playerId, last] of lastVersions) {
		if (last.size < 2) continue
		const versions = store.cardsAbout('player', playerId).flatMap(({ record }) => {
			try {
				return [store.read(record)]
			} catch {
				return []
			}
		})
		const { value, heads } = joinFields(versions, playerOf, outreach.joined)
		const read = playerSchema.safeParse(value)
		const head = heads.at(-1)
		if (read.success && head !== undefined)
			players.takePlayer({ id: head, kind: 'player', value: { playerId, player: read.data } })
	}
}
function loadDrafts({ drafts, warn }: Memory, store: Store): void {
	for (const draftId of store.draftIds()) {
		try {
			const draft = store.draft(draftId)
			if (draft) drafts.take(draftId, draft.value as DraftValue, draft.at)
		} catch {
			warn(
				`The draft ${draftId} is damaged and cannot be read. All other records are unaffected; ` +
					'restore it from a backup.',
			)
		}
	}
}
/**
 * The owner as the clinic's letterhead names them: made for a store that was written before people
 * had entries.
 */
export function ensureOwner({ people, clinic }: Memory, { keep }: Deps): void {
	if (people.owner() || !clinic.letterhead) return
	const value: PersonValue = {
		personId: 'owner',
		slot: ownerSlot,
		...clinic.letterhead.clinician,
		role: 'owner',
		active: true,
	}
	keep({ kind: 'person', value })
}
