import type { Assessment } from '../../../../shared/engine/findings/assessment.ts'
import type { Visit } from '../../../../shared/engine/visit/visit.ts'
import type { StepProps } from '../stepProps.ts'

/** What the result of a step is drawn from. */
export interface ResultProps extends Pick<StepProps, 'draft' | 'earlier' | 'goTo'> {
	assessment: Assessment
	/** The visit that was assessed: it may be one entry behind the draft. */
	visit: Visit
	/** Path of the field in focus; empty where none is. */
	focused: string
}
