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
import {
	actionFor,
	type Conclusions,
	itemOf,
	type Screened,
	type StatedItem,
	sidedId,
	stateOf,
} from './conclusions.ts'
import { flagRows } from './flags.table.ts'

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

/** Whether a slipped growth plate is suspected. */
function slipped({ side, pain }: Limping, screened: Screened): StatedItem {
	const growing = isOfThatAge(screened)
	const holds = growing ? allOf(growing, pain) : false
	return itemOf(state('screening.limp-hip'), {
		side,
		state: stateOf(holds),
		action: holds === true ? 'same-day' : 'proceed',
		basis: screened.protocol.basis('limp', 'screening.slippedEpiphysisOverYears'),
		id: sidedId('screening.limp-hip', side),
	})
}
/**
 * At other ages the same limp and pain ask what the general question asks, unless that was answered
 * itself.
 */
function atOtherAges({ side, pain }: Limping, screened: Screened): StatedItem[] {
	const { minor, answers } = screened
	const row = flagRows.find(({ key }) => key === 'hipPainWithLimp')
	if (row === undefined || pain !== true || isOfThatAge(screened)) return []
	if (answers.hipPainWithLimp === true || side === 'none') return []
	const { source, strength } = row
	return [
		itemOf(state('screening.hipPainWithLimp', { minor }), {
			side,
			state: 'yes',
			action: actionFor(row, minor),
			basis: { rule: 'general warning signs', source, strength },
		}),
	]
}
/** The items of a limp; none where no limp was recorded. */
export function hipConclusions(screened: Screened): Conclusions {
	const read = limpings(screened).flatMap((limping) =>
		[slipped(limping, screened), ...atOtherAges(limping, screened)].map((item) => ({
			item,
			because: limping.because,
		})),
	)
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
