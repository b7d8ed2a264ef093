/** On the laptop: a pack becomes records of its own, until it runs out. */
import { dayHere } from '../../../shared/desk/workplace/local-day.ts'
import { readPack } from '../../store/pack-file.ts'
import { fileToRead } from '../clinic/places.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { Refusal } from '../records/refusal.ts'
import type { PackNote } from './memory.ts'
import { packWords } from './pack-words.ts'

/** Under this name the laptop keeps what it knows of its pack. */
export const packNote = 'pack'

/**
 * On a PC without records: the pack becomes a store of its own, whole or not at all. Its passphrase
 * opens it.
 * @throws Refusal in words
 */
export async function openPackHere(
	{ store, now }: Deps,
	file: string,
	passphrase: string,
): Promise<{ records: number; visits: number; recoveryKey: string }> {
	if (store.isSetUp)
		throw new Refusal(
			'There are records on this PC already. A pack opens on a laptop without records, or in ' +
				'another data folder.',
		)
	const { manifest, records, drafts } = await packWords(() =>
		readPack(fileToRead(file), passphrase),
	)
	if (manifest.direction !== 'out')
		throw new Refusal(
			'This is the file of the way back. At home open Outreach and bring it in there.',
		)
	if (manifest.expires < dayHere(now()))
		throw new Refusal(`This pack ran out on ${manifest.expires}. Make a new one at home.`)
	const note: PackNote = {
		packId: manifest.packId,
		madeAt: manifest.madeAt,
		personId: manifest.madeBy.personId,
		by: manifest.madeBy.name,
		expires: manifest.expires,
		home: manifest.home,
		players: manifest.players,
		counts: manifest.counts,
		bases: manifest.bases,
		protocol: manifest.protocol,
		shelf: manifest.shelf,
		openedAt: now().toISOString(),
	}
	const recoveryKey = await store.setUp(passphrase, () => {
		for (const record of records) store.takeIn(record)
		for (const draft of drafts) store.saveDraft(draft.id, draft.at, draft.value)
		store.setSealedSetting(packNote, note)
	})
	store.lock()
	return { records: records.length, visits: manifest.counts.visit ?? 0, recoveryKey }
}
/** What stands in the way of a call on a laptop whose pack has run out. */
export function packRefusal(
	{ outreach: { pack } }: Pick<Memory, 'outreach'>,
	deps: Pick<Deps, 'now'>,
	name: string,
): string | undefined {
	if (
		!pack ||
		pack.removedAt ||
		pack.expires >= dayHere(deps.now()) ||
		/^(session|outreach|backups)\.|^clinic\.get$/.test(name)
	)
		return undefined
	return (
		`The pack on this laptop ran out on ${pack.expires}. Nothing is lost: open Outreach, ` +
		'make the file for the way back and bring it home.'
	)
}
