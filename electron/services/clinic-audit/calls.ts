/** The calls about what became of visits. */
import type { Handlers } from '../../calls/handlers.ts'
import type { Deps } from '../records/deps.ts'
import { adoptError, setBack } from './adopting.ts'
import type { AuditNeeds } from './counting.ts'
import { exportAudit, forecastSays, printAudit, readAudit } from './reading.ts'

export const clinicAuditCalls = (memory: AuditNeeds, deps: Deps) =>
	({
		'clinicAudit.read': (input) => readAudit(memory, deps, input),
		'clinicAudit.print': (input) => printAudit(memory, deps, input),
		'clinicAudit.export': (input) => exportAudit(memory, deps, input),
		'clinicAudit.adopt': (input) => adoptError(memory, deps, input),
		'clinicAudit.setBack': () => setBack(memory, deps),
		'clinicAudit.forecast': () => forecastSays(memory, deps),
	}) satisfies Partial<Handlers>
