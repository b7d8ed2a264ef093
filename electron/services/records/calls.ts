import type { Handlers } from '../../calls/handlers.ts'
import type { Deps } from './deps.ts'
import type { Memory } from './memory.ts'
import { auditPage, exportTrail, verifyTrail } from './trail.ts'

/** The calls about the audit trail. */
export const auditCalls = (memory: Pick<Memory, 'people' | 'players'>, deps: Deps) =>
	({
		'audit.page': (input) => auditPage(memory, deps, input),
		'audit.verify': () => verifyTrail(deps),
		'audit.export': () => exportTrail(memory, deps),
	}) satisfies Partial<Handlers>
