/** What the parts of one question are given. */
import type { Assessment } from '../../../../shared/engine/findings/assessment.ts'
import type { AskedNow } from '../../../../shared/engine/prescription/in-turn.ts'
import type { Shelf } from '../../../../shared/engine/visit/shelf.ts'
import type { StepProps } from '../stepProps.ts'

export interface AskedProps extends Pick<StepProps, 'draft' | 'change'> {
	question: AskedNow
	/** Its prescription is what is proposed to this question: the answers of others are in it. */
	assessment: Assessment
	/** As the rooms proposed, before any answer. */
	given: Assessment
	/** To the questions and outcomes on Flags; coming back opens this question. */
	outcomes: () => void
	/** Undefined where the clinic has none, or where it did not open. */
	shelf: Shelf | undefined
	/** Why the shelf did not open; empty where it did. */
	shelfTrouble: string
}
