/**
 * The shelf matched for a pair: of one role on its grounds, or of any role for the room's own list.
 * What is wished is settled first, so that no model is praised and blamed for one thing.
 */
import { isAdult } from '../facts/age.ts'
import type { FeatureWish, RankedModel } from '../findings/assessment.ts'
import { suitability } from '../protocol/norms/suitability.ts'
import type { Protocol } from '../protocol/protocol.ts'
import type { Shelf } from '../visit/shelf.ts'
import type { PairRole, Surface } from '../visit/terms.ts'
import type { Visit } from '../visit/visit.ts'
import type { FootwearContext } from './facts.ts'
import type { InsertVolume } from './insert-volume.ts'
import { soleJudged } from './match/ground.ts'
import { matchShelf } from './match/match.ts'
import { settle } from './settle.ts'

/** How many models are put forward. */
export const proposedCount = 3
/** A pair that models are sought for; without `role` and `surfaces` of any role, for all grounds. */
export interface WantedPair {
	seek: readonly FeatureWish[]
	avoid: readonly FeatureWish[]
	role?: PairRole
	surfaces?: readonly Surface[]
}
/**
 * Every model on sale, best first, by settled wishes. Empty where no foot length is known.
 * @param insert what the insert takes, if one is to be worn
 */
export function rankedFor(
	wanted: WantedPair,
	shelf: Shelf,
	visit: Visit,
	context: FootwearContext,
	protocol: Protocol,
	insert?: InsertVolume,
): RankedModel[] {
	const { seek, avoid, contested } = settle(wanted.seek, wanted.avoid)
	const { role, surfaces } = wanted
	const { sizing, ankle, posture, facts } = context
	return matchShelf(
		shelf,
		visit,
		{
			sizing,
			ankle,
			posture,
			facts,
			target: { seek, avoid },
			contested,
			adult: isAdult(visit, protocol),
			insert,
			pair: role && surfaces ? { role, surfaces } : undefined,
		},
		protocol,
	)
}
/**
 * The models put forward for a pair of a role, best first, at most three: none whose sole one of its
 * grounds forbids. Ids of the shelf.
 */
export function shelfFor(
	wanted: Required<WantedPair>,
	shelf: Shelf,
	visit: Visit,
	context: FootwearContext,
	protocol: Protocol,
	insert?: InsertVolume,
): string[] {
	const longMm = protocol.value('footwear.softGroundStudMm')
	const allowed = shelf.models.filter((model) =>
		wanted.surfaces.every(
			(surface) => suitability[soleJudged(model, longMm)][surface].dry !== 'forbidden',
		),
	)
	return rankedFor(wanted, { ...shelf, models: allowed }, visit, context, protocol, insert)
		.filter(({ verdict }) => verdict !== 'unsuitable')
		.slice(0, proposedCount)
		.map(({ id }) => id)
}
