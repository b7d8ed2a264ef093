import type { Handlers } from '../../calls/handlers.ts'
import { listAlarms, settleAlarms } from './alarms.ts'
import type { Deps } from './deps.ts'
import type { Memory } from './memory.ts'
import { auditPage, exportTrail, verifyTrail } from './trail.ts'

/** The calls about the audit trail. */
export const auditCalls = (memory: Memory, deps: Deps) =>
	({
		'audit.page': (input) => auditPage(memory, deps, input),
		'audit.verify': () => verifyTrail(deps),
		'audit.alarms': () => listAlarms(deps),
		'audit.settle': (input) => settleAlarms(memory, deps, input),
		'audit.export': () => exportTrail(memory, deps),
	}) satisfies Partial<Handlers>
