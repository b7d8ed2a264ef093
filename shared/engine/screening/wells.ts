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
	asked: number
}
/** Who is read: the score is for neither minors nor pregnant women. */
interface Whose {
	minor: boolean
	pregnant: boolean
}

/**
 * Two-level Wells score; none under 18 and none in pregnancy, which counts as a risk and lowers the
 * calf difference that is suspect. Suspicion does not wait for the score. Unasked items add nothing
 * and are counted.
 */
export function wells(
	answers: Wells,
	{ minor, pregnant }: Whose,
	protocol: Protocol,
): WellsReading {
	const differenceCm = answers.calfDifferenceCm
	const calfFrom = (key: 'screening.wellsCalfCm' | 'screening.pregnantCalfCm') =>
		differenceCm !== undefined && differenceCm >= protocol.value(key)
	const calf = calfFrom('screening.wellsCalfCm')
	const suspectCalf = calf || (pregnant && calfFrom('screening.pregnantCalfCm'))
	const plainSigns = signs.filter((key) => answers[key] === true).length
	const riskCount = risks.filter((key) => answers[key] === true).length
	const positives = plainSigns + riskCount + (calf ? 1 : 0)
	const score =
		positives +
		(answers.alternativeAsLikely === true ? protocol.value('screening.wellsAlternativePoints') : 0)
	const likely = protocol.value('screening.wellsLikelyScore')
	return {
		result:
			minor || pregnant
				? { band: 'not-applicable' }
				: { score, band: score >= likely ? 'likely' : 'unlikely' },
		suspicion: plainSigns > 0 || suspectCalf || riskCount + (pregnant ? 1 : 0) >= likely,
		notAsked: asked.filter((key) => answers[key] === undefined).length,
		asked: asked.length,
	}
}
