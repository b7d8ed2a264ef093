/**
 * Whom a record that comes home is about, and what it follows: as its value says, so that no record
 * is put to another player, and none takes the place of another.
 */
import { z } from 'zod'
import type { Carried } from '../../../shared/desk/outreach/carried.ts'
import { canonicalJson } from '../../../shared/engine/plain/canonical.ts'
import type { Store } from '../../store/store.ts'
import type { Arrival } from './arrival.ts'
import type { Trouble } from './check-record.ts'
import { signedParts } from './check-visit.ts'
import { readable } from './versions.ts'

/** Kinds about nobody; every other one is about a player. */
const aboutNobody: readonly string[] = ['trail', 'installation']
/** What a value says of whom and what it is about; other keys stand beside. */
const namesSchema = z.looseObject({
	playerId: z.string().optional(),
	visitId: z.string().optional(),
	consentId: z.string().optional(),
	contactId: z.string().optional(),
	documentId: z.string().optional(),
	breachId: z.string().optional(),
	into: z.string().optional(),
	what: z.string().optional(),
	version: z.number().optional(),
})
type Names = z.infer<typeof namesSchema>
/** What of a sending its card shows. */
const handedSchema = z.object({
	recipient: z.string(),
	channel: z.string(),
	version: z.number(),
	at: z.string(),
})
/** The key of a value that names what the record is a version of. */
const thingKeys = new Map<string, keyof Names>([
	['visit', 'visitId'],
	['report', 'visitId'],
	['visit-note', 'visitId'],
	['sending', 'visitId'],
	['consent', 'consentId'],
	['contact', 'contactId'],
	['document', 'documentId'],
	['breach', 'breachId'],
])
/** What a kind follows where it is not its own kind. */
const followsKind = new Map([
	['report', 'visit'],
	['visit-note', 'visit'],
	['sending', 'visit'],
])
const refused = (because: string): Trouble => ({ outcome: 'refused', because })

export function subjectTrouble({ deps: { store } }: Arrival, record: Carried): Trouble | undefined {
	const { kind, about } = record
	if (aboutNobody.includes(kind))
		return about === undefined ? undefined : refused('names a player, which its kind never does')
	if (about === undefined) return refused('names no player whom it is about')
	const names = namesSchema.safeParse(record.value).data ?? {}
	return (
		namesTrouble(store, record, names) ??
		cardTrouble(record, names) ??
		followsTrouble(store, record)
	)
}
function namesTrouble(store: Store, record: Carried, names: Names): Trouble | undefined {
	const { kind, about, thing } = record
	const named = kind === 'merge' ? names.into : names.playerId
	if (named !== undefined && named !== about)
		return refused('is put to another player than it names')
	const key = thingKeys.get(kind)
	if (key !== undefined && (thing === undefined || names[key] !== thing))
		return refused('is put to another thing than it names')
	if (!followsKind.has(kind)) return undefined
	const visit = store.cardsOf('visit', names.visitId ?? '').at(-1)
	if (!visit) return refused('belongs to a visit that is not here and was not taken in')
	// what was sent is noted with the player who is shown, who may stand for several
	if (kind === 'sending') return undefined
	const isTheirs = store
		.cardsAbout('visit', about ?? '')
		.some(({ record: id }) => id === visit.record)
	return isTheirs ? undefined : refused('is put to another player than the visit it belongs to')
}
/** Lists show the card and do not open the record: it must say the same. */
function cardTrouble({ kind, card, value }: Carried, names: Names): Trouble | undefined {
	const expected = expectedCard(kind, value, names)
	if (expected === undefined || canonicalJson(expected) === canonicalJson(card ?? null))
		return undefined
	return refused('says something else in its short form than in itself')
}
function expectedCard(kind: string, value: unknown, names: Names): unknown {
	if (kind === 'visit') {
		const signed = signedParts(value)
		if (!signed) return undefined
		const { visitId, playerId, visit, signedAt, version = 1, signer } = signed
		const { visitDate } = visit
		return { visitId, playerId, visitDate, signedAt, version, student: signer?.role === 'student' }
	}
	if (kind === 'visit-note')
		return { visitId: names.visitId, what: names.what, version: names.version }
	if (kind === 'sending') return handedSchema.safeParse(value).data ?? null
	return kind === 'season' ? { what: names.what } : undefined
}
function followsTrouble(store: Store, record: Carried): Trouble | undefined {
	const { kind, follows, about = '', thing } = record
	// a visit's versions are looked at where it is checked
	if (thing !== undefined && kind !== 'visit' && !followsKind.has(kind)) {
		const versions = store.cardsOf(kind, thing).map(({ record: id }) => id)
		if (versions.length > 0 && (follows === undefined || !versions.includes(follows)))
			return refused('would take the place of one that is here already')
	}
	if (follows === undefined) return undefined
	const before = readable(store, follows)
	if (!before) return undefined
	const wanted = followsKind.get(kind) ?? kind
	const isTheirs = store.cardsAbout(before.kind, about).some(({ record: id }) => id === follows)
	return before.kind === wanted && isTheirs
		? undefined
		: refused('follows a record of another kind or of another player')
}
