/** The Plan file of a season that the gate holds: no sessions, and what ends it. */
import type { Finding } from '../../findings/finding.ts'
import type { Visit } from '../../visit/visit.ts'
import type { Plan } from '../plan-file.ts'

export const heldPlan = ({ season }: Pick<Visit, 'season'>, from: string, held: Finding): Plan => ({
	format: 'lastwright-plan',
	version: 1,
	status: 'optimal',
	gap: 0,
	from,
	season: { from: season?.from ?? from, to: season?.to ?? from },
	sessions: [],
	off: [],
	pairs: [],
	purchases: [],
	findings: [held],
})
