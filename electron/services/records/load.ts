/**
 * Fills memory from the store after unlock. Visits stay sealed until someone opens them. A record
 * that cannot be read is named; the rest loads.
 */
import { isKind } from '../../../shared/desk/ledger/ledger.ts'
import { numberOf } from '../../../shared/desk/outbox/item.ts'
import type { PersonValue } from '../../../shared/desk/people/person-record.ts'
import { isDamage } from '../../store/records.ts'
import { ownerSlot, type Store } from '../../store/store.ts'
import { packNoteSchema } from '../outreach/memory.ts'
import { draftOutlineSchema } from '../visits/memory.ts'
import type { Deps } from './deps.ts'
import { joinPlayers } from './join-players.ts'
import type { Memory } from './memory.ts'
import { remember, rememberedKinds } from './remember.ts'

/** Forgets everything and reads the store anew; nobody is at work after that. */
export function loadMemory(memory: Memory, { store }: Pick<Deps, 'store'>): void {
	memory.clear()
	const damaged: string[] = []
	const ofNewerVersions = store.kinds().filter((kind) => !isKind(kind))
	store.each(
		[...rememberedKinds, ...ofNewerVersions],
		(record) => remember(memory, record),
		damaged,
	)
	joinPlayers(memory, store)
	holdBack(memory, store)
	loadPackNote(memory, store)
	memory.warn(...damaged, ...store.notices, ...store.found)
	loadDrafts(memory, { store })
}
/**
 * An outbox entry that is ready to leave, and of which a newer version stands there that cannot be
 * read, may have left or been called back: it does not leave by itself.
 */
function holdBack({ outbox, warn }: Memory, store: Store): void {
	for (const { itemId, state } of outbox.items.all()) {
		if (state !== 'ready') continue
		const standing = outbox.items.recordOf(itemId)
		if (standing === undefined || lastVersion(store, itemId) === standing) continue
		outbox.items.forget(new Set([standing]))
		warn(
			`What became of the outbox entry ${numberOf(itemId)} cannot be read. It is not sent: ask the ` +
				'recipient whether it came, and prepare it anew where it did not.',
		)
	}
}
/** The record of the last version of an outbox entry; undefined where one of them is damaged. */
function lastVersion(store: Store, itemId: string): string | undefined {
	try {
		return store.cardsOf('outbox', itemId).at(-1)?.record
	} catch (error) {
		if (isDamage(error)) return undefined
		throw error
	}
}
function loadPackNote({ outreach, warn }: Memory, store: Store): void {
	const note = packNoteSchema.optional().safeParse(sealedNote(store))
	if (note.success) outreach.pack = note.data
	else
		warn(
			'What this laptop knows of its pack is damaged and cannot be read. Its records can be: ' +
				'make a backup and take it home.',
		)
}
/** Null where it is damaged. */
function sealedNote(store: Store): unknown {
	try {
		return store.sealedSetting('pack')
	} catch (error) {
		if (isDamage(error)) return null
		throw error
	}
}
/** Reads which drafts are open. They are no records: they are saved over, and end. */
function loadDrafts({ drafts, warn }: Memory, { store }: Pick<Deps, 'store'>): void {
	drafts.clear()
	for (const draftId of store.draftIds()) {
		const draft = readableDraft(store, draftId)
		const outline = draftOutlineSchema.safeParse(draft?.value)
		if (draft && outline.success) drafts.take(draftId, outline.data, draft.at)
		else
			warn(
				`The draft ${draftId} is damaged and cannot be read. All other records are unaffected; ` +
					'restore it from a backup.',
			)
	}
}
function readableDraft(store: Store, draftId: string) {
	try {
		return store.draft(draftId)
	} catch (error) {
		if (isDamage(error)) return undefined
		throw error
	}
}
/**
 * The owner as the clinic's letterhead names them: made for a store that was written before people
 * had entries. Where neither can be read, whoever has the owner's key is the owner nevertheless.
 */
export function ensureOwner({ people, clinic }: Memory, { keep }: Deps): void {
	if (people.owner()) return
	const owner: PersonValue = {
		personId: 'owner',
		slot: ownerSlot,
		name: 'Owner',
		registration: '',
		...clinic.letterhead?.clinician,
		role: 'owner',
		active: true,
	}
	if (clinic.letterhead) keep({ kind: 'person', value: owner })
	else people.standIn(owner)
}
