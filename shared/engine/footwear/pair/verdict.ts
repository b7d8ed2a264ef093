/** From the grounds of a pair to its verdict: danger first, the gravest decides. */
import type { OwnedVerdict } from '../../findings/prescription-result.ts'
import { present } from '../../plain/present.ts'
import type { Protocol } from '../../protocol/protocol.ts'
import type { Pair } from '../../visit/visit.ts'
import type { Part } from '../../words/en/parts.ts'
import { type Statement, state } from '../../words/statement.ts'
import { comfortGrounds } from './comfort.ts'
import type { Ground, OwnedWork, PairPicture } from './ground.ts'
import { growthGrounds } from './growth.ts'
import { onFootGrounds } from './on-foot.ts'
import { roomGround } from './room.ts'
import { soleGrounds } from './sole.ts'
import { damageGrounds, wearGrounds } from './wear.ts'

/** From the mildest to the gravest. */
const gravity: readonly OwnedVerdict[] = [
	'keep',
	'training-only',
	'modify',
	'replace',
	'stop-wearing',
]
export interface PairVerdict {
	verdict: OwnedVerdict
	/** The last day by which it is replaced; absent where nothing may be bought yet. */
	by?: string
	work: OwnedWork[]
	/** The verdict in words, then each ground, by codes. */
	said: Part[]
	/** The room in it could not be judged. */
	unknownRoom: boolean
}
/** Everything that a pair is judged by, in the order in which it is read. */
export function groundsOf(pair: Pair, picture: PairPicture, protocol: Protocol): Ground[] {
	const grounds = [
		roomGround(pair, picture, protocol),
		...damageGrounds(pair, picture, protocol),
		...comfortGrounds(pair, picture, protocol),
		...onFootGrounds(pair, picture, protocol),
		...soleGrounds(pair, picture, protocol),
		...wearGrounds(pair, picture, protocol),
	]
	// one that is given up anyway is not outgrown as well
	const stays = !['replace', 'stop-wearing'].includes(gravest(grounds))
	return stays ? [...grounds, ...growthGrounds(pair, picture)] : grounds
}
/** What is to be replaced and must be mended before it is worn is not worth mending. */
function gravest(grounds: readonly Ground[]): OwnedVerdict {
	const worst = Math.max(...grounds.map(({ verdict }) => gravity.indexOf(verdict)))
	const verdict = gravity[worst] ?? 'keep'
	return verdict === 'replace' && grounds.some(({ mendFirst }) => mendFirst)
		? 'stop-wearing'
		: verdict
}
function headline(
	verdict: OwnedVerdict,
	grounds: readonly Ground[],
	by: string | undefined,
	{ purchaseHeld }: PairPicture,
): Statement {
	const mendFirst = grounds.some((ground) => ground.mendFirst)
	switch (verdict) {
		case 'keep':
			return grounds.some(({ unknownRoom }) => unknownRoom)
				? state('owned.keep-unmeasured')
				: state('owned.keep')
		case 'training-only':
			return state('owned.training-only')
		case 'modify':
			return state('owned.modify', { mendFirst })
		case 'replace':
			return state('owned.replace', present({ by, held: purchaseHeld, hurts: doesHurt(grounds) }))
		case 'stop-wearing':
			return state('owned.stop-wearing', { mendable: isMendable(grounds), held: purchaseHeld })
	}
}
/** Absent where it does not: what is said of it stays as it was. */
const doesHurt = (grounds: readonly Ground[]): true | undefined =>
	grounds.some(({ hurts }) => hurts) || undefined
/** Nothing but what can be mended keeps it from being worn. */
const isMendable = (grounds: readonly Ground[]): boolean =>
	grounds.every(
		({ verdict, mendFirst }) => mendFirst || (verdict !== 'stop-wearing' && verdict !== 'replace'),
	)
/** The verdict that grounds come to. */
export function verdictOf(grounds: readonly Ground[], picture: PairPicture): PairVerdict {
	const verdict = gravest(grounds)
	const days = grounds.flatMap(({ verdict: own, by }) => (own === 'replace' && by ? [by] : []))
	const [by] = verdict === 'replace' && !picture.purchaseHeld ? days.sort() : []
	const isGoing = verdict === 'replace' || verdict === 'stop-wearing'
	const statements = [
		headline(verdict, grounds, by, picture),
		...grounds.filter(({ ofUse }) => !(ofUse && isGoing)).map(({ statement }) => statement),
	]
	return {
		verdict,
		...present({ by }),
		work: grounds.flatMap(({ work }) => work ?? []),
		said: statements.map(({ code, params }) => ({ code, params })),
		unknownRoom: grounds.some(({ unknownRoom }) => unknownRoom),
	}
}
