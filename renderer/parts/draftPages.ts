/** Pages of a draft, composed on the screen from what stands in it now. */
import type { DraftContent } from '../../shared/contract.ts'
import type { Assessment } from '../../shared/engine/findings/assessment.ts'
import type { Clinic } from '../../shared/engine/report/clinic.ts'
import type { LwDocument } from '../../shared/engine/report/document.ts'
import type { ReportInput } from '../../shared/engine/report/inputs.ts'
import type { Visit } from '../../shared/engine/visit/visit.ts'
import { clinicProtocol } from './clinicProtocol.ts'

interface DraftNow {
	draft: DraftContent
	assessment: Assessment
	earlier: readonly Visit[]
	clinic: Clinic
}
/** What the pages of a draft are made of. */
export const draftInput = ({
	draft: { visit, decisions },
	assessment,
	earlier,
	clinic,
}: DraftNow): ReportInput => ({
	visit,
	earlier,
	assessment,
	decisions,
	clinic,
	signedAt: undefined,
	draft: true,
	protocol: clinicProtocol,
})
interface Composed {
	document: LwDocument | undefined
	/** why it cannot be composed */
	trouble: string | undefined
}
/** A page, or why it cannot be composed: a screen goes on without it. */
export function composedOf(compose: () => LwDocument): Composed {
	try {
		return { document: compose(), trouble: undefined }
	} catch (error) {
		return { document: undefined, trouble: error instanceof Error ? error.message : String(error) }
	}
}
