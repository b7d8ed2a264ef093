/**
 * What signs of a clot in the leg lead to. Suspicion refers; the score only goes into the letter.
 */
import type { ScreeningResult } from '../findings/assessment.ts'
import { state } from '../words/statement.ts'
import { type Conclusions, itemOf, type Screened, screeningFinding } from './conclusions.ts'
import { isPregnant } from './pregnancy.ts'
import { wells } from './wells.ts'

type ClotConclusions = Conclusions & { wells: ScreeningResult['wells'] }

/** Nothing where the clot questions were not opened. */
export function clotConclusions({ answers, minor, protocol }: Screened): ClotConclusions {
	if (!answers.wells) return { items: [], findings: [], wells: undefined }
	const pregnant = isPregnant(answers) === true
	const { result, suspicion, notAsked, asked } = wells(answers.wells, { minor, pregnant }, protocol)
	const basis = protocol.basis('Wells two-level score', 'screening.wellsLikelyScore')
	const stateWithoutSuspicion = notAsked > 0 ? 'not-asked' : 'no'
	const whyNoScore = pregnant ? 'pregnant' : 'too-young'
	const suspected = state('screening.wells', {
		score: result.score === undefined ? whyNoScore : 'used',
		minorBelowYears: protocol.value('screening.minorBelowYears'),
	})
	const incomplete = screeningFinding(
		state('screening.wells-incomplete', { notAsked, all: asked }),
		{
			side: 'none',
			level: 'caution',
			because: result.score === undefined ? [] : [{ measure: 'wellsScore', value: result.score }],
			basis,
		},
	)
	return {
		items: [
			itemOf(suspected, {
				side: 'none',
				state: suspicion ? 'yes' : stateWithoutSuspicion,
				action: suspicion ? 'same-day' : 'proceed',
				basis,
			}),
		],
		findings: notAsked > 0 ? [incomplete] : [],
		wells: result,
	}
}
