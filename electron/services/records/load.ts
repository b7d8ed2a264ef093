/**
 * Fills the state from the store after unlock. Visits stay sealed until someone opens them. A
 * damaged record is named; the rest loads.
 */

import type { SignedVisit } from '../../../shared/contract.ts'
import { breachSchema } from '../../../shared/desk/outbox/breach.ts'
import { sendingNoteSchema } from '../../../shared/desk/outbox/calls.ts'
import { contactSchema, outboxItemSchema } from '../../../shared/desk/outbox/item.ts'
import { mailSettingsSchema } from '../../../shared/desk/outbox/mail-settings.ts'
import { joinFields } from '../../../shared/desk/outreach/heads.ts'
import { playerOf } from '../../../shared/desk/outreach/merge.ts'
import { holdSchema } from '../../../shared/desk/records/retention.ts'
import { recordSettingsSchema } from '../../../shared/desk/records/settings.ts'
import { openProtocol } from '../../../shared/engine/protocol/protocol.ts'
import type { Clinic } from '../../../shared/engine/report/clinic.ts'
import { parseShelf } from '../../../shared/engine/visit/shelf.ts'
import { type Player, playerSchema } from '../../../shared/engine/visit/visit.ts'
import { ownerSlot, type Store, type StoredRecord } from '../../store/store.ts'
import { protocolRecordSchema } from '../clinic/protocol.ts'
import { plain, wordsOfPlayer } from '../players/names.ts'
import type { Deps, DraftValue, MergeEntry, PersonEntry, State } from './state.ts'

export interface PlayerValue {
	playerId: string
	player: Player
}
export interface ReportValue {
	visitId: string
	base64: string
	sha256: string
	fileName: string
}
export interface VisitCard {
	visitId: string
	playerId: string
	visitDate: string
	signedAt: string
	version: number
	student: boolean
}
type PersonValue = Omit<PersonEntry, 'recordId'>
type MergeValue = Omit<MergeEntry, 'recordId'> & { undone: boolean; reason: string }

const take: Partial<Record<StoredRecord['kind'], (state: State, record: StoredRecord) => void>> = {
	clinic: (state, record) => {
		state.clinic = record.value as Clinic
		state.clinicRecord = record.id
	},
	settings: (state, record) => {
		const read = recordSettingsSchema.safeParse(record.value)
		if (read.success) state.settings = read.data
		else
			state.warnings.push(
				'The settings of the records cannot be read. The usual ones are used: open Settings of ' +
					'the records and save them again.',
			)
		state.settingsRecord = record.id
	},
	shelf: (state, record) => {
		const read = parseShelf(record.value)
		if (read.ok) state.shelf = read.value
		else
			state.warnings.push(
				'The newest shelf cannot be read. The one before it is shown, if there is one: open ' +
					'Shelf and save it again.',
			)
		state.shelfRecord = record.id
	},
	protocol: (state, record) => {
		const read = protocolRecordSchema.safeParse(record.value)
		try {
			if (!read.success) throw new RangeError('not a protocol')
			openProtocol(read.data.file)
			state.protocol = read.data.file
			state.protocolVersions.push({ ...read.data, savedAs: record.id })
		} catch {
			state.warnings.push(
				'The newest protocol cannot be read. The one before it is used, or the shipped values: ' +
					'open Settings, Protocol and save it again.',
			)
		}
		state.protocolRecord = record.id
	},
	person: (state, record) => {
		const person = record.value as PersonValue
		state.people.set(person.personId, { ...person, recordId: record.id })
	},
	player: (state, record) => {
		const { playerId, player } = record.value as PlayerValue
		putPlayer(state, playerId, player, record.id)
		const line = state.lines.get(playerId) ?? new Set()
		if (record.follows !== undefined) line.delete(record.follows)
		state.lines.set(playerId, line.add(record.id))
	},
	answer: (state, record) => {
		for (const id of (record.value as { joins: string[] }).joins) state.joined.add(id)
	},
	merge: (state, record) => putMerge(state, record.value as MergeValue, record.id),
	outbox: (state, record) => {
		const item = outboxItemSchema.parse(record.value)
		state.outbox.set(item.itemId, { item, recordId: record.id })
	},
	contact: (state, record) => {
		const contact = contactSchema.parse(record.value)
		state.contacts.set(contact.contactId, { contact, recordId: record.id })
	},
	breach: (state, record) => {
		const breach = breachSchema.parse(record.value)
		state.breaches.set(breach.breachId, { breach, recordId: record.id })
	},
	'sending-note': (state, record) => {
		const note = sendingNoteSchema.parse(record.value)
		state.sendingNotes.set(note.noteId, { note, recordId: record.id })
	},
	mail: (state, record) => {
		state.mail = mailSettingsSchema.parse(record.value)
		state.mailRecord = record.id
	},
	hold: (state, record) => {
		const { playerId, reason, on } = holdSchema.parse(record.value)
		if (on) state.holds.set(playerId, { reason, recordId: record.id })
		else state.holds.delete(playerId)
	},
}
export function loadState(state: State, { store }: Deps): void {
	state.clear()
	const damaged: string[] = []
	store.each(
		[
			'clinic',
			'settings',
			'shelf',
			'protocol',
			'person',
			'player',
			'merge',
			'hold',
			'outbox',
			'contact',
			'breach',
			'mail',
			'sending-note',
			'answer',
		],
		(record) => take[record.kind]?.(state, record),
		damaged,
	)
	makeCards(store, damaged)
	joinPlayers(state, store)
	state.pack = store.sealedSetting('pack') as State['pack']
	state.warnings.push(...damaged, ...store.notices)
	for (const draftId of store.draftIds()) {
		try {
			const draft = store.draft(draftId)
			if (!draft) continue
			const { playerId, content, amends } = draft.value as DraftValue
			state.drafts.set(draftId, {
				playerId,
				visitDate: content.visit.visitDate,
				savedAt: draft.at,
				amends,
			})
		} catch {
			state.warnings.push(
				`The draft ${draftId} is damaged and cannot be read. All other records are unaffected; ` +
					'restore it from a backup.',
			)
		}
	}
}
/** Players changed in two places: what only one of them changed is taken, field by field. */
function joinPlayers(state: State, store: Store): void {
	for (const [playerId, line] of state.lines) {
		if (line.size < 2) continue
		const versions = store.cardsAbout('player', playerId).flatMap(({ record }) => {
			try {
				return [store.read(record)]
			} catch {
				return []
			}
		})
		const { value, heads } = joinFields(versions, playerOf, state.joined)
		const read = playerSchema.safeParse(value)
		const last = heads.at(-1)
		if (read.success && last !== undefined) putPlayer(state, playerId, read.data, last)
	}
	state.lines.clear()
}
/** Cards for records of an earlier version, made once from the records themselves. */
function makeCards(store: Store, damaged: string[]): void {
	const missing = store.withoutCard(['player', 'visit', 'report'])
	if (missing.length === 0) return
	store.together(() => {
		const visits = new Map<string, VisitCard>()
		for (const { id, kind, follows } of missing) {
			try {
				if (kind === 'player')
					store.putCard(id, kind, { about: (store.read(id).value as PlayerValue).playerId })
				if (kind === 'visit') {
					const card = visitCard(store.read(id).value as SignedVisit)
					visits.set(id, card)
					store.putCard(id, kind, { about: card.playerId, thing: card.visitId, card })
				}
				const of = kind === 'report' ? visits.get(follows ?? '') : undefined
				if (of) store.putCard(id, kind, { about: of.playerId, thing: of.visitId })
			} catch {
				damaged.push(
					`Record ${id} (${kind}) is damaged and cannot be read. All other records are ` +
						'unaffected; restore it from a backup.',
				)
			}
		}
	})
}
export function visitCard(visit: SignedVisit): VisitCard {
	return {
		visitId: visit.visitId,
		playerId: visit.playerId,
		visitDate: visit.visit.visitDate,
		signedAt: visit.signedAt,
		version: visit.version ?? 1,
		student: visit.signer?.role === 'student',
	}
}
export function putMerge(
	state: State,
	{ mergeId, from, into, undone }: MergeValue,
	recordId: string,
): void {
	if (undone) state.merges.delete(mergeId)
	else state.merges.set(mergeId, { mergeId, from, into, recordId })
	state.reorder()
}
export function putPlayer(state: State, playerId: string, player: Player, recordId: string): void {
	const known = state.players.get(playerId)
	const card = {
		playerId,
		givenName: player.givenName,
		familyName: player.familyName,
		birthDate: player.birthDate,
		sex: player.sex,
		...(player.club === undefined ? {} : { club: player.club }),
		...(known?.card.lastVisit === undefined ? {} : { lastVisit: known.card.lastVisit }),
		openDraft: false,
	}
	state.players.set(playerId, {
		card,
		player,
		recordId,
		hay: `\n${wordsOfPlayer(card).join('\n')}`,
		order: `${plain(player.familyName)}\u0000${plain(player.givenName)}\u0000${player.birthDate}`,
		lastVisitKnown: known?.lastVisitKnown ?? false,
	})
	state.reorder()
}
/**
 * The owner as the clinic's letterhead names them: made for a store that was written before people
 * had entries.
 */
export function ensureOwner(state: State, { store, now }: Deps): void {
	if ([...state.people.values()].some((person) => person.slot === ownerSlot) || !state.clinic)
		return
	const value: PersonValue = {
		personId: 'owner',
		slot: ownerSlot,
		...state.clinic.clinician,
		role: 'owner',
		active: true,
	}
	const recordId = store.append({ kind: 'person', at: now().toISOString(), value })
	state.people.set(value.personId, { ...value, recordId })
}
