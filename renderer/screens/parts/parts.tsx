/**
 * Every part of the screens in every state, side by side, for whoever changes one: in the demo at
 * #/parts, and in the browser tests.
 */
import { Page } from '../../parts/Page.tsx'
import { AnswerStates } from './AnswerStates.tsx'
import { DraftStates } from './DraftStates.tsx'
import { FindingStates } from './FindingStates.tsx'
import { FormStates } from './FormStates.tsx'
import { MeasureStates } from './MeasureStates.tsx'
import { PanelStates } from './PanelStates.tsx'

export function Parts() {
	return (
		<Page title="Parts" line="Every part in every state, for whoever changes one.">
			<AnswerStates />
			<FormStates />
			<PanelStates />
			<MeasureStates />
			<FindingStates />
			<DraftStates />
		</Page>
	)
}
