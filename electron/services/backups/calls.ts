import type { Handlers } from '../../calls/handlers.ts'
import type { Deps } from '../records/deps.ts'
import type { State } from '../records/state.ts'
import {
	listBackups,
	makeBackup,
	previewBackup,
	restoreBackup,
	setBackupFolder,
} from './backups.ts'
import { destroy, hold, register, retentionDue } from './retention.ts'

/** The calls about backups, and about keeping and destroying records. */
export const backupCalls = (state: State, deps: Deps) =>
	({
		'retention.due': (input) => retentionDue(state, deps, input),
		'retention.hold': (input) => hold(state, deps, input),
		'retention.destroy': (input) => destroy(state, deps, input),
		'retention.register': () => register(deps),
		'backups.list': () => listBackups(state, deps),
		'backups.make': (input) => makeBackup(deps, input),
		'backups.setFolder': (input) => setBackupFolder(deps, input),
		'backups.preview': (input) => previewBackup(state, deps, input),
		'backups.restore': (input) => restoreBackup(state, deps, input),
	}) satisfies Partial<Handlers>
