/** One player of a list. */
import type { KeptAssessment } from '../../findings/assessment.ts'
import type { Decisions } from '../../visit/decisions.ts'
import type { Visit } from '../../visit/visit.ts'
import type { Clinic } from '../clinic.ts'

export interface SquadMember {
	visit: Visit
	assessment: KeptAssessment
	decisions: Decisions
	/** Assessed where absent. */
	state?: 'assessed' | 'refused' | 'absent'
}
/** What every list of players is made with. */
export interface ListFrame {
	/** With the name of whoever makes the list. */
	clinic: Clinic
	/** ISO date of the list. */
	on: string
	team?: string | undefined
	/** Of visits that nobody signed. */
	draft: boolean
}
