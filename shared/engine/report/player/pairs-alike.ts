/** Pairs of which something is to be looked for, those that are alike as one. */
import type { Kept, RolePair } from '../../findings/assessment.ts'
import type { SettledPlan } from '../../prescription/settled.ts'
import { type Feature, termWords } from '../../visit/terms.ts'
import type { Speak } from '../../words/speak.ts'
import { capital, featureInWords } from '../../words/words.ts'
import { wholeInside } from '../page-one/inside.ts'
import { roleWords } from '../pair-names.ts'
import { buyingWaits } from '../waits.ts'

type Pair = Kept<RolePair>
/** The features of a pair in one line. */
export const featuresInWords = (features: readonly Feature[]): string =>
	features.map(featureInWords).join('; ')
/** Pairs of which something is to be looked for; none while buying waits. */
export const pairsToFind = ({ gate, pairs }: Pick<SettledPlan, 'gate' | 'pairs'>): Pair[] =>
	buyingWaits(gate)
		? []
		: pairs.filter(({ means, seek, avoid }) => means !== 'keep' && seek.length + avoid.length > 0)
/** What a pair is for, and on which ground where that tells it from another. */
function purposeOf(
	{ role, surfaces, sole }: Pair,
	{ pairs }: Pick<SettledPlan, 'pairs'>,
	t: Speak,
): string {
	const isOneOfSeveral = pairs.filter((pair) => pair.role === role).length > 1
	return [
		roleWords(role, t),
		...(sole ? [termWords(sole)] : []),
		...(isOneOfSeveral ? surfaces.map((surface) => termWords(surface)) : []),
	].join(', ')
}
/** Its own length, where that is not the length of boots. */
function ownInside(
	{ insideLengthMm: inside }: Pair,
	{ size: { boots } }: Pick<SettledPlan, 'size'>,
	t: Speak,
): string | undefined {
	const isOwn = inside && (inside.min !== boots?.min || inside.max !== boots.max)
	return isOwn ? t('player.inside', wholeInside(inside)) : undefined
}
/** What is looked for alike is said once, for all the pairs that it is said of. */
export interface PairsAlike {
	/** What they are for, with their own length. */
	title: string
	/** The same without the length. */
	names: string
	/** Their own length, where that is not the length of boots. */
	inside?: string | undefined
	ids: readonly string[]
	seek: readonly Feature[]
	avoid: readonly Feature[]
}
export function pairsAlike(
	pairs: readonly Pair[],
	plan: Pick<SettledPlan, 'pairs' | 'size'>,
	t: Speak,
): PairsAlike[] {
	const alike = Map.groupBy(pairs, ({ seek, avoid, insideLengthMm: inside }) =>
		[seek.join(' '), avoid.join(' '), inside?.min, inside?.max].join('; '),
	)
	return [...alike.values()].flatMap((group) => {
		const [first] = group
		if (!first) return []
		const { seek, avoid } = first
		const names = capital(group.map((pair) => purposeOf(pair, plan, t)).join('; '))
		const inside = ownInside(first, plan, t)
		return [
			{
				title: [names, ...(inside ? [inside] : [])].join(', '),
				names,
				inside,
				ids: group.map(({ id }) => id),
				seek,
				avoid,
			},
		]
	})
}
