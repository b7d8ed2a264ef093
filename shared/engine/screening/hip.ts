/**
 * A growing player who limps with pain of hip, groin, thigh or knee: a slipped growth plate of the
 * hip is suspected the same day, whichever question or recorded condition says so.
 */
import { conditionReading, recordedConditions } from '../conditions/query.ts'
import type { FindingSide } from '../findings/finding.ts'
import type { Because } from '../protocol/basis.ts'
import type { Condition } from '../visit/terms.ts'
import { state } from '../words/statement.ts'
import { allOf, anyOf, type Tri } from './answers.ts'
import { type Conclusions, itemOf, type Screened, sidedId, stateOf } from './conclusions.ts'

/** Pain at or above the knee; where else it may come from the hip. */
const aboveTheFoot: readonly Condition[] = [
	'patellofemoral-pain',
	'tibial-tubercle-apophysitis',
	'patellar-tendinopathy',
]
interface Limping {
	side: FindingSide
	pain: Tri
	because: Because[]
}
const covers = (limb: FindingSide, side: FindingSide): boolean =>
	limb === side || limb === 'both' || limb === 'none' || side === 'both' || side === 'none'

/** Every way in which a limp was recorded, and whether pain of hip or knee goes with it. */
function limpings({ visit, answers }: Screened): Limping[] {
	const sore = recordedConditions(visit, aboveTheFoot)
	const { limp, limpUnexplained, hipPainWithLimp } = answers
	if (limp) {
		const near = sore.filter(({ side }) => covers(side, limp.side))
		const said = near.length > 0 || hipPainWithLimp === true ? true : undefined
		return [
			{
				side: limp.side,
				pain: anyOf(limp.hipThighKneePain, said) ?? limp.hipThighKneePain,
				because: near.map(conditionReading),
			},
		]
	}
	if (hipPainWithLimp === true)
		return [{ side: 'none', pain: true, because: sore.map(conditionReading) }]
	if (limpUnexplained !== true) return []
	return [...new Set(sore.map(({ side }) => side))].map((side) => ({
		side,
		pain: true,
		because: sore.filter((recorded) => recorded.side === side).map(conditionReading),
	}))
}
/** A growing player of the ages at which the growth plate of the hip slips. */
const isOfThatAge = ({ minor, ageYears, protocol }: Screened): boolean =>
	minor && ageYears >= protocol.value('screening.slippedEpiphysisOverYears')
/**
 * Pain of hip or knee that was recorded with the limp answers the general question as well, at the
 * ages at which nothing more is said of it.
 */
export const limpsInPain = (screened: Screened): Tri =>
	screened.answers.hipPainWithLimp ??
	(!isOfThatAge(screened) && limpings(screened).some(({ pain }) => pain === true)
		? true
		: undefined)
/** One item a limp; none where no limp was recorded. */
export function hipConclusions(screened: Screened): Conclusions {
	const { protocol } = screened
	const growing = isOfThatAge(screened)
	const read = limpings(screened).map(({ side, pain, because }) => {
		const holds = growing ? allOf(growing, pain) : false
		const item = itemOf(state('screening.limp-hip'), {
			side,
			state: stateOf(holds),
			action: holds === true ? 'same-day' : 'proceed',
			basis: protocol.basis('limp', 'screening.slippedEpiphysisOverYears'),
			id: sidedId('screening.limp-hip', side),
		})
		return { item, because }
	})
	return {
		items: read.map(({ item }) => item),
		findings: [],
		because: Object.fromEntries(
			read
				.filter(({ because }) => because.length > 0)
				.map(({ item, because }) => [item.id, because]),
		),
	}
}
