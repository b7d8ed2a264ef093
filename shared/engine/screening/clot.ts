/**
 * What signs of a clot in the leg lead to. Suspicion refers; the score only goes into the letter.
 */
import type { ScreeningResult } from '../findings/assessment.ts'
import { type Conclusions, type Screened, screeningFinding } from './conclusions.ts'
import { wells } from './wells.ts'

type ClotConclusions = Conclusions & { wells: ScreeningResult['wells'] }

/** Nothing where the clot questions were not opened. */
export function clotConclusions({ answers, minor, protocol }: Screened): ClotConclusions {
	if (!answers.wells) return { items: [], findings: [], wells: undefined }
	const { result, suspicion, notAsked } = wells(answers.wells, minor, protocol)
	const basis = protocol.basis('Wells two-level score', 'screening.wellsLikelyScore')
	const stateWithoutSuspicion = notAsked > 0 ? 'not-asked' : 'no'
	const onTheScore = minor
		? 'The score is not used under 18 years.'
		: 'The score goes into the letter; it does not decide the referral.'
	const incomplete = screeningFinding({
		id: 'screening.wells-incomplete',
		side: 'none',
		level: 'caution',
		says: `${notAsked} of the 10 clot questions were not asked: the score may be different.`,
		because: result.score === undefined ? [] : [{ measure: 'Wells score', value: result.score }],
		basis,
	})
	return {
		items: [
			{
				id: 'screening.wells',
				side: 'none',
				state: suspicion ? 'yes' : stateWithoutSuspicion,
				action: suspicion ? 'same-day' : 'proceed',
				says:
					'Signs that can go with a clot in the leg: medical review the same ' +
					`day. ${onTheScore}`,
				basis,
			},
		],
		findings: notAsked > 0 ? [incomplete] : [],
		wells: result,
	}
}
