/** On the laptop: a pack becomes records of its own, until it runs out. */
import {
	type CarriedPerson,
	carriedPersonSchema,
	type Manifest,
} from '../../../shared/desk/outreach/carried.ts'
import { dayHere } from '../../../shared/desk/workplace/local-day.ts'
import type { RefusalCode } from '../../../shared/desk/workplace/refusal.ts'
import { addDays, dayInWords } from '../../../shared/engine/plain/days.ts'
import { present } from '../../../shared/engine/plain/present.ts'
import { type OpenedPack, readPack } from '../../store/pack-file.ts'
import { fileToRead } from '../clinic/places.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { Refusal } from '../records/refusal.ts'
import type { PackNote } from './memory.ts'
import { packWords } from './pack-words.ts'
import { type WatchedWork, watched } from './work.ts'

/** Under this name the laptop keeps what it knows of its pack. */
export const packNote = 'pack'

/**
 * On a PC without records: the pack becomes a store of its own, whole or not at all. Its passphrase
 * opens it.
 * @throws Refusal in words
 */
export async function openPackHere(
	memory: Pick<Memory, 'people'>,
	deps: Deps,
	file: string,
	passphrase: string | undefined,
): Promise<{ records: number; visits: number; recoveryKey: string }> {
	if (deps.store.isSetUp)
		throw new Refusal(
			'backups.records-here-already',
			'There are records on this PC already. A pack opens on a laptop without records, or in ' +
				'another data folder.',
		)
	if (!passphrase)
		throw new Refusal(
			'outreach.passphrase-missing',
			'This is a pack: it opens with the passphrase that was chosen when it was made. Nothing was ' +
				'changed.',
			[{ path: 'passphrase', message: 'given nothing, allowed: the passphrase of the pack' }],
		)
	return packWords(() =>
		watched(memory, deps, 'open', (work) => openWith(deps, fileToRead(file), passphrase, work)),
	)
}
async function openWith(
	{ store, now }: Deps,
	file: string,
	passphrase: string,
	work: WatchedWork,
): Promise<{ records: number; visits: number; recoveryKey: string }> {
	const pack = await readPack(file, passphrase, work)
	const { manifest, records, drafts } = pack
	if (manifest.direction !== 'out')
		throw new Refusal(
			'outreach.way-back-file',
			'This is the file of the way back. At home open Outreach and bring it in there.',
		)
	mustBeOpen(manifest, dayHere(now()))
	mustBeReadable(pack)
	const note: PackNote = {
		packId: manifest.packId,
		madeAt: manifest.madeAt,
		personId: manifest.madeBy.personId,
		by: manifest.madeBy.name,
		expires: manifest.expires,
		home: manifest.home,
		...present({ recordsId: manifest.recordsId }),
		form: manifest.version,
		players: manifest.players,
		counts: manifest.counts,
		bases: manifest.bases,
		protocol: manifest.protocol,
		shelf: manifest.shelf,
		openedAt: now().toISOString(),
	}
	await work.last('taking')
	const recoveryKey = await store.setUp(passphrase, () => {
		for (const record of records) if (record.kind !== 'person') store.takeIn(record)
		const at = note.openedAt
		for (const value of peopleIn(pack)) store.append({ kind: 'person', at, value })
		for (const draft of drafts) store.saveDraft(draft.id, draft.at, draft.value)
		store.setSealedSetting(packNote, note)
	})
	store.lock()
	return { records: records.length, visits: manifest.counts.visit ?? 0, recoveryKey }
}
/**
 * Who works at home, as entries of the laptop's own: without a PIN, which program 0.1.0 still sent
 * along.
 */
function peopleIn({ manifest, records }: OpenedPack): CarriedPerson[] {
	if (manifest.people) return manifest.people
	return records.flatMap(({ kind, value }) =>
		kind === 'person' ? (carriedPersonSchema.safeParse(value).data ?? []) : [],
	)
}
/** @param today where this laptop stands */
function mustBeOpen({ expires, madeAt }: Manifest, today: string): void {
	if (expires < today)
		throw new Refusal(
			'outreach.pack-ran-out',
			`This pack ran out on ${dayInWords(expires)}: it was made to open until that day. Make a new one at ` +
				'home. Nothing was changed.',
		)
	const madeOn = madeAt.slice(0, 10)
	if (addDays(today, 1) < madeOn)
		throw new Refusal(
			'outreach.wrong-calendar',
			`The calendar of this laptop says ${dayInWords(today)}, and the pack was made on ` +
				`${dayInWords(madeOn)}. Set the ` +
				'date right, then open the pack again.',
		)
}
/** A laptop works with all of a pack or with none: what is left out there would be missed. */
function mustBeReadable({ unread }: OpenedPack): void {
	if (unread.length === 0) return
	throw new Refusal(
		'outreach.newer-pack',
		`${unread.length} of the records in this pack were written by a newer version and cannot be ` +
			'read here. Bring this laptop to that version, then open the pack again.',
	)
}
/** Calls that a pack which ran out still answers: the way home, and what leads to it. */
const stillOpen = /^(session|outreach|backups|places)\.|^clinic\.get$/

/**
 * What stands in the way of a call on a laptop whose pack has run out. The latest day that the laptop
 * ever saw counts: a clock set back opens nothing again.
 */
export function packRefusal(
	{ outreach }: Pick<Memory, 'outreach'>,
	deps: Pick<Deps, 'now' | 'store'>,
	name: string,
): { code: RefusalCode; says: string } | undefined {
	const { pack } = outreach
	if (!pack || pack.removedAt) return undefined
	const today = dayHere(deps.now())
	if (today > (pack.latestDay ?? '')) {
		outreach.pack = { ...pack, latestDay: today }
		if (deps.store.isOpen) deps.store.setSealedSetting(packNote, outreach.pack)
	}
	if (pack.expires >= latestDay(outreach.pack ?? pack, today) || stillOpen.test(name))
		return undefined
	return {
		code: 'outreach.pack-ran-out',
		says:
			`The pack on this laptop ran out on ${dayInWords(pack.expires)}. Nothing is lost: open Outreach, ` +
			'make the file for the way back and bring it home.',
	}
}
/** The later of today and the last day on which this laptop was at work. */
export const latestDay = (pack: PackNote, today: string): string =>
	[today, pack.latestDay ?? today].sort().at(-1) ?? today
