/** What the parts of one question are given. */
import type { Assessment, Question } from '../../../../shared/engine/findings/assessment.ts'
import type { Shelf } from '../../../../shared/engine/visit/shelf.ts'
import type { StepProps } from '../stepProps.ts'

export interface AskedProps extends Pick<StepProps, 'draft' | 'change' | 'goTo'> {
	question: Question
	assessment: Assessment
	/** Undefined where the clinic has none, or where it did not open. */
	shelf: Shelf | undefined
	/** Why the shelf did not open; empty where it did. */
	shelfTrouble: string
}
