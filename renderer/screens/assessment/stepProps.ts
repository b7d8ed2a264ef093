import type { DraftContent } from '../../../shared/contract.ts'
import type { Assessment } from '../../../shared/engine/findings/assessment.ts'
import type { Visit } from '../../../shared/engine/visit/visit.ts'

/** What every step of the assessment is given. */
export interface StepProps {
	draft: DraftContent
	/** Changes the draft; saved within a second. */
	change: (update: (now: DraftContent) => DraftContent) => void
	/** The engine's answer to the draft as it stands; undefined while it cannot be computed. */
	assessment: Assessment | undefined
	earlier: readonly Visit[]
	draftId: string
	playerId: string
	/** Saves at once; rejects in words where it cannot. */
	saveNow: () => Promise<void>
	/** The same before signing: rejects where something came that was not seen. */
	saveToSign: () => Promise<string>
	/** @param question which question of Decide opens there */
	goTo: (step: string, question?: string) => void
}
/** What a part of a step that reads and changes the draft is given. */
export type DraftProps = Pick<StepProps, 'draft' | 'change'>
/** The same with the engine's answer. */
export type AssessedProps = Pick<StepProps, 'draft' | 'change' | 'assessment'>
