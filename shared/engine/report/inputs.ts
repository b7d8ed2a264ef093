/** What the documents need from rooms beside the assessment, as narrowly as they need it. */

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
