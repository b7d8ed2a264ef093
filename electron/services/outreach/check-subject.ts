/**
 * Whom a record that comes home is about, and what it follows: as its value says, so that no record
 * is put to another player, and none takes the place of another.
 */
import { z } from 'zod'
import { readAs } from '../../../shared/desk/ledger/ledger.ts'
import type { Carried } from '../../../shared/desk/outreach/carried.ts'
import { visitCard } from '../../../shared/desk/visits/visit-card.ts'
import { canonicalJson } from '../../../shared/engine/plain/canonical.ts'
import type { Store } from '../../store/store.ts'
import type { Arrival } from './arrival.ts'
import type { Trouble } from './check-record.ts'
import { signedParts } from './check-visit.ts'
import { readable } from './versions.ts'

/** Kinds about nobody; every other one is about a player. */
const aboutNobody: readonly string[] = ['trail', 'installation']
/** What a value says of whom and what it is about; other keys stand beside. */
const namesSchema = z.object({
	playerId: z.string().optional(),
	visitId: z.string().optional(),
	consentId: z.string().optional(),
	contactId: z.string().optional(),
	documentId: z.string().optional(),
	squadId: z.string().optional(),
	breachId: z.string().optional(),
	into: z.string().optional(),
})
type Names = z.infer<typeof namesSchema>
/** The key of a value that names what the record is a version of. */
const thingKeys = new Map<string, keyof Names>([
	['visit', 'visitId'],
	['report', 'visitId'],
	['visit-note', 'visitId'],
	['sending', 'visitId'],
	['consent', 'consentId'],
	['contact', 'contactId'],
	['breach', 'breachId'],
])
/** What a kind follows where it is not its own kind. */
const followsKind = new Map([
	['report', 'visit'],
	['visit-note', 'visit'],
	['sending', 'visit'],
])
/** Several of these belong to one thing; a visit's versions are looked at where it is checked. */
const manyOfOne: ReadonlySet<string> = new Set(['visit', 'document', ...followsKind.keys()])
const refused = (because: string): Trouble => ({ outcome: 'refused', because })

export function subjectTrouble({ deps: { store } }: Arrival, record: Carried): Trouble | undefined {
	const { kind, about } = record
	if (aboutNobody.includes(kind))
		return about === undefined ? undefined : refused('names a player, which its kind never does')
	const names = namesSchema.safeParse(record.value).data ?? {}
	// a page of a screening day is about several players, and found by the day
	const isOfSquad = kind === 'document' && names.squadId !== undefined
	if (about === undefined && !isOfSquad) return refused('names no player whom it is about')
	return (
		namesTrouble(store, record, names) ??
		cardTrouble(store, record) ??
		followsTrouble(store, record)
	)
}
function namesTrouble(store: Store, record: Carried, names: Names): Trouble | undefined {
	const { kind, about, thing } = record
	const named = kind === 'merge' ? names.into : names.playerId
	if (named !== undefined && named !== about)
		return refused('is put to another player than it names')
	const expected = thingOf(kind, names)
	if (expected !== undefined && expected !== thing)
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
/** What the record is a version of, as its value says; empty where it ought to and does not. */
function thingOf(kind: string, names: Names): string | undefined {
	if (kind === 'document') return names.squadId ?? names.documentId ?? ''
	const key = thingKeys.get(kind)
	return key === undefined ? undefined : (names[key] ?? '')
}
/** What the card of a kind says at least: lists go by it. */
const cardKeys = new Map<string, readonly string[]>([
	['visit', ['visitId', 'playerId', 'visitDate', 'signedAt', 'version', 'student']],
	['visit-note', ['visitId', 'what', 'version']],
	['season', ['what']],
	['sending', ['recipient', 'channel', 'version', 'at']],
	['document', ['documentId', 'kind', 'version', 'sha256', 'at']],
])
const fieldsSchema = z.record(z.string(), z.unknown())
/** Lists show the card and do not open the record: all that it says must stand in the record. */
function cardTrouble(store: Store, record: Carried): Trouble | undefined {
	const { kind, card } = record
	const said = fieldsSchema.safeParse(card ?? {}).data
	const stands = fieldsSchema.safeParse(shortFormOf(store, record)).data ?? {}
	const same =
		said !== undefined &&
		(cardKeys.get(kind) ?? []).every((key) => Object.hasOwn(said, key)) &&
		Object.entries(said).every(
			([key, value]) => canonicalJson(value ?? null) === canonicalJson(stands[key] ?? null),
		)
	return same ? undefined : refused('says something else in its short form than in itself')
}
/**
 * What a card is made of: of a visit it is worked out, of a page it tells the version of the visit,
 * of other kinds it repeats the value.
 */
function shortFormOf(store: Store, { kind, version = 1, value, follows, card }: Carried): unknown {
	if (kind === 'visit') {
		const reading = readAs('visit', version, value)
		return reading.state === 'read' ? visitCard(reading.value) : undefined
	}
	if (kind !== 'report') return value
	const visit = follows === undefined ? undefined : signedParts(readable(store, follows)?.value)
	const page = pageSchema.safeParse(value).data
	const from = fromSchema.safeParse(card).data?.from
	return { visitId: page?.visitId, kind: page?.kind, version: visit?.version ?? 1, from }
}
const pageSchema = z.looseObject({ visitId: z.string(), kind: z.string().default('player') })
/** What a page of the season was made from stands in its card alone. */
const fromSchema = z.looseObject({ from: z.string().optional() })
function followsTrouble(store: Store, record: Carried): Trouble | undefined {
	const { kind, follows, about = '', thing } = record
	if (thing !== undefined && !manyOfOne.has(kind)) {
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
