/**
 * The host of the workstation: opens the records of a data folder, and answers the calls of the
 * contract for whoever is at work.
 */
import { join } from 'node:path'
import type { Answer } from '../shared/contract.ts'
import { defaultLook } from '../shared/desk/workplace/look-choices.ts'
import { engineVersion } from '../shared/engine/assess.ts'
import { dispatcher } from './calls/dispatch.ts'
import type { Handlers } from './calls/handlers.ts'
import { firstPagePdf, protectPdf, textOfPdf } from './pdf/kept.ts'
import { dailyBackup } from './services/backups/backups.ts'
import { backupCalls } from './services/backups/calls.ts'
import { watchRoom } from './services/backups/watch.ts'
import { clinicCalls, type LookOfPc } from './services/clinic/calls.ts'
import { SettingsFile } from './services/clinic/settings-file.ts'
import { clinicAuditCalls } from './services/clinic-audit/calls.ts'
import { outboxCalls } from './services/outbox/calls.ts'
import { Post } from './services/outbox/post.ts'
import { outreachCalls } from './services/outreach/calls.ts'
import { packRefusal } from './services/outreach/laptop.ts'
import { consentCalls, peopleCalls } from './services/people/calls.ts'
import { Session } from './services/people/session.ts'
import { placeCalls } from './services/places/calls.ts'
import { playerCalls } from './services/players/calls.ts'
import { recallCalls } from './services/recall/calls.ts'
import { acting } from './services/records/acting.ts'
import { auditCalls } from './services/records/calls.ts'
import { remakeCard } from './services/records/cards.ts'
import type { Deps, RenderPdf } from './services/records/deps.ts'
import { keeperOf } from './services/records/keep.ts'
import { Memory } from './services/records/memory.ts'
import { openerOf } from './services/records/open.ts'
import { seasonCalls } from './services/season/calls.ts'
import { shelfCalls } from './services/shelf/calls.ts'
import { squadCalls } from './services/squad/calls.ts'
import { visitCalls } from './services/visits/calls.ts'
import { Store } from './store/store.ts'

export interface AppOptions {
	dataFolder: string
	renderPdf: RenderPdf
	now?: () => Date
	demo?: boolean
	scryptCost?: number
	/** where the head outside the folder is kept; the person's own account where it is not given */
	outside?: string
	/** bytes that are free where the records lie; asked of the disk where it is not given */
	freeBytes?: () => number
	/** where faults of ours are noted, without personal data */
	note?: (text: string) => void
}
export interface App {
	call: (name: string, input: unknown) => Promise<Answer<unknown>>
	close: () => void
}
const idleLookMs = 15_000
/** How often the outbox looks whether something is due. */
const outboxLookMs = 5_000

/** What an open data folder is worked with. */
interface Opened {
	memory: Memory
	deps: Deps
	look: LookOfPc
}

export function createApp(options: AppOptions): App {
	const { memory, deps, look } = openFolder(options)
	const { store } = deps
	const note = (text: string): void => options.note?.(text)
	const session = new Session(deps, memory)
	const post = new Post(memory, deps)
	let closed = false
	/** The daily backup, and what the owner should hear of it, behind the person's work. */
	const afterUnlock = (): void => {
		if (!deps.demo)
			setImmediate(() => {
				if (!closed)
					dailyBackup(deps)
						.then((warnings) => memory.warn(...warnings))
						.finally(() => closed || watchRoom(memory, deps))
						.catch(() => {})
			})
	}
	const handlers: Handlers = {
		...peopleCalls(memory, deps, session, afterUnlock),
		...auditCalls(memory, deps),
		...clinicCalls(memory, deps, look),
		...placeCalls(memory, deps),
		...playerCalls(memory, deps),
		...visitCalls(memory, deps),
		...shelfCalls(memory, deps),
		...seasonCalls(memory, deps),
		...squadCalls(memory, deps),
		...outreachCalls(memory, deps),
		...outboxCalls(memory, deps, post),
		...recallCalls(memory, deps),
		...clinicAuditCalls(memory, deps),
		...consentCalls(memory, deps),
		...backupCalls(memory, deps, { session, post }),
	}
	const idle = setInterval(() => session.lockIfIdle(), idleLookMs)
	idle.unref()
	const posting = setInterval(() => {
		if (!closed) post.run().catch(() => note('outbox: a run failed'))
	}, outboxLookMs)
	posting.unref()
	const inTheWay = (name: string) => packRefusal(memory, deps, name)
	return {
		call: dispatcher({ memory, store, session, handlers, inTheWay, note }),
		close: () => {
			closed = true
			clearInterval(idle)
			clearInterval(posting)
			post.end()
			store.close()
			memory.clear()
		},
	}
}
/** Undefined where the disk does not say. */
function roomOf(store: Store, freeBytes: AppOptions['freeBytes']) {
	try {
		const room = store.room()
		return freeBytes ? { ...room, free: freeBytes() } : room
	} catch {
		return undefined
	}
}
/** A place that cannot be written down is remembered until the program ends. */
const lastPlacesIn = (file: SettingsFile): Deps['lastPlaces'] => ({
	get: () => file.settings.lastPlaces ?? {},
	keep: (purpose, folder) => {
		const lastPlaces = { ...file.settings.lastPlaces, [purpose]: folder }
		try {
			file.save({ lastPlaces })
		} catch {
			file.use({ lastPlaces })
		}
	},
})
/** Opens store and settings of the data folder; the records in it stay locked. */
function openFolder({ dataFolder, renderPdf, scryptCost, ...options }: AppOptions): Opened {
	const now = options.now ?? (() => new Date())
	const demo = options.demo ?? false
	const file = new SettingsFile(dataFolder, now)
	const { settings, notice } = file
	const memory = new Memory()
	const store = new Store(dataFolder, {
		now,
		actor: () => acting.getStore() ?? { personId: null, role: 'nobody', purpose: '' },
		cost: scryptCost,
		backupFolder: settings.backupFolder,
		outside: options.outside ?? (demo ? join(dataFolder, 'outside') : undefined),
		remakeCard,
		isCopyMeant: demo,
		tellDamage: (says) => memory.warn(says),
	})
	if (notice) store.notices.push(notice)
	const deps: Deps = {
		store,
		...keeperOf(store, memory, now),
		...openerOf(store, {
			unread: memory.warn,
			partly: (record, unknown) => memory.unread.takePartly(record, unknown),
		}),
		renderPdf,
		protectPdf,
		firstPagePdf,
		textOfPdf,
		now,
		demo,
		version: engineVersion,
		room: () => roomOf(store, options.freeBytes),
		saveSettings: (changed) => file.save(changed),
		lastPlaces: lastPlacesIn(file),
	}
	const look: LookOfPc = {
		get: () => settings.look ?? defaultLook,
		save: (chosen) => {
			// what is tried in the demo is gone with it
			if (demo) file.use({ look: chosen })
			else deps.saveSettings({ look: chosen })
		},
	}
	return { memory, deps, look }
}
