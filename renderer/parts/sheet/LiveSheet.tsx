/** The sheet of the appointment as it stands, while the visit is open. */
import type { DraftContent } from '../../../shared/contract.ts'
import type { Assessment } from '../../../shared/engine/findings/assessment.ts'
import type { Visit } from '../../../shared/engine/visit/visit.ts'

interface LiveSheetProps {
	draft: DraftContent
	assessment: Assessment | undefined
	earlier: readonly Visit[]
}
export function LiveSheet({ assessment }: LiveSheetProps) {
	return assessment ? <p>{assessment.visitDate}</p> : null
}
