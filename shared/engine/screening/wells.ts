import type { ScreeningResult } from '../findings/assessment.ts'
import type { Protocol } from '../protocol/protocol.ts'
import type { Screening } from '../visit/visit.ts'

type Wells = NonNullable<Screening['wells']>
const risks = ['activeCancer', 'paralysisOrCast', 'bedriddenOrSurgery', 'previousDvt'] as const
const signs = [
	'deepVeinTenderness',
	'entireLegSwollen',
	'pittingOedema',
	'collateralVeins',
] as const
const asked = [...risks, ...signs, 'calfDifferenceCm', 'alternativeAsLikely'] as const
interface WellsReading {
	result: NonNullable<ScreeningResult['wells']>
	suspicion: boolean
	notAsked: number
}

/**
 * Two-level Wells score; none under 18. Suspicion does not wait for the score. Unasked items add
 * nothing and are counted.
 */
export function wells(answers: Wells, minor: boolean, protocol: Protocol): WellsReading {
	const calf =
		answers.calfDifferenceCm !== undefined &&
		answers.calfDifferenceCm >= protocol.value('screening.wellsCalfCm')
	const signCount = signs.filter((key) => answers[key] === true).length + (calf ? 1 : 0)
	const positives = signCount + risks.filter((key) => answers[key] === true).length
	const score =
		positives +
		(answers.alternativeAsLikely === true ? protocol.value('screening.wellsAlternativePoints') : 0)
	const likely = protocol.value('screening.wellsLikelyScore')
	const notAsked = asked.filter((key) => answers[key] === undefined).length
	return {
		result: minor
			? { band: 'not-applicable' }
			: { score, band: score >= likely ? 'likely' : 'unlikely' },
		suspicion: signCount > 0 || positives >= likely,
		notAsked,
	}
}
