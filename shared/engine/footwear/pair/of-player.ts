/** The picture that a player's pairs are judged against, gathered once from the rooms. */
import { hasCondition } from '../../conditions/query.ts'
import { isAdult } from '../../facts/age.ts'
import { isHeld } from '../../facts/held.ts'
import { lifeShare } from '../../facts/life-share.ts'
import { soreNails } from '../../facts/toe-room.ts'
import type { Gate, GrowthResult, PlayerFacts, SizingResult } from '../../findings/assessment.ts'
import { present } from '../../plain/present.ts'
import type { Protocol } from '../../protocol/protocol.ts'
import { bothSides, meanOf, perSide } from '../../visit/sides.ts'
import type { Visit } from '../../visit/visit.ts'
import { soreHeels } from '../sore-heel.table.ts'
import { type PairPicture, pictureOf } from './ground.ts'

export interface PairContext {
	sizing: SizingResult
	growth?: GrowthResult | undefined
	facts?: PlayerFacts | undefined
	gate?: Gate | undefined
}
/** What the pairs of a visit are judged against. */
export function pairPicture(
	visit: Visit,
	{ sizing, growth, facts, gate }: PairContext,
	protocol: Protocol,
): PairPicture {
	const toes = bothSides.flatMap(
		(side) => sizing[side].lengthMm ?? meanOf(visit.feet?.[side]?.heelToToeMm) ?? [],
	)
	const toesMm = toes.length === 0 ? undefined : Math.max(...toes)
	const holds = (what: 'footAtRisk' | 'acute') =>
		bothSides.some((side) => (facts?.[side][what].length ?? 0) > 0)
	return pictureOf(
		present({
			visitDate: visit.visitDate,
			adult: isAdult(visit, protocol),
			fitMm: sizing.fitLengthMm ?? toesMm,
			toesMm,
			sockMm: visit.feet?.sockMm ?? 0,
			nailsAreSore: soreNails(visit).length > 0,
			footAtRisk: holds('footAtRisk'),
			heelIsSore: hasCondition(visit, soreHeels),
			jointsAtRisk: perSide((side) => facts?.[side].jointsAtRisk.map(({ joint }) => joint) ?? []),
			swollen: holds('acute'),
			grounds: visit.play?.surfaces ?? [],
			lifeShare: lifeShare(visit, protocol),
			forecasts: growth?.toeRoom ?? [],
			purchaseHeld: gate !== undefined && isHeld(gate, 'purchase'),
		}),
		protocol,
	)
}
