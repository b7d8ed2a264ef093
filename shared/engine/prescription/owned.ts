/** The pairs a player owns: keep, modify, training only, replace, or stop wearing. */
import type {
	AnkleResult,
	FootwearResult,
	Gate,
	GrowthResult,
	OwnedPair,
	PlayerFacts,
	RaiseResult,
	SizingResult,
} from '../findings/assessment.ts'
import { type Finding, idPart } from '../findings/finding.ts'
import type { Ground, PairPicture } from '../footwear/pair/ground.ts'
import { pairPicture } from '../footwear/pair/of-player.ts'
import { groundsOf, verdictOf } from '../footwear/pair/verdict.ts'
import { present } from '../plain/present.ts'
import type { Protocol } from '../protocol/protocol.ts'
import type { Pair, Visit } from '../visit/visit.ts'
import { state } from '../words/statement.ts'
import { answersOfPairs } from './on-foot.ts'
import { raiseInsideFindings, raiseInsideGrounds } from './owned-raise.ts'

/** What the pairs are judged by. */
export interface OwnedContext {
	facts: PlayerFacts
	gate: Gate
	sizing: SizingResult
	growth?: GrowthResult | undefined
	ankle: AnkleResult
	footwear?: FootwearResult | undefined
	raise?: RaiseResult | undefined
}
/** What each pair is judged by before the raise is known, in the order recorded. */
export interface PairsSeen {
	picture: PairPicture
	grounds: Ground[][]
}
/** Looked at once: the raise asks before its own figures are known, the plan afterwards. */
export function pairsSeen(
	visit: Visit,
	context: Pick<OwnedContext, 'facts' | 'gate' | 'sizing' | 'growth'>,
	protocol: Protocol,
): PairsSeen {
	const picture = pairPicture(visit, context, protocol)
	return {
		picture,
		grounds: (visit.footwear ?? []).map((pair) => groundsOf(pair, picture, protocol)),
	}
}
/** What owned pairs are to the raise: not worn, or worn until another takes their place. Ids. */
export function pairsForRaise({ footwear = [] }: Visit, { picture, grounds }: PairsSeen) {
	const pairs = footwear.map(({ id }, index) => ({
		id,
		...verdictOf(grounds[index] ?? [], picture),
	}))
	return {
		pairsLeftOff: new Set(pairsLeftOff(pairs)),
		pairsReplaced: new Set(
			pairs.filter(({ verdict }) => verdict === 'replace').map(({ id }) => id),
		),
	}
}
/** Findings of the rooms about a pair. */
const roomFindings = (pair: Pair, index: number, { growth, footwear }: OwnedContext): string[] => {
	const own = [
		`footwear.pair-${idPart(pair.id, index)}`,
		`growth.toe-room-${idPart(pair.id, index)}`,
	]
	const known = [...(footwear?.findings ?? []), ...(growth?.findings ?? [])]
	return own.filter((id) => known.some((finding) => finding.id === id))
}
/**
 * A verdict on each pair in the order recorded, danger first among its reasons. A pair is kept only
 * within measuring error of the band of toe room that the player is told. Where nothing may be
 * bought, what is to be replaced says so and has no day; what is not to be worn stands whatever is
 * held.
 */
export function ownedPairs(
	visit: Visit,
	context: OwnedContext,
	protocol: Protocol,
	{ picture, grounds }: PairsSeen = pairsSeen(visit, context, protocol),
): { pairs: OwnedPair[]; findings: Finding[] } {
	const found = (visit.footwear ?? []).map((pair, index) => {
		const inside: Ground[] = raiseInsideGrounds(pair, context)
		const { verdict, by, work, said } = verdictOf([...(grounds[index] ?? []), ...inside], picture)
		const findings = raiseInsideFindings(pair, index, inside)
		return {
			findings,
			pair: present({
				id: pair.id,
				verdict,
				by,
				because: [...roomFindings(pair, index, context), ...findings.map(({ id }) => id)],
				work: [...new Set<string>(work)],
				...state('owned.pair', { said }),
			}),
		}
	})
	return {
		pairs: found.map(({ pair }) => pair),
		findings: [
			...found.flatMap(({ findings }) => findings),
			...answersOfPairs(visit, context, protocol),
		],
	}
}
/** Work before which a pair is not worn. */
const mendFirst: readonly string[] = ['smooth-stud', 'mend-sole']
/**
 * Ids of the pairs that are left off: not to be worn at all, or not before they are mended. No
 * raise goes into them and no session is planned in them.
 */
export const pairsLeftOff = (
	pairs: readonly { id: string; verdict: OwnedPair['verdict']; work: readonly string[] }[],
): string[] =>
	pairs
		.filter(
			({ verdict, work }) =>
				verdict === 'stop-wearing' || work.some((one) => mendFirst.includes(one)),
		)
		.map(({ id }) => id)
