/**
 * The shelf matched for a pair: of one role on its grounds, or of any role for the room's own list.
 * What is wished is settled first, so that no model is praised and blamed for one thing.
 */
import { isAdult } from '../facts/age.ts'
import type { FeatureWish, RankedModel } from '../findings/assessment.ts'
import { suitability } from '../protocol/norms/suitability.ts'
import type { Protocol } from '../protocol/protocol.ts'
import type { Shelf } from '../visit/shelf.ts'
import type { PairRole, Sole, Surface } from '../visit/terms.ts'
import type { Visit } from '../visit/visit.ts'
import type { FootwearContext } from './facts.ts'
import type { InsertVolume } from './insert-volume.ts'
import { soleJudged } from './match/ground.ts'
import { matchShelf } from './match/match.ts'
import { roleRows } from './roles.table.ts'
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
/** Stops that hold whatever the role: the foot does not fit, and no wish changes that. */
const ofTheFoot: readonly string[] = ['too-short', 'too-long', 'too-narrow', 'too-shallow']
const isOfTheFoot = ({ rule }: { rule: string }): boolean => ofTheFoot.includes(rule)
/**
 * The models put forward for a pair of a role, best first, at most three: none whose sole one of its
 * grounds forbids. Ids of the shelf.
 * @param ranked the room's own list of this shelf: what does not fit the foot is not tried again
 */
export function shelfFor(
	wanted: Required<WantedPair>,
	{ shelf, ranked }: { shelf: Shelf; ranked: readonly RankedModel[] },
	visit: Visit,
	context: FootwearContext,
	protocol: Protocol,
	insert?: InsertVolume,
): string[] {
	const longMm = protocol.value('footwear.softGroundStudMm')
	const fitting = new Set(
		ranked.filter(({ stops }) => !stops.some(isOfTheFoot)).map(({ id }) => id),
	)
	const models = shelf.models.filter(
		(model) => fitting.has(model.id) && isAllowed(soleJudged(model, longMm), wanted),
	)
	return rankedFor(wanted, { ...shelf, models }, visit, context, protocol, insert)
		.filter(({ verdict }) => verdict !== 'unsuitable')
		.slice(0, proposedCount)
		.map(({ id }) => id)
}
const isAllowed = (sole: Sole, { role, surfaces }: Required<WantedPair>): boolean =>
	roleRows[role].soles.includes(sole) &&
	surfaces.every((surface) => suitability[sole][surface].dry !== 'forbidden')
