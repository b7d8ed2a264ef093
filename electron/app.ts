/** The composition root: opens the store, builds the services, dispatches contract calls (role, validate, service). */
import { engineVersion } from '../shared/assess.ts'
import { type Answer, type CallName, contract, type InputOf, type OutputOf, type Role } from '../shared/contract.ts'
import type { Clinic } from '../shared/clinic.ts'
import { problemsOf } from '../shared/problems.ts'
import type { LwDocument } from '../shared/report/document.ts'
import { openPlayer, savePlayer, searchPlayers } from './services/players.ts'
import { Session } from './services/session.ts'
import { type Deps, Refusal, State } from './services/state.ts'
import { openDraft, openReport, openVisit, previewDraft, saveDraft, signVisit } from './services/visits.ts'
import { SealBroken } from './store/seal.ts'
import { Store } from './store/store.ts'

export interface AppOptions { dataFolder: string; renderPdf: (document: LwDocument) => Promise<Uint8Array>; now?: () => Date; demo?: boolean; scryptCost?: number; /** where faults of ours are noted, without personal data */ note?: (text: string) => void }
export interface App { call: (name: string, input: unknown) => Promise<Answer<unknown>>; close: () => void }
type Handlers = { [N in CallName]: (input: InputOf<N>) => OutputOf<N> | Promise<OutputOf<N>> }

export function createApp(options: AppOptions): App {
	const store = new Store(options.dataFolder, options.scryptCost === undefined ? {} : { cost: options.scryptCost })
	const deps: Deps = { store, renderPdf: options.renderPdf, now: options.now ?? (() => new Date()), demo: options.demo ?? false, version: engineVersion }
	const state = new State()
	const session = new Session(deps, state)
	const clinicNow = (): Clinic => {
		if (!state.clinic) throw new Refusal('The clinic is not set up. Fill in the letterhead first.')
		return state.clinic
	}
	const handlers: Handlers = {
		'session.status': () => session.status(),
		'session.setUp': (input) => session.setUp(input),
		'session.unlock': (input) => session.unlock(input),
		'session.unlockWithRecoveryKey': (input) => session.unlockWithRecoveryKey(input),
		'session.lock': () => session.lock(),
		'clinic.get': clinicNow,
		'clinic.save': (clinic) => {
			state.clinicRecord = store.append({ kind: 'clinic', at: deps.now().toISOString(), ...(state.clinicRecord === undefined ? {} : { follows: state.clinicRecord }), value: clinic })
			state.clinic = clinic
			return {}
		},
		'players.search': (input) => searchPlayers(state, input),
		'players.save': (input) => savePlayer(state, deps, input),
		'players.open': (input) => openPlayer(state, input),
		'drafts.open': (input) => openDraft(state, deps, input),
		'drafts.save': (input) => saveDraft(state, deps, input),
		'drafts.preview': (input) => previewDraft(state, deps, input),
		'visits.sign': (input) => signVisit(state, deps, input),
		'visits.open': (input) => openVisit(state, deps, input),
		'reports.open': (input) => openReport(state, deps, input),
	}
	const roleNow = (): Role => (store.isOpen ? 'clinician' : 'nobody')

	async function call(name: string, input: unknown): Promise<Answer<unknown>> {
		if (!Object.hasOwn(contract, name)) return { ok: false, message: `There is no call named ${JSON.stringify(name).slice(0, 60)}.` }
		const row = contract[name as CallName]
		if (!row.who.includes(roleNow())) return { ok: false, message: 'The records are locked. Unlock them first.' }
		const parsed = row.input.safeParse(input)
		if (!parsed.success) return { ok: false, message: 'Some entries cannot stand. Nothing was changed.', problems: problemsOf(parsed.error, input) }
		try {
			const value = await (handlers[name as CallName] as (input: unknown) => unknown)(parsed.data)
			return { ok: true, value }
		} catch (error) {
			if (error instanceof Refusal) return { ok: false, message: error.message, ...(error.problems ? { problems: error.problems } : {}) }
			if (error instanceof SealBroken) return { ok: false, message: 'This record is damaged and cannot be read. All other records are unaffected; restore it from a backup.' }
			const fault = error instanceof Error ? error : new Error('unknown')
			options.note?.(`${name}: ${fault.name} ${(fault as NodeJS.ErrnoException).code ?? ''}`)
			return { ok: false, message: faultWords((fault as NodeJS.ErrnoException & { errstr?: string }).errstr ?? '') }
		}
	}
	return { call, close: () => store.close() }
}
function faultWords(sqlite: string): string {
	if (/full/.test(sqlite)) return 'The disk is full. Your entries are still on this screen: free some space and try again.'
	if (/readonly|read-only/.test(sqlite)) return 'The data folder cannot be written to. Your entries are still on this screen: make the folder writable and try again.'
	return 'Lastwright could not finish this. Nothing that was saved is lost. Try again; if it stays, start Lastwright anew.'
}
