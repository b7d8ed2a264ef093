/** Which measured feet are swollen or freshly injured: nothing is bought by their size. */
import { hasCondition } from '../conditions/query.ts'
import type { Because } from '../protocol/basis.ts'
import { acuteConditions, calfConditions } from '../screening/core-questions.table.ts'
import type { Side, Visit } from '../visit/visit.ts'

const measures = ['heelToToeMm', 'ballWidthMm', 'ballGirthMm'] as const
const isMeasured = ({ feet }: Visit, side: Side): boolean =>
	measures.some((measure) => feet?.[side]?.[measure] !== undefined)
/** Injuries of the foot and ankle themselves. */
const injuries = acuteConditions.filter((condition) => !calfConditions.includes(condition))
/** Bad pain alone swells no foot: a bunion that hurts is measured as it is. */
const ofPainAlone = '/10'

/**
 * Why a foot that was measured is not to be bought for today; empty where nothing says so.
 * @param acute why its limb is acutely injured or ill, as the facts have it
 */
export function swollenReasons(visit: Visit, acute: readonly Because[], side: Side): Because[] {
	if (!isMeasured(visit, side)) return []
	const injured = hasCondition(visit, injuries, { side, when: 'current' })
	return acute.filter(({ unit }) => injured || unit !== ofPainAlone)
}
