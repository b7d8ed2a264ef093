/**
 * Pairs that were got, against what was asked of them: by the signed prescription that this visit
 * looks back to, else by what this visit asks of a pair of the role. Nothing while nothing may be bought.
 */
import { isHeld } from '../facts/held.ts'
import type { FeatureWish, FootwearResult } from '../findings/assessment.ts'
import type { Finding } from '../findings/finding.ts'
import { roleRows } from '../footwear/roles.table.ts'
import { settle } from '../footwear/settle.ts'
import { type Asked, answerOf } from '../onfoot/answers.ts'
import { gotFor } from '../onfoot/fit.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { type PairRole, surfaces } from '../visit/terms.ts'
import type { Pair, Visit } from '../visit/visit.ts'
import type { OwnedContext } from './owned.ts'
import { wishesOfRole, wishesOfSole } from './roles/wishes.ts'
import { sizeToBuyBy } from './settled-size.ts'

interface Context extends OwnedContext {
	footwear: FootwearResult
}
const featuresOf = (wishes: readonly FeatureWish[]) => [
	...new Set(wishes.map(({ feature }) => feature)),
]
function askedToday(pair: Pair, role: PairRole, { facts, footwear, sizing }: Context): Asked {
	const row = roleRows[role]
	const grounds = surfaces.filter(
		(surface) => facts.grounds.includes(surface) && row.surfaces.includes(surface),
	)
	const ofPair = (wishes: readonly FeatureWish[]) =>
		wishesOfSole(wishesOfRole(wishes, role, grounds), pair.sole)
	const { seek, avoid } = settle(ofPair(footwear.target.seek), ofPair(footwear.target.avoid))
	const { boots, trainers } = sizeToBuyBy(sizing)
	return {
		insideLengthMm: row.band === 'trainer' ? trainers : boots,
		seek: featuresOf(seek),
		avoid: featuresOf(avoid),
	}
}
function askedOf(pair: Pair, role: PairRole, visit: Visit, context: Context): Asked {
	const { since } = visit
	const then = since?.bought?.find((bought) => bought.role === role)?.asked
	return since && then ? { on: since.visitDate, ...then } : askedToday(pair, role, context)
}
/** One finding a pair that was got for a role of the prescription. */
export function answersOfPairs(visit: Visit, context: OwnedContext, protocol: Protocol): Finding[] {
	const { footwear, gate } = context
	if (footwear === undefined || isHeld(gate, 'purchase')) return []
	return (visit.footwear ?? []).flatMap((pair, index) => {
		const role = gotFor(pair, visit)
		if (role === undefined) return []
		const asked = askedOf(pair, role, visit, { ...context, footwear })
		return answerOf(pair, index, asked, protocol) ?? []
	})
}
