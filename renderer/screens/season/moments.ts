/** What comes when in a season: wear, growth, purchases, and the limits they rest on. Pure. */
import { leastRoomKey } from '../../../shared/engine/facts/toe-room.ts'
import type { ThresholdKey } from '../../../shared/engine/protocol/protocol.ts'
import type { Plan, PlanPair } from '../../../shared/engine/season/plan-file.ts'

/** Every date of the picture in words, for those who do not see it. */
export function momentsOf(plan: Plan): { date: string; says: string }[] {
	const of = (pair: PlanPair, date: string | undefined, says: string) =>
		date === undefined || date > plan.season.to
			? []
			: [{ date, says: `Pair ${pair.letter} (${pair.name}): ${says}.` }]
	return [
		...plan.pairs.flatMap((pair) => [
			...of(pair, pair.brokenInBy, 'broken in'),
			...of(pair, pair.checkBy, 'check studs, counter and sole: the replacement window begins'),
			...of(pair, pair.measureAgainBy, 'measure the feet again'),
			...of(pair, pair.outgrownBy, 'likely too short'),
			...of(pair, pair.replaceBy, 'replace'),
		]),
		...plan.purchases.map((purchase) => ({ date: purchase.buyBy, says: purchase.says })),
	].sort((left, right) => (left.date < right.date ? -1 : 1))
}
/** The same limits as the forecast's: by age, and by boot or trainer. */
export const leastKey = (pair: PlanPair, young: boolean): ThresholdKey => leastRoomKey(pair, !young)
