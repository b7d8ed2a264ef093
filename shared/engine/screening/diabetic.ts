/**
 * Foot at risk in diabetes, NICE NG19: low, moderate, high or active; an unanswered question is
 * never taken for no.
 */
import type { DiabeticRisk } from '../findings/assessment.ts'
import type { Screening } from '../visit/visit.ts'
import { allOf, anyOf, type Tri } from './answers.ts'

type Group = NonNullable<Screening['diabeticFoot']>
type DiabeticFoot = NonNullable<Group['left']>

/**
 * @returns the highest level that the answers establish, and whether an unasked question could
 * still raise it
 */
export function diabeticRisk(
	foot: DiabeticFoot,
	renalReplacement: Tri,
): { risk: DiabeticRisk; complete: boolean } {
	const { callus, deformity, neuropathy, ischaemia } = foot
	const levels: [DiabeticRisk, Tri][] = [
		[
			'active',
			anyOf(foot.ulcer, foot.infection, foot.criticalIschaemia, foot.gangrene, foot.hotRedSwollen),
		],
		[
			'high',
			anyOf(
				foot.previousUlcer,
				foot.amputation,
				renalReplacement,
				allOf(neuropathy, ischaemia),
				allOf(anyOf(neuropathy, ischaemia), anyOf(callus, deformity)),
			),
		],
		['moderate', anyOf(deformity, neuropathy, ischaemia)],
	]
	const found = levels.findIndex(([, holds]) => holds === true)
	const higherLevels = found < 0 ? levels : levels.slice(0, found)
	const complete = higherLevels.every(([, holds]) => holds === false)
	const whereNoneHolds = complete ? 'low' : 'incomplete'
	return { risk: levels[found]?.[0] ?? whereNoneHolds, complete }
}
