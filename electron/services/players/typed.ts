/**
 * Details that were typed and not saved yet, each for the person who typed them: sealed in this
 * store beside its records, never merged nor carried. Once saved or discarded they are gone.
 */
import { z } from 'zod'
import type { InputOf, OutputOf } from '../../../shared/contract.ts'
import type { Store } from '../../store/store.ts'
import { sealedNote } from '../people/sealed-notes.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'

const entrySchema = z.strictObject({
	personId: z.string(),
	/** absent for a player who is not on record yet */
	playerId: z.string().optional(),
	/** what was typed, by the path of its field */
	typed: z.record(z.string(), z.string()),
	/** ISO moment */
	at: z.string(),
})
type Entry = z.infer<typeof entrySchema>
const note = sealedNote('details-typed', z.array(entrySchema))

/** Where the note lies: the store, or one that a restore brings. */
type Notes = Pick<Store, 'sealedSetting' | 'setSealedSetting'>
type Needs = Pick<Memory, 'people' | 'players'>

/** A note that cannot be read holds nothing that could be shown. */
function entriesIn(store: Notes): Entry[] {
	const read = note.read(store)
	return read.state === 'read' ? read.value : []
}
const isOf =
	(personId: string, playerId: string | undefined) =>
	(entry: Entry): boolean =>
		entry.personId === personId && entry.playerId === playerId

export function openTyped(
	{ people }: Needs,
	{ store }: Pick<Deps, 'store'>,
	{ playerId }: InputOf<'players.typed'>,
): OutputOf<'players.typed'> {
	const found = entriesIn(store).find(isOf(people.acts().personId, playerId))
	return found ? { typed: found.typed, at: found.at } : {}
}
/** Keeps what is typed, in place of what was kept before; with nothing typed it is discarded. */
export function keepTyped(
	{ people, players }: Needs,
	{ store, now }: Pick<Deps, 'store' | 'now'>,
	{ playerId, typed }: InputOf<'players.keepTyped'>,
): OutputOf<'players.keepTyped'> {
	if (playerId !== undefined) players.entry(playerId)
	const { personId } = people.acts()
	const all = entriesIn(store)
	const others = all.filter((entry) => !isOf(personId, playerId)(entry))
	const isTyped = Object.keys(typed).length > 0
	if (!isTyped && others.length === all.length) return {}
	const at = now().toISOString()
	const mine = { personId, ...(playerId !== undefined && { playerId }), typed, at }
	note.write(store, isTyped ? [...others, mine] : others)
	return isTyped ? { at } : {}
}
/** They were saved by the person at work. */
export function forgetTyped(
	needs: Needs,
	deps: Pick<Deps, 'store' | 'now'>,
	playerId: string | undefined,
): void {
	keepTyped(needs, deps, { playerId, typed: {} })
}
/** Players are destroyed, or their records leave: whatever anybody typed about them goes too. */
export function dropTypedAbout(store: Notes, playerIds: ReadonlySet<string>): void {
	const all = entriesIn(store)
	const left = all.filter(({ playerId }) => playerId === undefined || !playerIds.has(playerId))
	if (left.length < all.length) note.write(store, left)
}
/** Who typed details that were not saved, by their ids. */
export const typedBy = (store: Notes): string[] => [
	...new Set(entriesIn(store).map(({ personId }) => personId)),
]
