import type { Handlers } from '../../calls/handlers.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import {
	listBackups,
	makeBackup,
	previewBackup,
	restoreBackup,
	setBackupFolder,
} from './backups.ts'
import { destroy, hold, register, retentionDue } from './retention.ts'

/** The calls about backups, and about keeping and destroying records. */
export const backupCalls = (memory: Memory, deps: Deps) =>
	({
		'retention.due': (input) => retentionDue(memory, deps, input),
		'retention.hold': (input) => hold(memory, deps, input),
		'retention.destroy': (input) => destroy(memory, deps, input),
		'retention.register': () => register(deps),
		'backups.list': () => listBackups(memory, deps),
		'backups.make': (input) => makeBackup(deps, input),
		'backups.setFolder': (input) => setBackupFolder(deps, input),
		'backups.preview': (input) => previewBackup(memory, deps, input),
		'backups.restore': (input) => restoreBackup(memory, deps, input),
	}) satisfies Partial<Handlers>
