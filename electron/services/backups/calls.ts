import type { Handlers } from '../../calls/handlers.ts'
import type { Post } from '../outbox/post.ts'
import type { Session } from '../people/session.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { listBackups, makeBackup, previewBackup, setBackupFolder } from './backups.ts'
import { cameBack, decide } from './came-back.ts'
import { restoreBackup } from './restoring.ts'
import { destroy, hold, register, retentionDue } from './retention.ts'

/** The calls about backups, and about keeping and destroying records. */
export const backupCalls = (
	memory: Memory,
	deps: Deps,
	others: { session: Session; post: Pick<Post, 'isSending'> },
) =>
	({
		'retention.due': (input) => retentionDue(memory, deps, input),
		'retention.hold': (input) => hold(memory, deps, input),
		'retention.destroy': (input) => destroy(memory, deps, input),
		'retention.register': () => register(deps),
		'backups.list': () => listBackups(memory, deps),
		'backups.make': (input) => makeBackup(deps, input),
		'backups.setFolder': (input) => setBackupFolder(deps, input),
		'backups.preview': (input) => previewBackup(memory, deps, input),
		'backups.restore': (input) => restoreBackup(memory, deps, others, input),
		'backups.cameBack': () => cameBack(memory, deps),
		'backups.decide': (input) => decide(memory, deps, others.session, input),
	}) satisfies Partial<Handlers>
