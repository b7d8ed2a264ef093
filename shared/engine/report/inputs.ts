/** What the documents are made of, each part as narrowly as they need it. */
import type { KeptAssessment } from '../findings/assessment.ts'
import type { Protocol } from '../protocol/protocol.ts'
import type { Decisions } from '../visit/decisions.ts'
import type { Visit } from '../visit/visit.ts'
import type { Clinic } from './clinic.ts'

/** The plan file (shared/engine/season/plan-file.ts), as far as the chart and the club read it. */
export interface PlanView {
	sessions: readonly {
		date: string
		start?: string | undefined
		kind: 'training' | 'match'
		surface: string
		pair?: string | undefined
		minutes?: number
		/** shorter for this player, after a lay-off */
		fullMinutes?: number | undefined
		/** Where more than one pair is worn: in this order. */
		parts?: readonly { pair: string }[] | undefined
	}[]
	pairs: readonly {
		id: string
		letter?: string | undefined
		name?: string | undefined
		sole?: string | undefined
		replaceBy?: string | undefined
		brokenInBy?: string | undefined
	}[]
	/** Sessions that do not take place. */
	off?:
		| readonly {
				date: string
				start?: string | undefined
				kind: 'training' | 'match'
				status: 'cancelled' | 'bye' | 'injured'
		  }[]
		| undefined
}
/** Whom a referral letter goes to; what it says beyond the findings stands in the decisions. */
interface LetterInput {
	recipient?: string
	/** Whose hands it goes through, where not straight to the doctor: what is private stays out. */
	handedTo?: 'player' | 'guardian'
	address?: string[]
	/** Who agreed, how and when. */
	consent?: string
}
export interface ReportInput {
	visit: Visit
	/** The player's earlier visits, for the charts. */
	earlier?: readonly Visit[]
	/** How many earlier visits cannot be read: the pages say that the comparison lacks them. */
	lacking?: number
	/** The protocol of the assessment, where it is not the shipped one. */
	protocol?: Protocol
	assessment: KeptAssessment
	decisions: Decisions
	clinic: Clinic
	/** ISO date-time of signing, undefined for a draft. */
	signedAt: string | undefined
	/** The day of signing where the clinic stands; where absent, the day of `signedAt` in UTC. */
	signedOn?: string | undefined
	/** The time of signing where the clinic stands, 'HH:MM'. */
	signedTime?: string | undefined
	draft: boolean
	/** 1 where absent; a higher one is an amended report. */
	version?: number
	/** What an amended report changed against the version before. */
	changes?: readonly string[]
	recordNumber?: string
	letter?: LetterInput
	/** What the club was told, in words, with consent. */
	sharedWithClub?: readonly string[]
	/** What a competent minor asked not to be shown to the guardian. */
	withheld?: readonly ('growth' | 'footwear' | 'insert')[]
	/** The season's plan, for the chart. */
	plan?: PlanView
}
