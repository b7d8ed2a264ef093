/**
 * Every kind of record, defined once: its form and version, who may write it, where it travels, what
 * it is called. Lists of kinds elsewhere follow from here.
 */
import type { z } from 'zod'
import type { KindDefinition } from './kind.ts'
import { anchorKind } from './kinds/anchor.ts'
import { answerKind } from './kinds/answer.ts'
import { breachKind } from './kinds/breach.ts'
import { clinicKind } from './kinds/clinic.ts'
import { consentKind } from './kinds/consent.ts'
import { contactKind } from './kinds/contact.ts'
import { documentKind } from './kinds/document.ts'
import { followUpKind } from './kinds/follow-up.ts'
import { holdKind } from './kinds/hold.ts'
import { installationKind } from './kinds/installation.ts'
import { mailKind } from './kinds/mail.ts'
import { mergeKind } from './kinds/merge.ts'
import { outboxKind } from './kinds/outbox.ts'
import { packKind } from './kinds/pack.ts'
import { personKind } from './kinds/person.ts'
import { playerKind } from './kinds/player.ts'
import { protocolKind } from './kinds/protocol.ts'
import { quarantineKind } from './kinds/quarantine.ts'
import { recallKind } from './kinds/recall.ts'
import { registerKind } from './kinds/register.ts'
import { reportKind } from './kinds/report.ts'
import { restoredKind } from './kinds/restored.ts'
import { seasonKind } from './kinds/season.ts'
import { sendingKind } from './kinds/sending.ts'
import { sendingNoteKind } from './kinds/sending-note.ts'
import { settingsKind } from './kinds/settings.ts'
import { shelfKind } from './kinds/shelf.ts'
import { squadKind } from './kinds/squad.ts'
import { trailKind } from './kinds/trail.ts'
import { visitKind } from './kinds/visit.ts'
import { visitNoteKind } from './kinds/visit-note.ts'
import { type Reading, readWith } from './read.ts'

const definitions = {
	clinic: clinicKind,
	player: playerKind,
	visit: visitKind,
	report: reportKind,
	person: personKind,
	'visit-note': visitNoteKind,
	consent: consentKind,
	sending: sendingKind,
	merge: mergeKind,
	hold: holdKind,
	register: registerKind,
	settings: settingsKind,
	shelf: shelfKind,
	season: seasonKind,
	pack: packKind,
	answer: answerKind,
	quarantine: quarantineKind,
	squad: squadKind,
	anchor: anchorKind,
	document: documentKind,
	outbox: outboxKind,
	contact: contactKind,
	breach: breachKind,
	mail: mailKind,
	protocol: protocolKind,
	'sending-note': sendingNoteKind,
	trail: trailKind,
	installation: installationKind,
	restored: restoredKind,
	recall: recallKind,
	'follow-up': followUpKind,
}
export type KindName = keyof typeof definitions
/** What a record of a kind holds. */
export type ValueOf<Kind extends KindName> = z.output<(typeof definitions)[Kind]['schema']>
/** The definitions by name. */
export const kinds: { readonly [Kind in KindName]: KindDefinition<ValueOf<Kind>> } = definitions
export const isKind = (name: string): name is KindName => Object.hasOwn(definitions, name)
/** @internal */
export const kindNames: readonly KindName[] = Object.keys(definitions).filter(isKind)
/** The same for a name that may be of a newer version. */
export const ledger: ReadonlyMap<string, KindDefinition<unknown>> = new Map(
	kindNames.map((name) => [name, kinds[name]]),
)
/** The kinds of which something is so. */
export const kindsWhere = (is: (kind: KindDefinition<unknown>) => boolean): KindName[] =>
	kindNames.filter((name) => is(kinds[name]))

/** Reads the value of a record of a known kind. Never throws. */
export const readAs = <Kind extends KindName>(
	kind: Kind,
	version: number,
	value: unknown,
): Reading<ValueOf<Kind>> => readWith(kinds[kind], version, value)
/**
 * Reads the value of a record of any kind. Never throws.
 * @param version the version of the kind that it was written by
 */
export function readValue(
	kind: string,
	version: number,
	value: unknown,
): Reading<unknown> | { state: 'unknown-kind' } {
	const definition = ledger.get(kind)
	return definition ? readWith(definition, version, value) : { state: 'unknown-kind' }
}
