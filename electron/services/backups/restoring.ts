/** A backup in the place of the records, guarded; and records brought to a PC without any. */
import { dirname } from 'node:path'
import type { InputOf, OutputOf } from '../../../shared/contract.ts'
import type { OutboxItem } from '../../../shared/desk/outbox/item.ts'
import type { Carried } from '../../../shared/desk/outreach/carried.ts'
import { present } from '../../../shared/engine/plain/present.ts'
import { isPackFile } from '../../store/pack-file.ts'
import type { Store } from '../../store/store.ts'
import type { Post } from '../outbox/post.ts'
import { openPackHere } from '../outreach/laptop.ts'
import type { Session } from '../people/session.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { Refusal } from '../records/refusal.ts'
import { fileOf, inWords, lookInto } from './backups.ts'
import { destroyedIds, idsInBackups } from './destroyed.ts'
import { type Before, makeSafe } from './guarded.ts'
import { type PlayerOf, protectedIn, protectiveKinds } from './standing.ts'

const beingSent =
	'An e-mail is being sent just now. Wait until it has left, or could not: Outbox shows it. Then ' +
	'restore again. Nothing was changed.'

/** Notes about the ways in stand as they are, whatever the backup says: tries, what is due. */
const keptNotes = ['pin-tries', 'recovery-key', 'passphrases-due', 'key-change-due'] as const

/**
 * Puts a backup in the place of the records; the records are locked then. Until it stands there
 * nothing is written, and what protects people is taken over from what stood before.
 * @throws Refusal
 */
export async function restoreBackup(
	memory: Memory,
	deps: Deps,
	{ session, post }: { session: Pick<Session, 'lock'>; post: Pick<Post, 'isSending'> },
	{ file, damageRead = false }: InputOf<'backups.restore'>,
): Promise<OutputOf<'backups.restore'>> {
	const { store } = deps
	const from = fileOf(deps, file)
	if (post.isSending) throw new Refusal('backups.being-sent', beingSent)
	const at = deps.now().toISOString()
	const { before } = await inWords(
		() =>
			store.restore(from, {
				damageRead,
				gather: (lastAt) => {
					// while the backup was looked into one may have begun to leave
					if (post.isSending) throw new Refusal('backups.being-sent', beingSent)
					return gather(memory, store, from, lastAt)
				},
				fill: (brought, known, { backup, lastAt, before: kept, changedSlots }) => {
					const people = known.before.protects.people.all()
					const passphrases = people
						.filter(({ slot }) => changedSlots.includes(slot))
						.map(({ personId }) => personId)
					const arrival = {
						...{ at, how: 'restore' as const, backup, backupAt: lastAt ?? '' },
						...present({ before: kept }),
					}
					makeSafe(brought, { arrival, ...known, before: { ...known.before, passphrases } })
					for (const [name, value] of known.notes) brought.setSealedSetting(name, value)
				},
			}),
		store.backupFolder,
	)
	session.lock('a backup was restored')
	return { before }
}
/** What is known before a restore, read while nothing can be written any more. */
function gather(memory: Memory, store: Store, from: string, lastAt: string) {
	const players = [...memory.players.byId.keys()]
	const playerOf = consentPlayers(store, players)
	const protects = protectedIn(store, playerOf)
	const before: Before = {
		carried: [
			...store.carry(players, (kind) => protectiveKinds.includes(kind)),
			...documentsSince(store, protects.items.all(), lastAt),
		],
		protects,
		passphrases: [],
	}
	const destroyed = new Set([...destroyedIds(store), ...idsInBackups(store, [from])])
	const notes = keptNotes.flatMap((name) => {
		const value = noteOf(store, name)
		return value === undefined ? [] : [[name, value] as const]
	})
	return { before, playerOf, destroyed, notes }
}
/** What was prepared for sending since the backup: who checks or answers for it looks at it. */
const documentsSince = (store: Store, items: readonly OutboxItem[], lastAt: string): Carried[] =>
	items
		.filter(({ createdAt }) => createdAt >= lastAt)
		.flatMap(({ documentId, playerId }) =>
			store.cardsOf('document', documentId).flatMap(({ record, card }): Carried[] => {
				try {
					return [{ ...store.read(record), about: playerId, thing: documentId, card }]
				} catch {
					return []
				}
			}),
		)
/** A note that is damaged does not stand in the way. */
function noteOf(store: Store, name: string): unknown {
	try {
		return store.sealedSetting(name)
	} catch {
		return undefined
	}
}
/** Whom each consent is about: records of version 0.1.0 do not say so themselves. */
function consentPlayers(store: Pick<Store, 'cardsAbout'>, players: string[]): PlayerOf {
	const about = new Map(
		players.flatMap((playerId) =>
			store.cardsAbout('consent', playerId).map(({ record }) => [record, playerId] as const),
		),
	)
	return (record) => record.about ?? about.get(record.id)
}
/** On a PC without records: a backup becomes the records, a pack a store of its own. */
export async function moveHere(
	memory: Pick<Memory, 'people'>,
	deps: Deps,
	{ file, passphrase }: InputOf<'session.moveHere'>,
): Promise<OutputOf<'session.moveHere'>> {
	if (passphrase !== undefined || isPackFile(file))
		return openPackHere(memory, deps, file, passphrase)
	if (deps.store.isSetUp)
		throw new Refusal(
			'backups.records-here-already',
			'There are records on this PC already. Unlock them and use Backups to restore.',
		)
	const from = fileOf(deps, file)
	const { records, visits } = await lookInto(deps, from)
	await inWords(async () => deps.store.bringIn(from), dirname(from))
	return { records, visits }
}
