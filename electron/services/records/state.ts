/**
 * What the services share while the records are open: cards in memory, nothing else kept in clear.
 */
import { AsyncLocalStorage } from 'node:async_hooks'
import type { Card } from '../../../shared/contract.ts'
import type { Breach } from '../../../shared/desk/outbox/breach.ts'
import type { SendingNote } from '../../../shared/desk/outbox/calls.ts'
import type { Contact, OutboxItem } from '../../../shared/desk/outbox/item.ts'
import {
	defaultMailSettings,
	type MailSettings,
} from '../../../shared/desk/outbox/mail-settings.ts'
import type { Manifest } from '../../../shared/desk/outreach/carried.ts'
import type { StaffRole } from '../../../shared/desk/records/people.ts'
import {
	defaultRecordSettings,
	type RecordSettings,
} from '../../../shared/desk/records/settings.ts'
import type { Look } from '../../../shared/desk/workplace/look.ts'
import { type ProtocolFile, shippedProtocol } from '../../../shared/engine/protocol/protocol.ts'
import type { Clinic } from '../../../shared/engine/report/clinic.ts'
import type { LwDocument } from '../../../shared/engine/report/document.ts'
import type { Shelf } from '../../../shared/engine/visit/shelf.ts'
import type { Player, Visit } from '../../../shared/engine/visit/visit.ts'
import type { Actor, Store } from '../../store/store.ts'

/** A refusal in words for the person; anything else thrown is a fault of ours. */
export class Refusal extends Error {
	readonly problems: { path: string; message: string }[] | undefined
	constructor(message: string, problems?: { path: string; message: string }[]) {
		super(message)
		this.problems = problems
	}
}
export interface PlayerEntry {
	card: Card
	player: Player
	/**
	 * words the search looks at, each after a line break; and the order of the list
	 */
	recordId: string
	hay: string
	order: string
	lastVisitKnown: boolean
}
export interface PersonEntry {
	personId: string
	slot: string
	recordId: string
	name: string
	registration: string
	role: StaffRole
	active: boolean
	pin?: { salt: string; hash: string } | undefined
}
/** What a laptop knows of the pack its records came in. */
export interface PackNote
	extends Pick<
		Manifest,
		'packId' | 'madeAt' | 'expires' | 'home' | 'players' | 'counts' | 'bases' | 'protocol' | 'shelf'
	> {
	personId: string
	by: string
	openedAt: string
	removedAt?: string
}
export interface Settings {
	backupFolder?: string | undefined
	look?: Look | undefined
}
export interface Deps {
	store: Store
	renderPdf: (document: LwDocument, options?: { password?: string }) => Promise<Uint8Array>
	now: () => Date
	demo: boolean
	version: string
	saveSettings: (settings: Settings) => void
}
/**
 * `amends` makes the draft the next version of a signed visit; `student` is whoever wrote it under
 * supervision.
 */
export interface DraftValue {
	playerId: string
	content: {
		visit: Visit
		raw: Record<string, string>
		decisions: unknown
		step?: string | undefined
	}
	amends?: { visitId: string; reason: string }
}
export interface MergeEntry {
	mergeId: string
	from: string
	into: string
	recordId: string
}
/**
 * Who makes the call that is running; survives its awaits, so that two calls at once do not mix.
 */
export const acting = new AsyncLocalStorage<Actor>()

export class State {
	clinic: Clinic | undefined
	clinicRecord: string | undefined
	settings: RecordSettings = defaultRecordSettings
	settingsRecord: string | undefined
	/** What can be bought locally; undefined until one is saved. */
	shelf: Shelf | undefined
	shelfRecord: string | undefined
	/** The thresholds in force, and every version there was. */
	protocol: ProtocolFile = shippedProtocol
	protocolRecord: string | undefined
	protocolVersions: { savedAs: string; file: ProtocolFile; why: string; by: string; at: string }[] =
		[]
	person: PersonEntry | undefined
	/** Set where these records came in a pack. */
	pack: PackNote | undefined
	/** Records that an answer after an outreach day put to rest. */
	joined = new Set<string>()
	/** Last versions of each player's details: more than one after changes in two places. */
	lines = new Map<string, Set<string>>()
	people = new Map<string, PersonEntry>()
	players = new Map<string, PlayerEntry>()
	merges = new Map<string, MergeEntry>()
	holds = new Map<string, { reason: string; recordId: string }>()
	drafts = new Map<
		string,
		{
			playerId: string
			visitDate: string
			savedAt: string
			amends?: { visitId: string; reason: string } | undefined
		}
	>()
	outbox = new Map<string, { item: OutboxItem; recordId: string }>()
	contacts = new Map<string, { contact: Contact; recordId: string }>()
	sendingNotes = new Map<string, { note: SendingNote; recordId: string }>()
	breaches = new Map<string, { breach: Breach; recordId: string }>()
	mail: MailSettings = defaultMailSettings
	mailRecord: string | undefined
	draftLogged = new Map<string, number>()
	warnings: string[] = []
	#ordered: PlayerEntry[] | undefined
	clear(): void {
		this.clinic = undefined
		this.clinicRecord = undefined
		this.settings = defaultRecordSettings
		this.settingsRecord = undefined
		this.shelf = undefined
		this.shelfRecord = undefined
		this.protocol = shippedProtocol
		this.protocolRecord = undefined
		this.protocolVersions = []
		this.person = undefined
		this.pack = undefined
		this.joined.clear()
		this.lines.clear()
		for (const map of [
			this.people,
			this.players,
			this.merges,
			this.holds,
			this.drafts,
			this.draftLogged,
			this.outbox,
			this.contacts,
			this.breaches,
			this.sendingNotes,
		])
			map.clear()
		this.mail = defaultMailSettings
		this.mailRecord = undefined
		this.warnings = []
		this.#ordered = undefined
	}
	entry(playerId: string): PlayerEntry {
		const entry = this.players.get(playerId)
		if (!entry) throw new Refusal('This player is not in the records. Search again.')
		return entry
	}
	/** The player and all that were merged into it. */
	idsOf(playerId: string): string[] {
		return [
			playerId,
			...[...this.merges.values()]
				.filter((merge) => merge.into === playerId)
				.flatMap((merge) => this.idsOf(merge.from)),
		]
	}
	mergedAway(playerId: string): boolean {
		return (
			this.merges.size > 0 && [...this.merges.values()].some((merge) => merge.from === playerId)
		)
	}
	/** Players in the order of the list. */
	ordered(): PlayerEntry[] {
		this.#ordered ??= [...this.players.values()]
			.filter((player) => !this.mergedAway(player.card.playerId))
			.sort((a, b) => (a.order < b.order ? -1 : a.order > b.order ? 1 : 0))
		return this.#ordered
	}
	reorder(): void {
		this.#ordered = undefined
	}
	draftsOf(playerId: string) {
		const ids = this.idsOf(playerId)
		return [...this.drafts].filter(([, draft]) => ids.includes(draft.playerId))
	}
	hasDraft(playerId: string): boolean {
		return this.drafts.size > 0 && this.draftsOf(playerId).length > 0
	}
	acts(): PersonEntry {
		if (!this.person) throw new Refusal('The records are locked. Unlock them first.')
		return this.person
	}
}
