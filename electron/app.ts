/**
 * The composition root: opens the store, builds the services, dispatches contract calls (role,
 * validate, service, audit).
 */

import {
	type Answer,
	type CallName,
	contract,
	type InputOf,
	type OutputOf,
	type Role,
} from '../shared/contract.ts'
import type { AuditFunction } from '../shared/desk/records/audit.ts'
import { defaultLook } from '../shared/desk/workplace/look-choices.ts'
import { engineVersion } from '../shared/engine/assess.ts'
import type { Clinic } from '../shared/engine/report/clinic.ts'
import type { LwDocument } from '../shared/engine/report/document.ts'
import { problemsOf } from '../shared/engine/visit/problems.ts'
import {
	dailyBackup,
	listBackups,
	makeBackup,
	moveHere,
	previewBackup,
	restoreBackup,
	setBackupFolder,
} from './services/backups/backups.ts'
import { destroy, hold, register, retentionDue } from './services/backups/retention.ts'
import {
	getProtocol,
	previewProtocol,
	protocolVersions,
	saveProtocol,
} from './services/clinic/protocol.ts'
import { readSettings, writeSettings } from './services/clinic/settings-file.ts'
import { alertCalls } from './services/outbox/alerts.ts'
import { addContact, listRecipients, removeContact } from './services/outbox/contacts.ts'
import { mailCalls } from './services/outbox/mail.ts'
import { outboxCalls } from './services/outbox/outbox.ts'
import { Post } from './services/outbox/post.ts'
import { answerQuestion } from './services/outreach/answers.ts'
import { packRefusal } from './services/outreach/laptop.ts'
import { listOutreach } from './services/outreach/list.ts'
import { makePack } from './services/outreach/make-pack.ts'
import { mergePack, previewMerge } from './services/outreach/merge.ts'
import { compareDrafts, joinByChoice, putDraftAway } from './services/outreach/two-drafts.ts'
import { makeReturn, removeHere } from './services/outreach/way-back.ts'
import {
	checkConsent,
	listConsents,
	recordConsent,
	withdrawConsent,
} from './services/people/consents.ts'
import { listPeople, retirePerson, savePerson } from './services/people/people.ts'
import { putPerson, Session } from './services/people/session.ts'
import {
	mergePlayers,
	openPlayer,
	savePlayer,
	searchPlayers,
	unmergePlayers,
} from './services/players/players.ts'
import { acting, type Deps, Refusal, State } from './services/records/state.ts'
import { auditPage, exportTrail, verifyTrail } from './services/records/trail.ts'
import {
	cancelPlan,
	chartSeason,
	openSeason,
	planPlayer,
	planProgress,
	previewSeasonImport,
	saveSeason,
	seasonCalendar,
} from './services/season/season.ts'
import { exportShelf, getShelf, previewShelf, saveShelf } from './services/shelf/shelf.ts'
import {
	cancelReports,
	createSquad,
	listSquads,
	markPlayer,
	openSquad,
	previewRoster,
	reportsProgress,
	squadSummary,
	startReports,
} from './services/squad/squad.ts'
import { accessiblePage } from './services/visits/documents.ts'
import {
	addNote,
	amendVisit,
	countersign,
	handedOver,
	markInError,
	openDraft,
	openReport,
	openVisit,
	previewDraft,
	saveDraft,
	signVisit,
	visitHistory,
} from './services/visits/visits.ts'
import { SealBroken } from './store/seal.ts'
import { ownerSlot, Store } from './store/store.ts'

export interface AppOptions {
	dataFolder: string
	renderPdf: (document: LwDocument, options?: { password?: string }) => Promise<Uint8Array>
	now?: () => Date
	demo?: boolean
	scryptCost?: number
	/** where faults of ours are noted, without personal data */
	note?: (text: string) => void
}
export interface App {
	call: (name: string, input: unknown) => Promise<Answer<unknown>>
	close: () => void
}
type Handlers = { [N in CallName]: (input: InputOf<N>) => OutputOf<N> | Promise<OutputOf<N>> }
const idleLookMs = 15_000
/** How often the outbox looks whether something is due. */
const outboxLookMs = 5_000

interface Seen {
	does: AuditFunction
	player?: (input: never) => string
	of?: (input: never) => string
}
/**
 * What is read, by whom it is about; changes stand in the trail with the record they write.
 * Searching logs the query without results.
 */
const seen: Partial<Record<CallName, Seen>> = {
	'players.search': { does: 'search', of: (input: { query: string }) => `query:${input.query}` },
	'players.open': { does: 'read', player: (input: { playerId: string }) => input.playerId },
	'drafts.open': {
		does: 'read',
		player: (input: { playerId: string }) => input.playerId,
		of: () => 'draft',
	},
	'drafts.preview': { does: 'read', of: (input: { draftId: string }) => `draft:${input.draftId}` },
	'visits.open': { does: 'read', of: (input: { visitId: string }) => `visit:${input.visitId}` },
	'visits.history': { does: 'read', of: (input: { visitId: string }) => `visit:${input.visitId}` },
	'reports.page': { does: 'export', of: (input: { visitId: string }) => `report:${input.visitId}` },
	'reports.open': {
		does: 'read',
		of: (input: { visitId: string; version?: number }) =>
			`report:${input.visitId}${input.version === undefined ? '' : ` version ${input.version}`}`,
	},
	'season.open': {
		does: 'read',
		player: (input: { playerId: string }) => input.playerId,
		of: () => 'season',
	},
	'season.chart': {
		does: 'print',
		player: (input: { playerId: string }) => input.playerId,
		of: () => 'season',
	},
	'season.ics': {
		does: 'export',
		player: (input: { playerId: string }) => input.playerId,
		of: () => 'season',
	},
	'squad.open': { does: 'read', of: () => 'squad' },
	'squad.summary': { does: 'print', of: () => 'squad' },
	'outbox.notes': {
		does: 'read',
		player: (input: { playerId: string }) => input.playerId,
		of: () => 'sending-notes',
	},
	'outbox.tell': {
		does: 'read',
		player: (input: { playerId: string }) => input.playerId,
		of: () => 'sendings',
	},
	'outreach.list': { does: 'read', of: () => 'outreach' },
	'consents.list': {
		does: 'read',
		player: (input: { playerId: string }) => input.playerId,
		of: () => 'consents',
	},
	'audit.page': { does: 'read', of: () => 'audit' },
	'people.list': { does: 'read', of: () => 'people' },
	'retention.due': { does: 'read', of: () => 'retention' },
	'retention.register': { does: 'read', of: () => 'register' },
	'backups.preview': { does: 'read', of: () => 'backup' },
}
/** Calls the screens make by themselves: they are no sign of a person at the keyboard. */
const unattended: readonly CallName[] = [
	'session.status',
	'drafts.save',
	'season.progress',
	'squad.progress',
	'squad.open',
	'outbox.list',
]

export function createApp(options: AppOptions): App {
	const now = options.now ?? (() => new Date())
	const { settings, notice } = readSettings(options.dataFolder, now())
	const state = new State()
	const actor = () => acting.getStore() ?? { personId: null, role: 'nobody', purpose: '' }
	const store = new Store(options.dataFolder, {
		now,
		actor,
		...(options.scryptCost === undefined ? {} : { cost: options.scryptCost }),
		...(settings.backupFolder === undefined ? {} : { backupFolder: settings.backupFolder }),
	})
	if (notice) store.notices.push(notice)
	const deps: Deps = {
		store,
		renderPdf: options.renderPdf,
		now,
		demo: options.demo ?? false,
		version: engineVersion,
		saveSettings: (value) => {
			Object.assign(settings, value)
			writeSettings(options.dataFolder, settings)
		},
	}
	const session = new Session(deps, state)
	const post = new Post(state, deps)
	const clinicNow = (): Clinic => {
		if (!state.clinic) throw new Refusal('The clinic is not set up. Fill in the letterhead first.')
		return state.clinic
	}
	/** After an unlock: the daily backup, behind the person's work. */
	async function opened<T>(answer: Promise<T>): Promise<T> {
		const value = await answer
		if (!deps.demo)
			setImmediate(() => {
				if (!closed)
					dailyBackup(deps).then(
						(warning) => {
							if (warning) state.warnings.push(warning)
						},
						() => {},
					)
			})
		return value
	}
	let closed = false
	const handlers: Handlers = {
		'session.status': () => session.status(),
		'session.setUp': (input) => session.setUp(input),
		'session.unlock': (input) => opened(session.unlock(input)),
		'session.unlockWithRecoveryKey': (input) => opened(session.unlockWithRecoveryKey(input)),
		'session.lock': () => session.lock(),
		'session.alive': () => session.alive(),
		'session.people': () => session.people(),
		'session.switch': (input) => session.switch(input),
		'session.changePassphrase': (input) => session.changePassphrase(input),
		'session.setPin': (input) => session.setPin(input),
		'session.moveHere': (input) => moveHere(deps, input),
		'people.list': () => listPeople(state),
		'people.save': (input) => savePerson(state, deps, session, input),
		'people.retire': (input) => retirePerson(state, deps, input),
		'audit.page': (input) => auditPage(state, deps, input),
		'audit.verify': () => verifyTrail(deps),
		'audit.export': () => exportTrail(state, deps),
		'recordSettings.get': () => state.settings,
		'recordSettings.save': (value) => {
			state.settingsRecord = store.append({
				kind: 'settings',
				at: now().toISOString(),
				...(state.settingsRecord === undefined ? {} : { follows: state.settingsRecord }),
				value,
			})
			state.settings = value
			return {}
		},
		'clinic.get': clinicNow,
		'clinic.save': (clinic) => {
			const owner = [...state.people.values()].find((person) => person.slot === ownerSlot)
			store.together(() => {
				state.clinicRecord = store.append({
					kind: 'clinic',
					at: now().toISOString(),
					...(state.clinicRecord === undefined ? {} : { follows: state.clinicRecord }),
					value: clinic,
				})
				if (
					owner &&
					(owner.name !== clinic.clinician.name ||
						owner.registration !== clinic.clinician.registration)
				)
					putPerson(state, deps, { ...owner, ...clinic.clinician })
			})
			state.clinic = clinic
			return {}
		},
		'protocol.get': () => getProtocol(state),
		'protocol.versions': () => protocolVersions(state),
		'protocol.preview': (input) => previewProtocol(state, input),
		'protocol.save': (input) => saveProtocol(state, deps, input),
		'look.get': () => settings.look ?? defaultLook,
		'look.save': (look) => {
			Object.assign(settings, { look })
			if (!deps.demo) writeSettings(options.dataFolder, settings)
			return {}
		},
		'players.search': (input) => searchPlayers(state, deps, input),
		'players.save': (input) => savePlayer(state, deps, input),
		'players.open': (input) => openPlayer(state, deps, input),
		'players.merge': (input) => mergePlayers(state, deps, input),
		'players.unmerge': (input) => unmergePlayers(state, deps, input),
		'drafts.open': (input) => openDraft(state, deps, input),
		'drafts.save': (input) => saveDraft(state, deps, input),
		'drafts.preview': (input) => previewDraft(state, deps, input),
		'visits.sign': (input) => signVisit(state, deps, input),
		'visits.open': (input) => openVisit(deps, input),
		'visits.amend': (input) => amendVisit(state, deps, input),
		'visits.history': (input) => visitHistory(deps, input),
		'visits.markInError': (input) => markInError(state, deps, input),
		'visits.addNote': (input) => addNote(state, deps, input),
		'visits.countersign': (input) => countersign(state, deps, input),
		'reports.open': (input) => openReport(deps, input),
		'reports.page': (input) => accessiblePage(state, deps, input),
		'shelf.get': () => getShelf(state),
		'shelf.save': (input) => saveShelf(state, deps, input),
		'shelf.previewCsv': (input) => previewShelf(input),
		'shelf.exportCsv': () => exportShelf(state),
		'season.open': (input) => openSeason(state, deps, input),
		'season.save': (input) => saveSeason(state, deps, input),
		'season.previewImport': (input) => previewSeasonImport(state, deps, input),
		'season.plan': (input) => planPlayer(state, deps, input),
		'season.cancel': (input) => cancelPlan(state, input),
		'season.progress': (input) => planProgress(state, input),
		'season.chart': (input) => chartSeason(state, deps, input),
		'season.ics': (input) => seasonCalendar(state, deps, input),
		'squad.list': () => listSquads(deps),
		'squad.previewRoster': (input) => previewRoster(state, input),
		'squad.create': (input) => createSquad(state, deps, input),
		'squad.open': (input) => openSquad(state, deps, input),
		'squad.mark': (input) => markPlayer(deps, input),
		'squad.reports': (input) => startReports(state, deps, input),
		'squad.progress': (input) => reportsProgress(state, input),
		'squad.cancel': (input) => cancelReports(state, input),
		'squad.summary': (input) => squadSummary(state, deps, input),
		'outreach.list': () => listOutreach(state, deps),
		'outreach.makePack': (input) => makePack(state, deps, input),
		'outreach.makeReturn': (input) => makeReturn(state, deps, input),
		'outreach.previewMerge': (input) => previewMerge(state, deps, input),
		'outreach.merge': (input) => mergePack(state, deps, input),
		'outreach.answer': (input) => answerQuestion(state, deps, input),
		'outreach.compareDrafts': (input) => compareDrafts(state, deps, input),
		'outreach.joinDrafts': (input) => joinByChoice(state, deps, input),
		'outreach.putDraftAway': (input) => putDraftAway(state, deps, input),
		'outreach.remove': (input) => removeHere(state, deps, input),
		...outboxCalls(state, deps, post),
		...mailCalls(state, deps, post),
		...alertCalls(state, deps),
		'outbox.recipients': (input) => listRecipients(state, deps, input),
		'outbox.addContact': (input) => addContact(state, deps, input),
		'outbox.removeContact': (input) => removeContact(state, deps, input),
		'reports.handedOver': (input) => handedOver(deps, input),
		'consents.list': (input) => listConsents(state, deps, input),
		'consents.record': (input) => recordConsent(state, deps, input),
		'consents.withdraw': (input) => withdrawConsent(state, deps, input),
		'consents.check': ({ playerId, purpose, recipient }) =>
			checkConsent(state, deps, playerId, purpose, recipient),
		'retention.due': (input) => retentionDue(state, deps, input),
		'retention.hold': (input) => hold(state, deps, input),
		'retention.destroy': (input) => destroy(state, deps, input),
		'retention.register': () => register(deps),
		'backups.list': () => listBackups(state, deps),
		'backups.make': (input) => makeBackup(deps, input),
		'backups.setFolder': (input) => setBackupFolder(deps, input),
		'backups.preview': (input) => previewBackup(state, deps, input),
		'backups.restore': (input) => restoreBackup(state, deps, input),
	}
	const roleNow = (): Role => (store.isOpen && state.person ? state.person.role : 'nobody')
	function refusedFor(role: Role, name: CallName): string {
		if (role === 'nobody') return 'The records are locked. Unlock them first.'
		return (
			`This is for ${contract[name].who.filter((one) => one !== 'nobody').join(' or ')}. ` +
			`You work as ${role}: ask them, or switch the person.`
		)
	}

	async function call(name: string, input: unknown): Promise<Answer<unknown>> {
		if (!Object.hasOwn(contract, name))
			return { ok: false, message: `There is no call named ${JSON.stringify(name).slice(0, 60)}.` }
		session.lockIfIdle()
		const known = name as CallName
		const row = contract[known]
		const role = roleNow()
		return acting.run(
			{ personId: state.person?.personId ?? null, role, purpose: name },
			async () => {
				if (!row.who.includes(role)) {
					if (role !== 'nobody')
						store.audit({ function: 'refused', objectRef: `call:${name}`, outcome: 'refused' })
					return { ok: false, message: refusedFor(role, known) }
				}
				if (!unattended.includes(known)) session.alive()
				const ranOut = packRefusal(state, deps, name)
				if (ranOut) return { ok: false, message: ranOut }
				const parsed = row.input.safeParse(input)
				if (!parsed.success)
					return {
						ok: false,
						message: 'Some entries cannot stand. Nothing was changed.',
						problems: problemsOf(parsed.error, input),
					}
				try {
					const value = await (handlers[known] as (input: unknown) => unknown)(parsed.data)
					const look = seen[known]
					if (look && store.isOpen)
						store.audit({
							function: look.does,
							playerId: look.player?.(parsed.data as never) ?? null,
							objectRef: look.of?.(parsed.data as never) ?? '',
						})
					return { ok: true, value }
				} catch (error) {
					if (error instanceof Refusal)
						return {
							ok: false,
							message: error.message,
							...(error.problems ? { problems: error.problems } : {}),
						}
					if (error instanceof SealBroken)
						return {
							ok: false,
							message:
								'This record is damaged and cannot be read. All other records are unaffected; ' +
								'restore it from a backup.',
						}
					const fault = error instanceof Error ? error : new Error('unknown')
					options.note?.(`${name}: ${fault.name} ${(fault as NodeJS.ErrnoException).code ?? ''}`)
					return {
						ok: false,
						message: faultWords(
							(fault as NodeJS.ErrnoException & { errstr?: string }).errstr ?? '',
						),
					}
				}
			},
		)
	}
	const idle = setInterval(() => session.lockIfIdle(), idleLookMs)
	idle.unref()
	const posting = setInterval(() => {
		if (!closed) post.run().catch(() => options.note?.('outbox: a run failed'))
	}, outboxLookMs)
	posting.unref()
	return {
		call,
		close: () => {
			closed = true
			clearInterval(idle)
			clearInterval(posting)
			post.end()
			store.close()
			state.clear()
		},
	}
}
function faultWords(sqlite: string): string {
	if (/full/.test(sqlite))
		return 'The disk is full. Your entries are still on this screen: free some space and try again.'
	if (/readonly|read-only/.test(sqlite))
		return (
			'The data folder cannot be written to. Your entries are still on this screen: make ' +
			'the folder writable and try again.'
		)
	if (/malformed|not a database/.test(sqlite))
		return (
			'Part of the records file is damaged. Nothing was changed. Restore the newest ' +
			'backup: open Backups, or start Lastwright anew and follow what it says.'
		)
	return (
		'Lastwright could not finish this. Nothing that was saved is lost. Try again; if it ' +
		'stays, start Lastwright anew.'
	)
}
